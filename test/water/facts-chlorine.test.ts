import { describe, expect, test } from 'vitest'
import { logKAt } from '../../src/water/constants.ts'
import {
  batherDemandG,
  breakpointRatio,
  CONSTANT_SETS,
  contactTime,
  darkLossPerDay,
  type Equilibrium,
  equilibrate,
  formulaMassGPerMol,
  giardiaContactTime,
  halfLifeInSunMin,
  MOLAR_MASSES_G_PER_MOL,
  ORGANISMS,
  photolysisPerDay,
  type ReactionId,
  type WaterReading,
} from '../../src/water/index.ts'
import { good, ORACLE, stateOf } from './golden.ts'

const pK = (id: ReactionId, celsius: number, set = ORACLE) => -logKAt(set.reactions[id].logK, celsius + 273.15)

/** Water so thin that activity coefficients are 1: only what must be there, carbonate enough to hold the pH. */
function thin(pH: number, chlorine: number, cyanurate: number, set = ORACLE): Equilibrium {
  const held = cyanurate * 0.4 + chlorine * 0.8
  return stateOf(
    { pH, ta_mg_per_L_as_CaCO3: held + 2, fc_mg_per_L_as_Cl2: chlorine, cya_mg_per_L: cyanurate, temperature_C: 25 },
    set,
  ).equilibrium
}

describe('hypochlorous acid', () => {
  // Morris 1966, J. Phys. Chem. 70:3798 (from memory): pK = 3000/T − 10.0686 + 0.0253 T
  test.each([
    [5, 7.754],
    [15, 7.633],
    [20, 7.582],
    [25, 7.537],
    [30, 7.497],
    [35, 7.463],
  ])('pK at %d °C is %d', (celsius, value) => {
    expect(pK('hypochlorousAcid', celsius)).toBeCloseTo(value, 3)
  })

  // the same pK at 25 °C: share of HOCl without stabiliser
  test.each([
    [7.0, 0.775],
    [7.2, 0.685],
    [7.5, 0.521],
    [7.8, 0.353],
    [8.0, 0.256],
  ])('at pH %d the active share of plain chlorine is %d', (pH, share) => {
    expect(Math.abs(thin(pH, 1, 0).activeChlorineMgPerL - share)).toBeLessThan(0.006)
  })
})

