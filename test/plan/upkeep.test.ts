import { describe, expect, test } from 'vitest'
import { productById, productsWith } from '../../src/chemicals/index.ts'
import { acidDrift } from '../../src/plan/acid-drift.ts'
import { defaultTargets, HELPERS, type Upkeep, type UpkeepInput, upkeep } from '../../src/plan/index.ts'
import { alkalinityAtPH, CONSTANT_SETS, equilibrate, totalsOf, type WaterReading } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'
import { OPEN_POOL, TRADE_POOL } from './upkeep-cases.ts'

const of = (input: UpkeepInput, more: Partial<UpkeepInput> = {}): Upkeep => good(upkeep({ ...input, ...more }))
const term = (result: Upkeep, id: string) =>
  [...result.chlorineTerms, ...result.acidTerms].find((each) => each.id === id)?.value ?? 0
const sum = (values: readonly { readonly value: number }[]) => values.reduce((total, each) => total + each.value, 0)
const brings = (result: Upkeep, key: string) => result.bringsPerWeek.find((each) => each.key === key)?.mgPerL ?? 0

describe('chlorine demand', () => {
  test('terms add up exactly, each with a range around it and a source', () => {
    for (const input of [TRADE_POOL, OPEN_POOL]) {
      const result = of(input)
      expect(sum(result.chlorineTerms)).toBe(result.chlorineMgPerLDay)
      for (const each of [...result.chlorineTerms, ...result.acidTerms]) {
        expect(each.low).toBeLessThanOrEqual(each.value)
        expect(each.high).toBeGreaterThanOrEqual(each.value)
        expect(each.source).not.toBe('')
        expect(each.how).not.toBe('')
      }
      expect(result.chlorineLowMgPerLDay).toBeLessThan(result.chlorineMgPerLDay)
      expect(result.chlorineHighMgPerLDay).toBeGreaterThan(result.chlorineMgPerLDay)
    }
  })

  test('taking a cause away takes its term away and leaves the others', () => {
    const whole = of(OPEN_POOL)
    const without = (more: Partial<UpkeepInput>, ...gone: readonly string[]) => {
      const left = of(OPEN_POOL, more)
      for (const each of whole.chlorineTerms)
        expect(term(left, each.id), each.id).toBe(gone.includes(each.id) ? 0 : each.value)
    }
    without({ bathersPerDay: 0 }, 'bathers')
    without({ bathingHours: 0 }, 'bathers')
    // the polar night
    without({ latitudeDeg: 89, dayOfYear: 355 }, 'sun')
    // a solid cover all day lets no light through; what it holds back of the dust is its own figure
    const covered = of(OPEN_POOL, { coverKind: 'solid', coverHoursPerDay: 24 })
    expect(term(covered, 'sun')).toBe(0)
    expect(term(covered, 'base')).toBeCloseTo(term(whole, 'base') * 0.1, 12)
    for (const id of ['warmth', 'bathers']) expect(term(covered, id)).toBe(term(whole, id))
    // all that can be taken away at once leaves what water and walls use by themselves
    const still = of(OPEN_POOL, { coverKind: 'solid', coverHoursPerDay: 24, bathersPerDay: 0 })
    expect(still.chlorineMgPerLDay).toBeCloseTo(term(whole, 'warmth') + term(covered, 'base'), 12)
  })

  test('changing a cause that cannot be taken away changes its term alone: warmth, water’s surface', () => {
    const whole = of(OPEN_POOL)
    const cold = of(OPEN_POOL, { waterC: 7 })
    expect(term(cold, 'warmth')).toBeCloseTo(term(whole, 'warmth') / 4, 12)
    for (const id of ['bathers', 'base']) expect(term(cold, id)).toBe(term(whole, id))
    const narrow = of(OPEN_POOL, { waterSurfaceM2: OPEN_POOL.waterSurfaceM2 / 2 })
    expect(term(narrow, 'base')).toBeCloseTo(term(whole, 'base') / 2, 12)
    for (const id of ['sun', 'warmth', 'bathers']) expect(term(narrow, id)).toBe(term(whole, id))
  })

  test('an uncovered stabilised pool in summer uses 1 to 4 mg/L a day (field experience, from memory)', () => {
    const { chlorineMgPerLDay } = of(OPEN_POOL)
    expect(chlorineMgPerLDay).toBeGreaterThan(1)
    expect(chlorineMgPerLDay).toBeLessThan(4)
  })

  test('stabiliser cuts the sun’s share at least tenfold', () => {
    const bare = of(OPEN_POOL, { water: { ...OPEN_POOL.water, cya_mg_per_L: 0 } })
    expect(term(bare, 'sun') / term(of(OPEN_POOL), 'sun')).toBeGreaterThan(10)
  })

  test('without stabiliser in full sun one dose a day is said not to hold', () => {
    const bare = of(OPEN_POOL, { water: { ...OPEN_POOL.water, cya_mg_per_L: 0 } })
    expect(bare.warnings.join(' ')).toContain('one dose a day will not hold it')
    expect(of(OPEN_POOL).warnings.join(' ')).not.toContain('one dose a day')
  })

  test('twice the pool needs twice the product for the same mg/L', () => {
    const one = of(OPEN_POOL)
    const two = of(OPEN_POOL, {
      volumeM3: 2 * OPEN_POOL.volumeM3,
      waterSurfaceM2: 2 * OPEN_POOL.waterSurfaceM2,
      bathersPerDay: 2 * OPEN_POOL.bathersPerDay,
    })
    expect(two.chlorineMgPerLDay).toBeCloseTo(one.chlorineMgPerLDay, 12)
    expect(two.productGPerWeek! / one.productGPerWeek!).toBeCloseTo(2, 9)
    expect(two.acidGPerFortnight / one.acidGPerFortnight).toBeCloseTo(2, 9)
  })
})

