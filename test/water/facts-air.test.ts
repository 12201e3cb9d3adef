import { describe, expect, test } from 'vitest'
import { waterViscosityMPaS } from '../../src/water/conductance.ts'
import {
  addTotals,
  clearSkyRadiation,
  co2FluxMolPerM2Day,
  daylightHours,
  equilibrate,
  evaporationMmPerDay,
  extraterrestrialRadiation,
  formulaDelta,
  gasTransferVelocityMPerDay,
  latentHeatKJPerKg,
  PURE_WATER,
  saturatedCO2MolPerKg,
  saturationVapourPressureKPa,
  scaleDelta,
  schmidtNumberCO2,
  solarRadiation,
  windAt2M,
} from '../../src/water/index.ts'
import { good, ORACLE, stateOf } from './golden.ts'

describe('sun, after FAO-56', () => {
  test('example 8: 32.2 MJ/m² day above the air at 20° S on day 246; example 9: 11.7 h of sun', () => {
    expect(Math.abs(extraterrestrialRadiation(-20, 246) - 32.19)).toBeLessThan(0.05)
    expect(daylightHours(-20, 246)).toBeCloseTo(11.67, 2)
  })

  // the same formula evaluated independently
  test.each([
    [0, 196, 33.86],
    [30, 196, 40.53],
    [40, 196, 40.8],
    [45, 196, 40.6],
    [50, 196, 40.21],
    [40, 172, 41.87],
    [40, 80, 28.77],
  ])('at latitude %d on day %d it is %d', (latitude, day, ra) => {
    expect(Math.abs(extraterrestrialRadiation(latitude, day) - ra)).toBeLessThan(0.06)
  })

  test('polar night is dark, polar day has 24 hours, and the equator 12', () => {
    expect(extraterrestrialRadiation(80, 355)).toBe(0)
    expect(daylightHours(80, 355)).toBe(0)
    expect(daylightHours(80, 172)).toBe(24)
    expect(daylightHours(0, 40)).toBeCloseTo(12, 10)
  })

  test('example 18: clear sky at 100 m under Ra 41.09 is 30.90; example 10: 7.1 of 10.9 h under Ra 25.1 is 14.45', () => {
    expect(clearSkyRadiation(41.09, 100)).toBeCloseTo(30.9, 2)
    expect(Math.abs(solarRadiation(25.1, 7.1 / 10.9) - 14.45)).toBeLessThan(0.01)
  })
})

describe('conductance of the water itself', () => {
  // Kestin et al. 1978 (from memory); CRC Handbook: 1.792, 1.002, 0.890, 0.653 mPa s
  test.each([
    [0, 1.792],
    [20, 1.002],
    [25, 0.89],
    [40, 0.653],
  ])('viscosity at %d °C is %d mPa s', (celsius, viscosity) => {
    expect(Math.abs(waterViscosityMPaS(celsius) / viscosity - 1)).toBeLessThan(0.003)
  })

  // Λ [S cm²/eq] at 0.0005, 0.001, 0.005, 0.01, 0.02 and 0.05 eq/L, 25 °C: CRC Handbook of Chemistry and Physics, "Equivalent
  // conductivity of electrolytes in aqueous solution" (from memory). Conductance is for kilograms: 0.3 % is in that.
  const EQUIVALENTS = [0.0005, 0.001, 0.005, 0.01, 0.02, 0.05]
  test.each([
    ['KCl', 1, 0.5, [147.74, 146.88, 143.48, 141.2, 138.27, 133.3]],
    ['NaCl', 1, 0.5, [124.44, 123.68, 120.59, 118.45, 115.7, 111.01]],
    ['CaCl2', 2, 1.2, [131.86, 130.3, 124.19, 120.3, 115.59, 108.42]],
    ['MgCl2', 2, 1.2, [125.55, 124.15, 118.25, 114.49, 109.99, 103.03]],
    ['Na2SO4', 2, 1.8, [125.68, 124.09, 117.09, 112.38, 106.73, 97.7]],
    ['NaHCO3', 1, 2.7, [94.2, 93.45, 90.44, 88.37, 85.97]],
  ] as const)('%s alone (%d eq/mol) conducts as measured, within %d percent', (formula, perMol, percent, measured) => {
    measured.forEach((lambda, i) => {
      const equivalents = EQUIVALENTS[i]!
      const totals = addTotals(PURE_WATER, scaleDelta(formulaDelta(formula)!, equivalents / perMol))
      const mine = good(equilibrate(totals, ORACLE)).conductanceMicroSPerCm / equivalents / 1000
      expect(Math.abs(mine / lambda - 1) * 100, `${equivalents} eq`).toBeLessThan(percent)
    })
  })

  // 0.01 mol/L NaCl 1185 and 0.01 mol/L KCl 1413 µS/cm at 25 °C: CRC Handbook, conductance standards (from memory)
  test.each([
    ['NaCl', 1185],
    ['KCl', 1413],
  ])('0.01 mol/kg %s conducts %d µS/cm at 25 °C, within 1.5 percent', (formula, conductance) => {
    const totals = addTotals(PURE_WATER, scaleDelta(formulaDelta(formula)!, 0.01))
    const mine = good(equilibrate(totals, ORACLE)).conductanceMicroSPerCm
    expect(Math.abs(mine / conductance - 1)).toBeLessThan(0.015)
  })
})