describe('chlorine and cyanurate', () => {
  // Wahman 2018 (abstract): pK6 = 1743/T + 1.12; Wahman & Alexander 2019 (abstract): pK7a = 2028/T − 2.15, pK9a 5.83 at 25 °C
  test('the Wahman constants are 7.386, 6.966, 6.776 at 5, 25, 35 °C; 4.652 and 5.826 at 25 °C', () => {
    const { wahman } = CONSTANT_SETS
    expect([5, 25, 35].map((celsius) => pK('k6', celsius, wahman).toFixed(3))).toEqual(['7.386', '6.966', '6.776'])
    expect(pK('k7a', 25, wahman)).toBeCloseTo(4.652, 3)
    expect(pK('k9a', 25, wahman)).toBeCloseTo(5.83, 2)
  })

  // O'Brien's constants, 25 °C, pH 7.5, ten species without activity correction and HOCl pK 7.54: active chlorine [mg/L]
  test.each([
    [1, 0, 0.523],
    [2, 0, 1.046],
    [1, 30, 0.013],
    [2, 30, 0.0273],
    [3, 30, 0.0431],
    [2, 50, 0.0159],
    [2, 90, 0.0087],
    [4, 80, 0.0203],
  ])('FC %d with stabiliser %d leaves %d mg/L active', (chlorine, cyanurate, active) => {
    // ionic strength near 0.001 shifts pK6 by 0.015: 3 %
    expect(Math.abs(thin(7.5, chlorine, cyanurate).activeChlorineMgPerL / active - 1)).toBeLessThan(0.03)
  })

  test('active chlorine falls a quarter from pH 7.2 to 7.8 with stabiliser, and half without', () => {
    const ratio = (cyanurate: number) =>
      thin(7.8, 2, cyanurate).activeChlorineMgPerL / thin(7.2, 2, cyanurate).activeChlorineMgPerL
    // 0.0323 → 0.0245 at FC 2, stabiliser 30
    expect(ratio(30)).toBeCloseTo(0.0245 / 0.0323, 1)
    expect(Math.abs(ratio(0) - 0.52)).toBeLessThan(0.02)
  })

  test('the Wahman set halves nobody’s pool but lowers active chlorine by a third: 0.0273 to 0.0178', () => {
    expect(thin(7.5, 2, 30, CONSTANT_SETS.wahman).activeChlorineMgPerL).toBeCloseTo(0.0178, 3)
  })

  // Falk et al. 2019, Water 11:1314 (abstract): at a fixed stabiliser-to-chlorine ratio active chlorine is constant within 1.8 %
  test('at a ratio of 20 active chlorine is 0.0197–0.0204 for FC 1, 3 and 5', () => {
    const values = [1, 3, 5].map((chlorine) => thin(7.5, chlorine, 20 * chlorine).activeChlorineMgPerL)
    const mean = (values[0]! + values[1]! + values[2]!) / 3
    for (const value of values) {
      expect(Math.abs(value / mean - 1)).toBeLessThan(0.025)
      expect(Math.abs(value - 0.0201)).toBeLessThan(0.001)
    }
  })

  // Wahman & Alexander 2019: 2 mg/L as dichlor at pH 7 leaves 0.90 mg/L free at 25 °C and 0.60 at 5 °C
  test.each([
    [25, 0.9],
    [5, 0.6],
  ])('2 mg/L as dichlor at pH 7 and %d °C leaves about %d mg/L unbound (Wahman set)', (celsius, free) => {
    const rings = (2 / 70.906 / 2) * 129.074
    const { equilibrium: e } = stateOf(
      { pH: 7, ta_mg_per_L_as_CaCO3: 10, fc_mg_per_L_as_Cl2: 2, cya_mg_per_L: rings, temperature_C: celsius },
      CONSTANT_SETS.wahman,
    )
    expect(Math.abs(e.activeChlorineMgPerL + e.hypochloriteMgPerL - free)).toBeLessThan(0.04)
  })

  test('stabiliser brought per mg of chlorine: trichlor 0.607, dichlor 0.910 (molar masses)', () => {
    const { cyanuricAcid, chlorineAsCl2 } = MOLAR_MASSES_G_PER_MOL
    expect(cyanuricAcid / (3 * chlorineAsCl2)).toBeCloseTo(0.607, 3)
    expect(cyanuricAcid / (2 * chlorineAsCl2)).toBeCloseTo(0.91, 3)
    // theoretical available chlorine: 91.5 % trichlor, 99.2 % calcium hypochlorite, 95.3 % sodium hypochlorite
    expect((3 * chlorineAsCl2) / formulaMassGPerMol('Xc3Cya')!).toBeCloseTo(0.915, 3)
    expect((2 * chlorineAsCl2) / formulaMassGPerMol('CaXc2O2')!).toBeCloseTo(0.992, 3)
    expect(chlorineAsCl2 / formulaMassGPerMol('NaXcO')!).toBeCloseTo(0.9525, 4)
  })

  // alkalinity of stabiliser at pK 6.88: 50.04/129.07 × share ionised, mg/L as CaCO3 per mg/L
  test.each([
    [7.0, 0.22],
    [7.5, 0.313],
    [8.0, 0.36],
  ])('at pH %d stabiliser holds %d mg/L of alkalinity per mg/L', (pH, factor) => {
    expect(Math.abs(thin(pH, 0, 50).alkalinity.cyanurate / 50 - factor)).toBeLessThan(0.006)
  })

  // borate of pK 9.24 at 50 mg/L as B: 4.1, 8.1, 12.6 mg/L as CaCO3 at pH 7.5, 7.8, 8.0
  test.each([
    [7.5, 4.1],
    [7.8, 8.1],
    [8.0, 12.6],
  ])('at pH %d, 50 mg/L of boron holds %d mg/L of alkalinity', (pH, alkalinity) => {
    const reading: WaterReading = { pH, ta_mg_per_L_as_CaCO3: 20, borate_mg_per_L_as_B: 50, temperature_C: 25 }
    expect(Math.abs(stateOf(reading).equilibrium.alkalinity.borate / alkalinity - 1)).toBeLessThan(0.035)
  })
})

