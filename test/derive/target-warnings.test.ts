import { describe, expect, test } from 'vitest'
import { deriveTargetWarnings } from '../../src/derive/index.ts'
import { demoSpec, type ReadingValues, type SiteRules, type TargetOverrides } from '../../src/document/index.ts'

const systemId = 'pool'
const warned = (targets: TargetOverrides, values: ReadingValues = {}, rules: SiteRules = {}) =>
  deriveTargetWarnings(
    {
      ...demoSpec,
      site: { ...demoSpec.site, rules },
      systems: demoSpec.systems.map((each) => ({
        ...each,
        regime: { ...each.regime, id: 'unstabilised' },
        water: { ...each.water, targets, readings: [{ at: '2026-05-01T09:00Z', method: 'drop-kit' as const, values }] },
      })),
    },
    systemId,
  )
const said = (key: string, ...of: Parameters<typeof warned>) =>
  warned(...of)
    .filter(({ path }) => path === `targets.${key}`)
    .map(({ what, why }) => `${what} ${why}`)
    .join(' ')

describe('a target outside the rules for bathing warns', () => {
  const chlorine = { fc_mg_per_L_as_Cl2: { low: 1, aim: 2, high: 3 } }

  test('the chlorine floor is 1 mg/L without stabiliser and 2 with it, unknown counting as present (MAHC 5.7.3.1.1)', () => {
    const of = (values: ReadingValues) => said('fc_mg_per_L_as_Cl2', chlorine, values)
    expect(of({ cya_mg_per_L: 0 })).toBe('')
    expect(of({ cya_mg_per_L: 30 })).toContain('down to 1 mg/L, below 2 mg/L')
    expect(of({})).toContain('down to 1 mg/L, below 2 mg/L')
  })

  test('the owner’s own floor and ceiling count too, and are called so', () => {
    const none = { cya_mg_per_L: 0 }
    expect(said('fc_mg_per_L_as_Cl2', chlorine, none, { chlorineFloorMgPerL: 1.5 })).toContain('your own floor of 1.5')
    const ceiling = said('fc_mg_per_L_as_Cl2', chlorine, none, { chlorineCeilingMgPerL: 2.5 })
    expect(ceiling).toContain('up to 3 mg/L, above 2.5 mg/L')
    expect(ceiling).toContain('your own ceiling of 2.5')
    const clash = warned(chlorine, none, { chlorineFloorMgPerL: 3, chlorineCeilingMgPerL: 2 })
    expect(clash[0]).toMatchObject({ code: 'floor-above-ceiling', path: 'targets.fc_mg_per_L_as_Cl2' })
  })

  test('pH, alkalinity, stabiliser and borate have their limits', () => {
    expect(said('pH', { pH: { low: 6.8, aim: 7.2, high: 7.6 } })).toContain('down to 6.8, below 7')
    expect(said('pH', { pH: { low: 7.2, aim: 7.5, high: 7.8 } })).toBe('')
    const alkalinity = { ta_mg_per_L_as_CaCO3: { low: 60, aim: 90, high: 181 } }
    expect(said('ta_mg_per_L_as_CaCO3', alkalinity)).toContain('up to 181 mg/L, above 180 mg/L')
    expect(said('cya_mg_per_L', { cya_mg_per_L: { low: 30, aim: 60, high: 100 } })).toContain('above 90 mg/L')
    const borate = { borate_mg_per_L_as_B: { low: 30, aim: 50, high: 60 } }
    expect(said('borate_mg_per_L_as_B', borate)).toContain('above 50 mg/L')
  })

  test('calcium has a limit of a code only where the chosen rules lay one down', () => {
    const calcium = { ch_mg_per_L_as_CaCO3: { low: 100, aim: 200, high: 400 } }
    const codes = (rules: SiteRules) =>
      warned(calcium, {}, rules)
        .filter(({ path, code }) => path.endsWith('ch_mg_per_L_as_CaCO3') && code === 'target-outside-code')
        .map(({ what }) => what)
    expect(codes({})).toEqual([])
    expect(codes({ profile: 'montana' }).join()).toContain('below 150 mg/L')
  })
})
