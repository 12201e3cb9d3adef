import { describe, expect, test } from 'vitest'
import { doseDelta } from '../../../src/chemicals/index.ts'
import { type StartContext, startSchedule } from '../../../src/plan/index.ts'
import { rainDilution, type WinterLevels, winterDilution } from '../../../src/plan/modes/dilution.ts'
import {
  addTotals,
  atTemperature,
  CONSTANT_SETS,
  equilibrate,
  methodSigma,
  mix,
  type PeopleReading,
  readingOf,
  type Totals,
  totalsOf,
  type WaterReading,
} from '../../../src/water/index.ts'
import { good } from '../../water/golden.ts'
import { BEFORE, contextOf } from './cases.ts'

const CONSTANTS = CONSTANT_SETS.default
const full = BEFORE as WaterReading
const solve = (totals: Totals) => {
  const equilibrium = good(equilibrate(totals, CONSTANTS))
  return { pH: equilibrium.pH, si: equilibrium.calciteSI, reading: readingOf(totals, equilibrium) }
}
const schedule = (mode: string, values: Record<string, number>, more: Partial<StartContext> = {}) =>
  good(startSchedule(mode, values, contextOf(more)))
const figure = (answer: ReturnType<typeof schedule>, key: string) => {
  const found = answer.figures.find((one) => one.key === key)
  if (!found) throw new Error(`no figure ${key}`)
  return found
}
const expected = (answer: ReturnType<typeof schedule>, key: string) => {
  const found = answer.expected.find((one) => one.key === key)
  if (!found) throw new Error(`no expectation of ${key}`)
  return found
}

describe('rain', () => {
  /** A stirred tank, filled and run over in small steps: independent of the closed form. */
  const tank = (volumeM3: number, roomM3: number, inflowM3: number): number => {
    const steps = 200_000
    let [volume, solute] = [volumeM3, volumeM3]
    for (let n = 0; n < steps; n++) {
      volume += inflowM3 / steps
      const over = Math.max(0, volume - volumeM3 - roomM3)
      solute -= (solute * over) / volume
      volume -= over
    }
    return solute / volume
  }

  test.each([
    [60, 2, 1],
    [60, 2, 8],
    [60, 0, 30],
    [5, 1, 20],
  ])('%f m³ with room for %f m³ and %f m³ of rain dilute as a stirred tank does', (volume, room, inflow) => {
    const found = rainDilution(volume, room, inflow)
    expect(found.value.keeps).toBeCloseTo(tank(volume, room, inflow), 4)
    expect(found.least.keeps).toBeCloseTo(volume / (volume + Math.min(room, inflow)), 12)
    // what came in either stays or runs over
    expect(found.overflowM3 + Math.min(room, inflow)).toBeCloseTo(inflow, 12)
  })

  test('a night of 50 mm on a pool 1.5 m deep, overflow at hand, takes about 3 %', () => {
    const answer = schedule('heavy-rain', { rainM: 0.05, roomM: 0 }, { before: BEFORE })
    expect(figure(answer, 'inflow').value).toBeCloseTo(2, 12)
    expect(figure(answer, 'exchanged').value).toBeCloseTo(100 * (1 - Math.exp(-2 / 60)), 10)
    expect(figure(answer, 'exchanged').low).toBe(0)
    expect(expected(answer, 'cya_mg_per_L').value).toBeCloseTo(40 * Math.exp(-2 / 60), 10)
    // dirt may have used all chlorine up
    expect(expected(answer, 'fc_mg_per_L_as_Cl2').low).toBe(0)
  })

  test('ground that drains in widens the range to all of it and none of it', () => {
    const answer = schedule('heavy-rain', { rainM: 0.05, roomM: 0.02, catchmentM2: 100, runoffPercent: 40 })
    expect(figure(answer, 'inflow')).toMatchObject({ low: 2, value: 4 })
    expect(figure(answer, 'inflow').high).toBeCloseTo(7, 12)
    expect(figure(answer, 'overflow').value).toBeCloseTo(4 - 0.8, 12)
    expect(answer.warnings.some((text) => text.includes('germs'))).toBe(true)
  })
})

