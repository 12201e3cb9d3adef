import { productById } from '../chemicals/index.ts'
import type { PurposeProducts } from './check-input.ts'
import { REGIMES } from './regimes.ts'
import type { OpeningInput } from './types.ts'

/**
 * The products with a first chlorine that is in the water the same day: tablets dissolve over days, so the regime's own
 * first chlorine stands in for them, and that is said where any is dosed.
 */
export function quickChlorine(
  products: PurposeProducts,
  input: OpeningInput,
): { readonly products: PurposeProducts; readonly warnings: readonly string[] } {
  const chosen = products.openingChlorine
  const usual = REGIMES.get(input.regimeId)?.products.openingChlorine
  const found = chosen.form === 'tablet' && usual ? productById(usual, input.productList) : undefined
  if (!found?.ok) return { products, warnings: [] }
  const { product } = found.value
  return {
    products: { ...products, openingChlorine: product },
    warnings: [
      `${chosen.label} dissolves over days and raises nothing the same day; for the first chlorine the plan takes ${product.label.toLowerCase()} instead.`,
    ],
  }
}
