import { describe, expect, test } from 'vitest'
import { deriveOpening, deriveWater, unknownParts } from '../../src/derive/index.ts'
import type { ReadingValues } from '../../src/document/index.ts'
import { demoSpec } from '../../src/document/index.ts'
import { CONSTANT_SETS } from '../../src/water/index.ts'

const AT = '2026-05-03T08:00:00Z'
const NOW = Date.parse('2026-05-03T09:00:00Z')
const READ: ReadingValues = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 60,
  ch_mg_per_L_as_CaCO3: 260,
  fc_mg_per_L_as_Cl2: 1.5,
  temperature_C: 26,
}
const specWith = (values: ReadingValues) => ({
  ...demoSpec,
  systems: demoSpec.systems.map((system) => ({
    ...system,
    log: [],
    water: { ...system.water, readings: [{ id: 'r', at: AT, method: 'drop-kit' as const, values }] },
  })),
})
const waterOf = (values: ReadingValues) => deriveWater(specWith(values), 'pool', NOW)
const partsOf = (values: ReadingValues) => unknownParts(waterOf(values), CONSTANT_SETS.default)

describe('what nobody read is not none', () => {
  test('stabiliser and borate that were not read are parts that can’t be told, with what an amount of each would do', () => {
    const parts = partsOf(READ)
    expect(parts.map(({ key }) => key)).toEqual(['cya_mg_per_L', 'borate_mg_per_L_as_B'])
    // a third of 50 mg/L of stabiliser, as CaCO3, near pH 7.5
    expect(parts[0]!.holdsMgPerL).toBeGreaterThan(13)
    expect(parts[0]!.holdsMgPerL).toBeLessThan(19)
    for (const { lowersSI } of parts) expect(lowersSI).toBeGreaterThan(0.02)
  })

  test('a reading of none is none', () => {
    expect(partsOf({ ...READ, cya_mg_per_L: 0, borate_mg_per_L_as_B: 0 })).toEqual([])
    expect(partsOf({ ...READ, cya_mg_per_L: 30 }).map(({ key }) => key)).toEqual(['borate_mg_per_L_as_B'])
  })

  test('each water of the plan tells what in it is assumed, so that no active chlorine is stated for it', () => {
    const plan = deriveOpening(specWith(READ), 'pool', NOW)
    if (!plan.ok) throw new Error(plan.problem.what)
    const waters = [plan.value.endWater, ...plan.value.lines.map((line) => ('after' in line ? line.after : undefined))]
    const told = waters.filter((water) => water !== undefined)
    expect(told.length).toBeGreaterThan(1)
    for (const { unknown } of told) expect(unknown).toContain('cya_mg_per_L')
    expect(plan.value.warnings.join(' ')).toContain('How much of the chlorine is active can’t be told')
    const whole = { ...READ, cya_mg_per_L: 0, borate_mg_per_L_as_B: 0, salt_mg_per_L_as_NaCl: 500 }
    const known = deriveOpening(
      specWith({ ...whole, mg_hardness_mg_per_L_as_CaCO3: 0, sulfate_mg_per_L: 0 }),
      'pool',
      NOW,
    )
    expect(known.ok && known.value.endWater?.unknown).toBeUndefined()
  })
})
