import { describe, expect, test } from 'vitest'
import { deriveDeckCard, deriveOpening, deriveUpkeep, deriveVolume } from '../../src/derive/index.ts'
import { type CommandArgs, demoSpec, type ReadingValues, type Spec } from '../../src/document/index.ts'
import { keptReadings, type OpeningPlan } from '../../src/plan/index.ts'
import { edited } from './edited.ts'

const NOW = Date.parse('2026-06-20T12:00:00Z')
const systemId = 'pool'
const HOUR = 3_600_000
const FULL: ReadingValues = {
  pH: 7.6,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 260,
  cya_mg_per_L: 35,
  borate_mg_per_L_as_B: 0,
  fc_mg_per_L_as_Cl2: 3,
  salt_mg_per_L_as_NaCl: 500,
  temperature_C: 26,
}
const PARTIAL: ReadingValues = { pH: 8, fc_mg_per_L_as_Cl2: 2.5 }
const hoursAgo = (hours: number) => new Date(NOW - hours * HOUR).toISOString()

type Set = CommandArgs<'addReadings'>['set']
const empty: Spec = { ...demoSpec, systems: demoSpec.systems.map((each) => ({ ...each, log: [] })) }
const pool = (...sets: readonly Partial<Set>[]): Spec =>
  sets.reduce<Spec>(
    (spec, set) =>
      edited(spec, {
        id: 'addReadings',
        args: { systemId, set: { at: hoursAgo(1), method: 'drop-kit', values: PARTIAL, ...set } },
      }),
    { ...empty, systems: empty.systems.map((each) => ({ ...each, water: { ...each.water, readings: [] } })) },
  )
const planOf = (spec: Spec): OpeningPlan => {
  const plan = deriveOpening(spec, systemId, NOW)
  if (!plan.ok) throw new Error(plan.problem.what)
  return plan.value
}
const said = (of: OpeningPlan) => of.warnings.filter((text) => text.includes('kept from')).join(' ')
const dosed = (spec: Spec, product: string, amountG: number, hours: number): Spec =>
  edited(spec, { id: 'logDose', args: { systemId, at: hoursAgo(hours), product, amountG } })

