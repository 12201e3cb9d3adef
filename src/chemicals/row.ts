import type { Active, Package, Part, Product, Sourced } from './types.ts'

const LB_G = 453.59237
const US_GALLON_ML = 3785.411784

/** `gPer100g` of a substance, whose mol brings `count` mol of the formula. */
export const part = (formula: string, gPer100g: number, gPerMol: number, count = 1): Part => ({
  formula,
  count,
  gPer100g,
  gPerMol,
})

/** A part stated per litre of a liquid [g/L]. */
export const partPerL = (formula: string, gPerL: number, densityGPerML: number, gPerMol: number): Part =>
  part(formula, gPerL / 10 / densityGPerML, gPerMol)

/** What a label's percentage counts; pure is the most there is unless something sets a lower bound. */
export const active = (
  substance: string,
  gPerMol: number,
  mostPercent = 100,
  moreMeans = 'Nothing is stronger than the pure substance.',
): Active => ({ substance, gPerMol, mostPercent, moreMeans })

export const kg = (...sizes: number[]): Package[] =>
  sizes.map((size) => ({ label: `${size} kg`, massG: size * 1000, system: 'metric' }))

export const lb = (...sizes: number[]): Package[] =>
  sizes.map((size) => ({ label: `${size} lb`, massG: size * LB_G, system: 'us' }))

export const litres = (densityGPerML: number, ...sizes: number[]): Package[] =>
  sizes.map((size) => ({ label: `${size} L`, massG: size * 1000 * densityGPerML, system: 'metric' }))

export const gallons = (densityGPerML: number, ...sizes: number[]): Package[] =>
  sizes.map((size) => ({
    label: `${size} US gal`,
    massG: size * US_GALLON_ML * densityGPerML,
    system: 'us',
  }))

export const seen = (what: string, source: string): Sourced => ({ what, source, status: 'seen' })
export const memory = (what: string): Sourced => ({ what, source: 'from memory', status: 'from memory' })
export const derived = (what: string): Sourced => ({ what, source: 'molar masses', status: 'derived' })
export const practice = (what: string): Sourced => ({
  what,
  source: 'common practice, no source',
  status: 'common practice, no source',
})

type Given = Omit<Product, 'isAccounting' | 'availableChlorine' | 'aliases' | 'isDensityRough'> &
  Partial<Pick<Product, 'isAccounting' | 'availableChlorine' | 'aliases' | 'isDensityRough'>>

/** Fills in what most rows share: no chlorine, no alias, a rough density unless liquid, a thing to buy. */
export const product = (given: Given): Product => ({
  isAccounting: false,
  availableChlorine: 0,
  aliases: [],
  isDensityRough: given.form !== 'liquid',
  ...given,
})