describe('winter', () => {
  /** A winter in hours: level moves evenly, what leaves takes mixed water with it. */
  const winter = ({ volumeM3, surfaceM2, loweredM, springBelowM }: WinterLevels, outM: number): number => {
    const steps = 200_000
    const start = volumeM3 - loweredM * surfaceM2
    const end = volumeM3 - springBelowM * surfaceM2
    let solute = start
    for (let n = 0; n < steps; n++) {
      const volume = start + ((end - start) * (n + 0.5)) / steps
      solute *= 1 - (outM * surfaceM2) / steps / volume
    }
    return solute / end
  }
  const pool = { volumeM3: 60, surfaceM2: 40 }

  test.each([
    [0.4, 0, 0, undefined, 0],
    [0.4, 0, 0.1, undefined, 0.1],
    [0.4, 0, 0, 0.7, 0.3],
    [0, 0, 0.2, 0.6, 0.6],
    [0.5, 0.1, 0.3, 0.5, 0.3],
  ])('let down %f m, found %f m below, %f m pumped off, %s m of rain', (lowered, spring, pumped, rain, outM) => {
    const levels = { ...pool, loweredM: lowered, springBelowM: spring, pumpedOffM: pumped, rainM: rain }
    const found = winterDilution(levels)
    expect(found.lostM3).toBeCloseTo(outM * pool.surfaceM2, 10)
    expect(found.value.keeps).toBeCloseTo(winter(levels, outM), 4)
    // level read to a centimetre and how far it mixed stay inside the ends
    expect(found.most.keeps).toBeLessThan(found.value.keeps)
    expect(found.least.keeps).toBeGreaterThan(found.value.keeps)
  })

  test('a level that only dried up thickens the water, and a leak can’t be told from it', () => {
    const found = winterDilution({ ...pool, loweredM: 0, springBelowM: 0.15, pumpedOffM: 0 })
    expect(found.isLower).toBe(true)
    expect(found.value.keeps).toBeCloseTo(60 / 54, 12)
    expect(found.most.keeps).toBe(1)
    const answer = schedule('spring-opening', { loweredM: 0, springBelowM: 0.15 })
    expect(answer.warnings.some((text) => text.includes('leaks'))).toBe(true)
  })

  test('the water in spring is the kernel’s blend with pure water, its chlorine spent', () => {
    const values = { loweredM: 0.4, springBelowM: 0, waterC: 8 }
    const answer = schedule('spring-opening', values, { before: BEFORE })
    // 44 m³ of old water in 60
    const autumn = good(totalsOf(full, CONSTANTS))
    const old = addTotals(autumn, {
      alkalinityEq: -autumn.chlorineMol,
      chlorineMol: -autumn.chlorineMol,
      chlorideMol: autumn.chlorineMol,
    })
    const nothing = Object.fromEntries(Object.keys(old).map((key) => [key, 0])) as unknown as Totals
    const water = solve(atTemperature(mix(old, nothing, 16 / 60), 8))
    expect(answer.expectedWater!.equilibrium.pH).toBeCloseTo(water.pH, 9)
    expect(expected(answer, 'pH').value).toBeCloseTo(water.pH, 9)
    for (const key of ['ta_mg_per_L_as_CaCO3', 'ch_mg_per_L_as_CaCO3', 'salt_mg_per_L_as_NaCl'] as const) {
      expect(answer.expectedWater!.reading[key]).toBeCloseTo(water.reading[key], 6)
      expect(expected(answer, key).value / water.reading[key]).toBeCloseTo(1, 2)
    }
    expect(expected(answer, 'fc_mg_per_L_as_Cl2').value).toBe(0)
    expect(expected(answer, 'cya_mg_per_L')).toMatchObject({ low: 0, before: 40 })
    expect(expected(answer, 'cya_mg_per_L').value).toBeCloseTo((40 * 44) / 60, 10)
  })

  test('vanished stabiliser: 3 N to a ring, 7.593 g of chlorine to a gram of it (facts: breakpoint by theory)', () => {
    const answer = schedule(
      'spring-opening',
      { loweredM: 0, springBelowM: 0 },
      { before: BEFORE, now: { cya_mg_per_L: 0 } },
    )
    expect(figure(answer, 'stabiliserLost').value).toBeCloseTo(40, 12)
    const ratio = (1.5 * 70.906) / 14.007
    expect(figure(answer, 'ammoniaChlorine').value / ((40 * 3 * 14.007) / 129.07)).toBeCloseTo(ratio, 3)
    expect(figure(answer, 'ammoniaChlorine').low).toBe(0)
    expect(figure(answer, 'ammoniaChlorine').high).toBeGreaterThan((40 * 3 * 14.007 * 15) / 129.07)
  })

  test('the bucket: a dose that the kernel finds again as 10 mg/L in 10 L', () => {
    const answer = schedule('spring-opening', { bucketMgPerL: 30 })
    const dose = figure(answer, 'bucketDose')
    expect(dose.quantity).toBe('liquid')
    const clean = good(totalsOf({ ...full, fc_mg_per_L_as_Cl2: 0 }, CONSTANTS))
    const dosed = solve(addTotals(clean, good(doseDelta('liquid-chlorine-12', { mLPerM3: (dose.value * 1e6) / 0.01 }))))
    expect(dosed.reading.fc_mg_per_L_as_Cl2).toBeCloseTo(10, 1)
    // 30 mg/L in 60 m³
    expect(figure(answer, 'bucketChlorine').value).toBeCloseTo(1.8, 12)
  })

  test('closing: SI in the cold is the kernel’s, and the pH named brings it to nought', () => {
    const answer = schedule('winter-closing', { coldC: 4, loweredM: 0.3 }, { now: BEFORE })
    const at = (pH: number) => solve(atTemperature(good(totalsOf({ ...full, pH }, CONSTANTS)), 4))
    expect(figure(answer, 'coldSI').value).toBeCloseTo(at(7.5).si, 9)
    expect(figure(answer, 'coldPH').value).toBeCloseTo(at(7.5).pH, 9)
    expect(figure(answer, 'coldSI').value).toBeLessThan(solve(good(totalsOf(full, CONSTANTS))).si)
    expect(at(figure(answer, 'balancedPH').value).si).toBeCloseTo(0, 4)
    expect(figure(answer, 'refilledSI').value).toBeLessThan(figure(answer, 'coldSI').value)
    expect(figure(answer, 'exchanged')).toMatchObject({ low: 0 })
    expect(figure(answer, 'exchanged').value).toBeCloseTo(20, 10)
  })

  test('closing: the ranges take in the scatter of the tests, and a pH outside the band is not one to leave with', () => {
    const by = (method: string, more: PeopleReading = {}) =>
      schedule('winter-closing', { coldC: 4 }, { now: { ...BEFORE, ...more }, method })
    for (const key of ['coldSI', 'coldPH'] as const) {
      const { value, low, high } = figure(by('drop-kit'), key)
      const sigma = methodSigma('drop-kit', 'pH', 7.5)!.sigma
      expect(high - value).toBeGreaterThan(1.5 * sigma)
      expect(value - low).toBeGreaterThan(1.5 * sigma)
      const strip = figure(by('strip'), key)
      expect(strip.high - strip.low).toBeGreaterThan(high - low)
    }
    const soft = figure(by('drop-kit', { ta_mg_per_L_as_CaCO3: 60, ch_mg_per_L_as_CaCO3: 150 }), 'balancedPH')
    expect(soft.value).toBeGreaterThan(7.8)
    expect(soft.label).toContain('above the band')
    expect(soft.high).toBeGreaterThan(soft.low + 0.05)
  })
})

