import { describe, expect, test } from 'vitest'
import { deriveOpening, deriveTargets, deriveTargetsAt, deriveUpkeep, deriveWater } from '../../src/derive/index.ts'
import {
  type CommandArgs,
  demoSpec,
  type ReadingMethod,
  type ReadingValues,
  type Spec,
} from '../../src/document/index.ts'
import { tableIndex } from '../../src/water/index.ts'
import { edited, lines } from './edited.ts'

const NOW = Date.parse('2026-06-01T12:00:00Z')
const systemId = 'pool'
const usual: ReadingValues = {
  pH: 7.6,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 250,
  cya_mg_per_L: 40,
  fc_mg_per_L_as_Cl2: 3,
  salt_mg_per_L_as_NaCl: 800,
  temperature_C: 26,
}
const read = (values: ReadingValues, method: ReadingMethod = 'photometer', spec: Spec = demoSpec) =>
  edited(spec, { id: 'addReadings', args: { systemId, set: { at: '2026-06-01T09:00:00Z', method, values } } })
const without = (...keys: (keyof ReadingValues)[]): ReadingValues =>
  Object.fromEntries(Object.entries(usual).filter(([key]) => !keys.includes(key as keyof ReadingValues)))
const regime = (spec: Spec, changes: Omit<CommandArgs<'setRegime'>, 'systemId'>) =>
  edited(spec, { id: 'setRegime', args: { systemId, ...changes } })
const waterOf = (spec: Spec) => deriveWater(spec, systemId, NOW)

describe('readings as people have them', () => {
  test('total hardness tells calcium with its range: it is said, watched for scale, and never dosed on', () => {
    const spec = read({ ...without('ch_mg_per_L_as_CaCO3'), th_mg_per_L_as_CaCO3: 200 }, 'strip')
    const water = waterOf(spec)
    expect(water.known.ch_mg_per_L_as_CaCO3).toBeUndefined()
    expect(water.told.map(({ key }) => key)).toEqual(['ch_mg_per_L_as_CaCO3'])
    expect(water.told[0]?.likely).toMatchObject({ low: 100, high: 200 })
    expect(water.assumptions.join(' ')).toContain('from total hardness: 100 to 200 mg/L')
    expect(water.assumptions.join(' ')).not.toContain('Calcium hardness is unknown')
    // Indices are not shown for a guess.
    expect([water.tableIndex, water.indices]).toEqual([undefined, undefined])
    const plan = deriveOpening(spec, systemId, NOW)
    expect(plan.ok && plan.value.missing.map(({ key }) => key)).toContain('ch_mg_per_L_as_CaCO3')
    expect(lines(plan).some((line) => line.kind === 'dose' && line.purpose === 'calcium')).toBe(false)
  })

  test('total hardness with magnesium gives calcium that may be dosed on', () => {
    const spec = read({
      ...without('ch_mg_per_L_as_CaCO3'),
      th_mg_per_L_as_CaCO3: 130,
      mg_hardness_mg_per_L_as_CaCO3: 30,
    })
    const water = waterOf(spec)
    expect(water.told[0]?.likely.best).toBeCloseTo(100, 9)
    expect(water.tableIndex).toBeDefined()
    const plan = deriveOpening(spec, systemId, NOW)
    expect(plan.ok && plan.value.missing.map(({ key }) => key)).not.toContain('ch_mg_per_L_as_CaCO3')
  })

  test('conductivity tells salt; a reading that was taken is never replaced', () => {
    const told = waterOf(read({ ...without('salt_mg_per_L_as_NaCl'), conductivity_uS_per_cm: 1800 }))
    expect(told.told.map(({ key }) => key)).toEqual(['salt_mg_per_L_as_NaCl'])
    expect(told.assumptions.join(' ')).not.toContain('Salt is unknown')
    expect(waterOf(read({ ...usual, conductivity_uS_per_cm: 1800 })).told).toEqual([])
  })

  test('readings that can’t be true together are named, and what they would have told is left away', () => {
    const water = waterOf(read({ ...usual, tc_mg_per_L_as_Cl2: 0.5 }))
    expect(water.clashes).toHaveLength(1)
    expect(water.clashes[0]?.path).toMatch(/_as_Cl2$/)
    expect([water.sanitation.combined, water.sanitation.superchlorination]).toEqual([undefined, undefined])
    expect(water.solved?.ok).toBe(true)
  })
})

