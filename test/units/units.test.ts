import { describe, expect, test } from 'vitest'
import {
  displayStep,
  formatForEntry,
  formatPlusMinus,
  formatQuantity,
  formatSlope,
  fromDisplay,
  parseQuantity,
  QUANTITIES,
  type Quantity,
  snapLength,
  toDisplay,
  UNITS,
  type UnitSystem,
  unitLabel,
} from '../../src/units/index.ts'

const IN = 0.0254
const FT = 0.3048
const LB = 0.45359237
const GAL = 0.003785411784
const IGAL = 0.00454609

function read(quantity: Quantity, text: string, system: UnitSystem): number | string {
  const result = parseQuantity(quantity, text, system)
  return result.ok ? result.value : result.problem.code
}
const plain = (text: string) => text.replaceAll('\u00a0', ' ').replaceAll('\u202f', '_')

describe('the table of units', () => {
  test('US gallon is 231 cubic inches and the imperial one 4.54609 L (NIST Handbook 44, appendix C; UK Weights and Measures Act 1985)', () => {
    expect(UNITS.get('gal')!.toSI).toBeCloseTo(231 * IN ** 3, 18)
    expect(UNITS.get('impgal')!.toSI).toBe(0.00454609)
    expect(UNITS.get('ft3')!.toSI / UNITS.get('gal')!.toSI).toBeCloseTo(1728 / 231, 12)
    expect(UNITS.get('ft3')!.toSI / UNITS.get('impgal')!.toSI).toBeCloseTo(6.22884, 5)
    expect(UNITS.get('floz')!.toSI * 1e6).toBeCloseTo(29.5735, 4)
  })
  test('every spelling names one unit of its kind, or a US and an imperial one', () => {
    for (const unit of UNITS.rows) {
      for (const name of unit.names) {
        expect(name).toBe(name.toLowerCase())
        const worlds = UNITS.rows.filter((u) => u.kind === unit.kind && u.names.includes(name)).map((u) => u.world)
        expect(new Set(worlds).size, name).toBe(worlds.length)
        if (worlds.length > 1) expect(worlds.sort()).toEqual(['imperial', 'us'])
      }
    }
  })
  test('every display unit exists and measures what its quantity does', () => {
    for (const row of QUANTITIES.rows) {
      for (const system of ['us', 'metric', 'imperial'] as const) {
        const display = row[system]
        const ids = [
          display.main,
          display.stepUnit ?? display.main,
          ...(display.ladder ?? []).flatMap((r) => [r.unit, r.with ?? r.unit]),
        ]
        for (const id of ids) expect(UNITS.get(id)?.kind, `${row.id} ${id}`).toBe(row.kind)
        expect(parseQuantity(row.id, row.example[system], system).ok, row.example[system]).toBe(true)
        expect(displayStep(row.id, system)).toBeGreaterThan(0)
        expect(fromDisplay(row.id, toDisplay(row.id, 3.7, system), system)).toBeCloseTo(3.7, 12)
        expect(unitLabel(row.id, system)).toBeTypeOf('string')
      }
    }
  })
})