describe('a newer reading of pH and free chlorine only', () => {
  const earlier = { at: hoursAgo(25), values: FULL }

  test('alkalinity, calcium, stabiliser, salt and warmth of a day before still count, and are marked with their hour', () => {
    const plan = planOf(pool(earlier, {}))
    expect(plan.missing).toEqual([])
    expect(plan.startWater?.reading).toMatchObject({ cya_mg_per_L: 35, temperature_C: 26 })
    expect(plan.startWater?.reading.pH).toBeCloseTo(8, 9)
    expect(plan.lines.some((line) => line.kind === 'dose')).toBe(true)
    expect(said(plan)).toContain('total alkalinity 90 mg/L (kept from 24 h before)')
    expect(said(plan)).toContain('temperature 26 °C (kept from 24 h before)')
    expect(plan.warnings.join(' ')).not.toContain('is unknown')
    // the same acid as if all had been read at once
    const atOnce = planOf(pool({ values: { ...FULL, ...PARTIAL } }))
    expect(said(atOnce)).toBe('')
    const amounts = (of: OpeningPlan) => of.lines.flatMap((line) => (line.kind === 'dose' ? [line.amountG] : []))
    expect(amounts(plan)).toEqual(amounts(atOnce))
  })

  test('pH, free and combined chlorine are never kept: without them nobody bathes', () => {
    for (const values of [{ pH: 7.5 }, { fc_mg_per_L_as_Cl2: 3 }, { ta_mg_per_L_as_CaCO3: 90 }]) {
      const plan = planOf(pool({ at: hoursAgo(3), values: { ...FULL, tc_mg_per_L_as_Cl2: 3.2 } }, { values }))
      expect(plan.bathing).toMatchObject({ cleared: false, reason: 'Bathing needs a measured pH and free chlorine.' })
      expect(plan.missing.map(({ key }) => key)).toEqual(
        (['pH', 'fc_mg_per_L_as_Cl2'] as const).filter((key) => !(key in values)),
      )
    }
  })

  test('that there is no stabiliser is not kept, for it would lower the chlorine floor; some stabiliser lowers none', () => {
    const chlorine = { pH: 7.5, fc_mg_per_L_as_Cl2: 1.5 }
    const none = planOf(pool({ ...earlier, values: { ...FULL, cya_mg_per_L: 0 } }, { values: chlorine }))
    expect(none.missing.map(({ key }) => key)).toEqual(['cya_mg_per_L'])
    expect(none.bathing.reason).toContain('below the 2 mg/L')
    const some = planOf(pool(earlier, { values: chlorine }))
    expect(some.bathing.reason).toContain('below the 2 mg/L')
    const much = planOf(
      pool({ ...earlier, values: { ...FULL, cya_mg_per_L: 120 } }, { values: { ...chlorine, fc_mg_per_L_as_Cl2: 3 } }),
    )
    expect(much.bathing.reason).toContain('Stabiliser is above')
  })

  test('nothing older than 48 h is kept', () => {
    expect(planOf(pool({ at: hoursAgo(47.9), values: FULL }, {})).missing).toEqual([])
    const old = planOf(pool({ at: hoursAgo(48.1), values: FULL }, {}))
    expect(said(old)).toBe('')
    expect(old.missing.map(({ key }) => key)).toContain('ta_mg_per_L_as_CaCO3')
  })

  test('what a dose in between moved further than its test can tell is not kept; the rest is', () => {
    const spec = pool(earlier, {})
    const missing = (of: Spec) => planOf(of).missing.map(({ key }) => key)
    expect(missing(dosed(spec, 'sodium-bicarbonate', 3000, 10))).toEqual(['ta_mg_per_L_as_CaCO3'])
    expect(missing(dosed(spec, 'calcium-chloride-flake', 8000, 10))).toContain('ch_mg_per_L_as_CaCO3')
    // a dose before both, and an evening's liquid chlorine, move nothing that was read
    expect(missing(dosed(spec, 'sodium-bicarbonate', 3000, 26))).toEqual([])
    expect(missing(dosed(spec, 'liquid-chlorine-12', 800, 10))).toEqual([])
  })

  test('what a smaller dose moved by the sums is counted in, and said, so that it is not given again', () => {
    const spec = pool({ at: hoursAgo(25), method: 'strip', values: { ...FULL, ta_mg_per_L_as_CaCO3: 40 } }, {})
    const alkalinity = (of: Spec) => planOf(of).startWater?.reading.ta_mg_per_L_as_CaCO3 ?? Number.NaN
    const amount = (of: Spec) =>
      planOf(of).lines.reduce(
        (sum, line) => sum + (line.kind === 'dose' && line.productId === 'sodium-bicarbonate' ? line.amountG : 0),
        0,
      )
    const grams = 800
    const once = dosed(spec, 'sodium-bicarbonate', grams, 10)
    expect(alkalinity(spec)).toBeCloseTo(40, 6)
    // 84.007 g/mol, and 50.04 g of calcium carbonate to an equivalent
    const m3 = deriveVolume(spec, systemId)?.m3 ?? Number.NaN
    expect(alkalinity(once)).toBeCloseTo(40 + (grams / 84.007 / m3) * 50.043, 1)
    expect(amount(spec)).toBeGreaterThan(grams)
    expect(amount(once)).toBeLessThan(amount(spec) - grams / 3)
    expect(said(planOf(once))).toMatch(
      /total alkalinity [\d.]+ mg\/L \(kept from 24 h before, \+[\d.]+ by doses since\)/,
    )
    // chlorine takes back what its lye brought, once it is used
    expect(alkalinity(dosed(spec, 'liquid-chlorine-12', 2000, 10))).toBeCloseTo(40, 0)
  })

  test('other water ends it: an exchange that was ticked, a start that began', () => {
    const spec = pool(earlier, {})
    const tick = { systemId, line: 'exchange', at: hoursAgo(10), text: 'Exchanged.' }
    expect(said(planOf(edited(spec, { id: 'tickLine', args: tick })))).toBe('')
    const start = { systemId, mode: 'heavy-rain', at: hoursAgo(30) }
    expect(said(planOf(edited(spec, { id: 'setStart', args: start })))).toBe('')
  })

  test('a report about the main tells nothing of the pool', () => {
    expect(said(planOf(pool({ ...earlier, method: 'supplier' }, {})))).toBe('')
  })

  test('metals that read high still stand before every oxidiser', () => {
    const plan = planOf(pool({ ...earlier, values: { ...FULL, iron_mg_per_L: 1.2 } }, {}))
    expect(plan.lines.find(({ key }) => key === 'metals')?.why).toContain('Iron 1.2 mg/L')
  })

  test('the interval of a dose is as wide as the kept reading’s own test', () => {
    const spread = (method: Set['method']) => {
      const values = { ...FULL, ta_mg_per_L_as_CaCO3: 40 }
      const { lines } = planOf(pool({ ...earlier, method, values }, { values: { ...PARTIAL, pH: 7.5 } }))
      const line = lines.find((each) => each.kind === 'dose' && each.purpose === 'alkalinity')
      return line?.kind === 'dose' ? (line.highG - line.lowG) / line.amountG : 0
    }
    expect(spread('drop-kit')).toBeGreaterThan(0)
    expect(spread('strip')).toBeGreaterThan(1.3 * spread('drop-kit'))
  })

  test('the upkeep and the deck card go by it too', () => {
    const spec = pool(earlier, {})
    const upkeep = deriveUpkeep(spec, systemId, NOW)
    if (!upkeep.ok) throw new Error(upkeep.problem.what)
    expect(upkeep.value.productGPerDay).toBeGreaterThan(0)
    expect(upkeep.value.warnings.join(' ')).toContain('stabiliser 35 mg/L (kept from 24 h before)')
    const later = deriveUpkeep(spec, systemId, NOW + 30 * 24 * HOUR)
    expect(later.ok && later.value.warnings.join(' ')).toContain('stabiliser 35 mg/L (kept from')
    const card = deriveDeckCard(spec, systemId, NOW)
    expect(card.ok && card.value.madeFor).toMatchObject({ waterIs: 'measured', assumed: [] })
  })
})