describe('stabiliser that nobody read', () => {
  const { cya_mg_per_L: _, ...unread } = OPEN_POOL.water
  const none = of(OPEN_POOL, { water: { ...unread, cya_mg_per_L: 0 } })
  const some = of(OPEN_POOL, { water: { ...unread, cya_mg_per_L: 30 } })
  const open = of(OPEN_POOL, { water: unread })

  test('is a range from some to none, never an amount, and said first', () => {
    expect(open.productGPerDay).toBeUndefined()
    expect(open.productGPerWeek).toBeUndefined()
    expect(of(TRADE_POOL, { water: unread }).packagesPerWeek).toBeUndefined()
    expect(open.bringsPerWeek).toEqual([])
    expect(open.productLowGPerDay).toBeLessThanOrEqual(some.productLowGPerDay)
    expect(open.productHighGPerDay).toBeGreaterThanOrEqual(none.productHighGPerDay * 0.99)
    const [sun, bare] = [open, none].map((each) => each.chlorineTerms.find(({ id }) => id === 'sun')!)
    expect(sun!.value).toBe(term(some, 'sun'))
    expect(sun!.high).toBe(bare!.high)
    expect(open.warnings[0]).toContain('Stabiliser is unknown')
  })

  test('the floor counts it as present and is judged by the sun of none', () => {
    expect(open.floor.mgPerL).toBe(2)
    expect(open.floor.lowestMgPerL).toBeLessThan(some.floor.lowestMgPerL)
    expect(open.floor.isHeld).toBe(false)
    expect(open.floor.reason).toContain('as if there were no stabiliser')
  })

  test('under a roof it makes no odds to the sun, so an amount is named', () => {
    const roofed = of(OPEN_POOL, { water: unread, isIndoor: true })
    expect(term(roofed, 'sun')).toBe(0)
    expect(roofed.productGPerDay).toBeGreaterThan(0)
  })
})

