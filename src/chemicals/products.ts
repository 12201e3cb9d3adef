import { fail, ok, type Problem, type Result, table } from '../base/index.ts'
import { unknownProduct } from './problems.ts'
import { ACIDS } from './rows-acids.ts'
import { ALKALIS } from './rows-alkalis.ts'
import { HYPOCHLORITES } from './rows-hypochlorites.ts'
import { MINERALS } from './rows-minerals.ts'
import { OXIDANTS } from './rows-oxidants.ts'
import type { Product } from './types.ts'

/** Every generic product there is: a new one is a row in one of these lists. */
export const PRODUCTS = table<Product>([...ACIDS, ...ALKALIS, ...HYPOCHLORITES, ...OXIDANTS, ...MINERALS])

export interface FoundProduct {
  readonly product: Product
  /** What an amount under this name counts: grams, or millilitres for the liquid aliases that say so. */
  readonly basis: 'g' | 'mL'
}

/** Products that can be looked up: the generic ones, with an owner's own added by `productsWith`. */
export interface ProductList {
  readonly rows: readonly Product[]
  /** Own products that could not be counted, with their paths. */
  readonly problems: readonly Problem[]
  readonly find: (idOrAlias: string) => Result<FoundProduct>
}

const byName = new Map<string, FoundProduct>()
for (const product of PRODUCTS.rows) {
  byName.set(product.id, { product, basis: 'g' })
  for (const alias of product.aliases) byName.set(alias.name, { product, basis: alias.basis })
}

export const GENERIC_PRODUCTS: ProductList = Object.freeze({
  rows: PRODUCTS.rows,
  problems: [],
  find: (idOrAlias: string) => {
    const found = byName.get(idOrAlias)
    return found
      ? ok(found)
      : fail(
          unknownProduct(
            idOrAlias,
            PRODUCTS.rows.map((product) => product.id),
          ),
        )
  },
})

/** The product of an id or alias, among the generic ones unless a list with own ones is given. */
export function productById(idOrAlias: string, products: ProductList = GENERIC_PRODUCTS): Result<FoundProduct> {
  return products.find(idOrAlias)
}
