import { CONSTANT_SETS, logKAt } from './constants.ts'
import { MOLAR_MASSES_G_PER_MOL as MASS, MG_CACO3_PER_EQ, molPerKg } from './masses.ts'
import { type TableIndex, tableIndex } from './table-index.ts'
import type { Constants, Equilibrium, WaterReading } from './types.ts'

/** One reason, and how much of the difference it makes: above zero where it lifts the table index over calcite SI. */
export interface IndexTerm {
  readonly id: 'temperature' | 'alkalinity' | 'salt' | 'pairs' | 'constants'
  readonly value: number
  readonly words: string
}

export interface IndexDifference {
  readonly tableIndex: number
  readonly calciteSI: number
  /** tableIndex − calciteSI: the sum of all terms. */
  readonly difference: number
  /** Largest first. */
  readonly terms: readonly IndexTerm[]
  /** One sentence for a person, with which of the two to act on. */
  readonly sentence: string
}

/** Below this the two say the same: the table is printed in steps of 0.1. */
const AGREE = 0.1
const REFERENCE_C = 25
/** log10 of the activity coefficients of calcium and bicarbonate in plain water, ionic strength 0.01: what 12.1 stands for. */
const PLAIN_LOG_GAMMAS = -0.2165
const PLAIN_TDS_FACTOR = 12.1

/**
 * Why the trade's table index and calcite SI differ in this water, as terms that sum to the difference [-].
 * Equation: SI = pH + log m(Ca) + log m(HCO3) + log γ(Ca) γ(HCO3) + pK(calcite) − pK2; the table's pH + TF + CF + AF − 12.1 is
 *   taken from it term by term: temperature (TF against pK(calcite) − pK2, from 25 °C), alkalinity (log of total over
 *   carbonate), salt (12.1 or 12.2 against γ), pairs (log of total over free for Ca and HCO3), constants (what is left).
 * Symbols: m free molality; γ activity coefficient.
 * Valid for: a water with calcium, carbonate and alkalinity above zero; undefined without.
 * Source: definitions of both indices; the split is this program's own.
 * Accuracy: the terms sum exactly; how they are split between salt and constants rests on the reference of 0.01 mol/kg.
 */
export function whyIndicesDiffer(
  reading: WaterReading,
  equilibrium: Equilibrium,
  constants: Constants = CONSTANT_SETS.default,
): IndexDifference | undefined {
  const { calciteSI, alkalinity, species, logGammas, temperatureC } = equilibrium
  const calcium = molPerKg(reading.ch_mg_per_L_as_CaCO3 ?? 0, MASS.calciumCarbonate)
  const total = reading.ta_mg_per_L_as_CaCO3
  if (!(calcium > 0 && total > 0 && alkalinity.carbonate > 0) || !Number.isFinite(calciteSI)) return undefined
  const table = tableIndex(reading)
  const difference = table.index - calciteSI
  const temperature =
    table.temperatureFactor -
    factorAt25(reading) -
    (solubility(constants, temperatureC) - solubility(constants, REFERENCE_C))
  const alkalinityTerm = Math.log10(total / alkalinity.carbonate)
  const salt = PLAIN_TDS_FACTOR - table.tdsFactor - (logGammas.ca + logGammas.hco3 - PLAIN_LOG_GAMMAS)
  const freeCalcium = species.ca / calcium
  const freeBicarbonate = species.hco3 / (alkalinity.carbonate / MG_CACO3_PER_EQ)
  const pairs = -Math.log10(freeCalcium * freeBicarbonate)
  const rest = difference - temperature - alkalinityTerm - salt - pairs
  const other = total - alkalinity.carbonate
  const term = (id: IndexTerm['id'], value: number, words: string): IndexTerm => ({ id, value, words })
  const terms = [
    term(
      'temperature',
      temperature,
      `its temperature factor is ${by(temperature)} too ${temperature < 0 ? 'low' : 'high'} for ${temperatureC.toFixed(0)} °C`,
    ),
    term(
      'alkalinity',
      alkalinityTerm,
      `it counts ${other.toFixed(0)} mg/L of alkalinity as carbonate that belong to ${holders(equilibrium)}`,
    ),
    term(
      'salt',
      salt,
      `it knows dissolved salt only as one step, and here salt ${salt > 0 ? 'weakens' : 'strengthens'} calcium and carbonate by ${by(salt)} against plain water`,
    ),
    term('pairs', pairs, pairWords(freeCalcium, freeBicarbonate)),
    term(
      'constants',
      rest,
      `its printed constants are ${by(rest)} ${rest < 0 ? 'lower' : 'higher'} than calcite’s own solubility`,
    ),
  ].toSorted((a, b) => Math.abs(b.value) - Math.abs(a.value))
  return { tableIndex: table.index, calciteSI, difference, terms, sentence: sentenceOf(difference, terms) }
}

/** Of the terms that pull the way the difference goes, the largest is the reason. */
function sentenceOf(difference: number, terms: readonly IndexTerm[]): string {
  if (Math.abs(difference) < AGREE)
    return `Both say the same here, within ${AGREE}, which is the table’s own step; where they part, act on calcite SI.`
  const main = terms.find(({ value }) => value > 0 === difference > 0) ?? terms[0]
  return `The table index reads ${by(difference)} ${difference > 0 ? 'above' : 'below'} calcite SI here, mostly because ${main?.words ?? ''}; act on calcite SI.`
}

const by = (value: number): string => Math.abs(value).toFixed(2)

function factorAt25(reading: WaterReading): TableIndex['temperatureFactor'] {
  return tableIndex({ ...reading, temperature_C: REFERENCE_C }).temperatureFactor
}

/** pK(calcite) − pK2: what temperature does to the index. */
function solubility(constants: Constants, temperatureC: number): number {
  const at = (id: 'calcite' | 'bicarbonate') => logKAt(constants.reactions[id].logK, temperatureC + 273.15)
  return -at('calcite') - at('bicarbonate')
}

/** The larger of the two shares that the table takes for the whole. */
function pairWords(freeCalcium: number, freeBicarbonate: number): string {
  return freeCalcium < freeBicarbonate
    ? `it counts all calcium as free, and ${(100 * (1 - freeCalcium)).toFixed(0)} % of it is held by sulfate and bicarbonate`
    : `it counts all carbonate alkalinity as bicarbonate, and ${(100 * (1 - freeBicarbonate)).toFixed(0)} % of it is carbonate or held by calcium, magnesium and sodium`
}

/** What holds the alkalinity that is no carbonate, largest first, in words. */
function holders({ alkalinity }: Equilibrium): string {
  const parts = [
    ['stabiliser', alkalinity.cyanurate + alkalinity.chlorinatedCyanurate],
    ['borate', alkalinity.borate],
    ['hypochlorite', alkalinity.hypochlorite],
    ['hydroxide', alkalinity.hydroxide],
  ] as const
  const largest = Math.max(...parts.map(([, value]) => value))
  const named = parts.filter(([, value]) => value > 0.2 * largest).toSorted(([, a], [, b]) => b - a)
  return named.map(([name]) => name).join(' and ') || 'nothing else'
}