describe('vapour and evaporation', () => {
  // FAO-56 eq. 11 and its example 3
  test.each([
    [24.5, 3.075],
    [15, 1.705],
    [25, 3.168],
    [28, 3.78],
    [14.8, 1.684],
  ])('saturation at %d °C is %d kPa', (celsius, kPa) => {
    expect(Math.abs(saturationVapourPressureKPa(celsius) - kPa)).toBeLessThan(0.0006)
  })

  test('example 14: 3.2 m/s at 10 m is 2.4 at 2 m; heat of vaporisation 2450 kJ/kg near 20 °C', () => {
    expect(windAt2M(3.2, 10)).toBeCloseTo(2.4, 1)
    expect(Math.abs(latentHeatKJPerKg(20) - 2450)).toBeLessThan(5)
  })

  // Carrier in inch-pound units (Smith, Löf & Jones 1998): 80 °F water and air, 50 %, still: 0.04679 lb/h ft² = 5.49 mm/day
  test('still 80 °F water under 50 % air loses 5.49 mm/day, within 1.5 % by the SI coefficients', () => {
    const celsius = (80 - 32) / 1.8
    const mine = evaporationMmPerDay({ waterC: celsius, airC: celsius, relativeHumidity: 0.5, windMPerS: 0 })
    expect(Math.abs(mine / 5.49 - 1)).toBeLessThan(0.015)
    // the inch-pound original itself: (95 + 0.425 × 0) × 0.5162 inHg / 1048 Btu/lb
    const poundsPerHourFt2 = (95 * 0.5162) / 1048
    expect(poundsPerHourFt2).toBeCloseTo(0.04679, 4)
    expect(((poundsPerHourFt2 * 24 * 0.45359237) / 0.09290304) * 1).toBeCloseTo(5.49, 1)
  })

  // ASHRAE SI form: water 28 °C, air 25 °C at 50 %, Y 2330 kJ/kg: 0.302 kg/m² h still, 0.567 at 1 m/s
  test.each([
    [0, 0.302],
    [1, 0.567],
  ])('28 °C water, 25 °C air at 50 %% and %d m/s loses %d kg/m² h', (windMPerS, kgPerHour) => {
    const mine = evaporationMmPerDay({ waterC: 28, airC: 25, relativeHumidity: 0.5, windMPerS }) / 24
    // the example rounds the heat of vaporisation to 2330; 2435 at 28 °C is 4 % more
    expect(Math.abs((mine * latentHeatKJPerKg(28)) / 2330 / kgPerHour - 1)).toBeLessThan(0.005)
  })

  test('the inch-pound and SI coefficients agree within 1 %', () => {
    // Btu/h ft² inHg to W/m² Pa: × 3.15459 / 3386.39; per ft/min to per m/s: × 196.85
    expect(Math.abs((95 * 3.15459) / 3386.39 / 0.089 - 1)).toBeLessThan(0.01)
    expect(Math.abs((0.425 * 3.15459 * 196.85) / 3386.39 / 0.0782 - 1)).toBeLessThan(0.01)
  })

  test('quiet outdoor water evaporates less by its factor, and damp warm air condenses', () => {
    const weather = { waterC: 27, airC: 24, relativeHumidity: 0.5, windMPerS: 1.5 }
    expect(evaporationMmPerDay({ ...weather, activityFactor: 0.72 })).toBeCloseTo(
      0.72 * evaporationMmPerDay(weather),
      12,
    )
    expect(evaporationMmPerDay({ waterC: 10, airC: 30, relativeHumidity: 0.9, windMPerS: 1 })).toBeLessThan(0)
  })
})

