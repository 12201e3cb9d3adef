import { invariant } from '../base/index.ts'
import type { Product } from './types.ts'

const G_PER_LB = 453.59237
const G_PER_OZ = G_PER_LB / 16
/** US customary, by definition of the inch: 231 in³ a gallon, 128 fl oz or 16 cups in it. */
const ML_PER_FL_OZ = 29.5735295625
const ML_PER_CUP = 8 * ML_PER_FL_OZ
/** How far a scoop may be off where no spread is known: our own estimate. */
const SCOOP_SPREAD = 0.15

/** An amount as it is measured out. A scale is always right; a scoop of grains is rough, a jug of liquid is not. */
export interface PourAmount {
  readonly byScale: { readonly g: number; readonly oz: number; readonly lb: number }
  /** Absent for gases and tablets: nobody scoops them. */
  readonly byVolume?: PouredVolume | undefined
  /** How many tablets, where it comes in pieces. */
  readonly pieces?: number | undefined
}

export interface PouredVolume {
  readonly mL: number
  /** US fluid ounces and US cups. */
  readonly flOz: number
  readonly cups: number
  readonly isRough: boolean
  /** From a heavy scoop to a light one [mL]; both `mL` where it is not rough. */
  readonly lowML: number
  readonly highML: number
  /** Said beside a rough volume; empty beside an exact one. */
  readonly note: string
}

const ROUGH =
  'Rough: how much a scoop holds depends on how it is filled and on the grain. Weigh it where too much cannot be taken back.'

/** How much of a product to weigh or to pour for its grams. */
export function pourAmount(product: Product, amountG: number): PourAmount {
  invariant(Number.isFinite(amountG) && amountG >= 0, `an amount of ${amountG} g can not be poured`)
  const byScale = { g: amountG, oz: amountG / G_PER_OZ, lb: amountG / G_PER_LB }
  if (product.pieceG !== undefined) return { byScale, pieces: amountG / product.pieceG }
  if (product.form === 'gas' || product.form === 'tablet' || product.isAccounting) return { byScale }
  const mL = amountG / product.densityGPerML
  const [light, heavy] = product.isDensityRough ? spread(product) : [product.densityGPerML, product.densityGPerML]
  return {
    byScale,
    byVolume: {
      mL,
      flOz: mL / ML_PER_FL_OZ,
      cups: mL / ML_PER_CUP,
      isRough: product.isDensityRough,
      lowML: amountG / heavy,
      highML: amountG / light,
      note: product.isDensityRough ? ROUGH : '',
    },
  }
}

function spread(product: Product): readonly [light: number, heavy: number] {
  return product.bulkGPerML ?? [product.densityGPerML * (1 - SCOOP_SPREAD), product.densityGPerML * (1 + SCOOP_SPREAD)]
}
