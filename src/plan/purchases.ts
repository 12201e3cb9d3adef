import { productById } from '../chemicals/index.ts'
import { buyingSize } from './packages.ts'
import type { DoseLine, OpeningInput, OpeningLine, PurchaseItem } from './types.ts'

/** What the lines still to come need, less what stands in the shed. */
export function purchasesFor(lines: readonly OpeningLine[], input: OpeningInput): PurchaseItem[] {
  const pending = lines.filter((line): line is DoseLine => line.kind === 'dose' && line.state !== 'done')
  const ids = [...new Set(pending.map((line) => line.productId))]
  return ids.flatMap((productId) => {
    const found = productById(productId)
    if (!found.ok) return []
    const own = pending.filter((line) => line.productId === productId)
    const needG = own.reduce((sum, line) => sum + line.amountG, 0)
    const inStockG = Math.max(0, input.stockG[productId] ?? 0)
    const missingG = Math.max(0, needG - inStockG)
    const whole = own.length === 1 && inStockG === 0 && own[0]?.packages?.isWhole ? own[0].packages : undefined
    const size = whole ?? buyingSize(found.value.product, missingG, input.packageSystem ?? 'metric')
    return [
      {
        productId,
        label: found.value.product.label,
        needG,
        inStockG,
        packageLabel: size?.label ?? '',
        count: missingG > 1e-6 * needG ? (size?.count ?? 0) : 0,
      },
    ]
  })
}