describe('rules for bathing', () => {
  test('an aim above the ceiling is held at the ceiling, unless it is the owner’s own', () => {
    const at = (chlorineCeilingMgPerL: number) => of(OPEN_POOL, { chlorineCeilingMgPerL }).chlorineMgPerLDay
    expect(at(2.5)).toBeLessThan(at(4))
    expect(at(4)).toBe(of(OPEN_POOL).chlorineMgPerLDay)
  })

  test('a floor above the ceiling leaves nothing to hold, and says so', () => {
    const result = upkeep({ ...OPEN_POOL, chlorineFloorMgPerL: 5 })
    expect(result.ok ? undefined : result.problem.code).toBe('floor-above-ceiling')
  })
})

describe('liquid that aged in the shed', () => {
  const list = productsWith([
    {
      id: 'own-liquid',
      label: 'Old liquid',
      like: 'liquid-chlorine-12',
      strength: 12.5,
      basis: 'trade-percent',
      ageDays: 200,
      storedC: 25,
    },
  ])
  const input = { ...OPEN_POOL, chlorineProductId: 'own-liquid', productList: list }

  test('is counted as it is while some is in stock, else as the label of what is bought has it', () => {
    const aged = of(input, { stockG: { 'own-liquid': 5000 } })
    const bought = of(input, { stockG: {} })
    expect(aged.productGPerDay! / bought.productGPerDay!).toBeGreaterThan(1.5)
    expect(aged.chlorineMgPerLDay).toBe(bought.chlorineMgPerLDay)
    // whoever goes on with the old amount from a fresh container gives too much
    const [, times] = /5000 g is in stock.*take about (0\.\d+) times as much/.exec(aged.warnings.join(' ')) ?? []
    expect(Number(times)).toBeCloseTo(bought.productGPerDay! / aged.productGPerDay!, 2)
    expect(bought.warnings.join(' ')).not.toContain('is in stock')
  })
})

describe('what the product is and brings', () => {
  test('grams a day are demand × volume / available chlorine; tablets are counted by the piece', () => {
    for (const id of ['liquid-chlorine-12', 'cal-hypo-65', 'trichlor-tablet', 'dichlor']) {
      const result = of(OPEN_POOL, { chlorineProductId: id })
      const { availableChlorine } = good(productById(id)).product
      expect(result.productGPerDay).toBeCloseTo((result.chlorineMgPerLDay * OPEN_POOL.volumeM3) / availableChlorine, 6)
    }
    const tablets = of(TRADE_POOL)
    expect(tablets.packagesPerWeek!.count).toBeCloseTo(tablets.productGPerWeek! / 200, 9)
    expect(of(OPEN_POOL).packagesPerWeek).toBeUndefined()
  })

  test('trichlor brings 0.607, dichlor 0.910 mg/L of stabiliser for each mg/L of chlorine; liquid chlorine none', () => {
    for (const [id, ratio] of [
      ['trichlor-tablet', 0.607],
      ['dichlor', 0.91],
      ['liquid-chlorine-12', 0],
    ] as const) {
      const result = of(OPEN_POOL, { chlorineProductId: id })
      expect(brings(result, 'cya_mg_per_L') / (7 * result.chlorineMgPerLDay)).toBeCloseTo(ratio, 3)
    }
  })

  test('calcium hypochlorite brings 0.71 to 0.81 mg/L of hardness for each mg/L (0.706 pure, lime besides)', () => {
    const result = of(OPEN_POOL, { chlorineProductId: 'cal-hypo-65' })
    const ratio = brings(result, 'ch_mg_per_L_as_CaCO3') / (7 * result.chlorineMgPerLDay)
    expect(ratio).toBeGreaterThan(0.706)
    expect(ratio).toBeLessThan(0.81)
  })

  test('liquid chlorine leaves alkalinity nearly alone once used; trichlor takes it', () => {
    expect(Math.abs(brings(of(OPEN_POOL), 'ta_mg_per_L_as_CaCO3'))).toBeLessThan(1)
    const trichlor = of(OPEN_POOL, { chlorineProductId: 'trichlor-tablet' })
    // three mol of acid left by three mol of used chlorine: 0.7058 mg/L as CaCO3 for each mg/L
    expect(brings(trichlor, 'ta_mg_per_L_as_CaCO3') / (7 * trichlor.chlorineMgPerLDay)).toBeCloseTo(-0.7058, 4)
  })
})

