import { expect, test } from 'vitest'
import { START_MODES, startSchedule } from '../../../src/plan/index.ts'
import type { PeopleReading } from '../../../src/water/index.ts'
import { CONTEXTS } from './cases.ts'

test('random starts: every number is one, and lies inside its range', () => {
  let seed = 20_260_502
  const random = () => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0
    return seed / 2 ** 32
  }
  const between = (low: number, high: number) => low + (high - low) * random()
  const reading = (): PeopleReading => ({
    pH: between(6.9, 8.3),
    ta_mg_per_L_as_CaCO3: between(60, 200),
    ch_mg_per_L_as_CaCO3: between(20, 600),
    cya_mg_per_L: random() < 0.2 ? 0 : between(0, 90),
    borate_mg_per_L_as_B: random() < 0.5 ? 0 : between(0, 50),
    fc_mg_per_L_as_Cl2: between(0, 12),
    salt_mg_per_L_as_NaCl: between(1200, 6000),
    temperature_C: between(2, 35),
  })
  const partly = (): PeopleReading =>
    Object.fromEntries(Object.entries(reading()).filter(() => random() < 0.85)) as PeopleReading
  const maybe = (): PeopleReading | undefined => (random() < 0.2 ? undefined : partly())
  let [figures, expected, waters, levels, clashes] = [0, 0, 0, 0, 0]
  for (let n = 0; n < 2000; n++) {
    const mode = START_MODES.rows[n % START_MODES.rows.length]!
    const values: { [key: string]: number; drainedM?: number; drainedPercent?: number } = {}
    for (const input of mode.inputs) if (random() < 0.85) values[input.key] = between(input.low, input.high)
    // told once, as people do
    if (values.drainedM !== undefined) delete values.drainedPercent
    const volumeM3 = 10 ** between(-1, 3.5)
    const context = {
      ...CONTEXTS[n % CONTEXTS.length]!,
      volumeM3,
      waterSurfaceM2: volumeM3 / between(0.3, 3),
      before: maybe(),
      now: maybe(),
      fill: maybe(),
    }
    const where = `${n} ${mode.id} ${JSON.stringify({ values, context: { ...context, targets: undefined } })}`
    const answer = startSchedule(mode.id, values, context)
    if (!answer.ok) {
      if (answer.problem.code === 'start-level-below-floor') levels++
      else if (answer.problem.code.startsWith('infeasible')) clashes++
      else throw new Error(`${answer.problem.code} ${where}`)
      continue
    }
    for (const { key, value, low, high } of [...answer.value.figures, ...answer.value.expected]) {
      const slack = 1e-9 * Math.max(1, Math.abs(value))
      for (const end of [value, low, high]) expect(Number.isFinite(end), `${key} ${where}`).toBe(true)
      expect(low, `${key} low ${where}`).toBeLessThanOrEqual(value + slack)
      expect(high, `${key} high ${where}`).toBeGreaterThanOrEqual(value - slack)
      if (key !== 'coldSI' && key !== 'refilledSI') {
        if (key !== 'exchanged') expect(low, `${key} ${where}`).toBeGreaterThanOrEqual(-slack)
        else expect(high, `${key} ${where}`).toBeLessThanOrEqual(100)
      }
    }
    figures += answer.value.figures.length
    expected += answer.value.expected.length
    if (answer.value.expectedWater) waters++
  }
  expect(figures).toBeGreaterThan(2000)
  expect(expected).toBeGreaterThan(1000)
  expect(waters).toBeGreaterThan(150)
  expect(levels).toBeGreaterThan(50)
  expect(clashes).toBeLessThan(50)
})
