import type { Product } from '../chemicals/index.ts'
import type { NamedAmount } from './types.ts'

/** Two figures, rounded down: what lacks can be added, what is too much only waited for [g]. */
function roundedDown(g: number): number {
  if (!(g > 0)) return 0
  const unit = 10 ** (Math.floor(Math.log10(g)) - 1)
  return Number((Math.floor(g / unit + 1e-9) * unit).toPrecision(2))
}

export function grams(g: number): string {
  return `${roundedDown(g)} g`
}

/** An amount for a sentence: `text` stands in it, and the screen may put the owner's units in its place. */
export function namedAmount(product: Product, g: number): NamedAmount {
  return { text: grams(g), productId: product.id, amountG: roundedDown(g) }
}
