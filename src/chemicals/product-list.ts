import { type Problem, under } from '../base/index.ts'
import { type OwnProduct, ownProduct } from './own.ts'
import { idTaken } from './problems.ts'
import { GENERIC_PRODUCTS, type ProductList } from './products.ts'
import type { Product } from './types.ts'

/**
 * The generic products and an owner's own ones. An own product that can't be counted is left out of `rows`, stands in
 * `problems` with its path, and asking for it by id gives that Problem.
 */
export function productsWith(own: readonly OwnProduct[]): ProductList {
  if (own.length === 0) return GENERIC_PRODUCTS
  const good = new Map<string, Product>()
  const bad = new Map<string, Problem>()
  const problems: Problem[] = []
  for (const [index, each] of own.entries()) {
    const isGeneric = GENERIC_PRODUCTS.find(each.id).ok
    const isTwice = good.has(each.id) || bad.has(each.id)
    const made = isGeneric || isTwice ? undefined : ownProduct(each)
    if (made?.ok) good.set(each.id, made.value)
    else {
      const problem = under(`[${index}]`, made ? made.problem : idTaken(each.id, isGeneric))
      problems.push(problem)
      if (made) bad.set(each.id, problem)
    }
  }
  return {
    rows: [...GENERIC_PRODUCTS.rows, ...good.values()],
    problems,
    find: (idOrAlias) => {
      const product = good.get(idOrAlias)
      if (product) return { ok: true, value: { product, basis: 'g' } }
      const problem = bad.get(idOrAlias)
      return problem ? { ok: false, problem } : GENERIC_PRODUCTS.find(idOrAlias)
    },
  }
}