describe('what the readings say', () => {
  test('both indices, with one sentence that says which to act on', () => {
    const { indices, solved, tableIndex: shown } = waterOf(read(usual))
    if (!solved?.ok || !indices) throw new Error('this water is solved')
    expect(indices.tableIndex).toBe(shown)
    expect(shown).toBe(tableIndex({ ...usual, pH: 7.6, ta_mg_per_L_as_CaCO3: 90 }).index)
    expect(indices.calciteSI).toBe(solved.value.equilibrium.calciteSI)
    expect(indices.terms.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(indices.difference, 9)
    expect(indices.sentence).toContain('act on calcite SI')
    expect(indices.sentence.match(/\./g)?.length).toBeGreaterThan(0)
  })

  test('alkalinity breaks down into parts that add up', () => {
    const { solved } = waterOf(read({ ...usual, borate_mg_per_L_as_B: 40 }))
    if (!solved?.ok) throw new Error('this water is solved')
    const { total, ...parts } = solved.value.equilibrium.alkalinity
    expect(Object.values(parts).reduce((sum, value) => sum + value, 0)).toBeCloseTo(total, 9)
    expect(total).toBeCloseTo(90, 6)
    expect(parts.borate).toBeGreaterThan(1)
  })

  test('active chlorine under both sets of constants, whichever the owner chose', () => {
    const spec = read(usual)
    const chosen = (each: Spec) => {
      const { active } = waterOf(each).sanitation
      if (!active?.ok) throw new Error('free chlorine is known')
      return active.value
    }
    const standard = chosen(spec)
    const wahman = chosen(regime(spec, { chlorineConstants: 'wahman' }))
    expect(standard.chosen).toBe('obrien')
    expect(standard.chosenMgPerL).toBe(standard.mgPerL)
    expect(wahman.chosenMgPerL).toBe(wahman.wahmanMgPerL)
    for (const key of ['mgPerL', 'wahmanMgPerL', 'ratio'] as const) expect(wahman[key]).toBe(standard[key])
    expect(standard.ratio).toBeGreaterThan(1.01)
    expect(standard.lowMgPerL).toBeLessThan(standard.highMgPerL)
    expect(standard.sunHereMin).toBeGreaterThan(5 * standard.sunWithoutStabiliserMin)
    expect(waterOf(read(without('fc_mg_per_L_as_Cl2'))).sanitation.active).toBeUndefined()
    expect(waterOf(read(without('cya_mg_per_L'))).sanitation.isStabiliserKnown).toBe(false)
  })

  test('the owner’s constants rule plan and upkeep unless others are asked for', () => {
    const spec = read({ ...usual, pH: 8.1, cya_mg_per_L: 60 })
    const chosen = regime(spec, { chlorineConstants: 'wahman' })
    expect(deriveOpening(chosen, systemId, NOW)).toEqual(deriveOpening(chosen, systemId, NOW, undefined, 'wahman'))
    expect(deriveOpening(chosen, systemId, NOW, undefined, 'default')).toEqual(deriveOpening(spec, systemId, NOW))
    expect(deriveUpkeep(chosen, systemId, NOW)).toEqual(deriveUpkeep(spec, systemId, NOW, 'wahman'))
    expect(deriveWater(chosen, systemId, NOW, 'default').solved).toEqual(waterOf(spec).solved)
  })

  test('combined chlorine asks for a superchlorination, and too much stabiliser stands against it', () => {
    const due = waterOf(read({ ...usual, cya_mg_per_L: 20, tc_mg_per_L_as_Cl2: 4.5 })).sanitation
    expect(due.combined?.combinedMgPerL).toBeCloseTo(1.5, 9)
    expect(due.superchlorination?.ok && due.superchlorination.value.isNeeded).toBe(true)
    const blocked = waterOf(read({ ...usual, cya_mg_per_L: 300, tc_mg_per_L_as_Cl2: 4.5 })).sanitation
    expect(blocked.superchlorination?.ok).toBe(false)
    expect(waterOf(read(usual)).sanitation.superchlorination).toBeUndefined()
  })

  test('an accident: what to do, or why this water can’t be treated', () => {
    const clear = waterOf(read({ ...usual, cya_mg_per_L: 0 })).sanitation.incidents
    expect(clear.formed.ok && clear.diarrhoea.ok).toBe(true)
    const { incidents } = waterOf(read(usual)).sanitation
    expect(incidents.diarrhoea.ok ? '' : incidents.diarrhoea.problem.code).toBe('incident-stabiliser-too-high')
    const unknown = waterOf(read(without('cya_mg_per_L'))).sanitation.incidents
    expect(unknown.formed.ok).toBe(false)
  })

  test('metals, test traps and the rules that hold', () => {
    const { metals, traps, limits } = waterOf(
      read({ ...usual, copper_mg_per_L: 0.6, fc_mg_per_L_as_Cl2: 12 }),
    ).sanitation
    expect(metals.holdBack).toContain('oxidiser')
    expect(traps.map(({ trap }) => trap.id)).toContain('dpd-bleached')
    expect(limits.floorMgPerL).toBe(2)
    const ruled = edited(read(usual), { id: 'setRules', args: { profile: 'us-model-code', chlorineFloorMgPerL: 2.5 } })
    expect(waterOf(ruled).sanitation.limits).toMatchObject({ floorMgPerL: 2.5, profile: { id: 'us-model-code' } })
  })

  test('nothing read: nothing is said, and nothing throws', () => {
    const bare = {
      ...demoSpec,
      systems: demoSpec.systems.map((each) => ({ ...each, water: { readings: [], targets: {} } })),
    }
    const water = waterOf(bare)
    expect([water.latest, water.solved, water.indices, water.sanitation.active]).toEqual(Array(4).fill(undefined))
    expect([water.told, water.clashes, water.sanitation.traps, water.sanitation.metals.findings]).toEqual([
      [],
      [],
      [],
      [],
    ])
    expect(water.sanitation.incidents.formed.ok).toBe(false)
    expect(waterOf({ ...demoSpec, systems: [] }).latest).toBeUndefined()
  })
})

describe('targets of the day', () => {
  const at = '2026-05-28T09:00:00Z'
  const plastered = edited(read(usual), { id: 'setStart', args: { systemId, mode: 'new-plaster', at } })

  test('a start withholds what may not be dosed yet; the ordinary targets stay as they are, and return', () => {
    const day = (iso: string) => deriveTargetsAt(plastered, systemId, Date.parse(iso))
    expect(deriveTargets(plastered, systemId).cya_mg_per_L).toBeDefined()
    expect(day('2026-06-01T12:00:00Z').targets.cya_mg_per_L).toBeUndefined()
    expect(day('2026-06-01T12:00:00Z').phases.some(({ change }) => change.kind === 'withheld')).toBe(true)
    const later = day('2027-06-01T12:00:00Z')
    expect(later.targets).toEqual(deriveTargets(plastered, systemId))
    expect(later.phases).toEqual([])
    const before = day('2026-05-01T12:00:00Z')
    expect(before.targets).toEqual(deriveTargets(plastered, systemId))
  })

  test('the plan of that day doses nothing that is withheld', () => {
    const low = read(
      { ...usual, cya_mg_per_L: 0, ch_mg_per_L_as_CaCO3: 90, borate_mg_per_L_as_B: 0 },
      'photometer',
      plastered,
    )
    const purposes = (nowIso: string) =>
      lines(deriveOpening(low, systemId, Date.parse(nowIso))).flatMap((line) =>
        line.kind === 'dose' ? [line.purpose] : [],
      )
    expect(purposes('2026-06-01T12:00:00Z')).not.toContain('stabiliser')
    expect(purposes('2026-06-01T12:00:00Z')).not.toContain('calcium')
    expect(purposes('2026-12-01T12:00:00Z')).toContain('calcium')
    expect(waterOf(low).targetPhases.length).toBeGreaterThan(0)
  })
})
