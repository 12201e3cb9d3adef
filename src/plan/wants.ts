import { deltaOf, type Product } from '../chemicals/index.ts'
import { addTotals, type Totals } from '../water/index.ts'
import { effectPerGPerM3, type LinearKey, TOTAL_OF } from './effect.ts'
import { type PackageSystem, wholePackages } from './packages.ts'
import { isInside, TARGET_LABELS } from './targets.ts'
import type { KnownReading, Purpose, Targets } from './types.ts'

/** A product that a plan wants in the water, and how much. */
export interface Want {
  readonly purpose: Purpose
  readonly product: Product
  readonly gPerM3: number
}

export interface Wants {
  readonly wants: readonly Want[]
  readonly totals: Totals
  readonly warnings: readonly string[]
}

/** In solving order: chlorine may bring calcium, stabiliser and salt along; calcium brings salt. */
const FIXED: readonly { readonly purpose: Purpose; readonly key: LinearKey }[] = [
  { purpose: 'openingChlorine', key: 'fc_mg_per_L_as_Cl2' },
  { purpose: 'calcium', key: 'ch_mg_per_L_as_CaCO3' },
  { purpose: 'stabiliser', key: 'cya_mg_per_L' },
  { purpose: 'borate', key: 'borate_mg_per_L_as_B' },
  { purpose: 'salt', key: 'salt_mg_per_L_as_NaCl' },
]

/**
 * What raises the readings that stand below their bands, pH and alkalinity aside, up to the aim; whole packages where they
 * are asked for and land inside the band. An unknown reading wants nothing.
 */
export function fixedWants(
  start: Totals,
  known: KnownReading,
  targets: Targets,
  products: { readonly [P in Purpose]: Product },
  volumeM3: number,
  /** Sizes to dose whole packages of; absent where the exact amount is wanted. */
  system: PackageSystem | undefined,
): Wants {
  const wants: Want[] = []
  const warnings: string[] = []
  let totals = start
  for (const { purpose, key } of FIXED) {
    const band = targets[key]
    if (!band || known[key] === undefined) continue
    const { total, mgPerMol } = TOTAL_OF[key]
    const value = (totals[total] ?? 0) * mgPerMol
    if (value >= band.low || isInside(value, band)) continue
    const product = products[purpose]
    const effect = effectPerGPerM3(product, key)
    if (!(effect > 0)) {
      warnings.push(
        `${product.label} does not raise ${TARGET_LABELS[key].toLowerCase()}; choose another product for it.`,
      )
      continue
    }
    const gramsTo = (aim: number) => ((aim - value) / effect) * volumeM3
    const whole =
      purpose === 'openingChlorine' || system === undefined
        ? undefined
        : wholePackages(product, gramsTo(band.aim), gramsTo(band.low), gramsTo(band.high), system)
    const gPerM3 = whole ? (whole.count * whole.massG) / volumeM3 : (band.aim - value) / effect
    wants.push({ purpose, product, gPerM3 })
    totals = addTotals(totals, deltaOf(product, gPerM3))
  }
  return { wants, totals, warnings }
}