describe('sunlight', () => {
  // Nowell & Hoigné 1992, Water Res. 26:593 (abstract): half-life 12 min at pH 8, 60 min at pH 5; the rest by the same rates
  test.each([
    [8, 12.3],
    [7.5, 17.1],
    [7, 27.3],
    [5, 56.9],
  ])('plain chlorine at pH %d halves in %d min at noon', (pH, minutes) => {
    const { equilibrium } = stateOf({ pH, ta_mg_per_L_as_CaCO3: 5, fc_mg_per_L_as_Cl2: 2, temperature_C: 25 })
    expect(Math.abs(halfLifeInSunMin(equilibrium) / minutes - 1)).toBeLessThan(0.02)
  })

  test('light fades with depth, and none gives no loss', () => {
    const e = thin(7.5, 3, 0)
    const loss = (meanDepthM: number, solarMJPerM2Day = 25) => photolysisPerDay(e, { meanDepthM, solarMJPerM2Day })
    // a film loses the surface rate: 25 MJ at 900 W/m² is 27,778 s of noon
    expect(loss(0)).toBeCloseTo((Math.LN2 / (halfLifeInSunMin(e) * 60)) * (25e6 / 900), 10)
    expect(loss(1)).toBeLessThan(loss(0.5))
    // very deep water loses as 1/depth
    expect(loss(40) / loss(80)).toBeCloseTo(2, 6)
    expect(loss(1.5, 0)).toBe(0)
  })

  test('stabiliser shields chlorine: 25 mg/L cuts the loss by well over two thirds (weak public source)', () => {
    const body = { meanDepthM: 1.5, solarMJPerM2Day: 25 }
    expect(photolysisPerDay(thin(7.5, 3, 25), body)).toBeLessThan(photolysisPerDay(thin(7.5, 3, 0), body) / 3)
  })

  test('at 138 mg/L of stabiliser the estimate is 7–10 % a day, above the 1–2 % Wojtowicz measured, as the model says', () => {
    const reading: WaterReading = {
      pH: 7.5,
      ta_mg_per_L_as_CaCO3: 120,
      ch_mg_per_L_as_CaCO3: 300,
      cya_mg_per_L: 138,
      fc_mg_per_L_as_Cl2: 3,
      salt_mg_per_L_as_NaCl: 1200,
      temperature_C: 28,
    }
    const body = { meanDepthM: 1.5, solarMJPerM2Day: 27 }
    const { totals, equilibrium } = stateOf(reading)
    expect(photolysisPerDay(equilibrium, body)).toBeCloseTo(0.1, 2)
    expect(photolysisPerDay(good(equilibrate(totals, CONSTANT_SETS.wahman)), body)).toBeCloseTo(0.07, 2)
  })

  test('no chlorine has no half-life', () => {
    expect(halfLifeInSunMin(thin(7.5, 0, 30))).toBe(Number.POSITIVE_INFINITY)
  })
})

