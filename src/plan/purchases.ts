import { productById } from '../chemicals/index.ts'
import { agedPerFresh } from './fresh.ts'
import { buyingSize } from './packages.ts'
import type { DoseLine, OpeningInput, OpeningLine, PurchaseItem, PurchaseSum } from './types.ts'

/** A need below this share of the amount is rounding [1]. */
const ROUNDING = 1e-6

/** What a plan needs of a product at one time. */
type Need = Pick<DoseLine, 'productId' | 'amountG' | 'packages'>

/** The doses still to come. */
export function pendingDoses(lines: readonly OpeningLine[]): readonly Need[] {
  return lines.filter((line): line is DoseLine => line.kind === 'dose' && line.state !== 'done')
}

/** What they come to by product, less what stands in the shed. */
export function purchasesFor(pending: readonly Need[], input: OpeningInput): PurchaseItem[] {
  const ids = [...new Set(pending.map((line) => line.productId))]
  return ids.flatMap((productId) => {
    const found = productById(productId, input.productList)
    if (!found.ok) return []
    const { product } = found.value
    const own = pending.filter((line) => line.productId === productId)
    const needG = own.reduce((sum, line) => sum + line.amountG, 0)
    const inStockG = Math.max(0, input.stockG[productId] ?? 0)
    // what is bought is as strong as its label, however old what stands in the shed is
    const missingG = Math.max(0, needG - inStockG) / agedPerFresh(product)
    const whole = own.length === 1 && inStockG === 0 && own[0]?.packages?.isWhole ? own[0].packages : undefined
    const size = whole ?? buyingSize(product, missingG, input.packageSystem ?? 'metric')
    const count = missingG > ROUNDING * needG ? (size?.count ?? 0) : 0
    const pack = product.packages.find((each) => each.label === size?.label)
    const cost = count === 0 ? 0 : pack?.price === undefined ? undefined : count * pack.price
    return [
      {
        productId,
        label: product.label,
        needG,
        inStockG,
        packageLabel: size?.label ?? '',
        count,
        leftoverG: Math.max(0, inStockG - needG) + Math.max(0, count * (pack?.massG ?? 0) - missingG),
        ...(product.fresh && count > 0 ? { missingFreshG: missingG } : {}),
        ...(cost === undefined ? {} : { cost }),
      },
    ]
  })
}

/** The sum only where it is one: with a price lacking it would read as cheaper than it is. */
export function sumOf(purchases: readonly PurchaseItem[]): PurchaseSum {
  const pricesUnknown = purchases.filter((item) => item.cost === undefined).length
  if (pricesUnknown > 0) return { pricesUnknown }
  return { pricesUnknown, cost: purchases.reduce((sum, item) => sum + (item.cost ?? 0), 0) }
}
