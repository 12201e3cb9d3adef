import { describe, expect, test } from 'vitest'
import { deriveOpening, deriveUpkeep, deriveWater } from '../../src/derive/index.ts'
import { demoSpec, type ReadingValues, type Spec } from '../../src/document/index.ts'
import { RULES } from '../../src/water/index.ts'
import { edited } from './edited.ts'

const systemId = 'pool'
const at = '2026-06-20T09:00:00Z'
const nowMs = Date.parse('2026-06-20T11:00:00Z')
const GOOD = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 280,
  cya_mg_per_L: 30,
  borate_mg_per_L_as_B: 0,
  fc_mg_per_L_as_Cl2: 2.6,
  salt_mg_per_L_as_NaCl: 900,
  temperature_C: 26,
}
function pool(values: Partial<ReadingValues> = {}, rules?: { readonly profile: string }): Spec {
  const read = edited(demoSpec, {
    id: 'addReadings',
    args: { systemId, set: { at, method: 'drop-kit', values: { ...GOOD, ...values } } },
  })
  return rules ? edited(read, { id: 'setRules', args: rules }) : read
}
const planOf = (spec: Spec) => {
  const plan = deriveOpening(spec, systemId, nowMs)
  if (!plan.ok) throw new Error(plan.problem.what)
  return plan.value
}