describe('the rule itself', () => {
  const context = { nowMs: NOW, sinceMs: Number.NEGATIVE_INFINITY, volumeM3: 50, given: [] }
  const newest = { values: PARTIAL, atMs: NOW, method: 'drop-kit' } as const
  const set = (hours: number, values: ReadingValues) => ({ values, atMs: NOW - hours * HOUR, method: 'strip' as const })

  test('each reading comes from the latest set that has it', () => {
    const sets = [set(30, { ta_mg_per_L_as_CaCO3: 80, cya_mg_per_L: 20 }), set(5, { ta_mg_per_L_as_CaCO3: 100 })]
    const kept = keptReadings(newest, sets, context)
    expect(kept.map(({ key, value }) => [key, value])).toEqual([
      ['ta_mg_per_L_as_CaCO3', 100],
      ['cya_mg_per_L', 20],
    ])
  })

  test('a dose that nobody knows may have moved anything, but not what was read after it', () => {
    const given = [{ product: 'no-such-thing', amountG: 10, atMs: NOW - 6 * HOUR }]
    const sets = [set(8, { cya_mg_per_L: 20 }), set(5, { ta_mg_per_L_as_CaCO3: 100 })]
    expect(keptReadings(newest, sets, { ...context, given }).map(({ key }) => key)).toEqual(['ta_mg_per_L_as_CaCO3'])
  })
})