describe('reading what people type', () => {
  // biome-ignore format: a table of cases
  test.each<[Quantity, string, UnitSystem, number]>([
    ['length', "7'6", 'us', 7.5 * FT], ['length', '7 ft 6 in', 'us', 7.5 * FT], ['length', '7′6″', 'us', 7.5 * FT],
    ['length', '7′\u00a06″', 'metric', 7.5 * FT], ['length', '7’ 6”', 'us', 7.5 * FT], ['length', `7'-6"`, 'us', 7.5 * FT],
    ['length', `7'-6 1/2"`, 'us', 90.5 * IN], ['length', '7 feet and 6 inches', 'us', 7.5 * FT], ['length', '7ft. 6in.', 'us', 7.5 * FT],
    ['length', '7 ft, 6 in', 'us', 7.5 * FT], ['length', '7 6', 'us', 7.5 * FT], ['length', '7 6 1/2', 'us', 90.5 * IN],
    ['length', "7''", 'us', 7 * IN], ['length', '31 1/2 in', 'us', 31.5 * IN], ['length', '31½″', 'us', 31.5 * IN],
    ['length', '31-1/2 in', 'us', 31.5 * IN], ['length', '7′ 10⅜″', 'us', 94.375 * IN], ['length', '7′ 10 3/16″', 'imperial', 94.1875 * IN],
    ['length', '1 1/2', 'us', 1.5 * FT], ['length', '1 1/2', 'metric', 1.5], ['length', '½', 'us', 0.5 * FT],
    ['length', '2.3 m', 'us', 2.3], ['length', '2,3 m', 'us', 2.3], ['length', '230cm', 'us', 2.3], ['length', '2.3', 'metric', 2.3],
    ['length', '2 m 30', 'metric', 2.3], ['length', '2m30cm', 'metric', 2.3], ['length', '2,305', 'us', 2305 * FT],
    ['length', '-3 in', 'us', -3 * IN], ['length', '−1′ 6″', 'us', -1.5 * FT], ['length', '4.', 'us', 4 * FT], ['length', '.5 m', 'us', 0.5],
    ['length', '40 FT 5 IN', 'us', 485 * IN], ['length', '１２ ft', 'us', 12 * FT],
    ['volume', '18,640 gal', 'us', 18640 * GAL], ['volume', '18 640 gal', 'us', 18640 * GAL], ['volume', "18'640 gal", 'us', 18640 * GAL],
    ['volume', '18640', 'us', 18640 * GAL], ['volume', '18,640 gal', 'imperial', 18640 * IGAL], ['volume', '18,640 US gal', 'metric', 18640 * GAL],
    ['volume', '18,640 gal (imp)', 'us', 18640 * IGAL], ['volume', '60 m³', 'us', 60], ['volume', '60m3', 'us', 60], ['volume', '60 m^3', 'metric', 60],
    ['volume', '60,5 m³', 'metric', 60.5], ['volume', '60\u202f000 L', 'metric', 60], ['volume', 'about 60 m³', 'us', 60],
    ['volume', '1.234,5 L', 'metric', 1.2345], ['volume', '1,234.5 gal', 'us', 1234.5 * GAL], ['volume', '2,500 cu. ft.', 'us', 2500 * FT ** 3],
    ['mass', '1.2 kg', 'us', 1.2], ['mass', '14 lb 6 oz', 'us', (14 + 6 / 16) * LB], ['mass', '14 lb 6 oz wt', 'us', (14 + 6 / 16) * LB],
    ['mass', '14 lbs', 'metric', 14 * LB], ['mass', '850 g', 'metric', 0.85], ['mass', '2', 'us', 2 * LB], ['mass', '14 6', 'us', (14 + 6 / 16) * LB],
    ['liquid', '41 fl oz', 'us', (41 * GAL) / 128], ['liquid', '41 oz', 'us', (41 * GAL) / 128], ['liquid', '41 fl. oz.', 'imperial', (41 * IGAL) / 160],
    ['liquid', '41 fl oz (US)', 'metric', (41 * GAL) / 128], ['liquid', '1 gal 13 fl oz', 'us', GAL * (1 + 13 / 128)], ['liquid', '2 qt', 'us', GAL / 2],
    ['liquid', '1.2 L', 'metric', 0.0012], ['liquid', '350', 'metric', 0.00035],
    ['temperature', '68 F', 'us', 20], ['temperature', '20 °C', 'us', 20], ['temperature', '68', 'us', 20], ['temperature', '20', 'imperial', 20],
    ['temperature', '-40°F', 'metric', -40], ['temperature', '68 ℉', 'metric', 20], ['temperature', '68°', 'us', 20],
    ['concentration', '80 mg/L', 'us', 80], ['concentration', '2.5', 'us', 2.5], ['flow', '40 gal/min', 'us', 40 * GAL * 60], ['flow', '9 m³/h', 'us', 9],
    ['flow', '9 m3/h', 'us', 9], ['duration', '1 h 30', 'us', 1.5], ['duration', '90 min', 'us', 1.5], ['percent', '10 %', 'us', 10],
    ['angle', '47.5°', 'us', 47.5], ['pH', '7,4', 'metric', 7.4], ['number', '-2', 'us', -2], ['volumePerLevel', '381 gal/in', 'us', (381 * GAL) / IN],
  ])('%s “%s” in %s', (quantity, text, system, expected) => {
    const got = read(quantity, text, system)
    expect(got).toBeTypeOf('number')
    expect(got as number).toBeCloseTo(expected, 10)
  })

  // biome-ignore format: a table of cases
  test.each<[Quantity, string, UnitSystem, string]>([
    ['length', '', 'us', 'typed-empty'], ['length', '   ', 'us', 'typed-empty'], ['length', 'seven', 'us', 'typed-no-number'],
    ['length', 'NaN', 'us', 'typed-no-number'], ['length', 'Infinity', 'us', 'typed-no-number'], ['length', '1e9 m', 'us', 'typed-not-a-number'], ['volume', '1e9', 'us', 'typed-not-a-number'],
    ['length', '9'.repeat(50), 'us', 'typed-too-large'], ['length', '9'.repeat(61), 'us', 'typed-too-long'], ['length', '1/0', 'us', 'typed-divided-by-zero'],
    ['length', '6 in 7 ft', 'us', 'typed-order-of-units'], ['length', '7 lb', 'us', 'typed-wrong-kind'], ['length', '7 blorps', 'us', 'typed-unknown-unit'],
    ['length', '2 m 3', 'metric', 'typed-not-a-number'], ['length', '2 30', 'metric', 'typed-not-a-number'], ['length', '2,300 m', 'us', 'typed-ambiguous-comma'],
    ['length', '1.2.3 m', 'us', 'typed-not-a-number'], ['length', '1,23,4', 'us', 'typed-not-a-number'], ['length', "7'6'", 'us', 'typed-order-of-units'],
    ['volume', '60,500 m³', 'metric', 'typed-ambiguous-comma'], ['volume', '18,640 gal', 'metric', 'typed-ambiguous-gallon'],
    ['volume', '-5 gal', 'us', 'typed-negative'], ['mass', '41 fl oz', 'us', 'typed-wrong-kind'], ['liquid', '14 lb', 'us', 'typed-wrong-kind'],
    ['temperature', '68 F 2 F', 'us', 'typed-order-of-units'], ['liquid', '41 fl oz', 'metric', 'typed-ambiguous-gallon'],
    ['number', '<img src=x>', 'us', 'typed-no-number'], ['number', '٣', 'us', 'typed-no-number'],
  ])('refuses %s “%s” in %s with a hint: %s', (quantity, text, system, code) => {
    const result = parseQuantity(quantity, text, system)
    expect(read(quantity, text, system)).toBe(code)
    if (!result.ok) for (const words of [result.problem.what, result.problem.why, result.problem.hint]) expect(words.length).toBeGreaterThan(10)
  })
})