describe('who may bathe', () => {
  test('readings inside every limit clear; they are the ones that each case below spoils', () => {
    expect(planOf(pool()).bathing).toMatchObject({ cleared: true })
  })

  // figures of the rows in src/water/rules.ts, each with its edition and source there
  test.each([
    { profile: 'who-2006', values: { fc_mg_per_L_as_Cl2: 2.2, cya_mg_per_L: 35 }, says: '2.5 mg/L' },
    { profile: 'montana', values: { fc_mg_per_L_as_Cl2: 1.5, cya_mg_per_L: 0 }, says: '2 mg/L' },
    { profile: 'anne-arundel', values: { fc_mg_per_L_as_Cl2: 1.2, cya_mg_per_L: 0 }, says: '1.5 mg/L' },
    { profile: 'wisconsin', values: { cya_mg_per_L: 80 }, says: 'Stabiliser is above 30' },
    { profile: 'wisconsin', values: { pH: 7.1 }, says: 'pH is outside 7.2' },
    { profile: 'us-public-guidance', values: { fc_mg_per_L_as_Cl2: 3.8, cya_mg_per_L: 0 }, says: 'above 3 mg/L' },
    { profile: 'din-19643', values: { fc_mg_per_L_as_Cl2: 2, cya_mg_per_L: 0 }, says: '' },
  ])('$profile is kept to where it is stricter: $values', ({ profile, values, says }) => {
    const { bathing } = planOf(pool(values, { profile }))
    expect(bathing.cleared).toBe(false)
    expect(bathing.reason).toContain(says)
  })

  test('under a roof the combined chlorine that the chosen rules allow there counts (Wisconsin: 0.8 for 0.5, see its row)', () => {
    const { combinedHighMgPerL, combinedHighIndoorMgPerL } = RULES.get('wisconsin')!
    const tc_mg_per_L_as_Cl2 = 2.6 + (combinedHighMgPerL! + combinedHighIndoorMgPerL!) / 2
    const open = pool({ tc_mg_per_L_as_Cl2, cya_mg_per_L: 25 }, { profile: 'wisconsin' })
    const roofed = edited(open, { id: 'setSite', args: { indoor: true } })
    const keys = (spec: Spec) => planOf(spec).lines.map(({ key }) => key)
    expect(planOf(open).bathing.cleared).toBe(false)
    expect(keys(open)).toContain('combined')
    expect(planOf(roofed).bathing.cleared).toBe(true)
    expect(keys(roofed)).not.toContain('combined')
    const limitOf = (spec: Spec) => deriveWater(spec, systemId, nowMs).sanitation.limits.combinedHighMgPerL
    expect([limitOf(open), limitOf(roofed)]).toEqual([combinedHighMgPerL, combinedHighIndoorMgPerL])
  })

  test('the floor of the chosen rules is the floor of the upkeep too', () => {
    const floorOf = (spec: Spec) => {
      const upkeep = deriveUpkeep(spec, systemId, nowMs)
      if (!upkeep.ok) throw new Error(upkeep.problem.what)
      return upkeep.value.floor.mgPerL
    }
    expect(floorOf(pool())).toBe(2)
    expect(floorOf(pool({}, { profile: 'who-2006' }))).toBe(2.5)
  })

  test('combined chlorine above its limit closes the pool, and the plan begins with breaking it down', () => {
    const { bathing, lines } = planOf(pool({ tc_mg_per_L_as_Cl2: 5.1 }))
    expect(bathing.cleared).toBe(false)
    expect(bathing.reason).toContain('Combined chlorine is 2.5 mg/L')
    const line = lines.find(({ key }) => key === 'combined')
    // 15 g of chlorine to a gram of nitrogen, 0.1975 g of that in each gram of combined chlorine, less what is there
    expect(line?.how).toContain(`by ${(15 * 0.1975 * 2.5 - 2.5).toPrecision(2)} mg/L`)
    expect(planOf(pool({ tc_mg_per_L_as_Cl2: 2.8 })).lines.some(({ key }) => key === 'combined')).toBe(false)
  })

  test('the plan goes no further than the reading after it, takes a chlorine without stabiliser, and waits for metals', () => {
    const spec = edited(pool({ pH: 7.9, tc_mg_per_L_as_Cl2: 5.1 }), {
      id: 'setProduct',
      args: { systemId, purpose: 'openingChlorine', product: 'dichlor' },
    })
    const { lines } = planOf(spec)
    expect(lines.some(({ kind }) => kind === 'dose')).toBe(false)
    expect(lines.at(-1)?.kind).toBe('measure')
    expect(lines.find(({ key }) => key === 'combined')?.how).not.toContain('ichlor')
    const metal = planOf(pool({ tc_mg_per_L_as_Cl2: 5.1, iron_mg_per_L: 1.2 })).lines
    expect(metal.find(({ key }) => key === 'combined')?.how).toMatch(/^Not yet: metals/)
  })

  test.each([{ tc_mg_per_L_as_Cl2: 1 }, { tc_mg_per_L_as_Cl2: 5.1, cc_mg_per_L_as_Cl2: 0.1 }])(
    'chlorine readings that contradict each other clear nobody: %o',
    (values) => {
      const { bathing } = planOf(pool(values))
      expect(bathing.cleared).toBe(false)
      expect(bathing.reason).toContain('Read them again')
    },
  )

  test.each(['unknown-pool', 'party', 'heavy-rain'])(
    '%s keeps it closed on its first day, whatever is read',
    (mode) => {
      const spec = edited(pool(), { id: 'setStart', args: { systemId, mode, at: '2026-06-20T08:00:00Z' } })
      expect(planOf(spec).bathing).toMatchObject({ cleared: false })
    },
  )

  test('readings from before a start began clear nobody; those since do', () => {
    const begun = (moment: string) =>
      planOf(edited(pool(), { id: 'setStart', args: { systemId, mode: 'mid-season', at: moment } })).bathing
    expect(begun('2026-06-20T10:00:00Z')).toMatchObject({ cleared: false })
    expect(begun('2026-06-20T10:00:00Z').reason).toContain('before this start')
    expect(begun('2026-06-20T08:00:00Z')).toMatchObject({ cleared: true })
  })

  test('a floor above the ceiling lets nobody in, and says so', () => {
    const rules = { chlorineFloorMgPerL: 3, chlorineCeilingMgPerL: 2.5 }
    const { bathing } = planOf(edited(pool(), { id: 'setRules', args: rules }))
    expect(bathing.cleared).toBe(false)
    expect(bathing.reason).toContain('above the most')
  })
})