describe('acid', () => {
  test('terms add up to the fortnight’s acid', () => {
    const result = of(OPEN_POOL)
    const meq = sum(result.acidTerms) * 14 * OPEN_POOL.volumeM3
    expect(result.acidGPerFortnight).toBeCloseTo((meq * 36.4609) / 0.3145, 4)
    expect(result.acidLowGPerFortnight).toBeLessThan(result.acidGPerFortnight)
    expect(result.acidHighGPerFortnight).toBeGreaterThan(result.acidGPerFortnight)
  })

  test('a cover lowers outgassing, drawn-in air raises it, unknown fill takes its term away and is said', () => {
    const open = term(of(OPEN_POOL), 'outgassing')
    expect(term(of(OPEN_POOL, { coverKind: 'solid', coverHoursPerDay: 20 }), 'outgassing')).toBeLessThan(open / 2)
    const covered = { coverKind: 'solid', coverHoursPerDay: 24 } as const
    const still = term(of(OPEN_POOL, covered), 'outgassing')
    expect(term(of(OPEN_POOL, { ...covered, helpers: ['ozone'] }), 'outgassing')).toBeGreaterThan(still)
    const unknown = of(OPEN_POOL, { fill: undefined })
    expect(unknown.acidTerms.map((each) => each.id)).not.toContain('make-up')
    expect(unknown.warnings.join(' ')).toContain('fill water is unknown')
  })

  test('borate slows the drift of pH', () => {
    const days = (borate: number) =>
      of(OPEN_POOL, { water: { ...OPEN_POOL.water, borate_mg_per_L_as_B: borate } }).pHDriftDays ?? 99
    expect(days(50)).toBeGreaterThan(days(0))
  })

  const reading: WaterReading = {
    pH: 7.5,
    ta_mg_per_L_as_CaCO3: 81,
    ch_mg_per_L_as_CaCO3: 100,
    salt_mg_per_L_as_NaCl: 200,
    temperature_C: 25,
  }
  const start = good(totalsOf(reading, CONSTANT_SETS.default))
  const drift = (more: Partial<Parameters<typeof acidDrift>[0]> = {}) =>
    good(
      acidDrift({
        start,
        aimPH: 7.5,
        band: undefined,
        perDay: {},
        velocityMPerDay: 0.75,
        meanDepthM: 1.4,
        days: 1,
        constants: CONSTANT_SETS.default,
        ...more,
      }),
    )

  test('worked flux: alkalinity 80, pH 7.5, 25 °C, 0.75 m/day, 1.4 m deep: about pH 7.76 after a day (one Euler step)', () => {
    // derived with Henry 0.03405 mol/L atm and Cole & Caraco 1998: 0.0743 mol/m² day = 0.053 mmol/L
    const lost = { ...start, carbonMol: start.carbonMol - 0.053e-3 }
    expect(good(equilibrate(lost, CONSTANT_SETS.default)).pH).toBeCloseTo(7.76, 1)
    const euler = (lost.alkalinityEq - good(alkalinityAtPH(lost, 7.5, CONSTANT_SETS.default))) * 1e3
    const stepped = drift({ stepDays: 1 }).acidEqPerDay * 1e3
    const fine = drift().acidEqPerDay * 1e3
    // the driving force halves within the day, so small steps lose less than one Euler step
    expect(fine).toBeLessThan(euler)
    expect(fine).toBeGreaterThan(0.6 * euler)
    expect(Math.abs(stepped - fine) / fine).toBeLessThan(0.1)
  })

  test('halving the step changes nothing that matters, with and without a band', () => {
    for (const band of [undefined, { low: 7.2, aim: 7.5, high: 7.8 }]) {
      const coarse = drift({ days: 14, band }).acidEqPerDay
      const fine = drift({ days: 14, band, stepDays: 1 / 16 }).acidEqPerDay
      expect(Math.abs(coarse - fine) / fine).toBeLessThan(band ? 0.05 : 0.005)
    }
  })

  test('water in balance with air needs no acid', () => {
    const still = drift({ velocityMPerDay: 0, days: 14 })
    expect(Math.abs(still.acidEqPerDay)).toBeLessThan(1e-12)
    expect(still.daysToEnd).toBeUndefined()
  })
})

