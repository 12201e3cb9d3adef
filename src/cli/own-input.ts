import { fail, ok, type Problem, type Result } from '../base/index.ts'
import type { ProductList } from '../chemicals/index.ts'
import { productsOn } from '../derive/index.ts'
import { ownProductsFrom } from '../document/index.ts'

/** The generic products with those of a line's `ownProducts`, if any, as strong as they still are. */
export function productsOfLine(
  line: Readonly<Record<string, unknown>>,
  nowMs: number,
): Result<ProductList, readonly Problem[]> {
  const own = ownProductsFrom(line['ownProducts'], 'ownProducts')
  if (!own.ok) return own
  const products = productsOn(own.value, [], nowMs)
  return products.problems.length > 0 ? fail(products.problems) : ok(products)
}
