import { type Problem, under } from '../base/index.ts'
import { type OwnProduct, type ProductList, productsWith } from '../chemicals/index.ts'
import { type LabelledProduct, momentMs, type PackagePrice, type Spec, type System } from '../document/index.ts'
import { memoLast } from './memo.ts'
import { systemById } from './volume.ts'

const DAY_MS = 86_400_000

/** Whole days since the product was bought, or opened where that is all that is known; at least 0. */
function ageDays({ boughtAt, openedAt }: LabelledProduct, nowMs: number): number | undefined {
  const moments = [boughtAt, openedAt].flatMap((at) => (at === undefined ? [] : [momentMs(at)]))
  if (moments.length === 0) return undefined
  return Math.max(0, Math.floor((nowMs - Math.min(...moments)) / DAY_MS))
}

/** What is in stock, by product [g]. */
export function stockOf(system: System): { readonly [productId: string]: number } {
  return Object.fromEntries(system.stock.map(({ product, amountG }) => [product, amountG]))
}

/** The label as the table of chemicals wants it, fresh. */
function freshLabel({ id, label, like, strength, basis, densityKgPerL, packages }: LabelledProduct): OwnProduct {
  return { id, label, like, strength, basis, densityKgPerL, packages }
}

/** The same as old as it is on that day. */
function agedLabel(own: LabelledProduct, nowMs: number): OwnProduct {
  return { ...freshLabel(own), storedC: own.storedC, ageDays: ageDays(own, nowMs) }
}

/** The generic products and these own ones, as strong as they still are at that moment. */
export function productsOn(
  own: readonly LabelledProduct[],
  prices: readonly PackagePrice[],
  nowMs: number,
): ProductList {
  return productsWith(
    own.map((each) => agedLabel(each, nowMs)),
    prices,
  )
}

const listOn = memoLast((spec: Spec, systemId: string, day: number): ProductList => {
  const system = systemById(spec, systemId)
  return productsOn(system?.ownProducts ?? [], system?.prices ?? [], day * DAY_MS)
})

/**
 * Every product that this system can be dosed with: the generic ones and the owner's own, these as strong as they still are
 * on the day of `nowMs`, all with the owner's prices. An own one that can't be counted stands among its problems.
 */
export function deriveProducts(spec: Spec, systemId: string, nowMs: number): ProductList {
  return listOn(spec, systemId, Math.floor(nowMs / DAY_MS) + 1)
}

/**
 * Labels that can't be, each with its path in the document: a strength that the substance never has, say. Nothing is
 * reckoned with such a product until its label is corrected, and nothing of it is lost. Its age is left aside here.
 */
export const deriveLabelProblems = memoLast((spec: Spec): readonly Problem[] =>
  spec.systems.flatMap((system, i) =>
    productsWith((system.ownProducts ?? []).map(freshLabel)).problems.map((each) => under(`systems[${i}]`, each)),
  ),
)
