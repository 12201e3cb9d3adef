import { type Problem, under } from '../base/index.ts'
import { idTaken } from './label-problems.ts'
import { type OwnProduct, ownProduct } from './own.ts'
import { badPrice, noSuchPackage } from './problems.ts'
import { GENERIC_PRODUCTS, type ProductList } from './products.ts'
import type { Product } from './types.ts'

/** What a package costs, in the owner's currency. */
export interface Price {
  readonly product: string
  readonly packageLabel: string
  readonly price: number
}

/**
 * The generic products and an owner's own ones, with the owner's prices on their packages. An own product that can't be
 * counted is left out of `rows`, stands in `problems` with its path, and asking for it by id gives that Problem.
 */
export function productsWith(own: readonly OwnProduct[], prices: readonly Price[] = []): ProductList {
  if (own.length === 0 && prices.length === 0) return GENERIC_PRODUCTS
  const good = new Map<string, Product>()
  const bad = new Map<string, Problem>()
  const problems: Problem[] = []
  for (const [index, each] of own.entries()) {
    const isGeneric = GENERIC_PRODUCTS.find(each.id).ok
    const isTwice = good.has(each.id) || bad.has(each.id)
    const made = isGeneric || isTwice ? undefined : ownProduct(each)
    if (made?.ok) good.set(each.id, made.value)
    else {
      const problem = under(`ownProducts[${index}]`, made ? made.problem : idTaken(each.id, isGeneric))
      problems.push(problem)
      if (made) bad.set(each.id, problem)
    }
  }
  const known = [...GENERIC_PRODUCTS.rows, ...good.values()]
  problems.push(...priceProblems(known, prices))
  const byId = new Map(known.map((product) => [product.id, priced(product, prices)]))
  return {
    rows: [...byId.values()],
    problems,
    find: (idOrAlias) => {
      const problem = bad.get(idOrAlias)
      if (problem) return { ok: false, problem }
      const mine = byId.get(idOrAlias)
      if (mine) return { ok: true, value: { product: mine, basis: 'g' } }
      const generic = GENERIC_PRODUCTS.find(idOrAlias)
      if (!generic.ok) return generic
      const { product, basis } = generic.value
      return { ok: true, value: { product: byId.get(product.id) ?? product, basis } }
    },
  }
}

function priced(product: Product, prices: readonly Price[]): Product {
  const own = prices.filter((each) => each.product === product.id && each.price >= 0)
  if (own.length === 0) return product
  const priceOf = (label: string) => own.findLast(({ packageLabel }) => packageLabel === label)?.price
  return {
    ...product,
    packages: product.packages.map((pack) => ({ ...pack, price: priceOf(pack.label) ?? pack.price })),
  }
}

function priceProblems(known: readonly Product[], prices: readonly Price[]): Problem[] {
  return prices.flatMap((each, index): Problem[] => {
    const path = `prices[${index}]`
    const product = known.find(({ id }) => id === each.product)
    const labels = product?.packages.map(({ label }) => label) ?? []
    if (!labels.includes(each.packageLabel))
      return [under(path, noSuchPackage(each.packageLabel, product?.label ?? each.product, labels))]
    return each.price >= 0 ? [] : [under(path, badPrice())]
  })
}
