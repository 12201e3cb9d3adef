import { invariant } from '../base/index.ts'
import type { Delta, TotalKey, Totals } from './types.ts'

export const TOTAL_KEYS: readonly TotalKey[] = Object.freeze([
  'alkalinityEq',
  'carbonMol',
  'calciumMol',
  'magnesiumMol',
  'sodiumMol',
  'potassiumMol',
  'chlorideMol',
  'sulfateMol',
  'boronMol',
  'cyanurateMol',
  'chlorineMol',
  'lithiumMol',
] as const)

/** Water with nothing in it, at 25 °C. */
export const PURE_WATER: Totals = Object.freeze({
  alkalinityEq: 0,
  carbonMol: 0,
  calciumMol: 0,
  magnesiumMol: 0,
  sodiumMol: 0,
  potassiumMol: 0,
  chlorideMol: 0,
  sulfateMol: 0,
  boronMol: 0,
  cyanurateMol: 0,
  chlorineMol: 0,
  lithiumMol: 0,
  temperatureC: 25,
})

type Amounts = { readonly [key in TotalKey]: number }

/** Builds amounts key by key, so that every state has the same shape and the solver stays fast. */
function each(value: (key: TotalKey) => number): Amounts {
  return {
    alkalinityEq: value('alkalinityEq'),
    carbonMol: value('carbonMol'),
    calciumMol: value('calciumMol'),
    magnesiumMol: value('magnesiumMol'),
    sodiumMol: value('sodiumMol'),
    potassiumMol: value('potassiumMol'),
    chlorideMol: value('chlorideMol'),
    sulfateMol: value('sulfateMol'),
    boronMol: value('boronMol'),
    cyanurateMol: value('cyanurateMol'),
    chlorineMol: value('chlorineMol'),
    lithiumMol: value('lithiumMol'),
  }
}

/** The water after a change of its totals. Written out, since a season does it a million times. */
export function addTotals(totals: Totals, delta: Delta): Totals {
  return {
    alkalinityEq: totals.alkalinityEq + (delta.alkalinityEq ?? 0),
    carbonMol: totals.carbonMol + (delta.carbonMol ?? 0),
    calciumMol: totals.calciumMol + (delta.calciumMol ?? 0),
    magnesiumMol: totals.magnesiumMol + (delta.magnesiumMol ?? 0),
    sodiumMol: totals.sodiumMol + (delta.sodiumMol ?? 0),
    potassiumMol: totals.potassiumMol + (delta.potassiumMol ?? 0),
    chlorideMol: totals.chlorideMol + (delta.chlorideMol ?? 0),
    sulfateMol: totals.sulfateMol + (delta.sulfateMol ?? 0),
    boronMol: totals.boronMol + (delta.boronMol ?? 0),
    cyanurateMol: totals.cyanurateMol + (delta.cyanurateMol ?? 0),
    chlorineMol: totals.chlorineMol + (delta.chlorineMol ?? 0),
    lithiumMol: (totals.lithiumMol ?? 0) + (delta.lithiumMol ?? 0),
    temperatureC: totals.temperatureC,
  }
}

export function scaleDelta(delta: Delta, factor: number): Delta {
  return each((key) => (delta[key] ?? 0) * factor)
}

export function sumDeltas(deltas: readonly Delta[]): Delta {
  return each((key) => deltas.reduce((sum, delta) => sum + (delta[key] ?? 0), 0))
}

/** Blend of (1 − fractionB) of water a with fractionB of water b, by mass; the heat blends too. */
export function mix(a: Totals, b: Totals, fractionB: number): Totals {
  invariant(fractionB >= 0 && fractionB <= 1, `a blend's fraction is between 0 and 1, not ${fractionB}`)
  const fractionA = 1 - fractionB
  return {
    ...each((key) => fractionA * (a[key] ?? 0) + fractionB * (b[key] ?? 0)),
    temperatureC: fractionA * a.temperatureC + fractionB * b.temperatureC,
  }
}

/** Evaporation: water leaves and every solute stays, so each total grows by the factor (below 1: dilution by pure water). */
export function concentrate(totals: Totals, factor: number): Totals {
  invariant(factor > 0 && Number.isFinite(factor), `a concentration factor is positive, not ${factor}`)
  return { ...each((key) => (totals[key] ?? 0) * factor), temperatureC: totals.temperatureC }
}

/** The same water warmed or cooled, nothing exchanged. */
export function atTemperature(totals: Totals, temperatureC: number): Totals {
  return { ...each((key) => totals[key] ?? 0), temperatureC }
}

/**
 * Charge of the strong ions [eq/kg]: what alkalinity equals in every consistent water.
 * Equation: Na + K + Li + 2 Ca + 2 Mg − Cl − 2 SO4.
 * Symbols: conserved totals [mol/kg].
 * Valid for: always; it is the electroneutrality condition.
 * Source: definition of alkalinity, Stumm & Morgan, Aquatic Chemistry, ch. 4 (from memory).
 * Accuracy: exact.
 */
export function strongIonChargeEq(totals: Totals): number {
  return (
    totals.sodiumMol +
    totals.potassiumMol +
    (totals.lithiumMol ?? 0) +
    2 * (totals.calciumMol + totals.magnesiumMol - totals.sulfateMol) -
    totals.chlorideMol
  )
}