describe('evaporation', () => {
  test('0.72 of 13.6 mm/day at 28 °C water, 25 °C air of 50 %, 1 m/s (ASHRAE SI form 0.567 kg/m² h; Smith et al. 1994)', () => {
    const result = of(OPEN_POOL, { waterC: 28, airC: 25, humidityPercent: 50, windMPerS: 1 })
    // the printed example takes 2330 kJ/kg for the heat of vaporisation; at 28 °C it is 2435
    expect(Math.abs(result.evaporationMmPerDay / ((0.72 * 13.6 * 2330) / 2435) - 1)).toBeLessThan(0.01)
    expect(result.evaporationM3PerWeek).toBeCloseTo(
      (result.evaporationMmPerDay / 1000) * OPEN_POOL.waterSurfaceM2 * 7,
      12,
    )
  })

  test('a bubble cover for 20 h holds back 94.9 % of 20/24 (laboratory figure, seen second-hand)', () => {
    const open = of(OPEN_POOL).evaporationMmPerDay
    const covered = of(OPEN_POOL, { coverKind: 'bubble', coverHoursPerDay: 20 }).evaporationMmPerDay
    expect(covered / open).toBeCloseTo(1 - (0.949 * 20) / 24, 9)
  })
})

describe('the chlorine floor', () => {
  test('1 mg/L without stabiliser, 2 with it or where it is unknown; a twentieth of it as advice', () => {
    const floor = (cya: number | undefined) => of(OPEN_POOL, { water: { ...OPEN_POOL.water, cya_mg_per_L: cya } }).floor
    expect(floor(0).mgPerL).toBe(1)
    expect(floor(0).adviceMgPerL).toBeUndefined()
    expect(floor(5).mgPerL).toBe(2)
    expect(floor(undefined).mgPerL).toBe(2)
    expect(floor(60).adviceMgPerL).toBeCloseTo(3, 12)
  })

  test('no helping device lowers it, a local rule raises it', () => {
    const helpers = HELPERS.rows.map((helper) => helper.id)
    const { mgPerL, adviceMgPerL } = of(OPEN_POOL).floor
    expect(of(OPEN_POOL, { helpers }).floor).toMatchObject({ mgPerL, adviceMgPerL })
    expect(of(OPEN_POOL, { chlorineFloorMgPerL: 3.5 }).floor.mgPerL).toBe(3.5)
    expect(of(OPEN_POOL, { chlorineFloorMgPerL: 0.2 }).floor.mgPerL).toBe(2)
    expect(of(OPEN_POOL, { helpers }).helperNotes.join(' ')).toContain('None of them lowers the chlorine floor')
  })

  test('a regime that aims below it fails, with what it lacks', () => {
    const targets = defaultTargets('plaster', 'stabilised', { fc_mg_per_L_as_Cl2: { low: 0.2, aim: 0.5, high: 1 } })
    const { floor } = of(OPEN_POOL, { targets })
    expect(floor.isHeld).toBe(false)
    expect(floor.lackingMgPerL).toBeCloseTo(1.5, 12)
    const low = of(OPEN_POOL, { water: { ...OPEN_POOL.water, fc_mg_per_L_as_Cl2: 0.8 } }).floor
    expect(low).toMatchObject({ isHeld: false })
    expect(low.lackingMgPerL).toBeCloseTo(1.2, 12)
    expect(of(OPEN_POOL, { bathersPerDay: 1 }).floor).toMatchObject({ isHeld: true, lackingMgPerL: 0 })
    expect(of(OPEN_POOL, { water: { ...OPEN_POOL.water, fc_mg_per_L_as_Cl2: undefined } }).floor.isHeld).toBe(false)
  })

  const BARE: Partial<UpkeepInput> = {
    coverKind: 'none',
    coverHoursPerDay: 0,
    targets: defaultTargets('plaster', 'unstabilised', {}),
    water: { ...TRADE_POOL.water, fc_mg_per_L_as_Cl2: 2 },
  }

  test('without stabiliser or cover in July it is not held at a dose a day, however good the reading, and lacks all of it', () => {
    const { floor } = of(TRADE_POOL, BARE)
    expect(floor).toMatchObject({ mgPerL: 1, isHeld: false, lowestMgPerL: 0, lackingMgPerL: 1 })
    expect(floor.reason).toContain('Dosed once a day to 3 mg/L, the residual falls to 0.00')
    expect(floor.reason).toContain('enter what is fed now')
    expect(floor.shortOfSupplyMgPerLDay).toBeUndefined()
    // covered day and night it would be
    const covered = of(TRADE_POOL, { ...BARE, coverKind: 'solid', coverHoursPerDay: 24 }).floor
    expect(covered).toMatchObject({ isHeld: true, lackingMgPerL: 0 })
  })

  test('a dose a day: the lowest is what integrating the losses through the day gives', () => {
    const result = of(OPEN_POOL)
    const rate = (term(result, 'sun') + term(result, 'warmth')) / 3
    const steady = term(result, 'bathers') + term(result, 'base')
    let residual = 4
    const steps = 20_000
    for (let i = 0; i < steps; i++) residual -= (rate * residual + steady) / steps
    expect(result.floor.lowestMgPerL).toBeCloseTo(residual, 3)
    expect(result.floor.isHeld).toBe(residual >= 2)
  })

  test('a known feed is judged by the lowest residual that it settles to, dose after dose', () => {
    const volume = OPEN_POOL.volumeM3
    const { availableChlorine } = good(productById('liquid-chlorine-12')).product
    const gPerMgPerL = volume / availableChlorine
    const result = of(OPEN_POOL)
    const rate = (term(result, 'sun') + term(result, 'warmth')) / 3
    const steady = term(result, 'bathers') + term(result, 'base')
    for (const [doseMgPerL, dosesPerWeek] of [
      [2, 7],
      [5, 3.5],
      [0.5, 42],
    ] as const) {
      const { floor } = of(OPEN_POOL, { feed: { gPerDose: doseMgPerL * gPerMgPerL, dosesPerWeek } })
      let residual = 0
      const steps = 2_000
      const hours = 7 / dosesPerWeek / steps
      // sixty days: long after it has settled
      for (let dose = 0; dose < (60 / 7) * dosesPerWeek; dose++) {
        residual += doseMgPerL
        for (let i = 0; i < steps; i++) residual = Math.max(0, residual - (rate * residual + steady) * hours)
      }
      expect(floor.lowestMgPerL).toBeCloseTo(residual, 2)
      expect(floor.isHeld).toBe(residual >= 2)
      expect(floor.lackingMgPerL).toBeCloseTo(Math.max(0, 2 - residual), 2)
      const short = Math.max(0, 2 * rate + steady - (doseMgPerL * dosesPerWeek) / 7)
      expect(floor.shortOfSupplyMgPerLDay).toBeCloseTo(short, 9)
    }
  })

  test('a feed that brings what the aim uses holds the aim, evenly fed; a measured reading below the floor still fails', () => {
    const result = of(TRADE_POOL, BARE)
    const feed = { gPerDose: result.productGPerWeek! / 14, dosesPerWeek: 14 }
    const held = of(TRADE_POOL, { ...BARE, feed }).floor
    expect(held.lowestMgPerL).toBeCloseTo(2, 9)
    expect(held).toMatchObject({ isHeld: true, lackingMgPerL: 0, shortOfSupplyMgPerLDay: 0 })
    const low = of(TRADE_POOL, { ...BARE, feed, water: { ...TRADE_POOL.water, fc_mg_per_L_as_Cl2: 0.4 } }).floor
    expect(low.isHeld).toBe(false)
    expect(low.lackingMgPerL).toBeCloseTo(0.6, 12)
    const none = of(TRADE_POOL, { ...BARE, feed: { gPerDose: 0, dosesPerWeek: 7 } }).floor
    expect(none).toMatchObject({ isHeld: false, lowestMgPerL: 0, lackingMgPerL: 1 })
  })

  test('one slow tablet a week under a cover: fails with two open hours, and says by how much', () => {
    const feed = { gPerDose: 200, dosesPerWeek: 1 }
    const { floor } = of(TRADE_POOL, { feed })
    expect(floor.isHeld).toBe(false)
    expect(floor.lackingMgPerL).toBeCloseTo(1 - floor.lowestMgPerL, 12)
    expect(floor.shortOfSupplyMgPerLDay).toBeGreaterThan(1)
    expect(floor.reason).toContain('mg/L a day are short')
  })

  test('contact times only for water measured to be without stabiliser, Cryptosporidium 15,300 mg·min/L among them', () => {
    const times = of(TRADE_POOL).contactTimes!
    const slowest = times.find((each) => each.organism.startsWith('Crypto'))!
    expect(slowest.minutes).toBeCloseTo(15_300, 6)
    for (const cya of [1, 40, undefined])
      expect(of(TRADE_POOL, { water: { ...TRADE_POOL.water, cya_mg_per_L: cya } }).contactTimes).toBeUndefined()
    expect(of(TRADE_POOL, { waterC: 18 }).contactTimes).toBeUndefined()
  })
})

