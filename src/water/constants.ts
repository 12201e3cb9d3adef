import { MANOV_BORIC_ACID, ORACLE_REACTIONS, WAHMAN_REACTIONS } from './reactions.ts'
import type { Constants, LogK, Reaction, ReactionId } from './types.ts'

const GAS_CONSTANT_KJ_PER_MOL_K = 8.314462618e-3
const T25_K = 298.15

/**
 * log10 of an equilibrium constant [-].
 * Equation: A1 + A2 T + A3/T + A4 log10 T + A5/T² + A6 T²; or logK25 + ΔH (1/298.15 − 1/T) / (R ln 10).
 * Symbols: T temperature [K]; ΔH enthalpy of reaction [kJ/mol]; R gas constant.
 * Valid for: 0 to 60 °C here.
 * Source: the expression of the PHREEQC manual (Parkhurst & Appelo 2013); van 't Hoff.
 * Accuracy: that of the row's coefficients.
 */
export function logKAt(logK: LogK, temperatureK: number): number {
  if (logK.kind === 'vantHoff') {
    const slope = logK.deltaHKJPerMol / (GAS_CONSTANT_KJ_PER_MOL_K * Math.LN10)
    return logK.logK25 + slope * (1 / T25_K - 1 / temperatureK)
  }
  const [a1 = 0, a2 = 0, a3 = 0, a4 = 0, a5 = 0, a6 = 0] = logK.a
  const t = temperatureK
  return a1 + a2 * t + a3 / t + a4 * Math.log10(t) + a5 / (t * t) + a6 * t * t
}

function replaced(base: Constants['reactions'], rows: readonly Reaction[]): Constants['reactions'] {
  return Object.freeze({ ...base, ...Object.fromEntries(rows.map((row) => [row.id, row])) })
}

const DATABASE_REACTIONS = Object.freeze(
  Object.fromEntries(ORACLE_REACTIONS.map((row) => [row.id, row])) as Record<ReactionId, Reaction>,
)

const ORACLE: Constants = Object.freeze({
  id: 'oracle',
  name: 'PHREEQC database with borate, chlorine and cyanurate added',
  reactions: DATABASE_REACTIONS,
})

const DEFAULT: Constants = Object.freeze({
  id: 'default',
  name: 'PHREEQC database, boric acid after Manov 1944',
  reactions: replaced(DATABASE_REACTIONS, [MANOV_BORIC_ACID]),
})

const wahmanOf = new WeakMap<Constants, Constants>()

/** The same set with the chlorine–cyanurate constants of Wahman (2018, 2019) in place of O'Brien's (1974). */
export function withWahman(constants: Constants): Constants {
  const known = wahmanOf.get(constants)
  if (known) return known
  const variant: Constants = Object.freeze({
    id: `${constants.id}-wahman`,
    name: `${constants.name}; chlorine and cyanurate after Wahman`,
    reactions: replaced(constants.reactions, WAHMAN_REACTIONS),
  })
  wahmanOf.set(constants, variant)
  return variant
}

/** `oracle` is the set the golden tables were computed with; MODEL.md argues for what `default` changes. */
export const CONSTANT_SETS = Object.freeze({
  default: DEFAULT,
  oracle: ORACLE,
  wahman: Object.freeze({ ...withWahman(DEFAULT), id: 'wahman' }),
})
