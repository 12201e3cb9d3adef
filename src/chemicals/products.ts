import { fail, ok, type Result, table } from '../base/index.ts'
import { ACIDS } from './rows-acids.ts'
import { ALKALIS } from './rows-alkalis.ts'
import { HYPOCHLORITES } from './rows-hypochlorites.ts'
import { MINERALS } from './rows-minerals.ts'
import { OXIDANTS } from './rows-oxidants.ts'
import type { Product } from './types.ts'

/** Every product there is: a new one is a row in one of these lists. */
export const PRODUCTS = table<Product>([...ACIDS, ...ALKALIS, ...HYPOCHLORITES, ...OXIDANTS, ...MINERALS])

export interface FoundProduct {
  readonly product: Product
  /** What an amount under this name counts: grams, or millilitres for the liquid aliases that say so. */
  readonly basis: 'g' | 'mL'
}

const byName = new Map<string, FoundProduct>()
for (const product of PRODUCTS.rows) {
  byName.set(product.id, { product, basis: 'g' })
  for (const alias of product.aliases) byName.set(alias.name, { product, basis: alias.basis })
}

/** The product of an id or alias. */
export function productById(idOrAlias: string): Result<FoundProduct> {
  const found = byName.get(idOrAlias)
  if (found) return ok(found)
  return fail({
    code: 'unknown-product',
    path: 'product',
    what: `There is no product called "${idOrAlias}".`,
    why: 'A dose can only be counted for a product whose composition is known.',
    hint: `Use one of: ${PRODUCTS.rows.map((product) => product.id).join(', ')}.`,
  })
}
