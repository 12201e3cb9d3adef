import { describe, expect, test } from 'vitest'
import { deriveOpening, deriveUpkeep } from '../../src/derive/index.ts'
import { demoSpec, type ReadingSet, type Spec, type System } from '../../src/document/index.ts'
import { TEST_TRAPS } from '../../src/water/index.ts'

const NOW = Date.parse('2026-07-10T12:00:00Z')
const at = (hoursBefore: number) => new Date(NOW - hoursBefore * 3_600_000).toISOString()
const GOOD: ReadingSet['values'] = {
  pH: 7.4,
  ta_mg_per_L_as_CaCO3: 100,
  ch_mg_per_L_as_CaCO3: 300,
  cya_mg_per_L: 30,
  borate_mg_per_L_as_B: 45,
  fc_mg_per_L_as_Cl2: 3,
  salt_mg_per_L_as_NaCl: 500,
  temperature_C: 27,
}
/** A pool of 50 m³ as stated, read three hours ago. */
const pool = (
  values: ReadingSet['values'],
  method: ReadingSet['method'] = 'drop-kit',
  more: Partial<System> = {},
): Spec => ({
  ...demoSpec,
  bodies: [],
  systems: [
    {
      ...demoSpec.systems[0]!,
      volumeEstimates: [{ from: 'stated', m3: 50, sigmaM3: 1 }],
      water: { readings: [{ at: at(3), method, values }], targets: {} },
      regime: { id: 'stabilised', products: {} },
      log: [],
      stock: [],
      start: undefined,
      ...more,
    },
  ],
})
const plan = (spec: Spec) => {
  const made = deriveOpening(spec, spec.systems[0]!.id, NOW)
  if (!made.ok) throw new Error(made.problem.what)
  return made.value
}
const upkeep = (spec: Spec) => {
  const made = deriveUpkeep(spec, spec.systems[0]!.id, NOW)
  if (!made.ok) throw new Error(made.problem.what)
  return made.value
}
const dosed = (spec: Spec) => plan(spec).lines.flatMap((line) => (line.kind === 'dose' ? [line.purpose] : []))

describe('nothing is dosed by a reading that its test spoils', () => {
  test('pH beside 15 mg/L of chlorine by an indicator: wait, read again, plan then', () => {
    const spec = pool({ ...GOOD, pH: 8.4, fc_mg_per_L_as_Cl2: 15 })
    const { lines, purchases, bathing, warnings } = plan(spec)
    expect(lines.map(({ kind }) => kind)).toEqual(['wait', 'measure'])
    expect(lines[1]?.startHours).toBe(24)
    expect(lines[1]?.how).toContain('dose no acid for this reading')
    expect(purchases).toEqual([])
    expect(bathing.cleared).toBe(false)
    expect(warnings[0]).toContain('Read again before anything is dosed')
    expect(upkeep(spec).blocked?.[0]).toBe(warnings[0])
    // the same water as a meter reads it is dosed
    expect(dosed(pool({ ...GOOD, pH: 8.4, fc_mg_per_L_as_Cl2: 15 }, 'laboratory'))).toContain('acid')
  })

  test.each([
    ['pH', 'ph-with-high-chlorine', { fc_mg_per_L_as_Cl2: 12, pH: 8.4 }],
    ['chlorine', 'dpd-bleached', { fc_mg_per_L_as_Cl2: 9, pH: 8.4 }],
    ['alkalinity', 'alkalinity-with-high-chlorine', { fc_mg_per_L_as_Cl2: 12, ta_mg_per_L_as_CaCO3: 40 }],
  ])('%s: no line, and the trap’s own words', (_, id, spoilt) => {
    const spec = pool({ ...GOOD, ...spoilt })
    expect(dosed(spec)).toEqual([])
    expect(plan(spec).lines.at(-1)?.how).toContain(TEST_TRAPS.get(id)!.text)
  })

  test('stabiliser read in cold water is left out, the rest is planned; warm it is dosed', () => {
    const low = { ...GOOD, cya_mg_per_L: 12, pH: 8.1 }
    const cold = pool({ ...low, temperature_C: 15 }, 'photometer')
    expect(dosed(cold)).toContain('acid')
    expect(dosed(cold)).not.toContain('stabiliser')
    expect(plan(cold).missing.map(({ key }) => key)).toContain('cya_mg_per_L')
    expect(plan(cold).warnings[0]).toContain('Let the sample warm')
    expect(dosed(pool(low, 'photometer'))).toContain('stabiliser')
    // nor is any given where the cold test shows none
    const none = { ...low, cya_mg_per_L: 0 }
    expect(dosed(pool({ ...none, temperature_C: 15 }, 'photometer'))).not.toContain('stabiliser')
    expect(dosed(pool(none, 'photometer'))).toContain('stabiliser')
  })

  test('calcium that metals blur is left out', () => {
    const low = { ...GOOD, ch_mg_per_L_as_CaCO3: 120 }
    expect(dosed(pool(low))).toContain('calcium')
    expect(dosed(pool({ ...low, copper_mg_per_L: 0.25 }))).not.toContain('calcium')
  })

  test('no colour right after a shock may be a bleached test; read twice as none it is none', () => {
    const none = { ...GOOD, fc_mg_per_L_as_Cl2: 0 }
    const shock = (amountG: number) => ({
      log: [{ kind: 'dose', id: 'a', at: at(8), product: 'liquid-chlorine-12', amountG } as const],
    })
    expect(dosed(pool(none, 'drop-kit', shock(6000)))).toEqual([])
    expect(dosed(pool(none, 'drop-kit', shock(500)))).toContain('openingChlorine')
    const twice = pool(none, 'drop-kit', {
      ...shock(6000),
      water: {
        readings: [
          { at: at(5), method: 'drop-kit', values: none },
          { at: at(3), method: 'drop-kit', values: none },
        ],
        targets: {},
      },
    })
    expect(dosed(twice)).toContain('openingChlorine')
  })
})

describe('a pool that was closed for winter', () => {
  const LOW = { ...GOOD, ch_mg_per_L_as_CaCO3: 120, temperature_C: 5 }
  const since = (mode: string, days: number) => pool(LOW, 'photometer', { start: { mode, at: at(24 * days) } })

  test('stays closed after its last day: no dose, nobody bathes, and what opens it is named', () => {
    const { lines, purchases, bathing, warnings } = plan(since('winter-closing', 35))
    expect(lines.map(({ kind }) => kind)).toEqual(['wait'])
    expect(lines[0]?.how).toContain('Spring opening')
    expect(purchases).toEqual([])
    expect(bathing.cleared).toBe(false)
    expect(bathing.reason).toContain('closed for winter')
    expect(warnings[0]).toContain('closed for winter')
    expect(upkeep(since('winter-closing', 35)).blocked?.[0]).toContain('closed for winter')
  })

  test('is planned while it is being closed, and again once a spring opening has begun', () => {
    expect(dosed(since('winter-closing', 2))).toContain('calcium')
    expect(dosed(since('spring-opening', 3))).toContain('calcium')
  })
})