describe('printing', () => {
  // biome-ignore format: a table of cases
  test.each<[Quantity, number, UnitSystem, object, string]>([
    ['length', 94 * IN, 'us', {}, '7′ 10″'], ['length', 94 * IN, 'us', { style: 'long' }, '7 ft 10 in'], ['length', 94 * IN, 'metric', {}, '2.39 m'],
    ['length', 31.5 * IN, 'us', { digits: 1 }, '2′ 7½″'], ['length', 10 * IN, 'us', {}, '10″'], ['length', 11.9 * IN, 'us', {}, '1′ 0″'],
    ['length', 0, 'us', {}, '0″'], ['length', -3 * IN, 'us', {}, '−3″'], ['length', -0.001, 'us', {}, '0″'], ['length', 108.3 * FT, 'us', { sigma: 0.4 }, '108 ft'],
    ['length', 33, 'metric', { sigma: 0.1 }, '33.00 m'], ['length', 32.98, 'metric', { sigma: 0.6 }, '33.0 m'],
    ['length', 94.1875 * IN, 'us', { digits: 4 }, '7′ 10 3/16″'], ['length', 0.5 * IN, 'us', { digits: 1 }, '½″'],
    ['volume', 18643 * GAL, 'us', { sigma: 199 * GAL }, '18,640 gal'], ['volume', 18643 * GAL, 'us', { sigma: 1990 * GAL }, '18,600 gal'],
    ['volume', 70.5712, 'metric', { sigma: 0.75 }, '70.6 m³'], ['volume', 18643 * IGAL, 'imperial', {}, '18,643 imp gal'],
    ['volume', 0.4, 'metric', {}, '0.40 m³'], ['volume', 1234.5, 'metric', {}, '1_234.5 m³'],
    ['area', 612.4 * FT * FT, 'us', {}, '612 ft²'], ['mass', (14 + 6 / 16) * LB, 'us', {}, '14 lb 6 oz wt'], ['mass', (6.5 / 16) * LB, 'us', {}, '6.5 oz wt'],
    ['mass', (15.99 / 16) * LB, 'us', {}, '1 lb'], ['mass', 0.9999, 'metric', {}, '1.00 kg'], ['mass', 0.85, 'metric', {}, '850 g'], ['mass', 25, 'metric', {}, '25.0 kg'],
    ['mass', 120 * LB, 'us', {}, '120 lb'], ['liquid', (41 * GAL) / 128, 'us', {}, '41 fl oz (US)'], ['liquid', (41 * IGAL) / 160, 'imperial', {}, '41 fl oz (imp)'],
    ['liquid', GAL * (1 + 13 / 128), 'us', {}, '1 gal 13 fl oz (US)'], ['liquid', 0.0012, 'metric', {}, '1.20 L'], ['liquid', 0.00035, 'metric', {}, '350 mL'],
    ['temperature', 25.6, 'us', {}, '78 °F'], ['temperature', 25.6, 'imperial', {}, '26 °C'], ['concentration', 92.3, 'us', {}, '92 mg/L'],
    ['concentration', 1.52, 'us', {}, '1.5 mg/L'], ['concentration', 0, 'us', {}, '0 mg/L'], ['pH', 7.46, 'us', {}, '7.5'], ['pH', 7.46, 'us', { digits: 2 }, '7.46'],
    ['volumePerLevel', (381 * GAL) / IN, 'us', {}, '381 gal/in'], ['volumePerLevel', (381 * GAL) / IN, 'us', { style: 'long' }, '381 gal per inch'],
    ['volumePerLevel', 56.9, 'metric', {}, '0.57 m³/cm'], ['angle', 47.25, 'us', { digits: 2 }, '47.25°'], ['areaRate', 5.49, 'metric', {}, '5.5 mm/d'],
    ['number', Number.NaN, 'us', {}, '—'], ['volume', Number.POSITIVE_INFINITY, 'us', {}, '—'],
  ])('%s %d in %s %o is %s', (quantity, si, system, options, expected) => {
    expect(plain(formatQuantity(quantity, si, system, options))).toBe(expected)
  })

  test('the half-width is that of 95 % in two digits', () => {
    expect(plain(formatPlusMinus('volume', 18640 * GAL, 199 * GAL, 'us'))).toBe('± 390 gal')
    expect(plain(formatPlusMinus('volume', 70.6, 0.75, 'metric'))).toBe('± 1.5 m³')
    expect(plain(formatPlusMinus('length', 3, 0.02, 'us'))).toBe('± 1½″')
    expect(plain(formatPlusMinus('mass', 6, 0.2, 'metric'))).toBe('± 0.39 kg')
    expect(plain(formatPlusMinus('temperature', 25, 1, 'us'))).toBe('± 3.5 °F')
    expect(plain(formatPlusMinus('volume', 1, Number.NaN, 'us'))).toBe('± —')
  })

  test('no ounce is ever bare', () => {
    for (const system of ['us', 'imperial'] as const) {
      for (const size of [0.01, 0.2, 0.4, 1, 3, 8]) {
        expect(plain(formatQuantity('mass', size, system))).toMatch(/oz wt$|lb$/)
        expect(plain(formatQuantity('liquid', size / 1000, system))).toMatch(/fl oz \((US|imp)\)$|gal$/)
      }
    }
  })

  test('every space before a unit holds', () => {
    for (const row of QUANTITIES.rows)
      for (const system of ['us', 'metric', 'imperial'] as const) {
        expect(formatQuantity(row.id, 12.3, system).replace(/[a-z²³/] [a-z(]/gi, '')).not.toMatch(/\d /)
      }
  })

  test('a slope is 1 : n', () => {
    expect([1 / 7, 1 / 3.5, -0.1, 0, 1e9, 1 / 12.4, Number.NaN].map((s) => plain(formatSlope(s)))).toEqual([
      '1 : 7',
      '1 : 3.5',
      '1 : 10',
      'level',
      'vertical',
      '1 : 12',
      '—',
    ])
  })

  test('a length snaps to whole inches or centimetres', () => {
    expect(snapLength(1.013, 'us') / IN).toBeCloseTo(40, 12)
    expect(snapLength(1.013, 'metric')).toBe(1.01)
    expect(Object.is(snapLength(-0.001, 'metric'), 0)).toBe(true)
  })

  test('a field shows an entry without needless zeros', () => {
    expect(plain(formatForEntry('length', 2.3, 'metric'))).toBe('2.3 m')
    expect(plain(formatForEntry('length', 31.5 * IN, 'us'))).toBe('2′ 7½″')
    expect(plain(formatForEntry('volume', 10000 * GAL, 'us'))).toBe('10,000 gal')
    expect(plain(formatForEntry('volume', 12, 'us'))).toBe('3,170 gal')
    expect(plain(formatForEntry('volume', 0.2, 'us'))).toBe('52.8 gal')
    expect(formatForEntry('volume', Number.NaN, 'us')).toBe('')
  })
})
