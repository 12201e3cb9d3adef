import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { HIGH_RATIO, LEAN_NITROGEN_G } from '../../../src/plan/demand-terms.ts'
import { START_MODES, startSchedule } from '../../../src/plan/index.ts'
import { LEVEL_READ_M } from '../../../src/plan/modes/dilution.ts'
import { PLASTER_DAYS } from '../../../src/plan/modes/new-plaster.ts'
import { LEAST_LEFT } from '../../../src/plan/modes/rain-and-drain.ts'
import { BUCKET, UNEXPLAINED_MG_PER_L } from '../../../src/plan/modes/spring-figures.ts'
import { batherDemandG, breakpointRatio, NITROGEN_G_PER_BATHER_HOUR } from '../../../src/water/index.ts'
import { good } from '../../water/golden.ts'
import { BEFORE, contextOf } from './cases.ts'

const text = readFileSync(join(import.meta.dirname, '../../../src/plan/modes/MODEL.md'), 'utf8')
const flat = text.replace(/\s+/g, ' ')
const rows = text
  .split('\n')
  .filter((line) => line.startsWith('|'))
  .map((line) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  )
const row = (first: string): readonly string[] => {
  const found = rows.find(([cell]) => cell === first)
  if (!found) throw new Error(`MODEL.md has no row ${first}`)
  return found.slice(1)
}

test('MODEL.md counts the days, steps and changes of every start', () => {
  for (const { id, lastDay, steps, targets } of START_MODES.rows)
    expect(row(id), id).toEqual([`${lastDay}`, `${steps.length}`, `${targets.length}`])
})

test('MODEL.md has the days of new plaster', () => {
  for (const [key, day] of Object.entries(PLASTER_DAYS)) expect(row(key)).toEqual([`${day}`])
})

test('MODEL.md’s examples of dilution are reckoned', () => {
  const cases = [
    ['50 mm of rain, full to the overflow', 'heavy-rain', { rainM: 0.05, roomM: 0 }],
    ['let down 0.4 m, full again in spring', 'spring-opening', { loweredM: 0.4, springBelowM: 0 }],
    ['the same, 0.7 m of rain', 'spring-opening', { loweredM: 0.4, springBelowM: 0, rainM: 0.7 }],
    ['drained by 0.45 m', 'partial-drain', { drainedM: 0.45 }],
  ] as const
  for (const [name, mode, values] of cases) {
    const { figures } = good(startSchedule(mode, values, contextOf()))
    const { value, low, high } = figures.find(({ key }) => key === 'exchanged')!
    expect(row(name), name).toEqual([value.toFixed(1), low.toFixed(1), high.toFixed(1)])
  }
})

test('MODEL.md’s numbers in words are the code’s', () => {
  const perStabiliser = (ratio: number) => (((3 * 14.007) / 129.07) * ratio).toFixed(2)
  const best = batherDemandG(1).toFixed(1)
  const low = batherDemandG(1, LEAN_NITROGEN_G, breakpointRatio).toFixed(1)
  const high = batherDemandG(1, NITROGEN_G_PER_BATHER_HOUR, HIGH_RATIO).toFixed(1)
  for (const words of [
    `read to ${LEVEL_READ_M} m`,
    `Less than ${LEAST_LEFT} of the water`,
    `× ${breakpointRatio.toFixed(3)} = ${perStabiliser(breakpointRatio)} mg`,
    `in practice (handbook, excerpt seen): ${perStabiliser(HIGH_RATIO)}`,
    `Above ${UNEXPLAINED_MG_PER_L} mg/L lost`,
    `${BUCKET.litres} L brought to ${BUCKET.chlorineMgPerL} mg/L`,
    `${NITROGEN_G_PER_BATHER_HOUR} g and 12 g a gram at best (${best} g`,
    `${LEAN_NITROGEN_G} g and ${breakpointRatio.toFixed(3)} at the low end (${low})`,
    `and ${HIGH_RATIO} at the high end (${high})`,
  ])
    expect(flat).toContain(words)
})

test('MODEL.md’s limit of SI in the cold is where the warning begins', () => {
  const warned = (ch: number) => {
    const now = { ...BEFORE, ch_mg_per_L_as_CaCO3: ch }
    const { figures, warnings } = good(startSchedule('winter-closing', {}, contextOf({ now })))
    const si = figures.find(({ key }) => key === 'coldSI')!.value
    return [si < -0.3, warnings.some((words) => words.includes('dissolve chalk'))]
  }
  expect(flat).toContain('Below −0.3 (ours)')
  expect(warned(600)).toEqual([false, false])
  expect(warned(150)).toEqual([true, true])
})