describe('a partial drain', () => {
  const FILL: PeopleReading = {
    ...BEFORE,
    pH: 7.9,
    ta_mg_per_L_as_CaCO3: 150,
    cya_mg_per_L: 0,
    fc_mg_per_L_as_Cl2: 0.2,
  }

  test('is the kernel’s blend of pool and fill, by level and by share alike', () => {
    const byLevel = schedule('partial-drain', { drainedM: 0.45 }, { before: BEFORE, fill: FILL })
    const byShare = schedule('partial-drain', { drainedPercent: 30 }, { before: BEFORE, fill: FILL })
    const blend = solve(mix(good(totalsOf(full, CONSTANTS)), good(totalsOf(FILL as WaterReading, CONSTANTS)), 0.3))
    for (const answer of [byLevel, byShare]) {
      expect(figure(answer, 'exchanged').value).toBeCloseTo(30, 10)
      expect(figure(answer, 'drained').value).toBeCloseTo(18, 10)
      expect(expected(answer, 'pH').value).toBeCloseTo(blend.pH, 9)
      for (const key of ['ta_mg_per_L_as_CaCO3', 'cya_mg_per_L', 'ch_mg_per_L_as_CaCO3'] as const)
        expect(expected(answer, key).value).toBeCloseTo(blend.reading[key], 1)
    }
    expect(expected(byLevel, 'cya_mg_per_L').value).toBeCloseTo(28, 10)
  })

  test('too much at once for the surface is said, without a fill nothing is foretold', () => {
    const vinyl = schedule('partial-drain', { drainedPercent: 50 }, { surface: 'vinyl', before: BEFORE, fill: FILL })
    expect(vinyl.warnings.some((text) => text.includes('33 %'))).toBe(true)
    const plaster = schedule('partial-drain', { drainedPercent: 50 }, { before: BEFORE, fill: FILL })
    expect(plaster.warnings.some((text) => text.includes('too much'))).toBe(false)
    expect(schedule('partial-drain', { drainedPercent: 50 }, { before: BEFORE }).expected).toEqual([])
  })
})