describe('carbon dioxide through the surface', () => {
  // Wanninkhof 1992, fresh water
  test.each([
    [15, 776.9],
    [20, 599.4],
    [25, 470.7],
    [30, 359.6],
  ])('Schmidt number at %d °C is %d', (celsius, schmidt) => {
    expect(schmidtNumberCO2(celsius)).toBeCloseTo(schmidt, 1)
  })

  test('in a hot tub it is near the 241 at 40 °C of Wanninkhof 2014 (from memory), and falls without a step', () => {
    expect(Math.abs(schmidtNumberCO2(40) / 241 - 1)).toBeLessThan(0.03)
    expect(schmidtNumberCO2(30.001)).toBeCloseTo(schmidtNumberCO2(30), 1)
  })

  // Cole & Caraco 1998 at Schmidt 600 (20 °C): 2.07 + 0.215 U^1.7 cm/h
  test.each([
    [0, 0.497],
    [2, 0.664],
    [3, 0.831],
    [5, 1.293],
  ])('at a wind of %d m/s the transfer velocity is %d m/day', (wind, velocity) => {
    expect(Math.abs(gasTransferVelocityMPerDay(wind, 20) - velocity)).toBeLessThan(0.002)
  })

  // carbonate alkalinity 80, pH 7.5, 25 °C, wind 2 m/s, air 420 µatm: k 0.750 m/day, 0.0743 mol/m² day
  test('the worked flux is 0.0743 mol/m² day, and a day of it over 1.4 m raises pH to about 7.76', () => {
    const { totals, equilibrium } = stateOf({ pH: 7.5, ta_mg_per_L_as_CaCO3: 80, temperature_C: 25 })
    const k = gasTransferVelocityMPerDay(2, 25)
    expect(k).toBeCloseTo(0.75, 2)
    const flux = co2FluxMolPerM2Day(equilibrium, Math.log10(420e-6), k)
    // activity coefficients at I = 0.0016, left out of the worked example, lower CO2 by 4 %
    expect(Math.abs(flux / 0.0743 - 1)).toBeLessThan(0.06)
    const later = good(equilibrate(addTotals(totals, { carbonMol: -flux / 1.4 / 1000 }), ORACLE))
    expect(Math.abs(later.pH - 7.76)).toBeLessThan(0.03)
  })

  test('water in balance with air exchanges nothing, and holds 0.629 mg/L of CO2 at 25 °C', () => {
    const { equilibrium } = stateOf({ pH: 7.5, ta_mg_per_L_as_CaCO3: 80, temperature_C: 25 })
    expect(Math.abs(co2FluxMolPerM2Day(equilibrium, equilibrium.log10PCO2Atm, 0.7))).toBeLessThan(1e-12)
    expect(saturatedCO2MolPerKg(equilibrium, Math.log10(420e-6)) * 44009.5).toBeCloseTo(0.629, 2)
  })
})