describe('helpers', () => {
  test('each lowers only its own terms', () => {
    const bare = of(OPEN_POOL)
    const unit = of(OPEN_POOL, { helpers: ['oxidation-unit'] })
    expect(term(unit, 'bathers')).toBeLessThan(term(bare, 'bathers'))
    expect(term(unit, 'base')).toBe(term(bare, 'base'))
    expect(term(unit, 'sun')).toBe(term(bare, 'sun'))
    const cartridge = of(OPEN_POOL, { helpers: ['mineral-cartridge'] })
    expect(term(cartridge, 'base')).toBeLessThan(term(bare, 'base'))
    expect(term(cartridge, 'bathers')).toBe(term(bare, 'bathers'))
  })

  test('a device nobody knows counts for nothing and is named', () => {
    const odd = of(OPEN_POOL, { helpers: ['crystal'] })
    expect(odd.chlorineMgPerLDay).toBe(of(OPEN_POOL).chlorineMgPerLDay)
    expect(odd.warnings.join(' ')).toContain('"crystal"')
  })
})

describe('input that cannot be reckoned is a Problem with its place', () => {
  test.each([
    ['volumeM3', { volumeM3: 0 }],
    ['feed.gPerDose', { feed: { gPerDose: -1, dosesPerWeek: 7 } }],
    ['feed.dosesPerWeek', { feed: { gPerDose: 100, dosesPerWeek: Number.NaN } }],
    ['waterC', { waterC: Number.NaN }],
    ['sunshine', { sunshine: 1.4 }],
    ['chlorineProductId', { chlorineProductId: 'salt' }],
    ['acidProductId', { acidProductId: 'elixir' }],
  ] as const)('%s', (path, more) => {
    const answer = upkeep({ ...OPEN_POOL, ...more })
    expect(!answer.ok && answer.problem.path).toBe(path)
  })

  test.each([1e-6, 1e7])('a volume of %s m³ is told the range that it is outside of', (volumeM3) => {
    const answer = upkeep({ ...OPEN_POOL, volumeM3 })
    expect(!answer.ok && answer.problem.what).toContain('between 0.001 and 1,000,000 m³')
  })

  test('absent pH and alkalinity are taken from the aims, and said', () => {
    const result = of(OPEN_POOL, { water: { cya_mg_per_L: 30 } })
    expect(result.warnings.join(' ')).toContain('Alkalinity is unknown')
  })

  test('carbon dioxide as acid is dosed by pH, since it takes no alkalinity', () => {
    const result = of(OPEN_POOL, { acidProductId: 'carbon-dioxide' })
    expect(result.acidGPerFortnight).toBeGreaterThan(0)
    expect(result.acidGPerFortnight).toBeLessThan(of(OPEN_POOL).acidGPerFortnight)
  })
})