describe('demand', () => {
  test('breakpoint is 7.593 g Cl2 per g N: 1.5 × 70.906 / 14.007', () => {
    expect(breakpointRatio).toBeCloseTo(7.593, 3)
  })

  test('14 % a day at 28 °C (Wojtowicz abstract), half that at 18 °C, twice at 38 °C', () => {
    expect([18, 28, 38].map((celsius) => darkLossPerDay(celsius))).toEqual([0.07, 0.14, 0.28])
    expect(darkLossPerDay(28, 0.05)).toBe(0.05)
  })

  test('a bather hour takes about 10 g of chlorine; 0.565 g of nitrogen takes 4.3 g by theory', () => {
    expect(batherDemandG(1)).toBeCloseTo(10.2, 1)
    expect(batherDemandG(1, 0.565, breakpointRatio)).toBeCloseTo(4.3, 1)
    // 30 mL of urine at 12,220 mg/L N and 0.2 L of sweat at 992 mg/L N, WHO 2006 table 4.1 (from memory)
    expect(0.03 * 12.22 + 0.2 * 0.992).toBeCloseTo(0.565, 3)
  })
})

describe('contact times, only without stabiliser', () => {
  const plain = { pH: 7.5, temperatureC: 25, cyanurateMgPerL: 0 }

  // CDC faecal-incident response after Shields et al. 2008: 15,300 mg·min/L; 20 mg/L for 12.75 h
  test.each([
    [20, 12.75],
    [10, 25.5],
    [1, 255],
  ])('Cryptosporidium at %d mg/L takes %d h', (freeChlorineMgPerL, hours) => {
    const time = good(contactTime('cryptosporidium', { ...plain, freeChlorineMgPerL }))
    expect(time.minutes / 60).toBeCloseTo(hours, 10)
    expect(time.ctMgMinPerL).toBe(15300)
    expect(20 * 12.75 * 60).toBe(15300)
  })

  test('any stabiliser at all is refused, and the reason says so', () => {
    for (const { id } of ORGANISMS.rows) {
      const result = contactTime(id, { ...plain, freeChlorineMgPerL: 20, cyanurateMgPerL: 1 })
      expect(result.ok).toBe(false)
      if (!result.ok) expect(result.problem).toMatchObject({ code: 'contact-stabiliser-present' })
    }
    expect(contactTime('giardia', { ...plain, freeChlorineMgPerL: 2, cyanurateMgPerL: Number.NaN }).ok).toBe(false)
  })

  test('high pH, cold water, no chlorine and unknown organisms are refused', () => {
    const code = (organism: string, water: Partial<typeof plain & { freeChlorineMgPerL: number }>) => {
      const result = contactTime(organism, { ...plain, freeChlorineMgPerL: 2, ...water })
      return result.ok ? 'answered' : result.problem.code
    }
    expect(code('giardia', {})).toBe('answered')
    expect(code('giardia', { pH: 7.6 })).toBe('contact-outside-conditions')
    expect(code('giardia', { temperatureC: 20 })).toBe('contact-outside-conditions')
    expect(code('giardia', { freeChlorineMgPerL: 0 })).toBe('contact-no-chlorine')
    expect(code('everything', {})).toBe('contact-organism-unknown')
  })

  test('every organism states where its figure comes from', () => {
    for (const row of ORGANISMS.rows) expect(row.source.length).toBeGreaterThan(20)
  })

  // Smith, Clark et al. regression for the US EPA: (7.5, 1, 25 °C, 3 logs) 47.9; (7.0, 1, 0.5 °C, 3) 217.5; (6.0, 1, 0.5, 3) 143.7
  test.each([
    [7.5, 25, 47.9],
    [7.0, 0.5, 217.5],
    [6.0, 0.5, 143.7],
  ])('Giardia at pH %d and %d °C takes a CT of %d for three logs', (pH, celsius, ct) => {
    expect(Math.abs(giardiaContactTime(pH, 1, celsius, 3) / ct - 1)).toBeLessThan(0.005)
  })

  test('the regression is within 8 % of the rule’s own table: 92 at 15 °C, pH 7.5, 1.2 mg/L', () => {
    expect(Math.abs(giardiaContactTime(7.5, 1.2, 15, 3) / 92 - 1)).toBeLessThan(0.08)
  })
})