describe('a party', () => {
  test('nitrogen by head and hour times the ratio: about 10 g of chlorine a bather-hour, 4.3 g at the least (facts)', () => {
    const answer = schedule('party', { bathers: 10, hours: 1 }, { volumeM3: 10 })
    const perBatherHour = figure(answer, 'demand')
    expect(perBatherHour.value).toBeCloseTo(10.2, 10)
    expect(perBatherHour.low).toBeCloseTo(0.57 * ((1.5 * 70.906) / 14.007), 3)
    expect(perBatherHour.low).toBeCloseTo(4.3, 1)
    expect(perBatherHour.high).toBeCloseTo(0.85 * 15, 10)
    expect(figure(answer, 'nitrogen').value).toBeCloseTo(0.0085, 12)
  })

  test('chlorine that has fallen since is taken off, and the dose lands in the kernel', () => {
    const before = { ...BEFORE, fc_mg_per_L_as_Cl2: 4 }
    const answer = schedule('party', { bathers: 20, hours: 3 }, { before, now: { fc_mg_per_L_as_Cl2: 1 } })
    expect(figure(answer, 'demandLeft').value).toBeCloseTo((60 * 10.2) / 60 - 3, 10)
    const mL = figure(answer, 'partyDose').value * 1e6
    const clean = good(totalsOf({ ...full, fc_mg_per_L_as_Cl2: 0 }, CONSTANTS))
    const dosed = solve(addTotals(clean, good(doseDelta('liquid-chlorine-12', { mLPerM3: mL / 60 }))))
    expect(dosed.reading.fc_mg_per_L_as_Cl2).toBeCloseTo(7.2, 1)
  })

  test('combined chlorine is told with its dose; a total far below free is a warning and no figure', () => {
    const high = schedule('party', {}, { now: { fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 3, cya_mg_per_L: 0 } })
    expect(figure(high, 'combined').value).toBeCloseTo(1, 12)
    // 15 g of chlorine to a gram of nitrogen in practice, less what is there (facts: 10 to 15)
    expect(figure(high, 'breakpointDose').value).toBeCloseTo((15 * 14.007) / 70.906 - 1, 3)
    expect(figure(high, 'breakpointDose').low).toBeCloseTo(0.5, 12)
    const clash = schedule('party', {}, { now: { fc_mg_per_L_as_Cl2: 9, tc_mg_per_L_as_Cl2: 1 } })
    expect(clash.figures.some(({ key }) => key === 'combined')).toBe(false)
    expect(clash.warnings.length).toBe(1)
  })
})

describe('the acid yardstick', () => {
  const FL_OZ_M3 = 29.5735e-6

  test('25.6 fl oz of 31.45 % to 10,000 US gal take 10 mg/L (facts 8b)', () => {
    const answer = schedule('new-plaster', {}, { volumeM3: 37.854 })
    const acid = figure(answer, 'acidPerTen')
    expect(acid.quantity).toBe('liquid')
    expect(acid.value / FL_OZ_M3 / 25.56).toBeCloseTo(1, 2)
  })

  test.each(['muriatic-acid-31', 'dry-acid'])('%s: the dose kernel finds 10 mg/L less alkalinity', (id) => {
    const answer = schedule('new-plaster', {}, { products: { acid: id } })
    const acid = figure(answer, 'acidPerTen')
    const amount =
      acid.quantity === 'liquid' ? { mLPerM3: (acid.value * 1e6) / 60 } : { gPerM3: (acid.value * 1000) / 60 }
    const dosed = solve(addTotals(good(totalsOf(full, CONSTANTS)), good(doseDelta(id, amount))))
    expect(90 - dosed.reading.ta_mg_per_L_as_CaCO3).toBeCloseTo(10, 1)
    expect(dosed.pH).toBeLessThan(7.5)
  })
})
