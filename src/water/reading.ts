import { fail, ok, type Result } from '../base/index.ts'
import { HIGHEST_C, LOWEST_C } from './checks.ts'
import { equilibrateAtPH } from './equilibrate.ts'
import { MOLAR_MASSES_G_PER_MOL as MASS, MG_CACO3_PER_EQ, mgPerLOf, molPerKg } from './masses.ts'
import { chlorideTooLow, negativeReading, notANumber, readingOutOfRange } from './problems.ts'
import type { Constants, Equilibrium, FullReading, Totals, WaterReading } from './types.ts'

/** Readings that are amounts: one row each, all zero where absent. */
export const READING_KEYS = Object.freeze([
  'pH',
  'ta_mg_per_L_as_CaCO3',
  'ch_mg_per_L_as_CaCO3',
  'mg_hardness_mg_per_L_as_CaCO3',
  'sulfate_mg_per_L',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'fc_mg_per_L_as_Cl2',
  'salt_mg_per_L_as_NaCl',
  'temperature_C',
] as const satisfies readonly (keyof WaterReading)[])

const LOWEST_PH = 3
const HIGHEST_PH = 12

/** The reading with its absences filled: zero, and 25 °C. */
function fullReading(reading: WaterReading): Result<FullReading> {
  const full: FullReading = {
    pH: reading.pH,
    ta_mg_per_L_as_CaCO3: reading.ta_mg_per_L_as_CaCO3,
    ch_mg_per_L_as_CaCO3: reading.ch_mg_per_L_as_CaCO3 ?? 0,
    mg_hardness_mg_per_L_as_CaCO3: reading.mg_hardness_mg_per_L_as_CaCO3 ?? 0,
    sulfate_mg_per_L: reading.sulfate_mg_per_L ?? 0,
    cya_mg_per_L: reading.cya_mg_per_L ?? 0,
    borate_mg_per_L_as_B: reading.borate_mg_per_L_as_B ?? 0,
    fc_mg_per_L_as_Cl2: reading.fc_mg_per_L_as_Cl2 ?? 0,
    salt_mg_per_L_as_NaCl: reading.salt_mg_per_L_as_NaCl ?? 0,
    temperature_C: reading.temperature_C ?? 25,
  }
  for (const key of READING_KEYS) {
    const value = full[key]
    if (typeof value !== 'number' || !Number.isFinite(value)) return fail(notANumber(key, value))
    // alkalinity below zero is mineral acidity: a real, if bad, water
    if (value < 0 && key !== 'temperature_C' && key !== 'ta_mg_per_L_as_CaCO3') return fail(negativeReading(key, value))
  }
  if (full.pH < LOWEST_PH || full.pH > HIGHEST_PH) {
    return fail(readingOutOfRange('pH', full.pH, LOWEST_PH, HIGHEST_PH, ''))
  }
  if (full.temperature_C < LOWEST_C || full.temperature_C > HIGHEST_C) {
    return fail(readingOutOfRange('temperature_C', full.temperature_C, LOWEST_C, HIGHEST_C, ' °C'))
  }
  return ok(full)
}

/**
 * pH and total alkalinity as measured → conserved totals. Carbon follows from both without seeking a root; sodium closes
 * the charge balance. Readings that no water can have at once are a Problem that names them.
 */
export function totalsOf(reading: WaterReading, constants: Constants): Result<Totals> {
  const filled = fullReading(reading)
  if (!filled.ok) return filled
  const full = filled.value
  const alkalinityEq = full.ta_mg_per_L_as_CaCO3 / MG_CACO3_PER_EQ
  const calciumMol = molPerKg(full.ch_mg_per_L_as_CaCO3, MASS.calciumCarbonate)
  const magnesiumMol = molPerKg(full.mg_hardness_mg_per_L_as_CaCO3, MASS.calciumCarbonate)
  const chlorideMol = molPerKg(full.salt_mg_per_L_as_NaCl, MASS.sodiumChloride)
  const sulfateMol = molPerKg(full.sulfate_mg_per_L, MASS.sulfate)
  const sodiumMol = alkalinityEq + chlorideMol + 2 * (sulfateMol - calciumMol - magnesiumMol)
  if (sodiumMol < -1e-12) {
    return fail(
      chlorideTooLow({
        calciumEq: 2 * calciumMol,
        magnesiumEq: 2 * magnesiumMol,
        alkalinityEq,
        chlorideEq: chlorideMol,
        sulfateEq: 2 * sulfateMol,
      }),
    )
  }
  const solved = equilibrateAtPH(
    {
      alkalinityEq,
      carbonMol: 0,
      calciumMol,
      magnesiumMol,
      sodiumMol,
      potassiumMol: 0,
      chlorideMol,
      sulfateMol,
      boronMol: molPerKg(full.borate_mg_per_L_as_B, MASS.boron),
      cyanurateMol: molPerKg(full.cya_mg_per_L, MASS.cyanuricAcid),
      chlorineMol: molPerKg(full.fc_mg_per_L_as_Cl2, MASS.chlorineAsCl2),
      lithiumMol: 0,
      temperatureC: full.temperature_C,
    },
    full.pH,
    constants,
  )
  return solved.ok ? ok(solved.value.totals) : solved
}

/**
 * The least salt that makes a reading electrically neutral [mg/L as NaCl]; 0 where it already is without any.
 * For a water whose salt nobody measured: hardness of 300 with alkalinity of 80 cannot be without some 257 mg/L.
 */
export function leastSaltMgPerL(reading: WaterReading): number {
  const hardness = (reading.ch_mg_per_L_as_CaCO3 ?? 0) + (reading.mg_hardness_mg_per_L_as_CaCO3 ?? 0)
  const hardnessEq = 2 * molPerKg(hardness, MASS.calciumCarbonate)
  const sulfateEq = 2 * molPerKg(reading.sulfate_mg_per_L ?? 0, MASS.sulfate)
  const missing = hardnessEq - sulfateEq - reading.ta_mg_per_L_as_CaCO3 / MG_CACO3_PER_EQ
  return Math.max(0, mgPerLOf(missing, MASS.sodiumChloride))
}

/** What would be read in this water: all readings present. */
export function readingOf(totals: Totals, equilibrium: Equilibrium): FullReading {
  return {
    pH: equilibrium.pH,
    ta_mg_per_L_as_CaCO3: totals.alkalinityEq * MG_CACO3_PER_EQ,
    ch_mg_per_L_as_CaCO3: mgPerLOf(totals.calciumMol, MASS.calciumCarbonate),
    mg_hardness_mg_per_L_as_CaCO3: mgPerLOf(totals.magnesiumMol, MASS.calciumCarbonate),
    sulfate_mg_per_L: mgPerLOf(totals.sulfateMol, MASS.sulfate),
    cya_mg_per_L: mgPerLOf(totals.cyanurateMol, MASS.cyanuricAcid),
    borate_mg_per_L_as_B: mgPerLOf(totals.boronMol, MASS.boron),
    fc_mg_per_L_as_Cl2: mgPerLOf(totals.chlorineMol, MASS.chlorineAsCl2),
    salt_mg_per_L_as_NaCl: mgPerLOf(totals.chlorideMol, MASS.sodiumChloride),
    temperature_C: totals.temperatureC,
  }
}
