import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { productById } from '../../src/chemicals/index.ts'
import { defaultTargets, HELPERS, LIMITS, REGIMES, SURFACES, type UpkeepInput, upkeep } from '../../src/plan/index.ts'
import { DARK_LOSS_PER_DAY_AT_28C, DEFAULT_RULES, NITROGEN_G_PER_BATHER_HOUR } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'
import { OPEN_POOL, TRADE_POOL } from './upkeep-cases.ts'

const text = readFileSync(join(import.meta.dirname, '../../src/plan/MODEL.md'), 'utf8')
const rows = text
  .split('\n')
  .filter((line) => line.startsWith('|'))
  .map((line) => line.split('|').map((cell) => cell.trim()))
  .map((cells) => cells.slice(1, -1))
/** The row whose first cells are these; fails where there is none. */
const row = (...first: readonly string[]): readonly string[] => {
  const found = rows.find((cells) => first.every((cell, at) => cells[at] === cell))
  if (!found) throw new Error(`MODEL.md has no row ${first.join(' | ')}`)
  return found
}

describe('MODEL.md says what the code does', () => {
  test('every band of every regime', () => {
    const written = rows.filter((cells) => REGIMES.get(cells[0] ?? '') && cells.length === 5)
    const bands = REGIMES.rows.flatMap((regime) =>
      Object.entries(regime.bands).map(([key, band]) => ({ regime, key, band })),
    )
    expect(written.length).toBe(bands.length)
    for (const { regime, key, band } of bands)
      expect(row(regime.id, key)).toEqual([regime.id, key, `${band.low}`, `${band.aim}`, `${band.high}`])
  })

  test('every surface', () => {
    for (const { id, calcium, exchangeShare } of SURFACES.rows)
      expect(row(id)).toEqual([id, `${calcium.low}`, `${calcium.aim}`, `${calcium.high}`, exchangeShare.toFixed(2)])
  })

  test('every limit', () => {
    for (const [name, value] of Object.entries(LIMITS)) if (name !== 'z95') expect(row(name)[1], name).toBe(`${value}`)
  })

  test('the limits of bathing', () => {
    expect(row('pH', '7').slice(1, 3)).toEqual([`${DEFAULT_RULES.pHLow}`, `${DEFAULT_RULES.pHHigh}`])
    expect(row('stabiliser')[2]).toBe(`${DEFAULT_RULES.stabiliserHighMgPerL}`)
    const { floorWithoutStabiliserMgPerL, ceilingMgPerL } = DEFAULT_RULES
    expect(row('chlorine').slice(1, 3)).toEqual([`${floorWithoutStabiliserMgPerL}`, `${ceilingMgPerL}`])
  })

  test('constants of upkeep', () => {
    expect(row('dark loss at 28 °C [1/day]')[1]).toBe(`${DARK_LOSS_PER_DAY_AT_28C}`)
    expect(row('nitrogen [g per bather-hour]')[1]).toBe(`${NITROGEN_G_PER_BATHER_HOUR}`)
    const base = good(upkeep({ ...OPEN_POOL, volumeM3: 1, waterSurfaceM2: 1 })).chlorineTerms.find(
      (term) => term.id === 'base',
    )!
    expect(row('base demand [g Cl2 per m² of surface, day]').slice(1, 3)).toEqual([
      `${base.value}`,
      `${base.low} to ${base.high}`,
    ])
    for (const [id, name, what] of [
      ['oxidation-unit', 'oxidation unit, share of bathers', 'bathers'],
      ['ozone', 'ozone, share of bathers', 'bathers'],
      ['uv', 'ultraviolet lamp, share of bathers', 'bathers'],
      ['mineral-cartridge', 'mineral cartridge, share of base', 'base'],
    ] as const) {
      const share = HELPERS.get(id)![what]
      expect(row(name).slice(1, 3)).toEqual([`${share.value}`, `${share.low} to ${share.high}`])
    }
    expect(row('air drawn in by unit or ozone [m/day]')[1]).toBe(`${HELPERS.get('ozone')!.airMPerDay}`)
    expect(HELPERS.get('oxidation-unit')!.airMPerDay).toBe(HELPERS.get('ozone')!.airMPerDay)
  })

  test.each([20, 22, 23, 24])('the comparison with the trade under a cover of %i hours', (coverHoursPerDay) => {
    const result = good(upkeep({ ...TRADE_POOL, coverHoursPerDay }))
    const tabletG = 200 * good(productById('cal-hypo-tablet')).product.availableChlorine
    const tablets = (mgPerLDay: number) => ((mgPerLDay * TRADE_POOL.volumeM3 * 7) / tabletG).toFixed(1)
    const flOz = (grams: number) => (grams / 1.16 / 29.5735295625).toFixed(0)
    expect(row(`${coverHoursPerDay}`)).toEqual([
      `${coverHoursPerDay}`,
      tablets(result.chlorineMgPerLDay),
      `${tablets(result.chlorineLowMgPerLDay)} to ${tablets(result.chlorineHighMgPerLDay)}`,
      flOz(result.acidGPerFortnight),
      `${flOz(result.acidLowGPerFortnight)} to ${flOz(result.acidHighGPerFortnight)}`,
    ])
    expect(result.packagesPerWeek!.count.toFixed(1)).toBe(tablets(result.chlorineMgPerLDay))
  })

  test.each([
    [
      'no stabiliser, no cover, July, 1–3',
      {
        ...TRADE_POOL,
        coverKind: 'none',
        coverHoursPerDay: 0,
        targets: defaultTargets('plaster', 'unstabilised', {}),
        water: { ...TRADE_POOL.water, fc_mg_per_L_as_Cl2: 2 },
      },
    ],
    [
      'no stabiliser, covered 24 h, 1–3',
      {
        ...TRADE_POOL,
        coverHoursPerDay: 24,
        targets: defaultTargets('plaster', 'unstabilised', {}),
        water: { ...TRADE_POOL.water, fc_mg_per_L_as_Cl2: 2 },
      },
    ],
    ['stabiliser 30, no cover, 4 bathers', { ...OPEN_POOL, water: { ...OPEN_POOL.water, cya_mg_per_L: 30 } }],
  ] as const satisfies readonly (readonly [string, UpkeepInput])[])(
    'the floor without a known feed: %s',
    (name, input) => {
      const result = good(upkeep(input))
      const value = (id: string) => result.chlorineTerms.find((term) => term.id === id)!.value
      const { floor } = result
      expect(row(name)).toEqual([
        name,
        ((value('sun') + value('warmth')) / input.targets.fc_mg_per_L_as_Cl2!.aim).toFixed(2),
        (value('bathers') + value('base')).toFixed(2),
        floor.lowestMgPerL.toFixed(2),
        floor.lackingMgPerL.toFixed(2),
        floor.isHeld ? 'yes' : 'no',
      ])
    },
  )

  test('a tablet of 200 g a week brings so much chlorine a day', () => {
    const { availableChlorine } = good(productById('cal-hypo-tablet')).product
    const supply = (200 * availableChlorine) / TRADE_POOL.volumeM3 / 7
    expect(text).toContain(`it brings ${supply.toFixed(2)} mg/L a day`)
  })

  test.each([20, 22, 23, 24])('one slow tablet a week under a cover of %i hours', (coverHoursPerDay) => {
    const feed = { gPerDose: 200, dosesPerWeek: 1 }
    const { floor } = good(upkeep({ ...TRADE_POOL, coverHoursPerDay, feed }))
    expect(row(`one tablet, ${coverHoursPerDay} h`)).toEqual([
      `one tablet, ${coverHoursPerDay} h`,
      floor.lowestMgPerL.toFixed(2),
      floor.lackingMgPerL.toFixed(2),
      floor.shortOfSupplyMgPerLDay!.toFixed(2),
      floor.isHeld ? 'yes' : 'no',
    ])
  })
})
