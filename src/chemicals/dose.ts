import { fail, invariant, ok, type Result } from '../base/index.ts'
import { type Delta, formulaDelta, scaleDelta, sumDeltas } from '../water/index.ts'
import { doseAmount } from './problems.ts'
import { GENERIC_PRODUCTS, type ProductList, productById } from './products.ts'
import type { Product } from './types.ts'

const L_PER_M3 = 1000
const perGram = new WeakMap<Product, Delta>()

/**
 * Change of conserved totals by one gram of a product in one kilogram of water [mol or eq per kg].
 * Equation: Σ parts (gPer100g / 100 / gPerMol) count δ(formula).
 * Symbols: δ change of totals by one mol of the formula.
 * Valid for: any product of the table; water that a product brings along is ignored.
 * Source: the composition stated in the product's row.
 * Accuracy: that of the stated strength.
 */
export function deltaPerGram(product: Product): Delta {
  const known = perGram.get(product)
  if (known) return known
  const delta = sumDeltas(
    product.contains.map((part) => {
      const mol = formulaDelta(part.formula)
      invariant(mol, `no totals for the formula ${part.formula} in ${product.id}`)
      return scaleDelta(mol, ((part.gPer100g / 100) * part.count) / part.gPerMol)
    }),
  )
  perGram.set(product, delta)
  return delta
}

/** Change of totals [mol or eq per kg of water] by grams of product in a cubic metre; a litre counts as a kilogram. */
export function deltaOf(product: Product, gPerM3: number): Delta {
  return scaleDelta(deltaPerGram(product), gPerM3 / L_PER_M3)
}

export interface DoseAmount {
  readonly gPerM3?: number | undefined
  readonly mLPerM3?: number | undefined
}

/** Change of totals by a dose given by id or alias, in grams or millilitres per cubic metre. */
export function doseDelta(
  idOrAlias: string,
  amount: DoseAmount,
  products: ProductList = GENERIC_PRODUCTS,
): Result<Delta> {
  const found = productById(idOrAlias, products)
  if (!found.ok) return found
  const gPerM3 = massOf(found.value.product, amount)
  if (gPerM3 === undefined || !Number.isFinite(gPerM3) || gPerM3 < 0)
    return fail(doseAmount(amount.mLPerM3 === undefined ? 'gPerM3' : 'mLPerM3'))
  return ok(deltaOf(found.value.product, gPerM3))
}

function massOf(product: Product, amount: DoseAmount): number | undefined {
  if (amount.gPerM3 !== undefined && amount.mLPerM3 !== undefined) return undefined
  if (amount.gPerM3 !== undefined) return amount.gPerM3
  if (amount.mLPerM3 === undefined) return undefined
  return product.form === 'liquid' ? amount.mLPerM3 * product.densityGPerML : undefined
}
