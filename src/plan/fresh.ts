import { type Product, type ProductList, productById } from '../chemicals/index.ts'
import { grams } from './named-amount.ts'
import type { DoseLine, OpeningInput, OpeningLine } from './types.ts'

/** How many grams of the aged one do what a gram as it is bought does [1]; 1 of what does not age. */
export function agedPerFresh({ fresh, availableChlorine }: Product): number {
  return fresh ? fresh.availableChlorine / availableChlorine : 1
}

/** What is not in stock has to be bought, and what is bought is as strong as its label: the products to count with. */
export function asBought(input: Pick<OpeningInput, 'productList' | 'stockG'>): ProductList | undefined {
  const { productList: list, stockG } = input
  if (!list?.rows.some((row) => row.fresh)) return list
  const asItWillBe = (product: Product): Product =>
    product.fresh && !((stockG[product.id] ?? 0) > 0) ? { ...product.fresh, packages: product.packages } : product
  return {
    rows: list.rows.map(asItWillBe),
    problems: list.problems,
    find: (id) => {
      const found = list.find(id)
      return found.ok ? { ok: true, value: { ...found.value, product: asItWillBe(found.value.product) } } : found
    },
  }
}

/** Below this factor what was lost is within what the rate leaves open, and not worth a word [1]. */
const WORTH_SAYING = 1.1

/** What to say where a line counts with one that aged, or would have. `input` has the list as it stands in the shed. */
export function freshWords(
  lines: readonly OpeningLine[],
  input: OpeningInput,
): { readonly lines: OpeningLine[]; readonly warnings: string[] } {
  const left = new Map<string, number>()
  const warnings = new Set<string>()
  const worded = lines.map((line): OpeningLine => {
    const found = isPending(line) ? productById(line.productId, input.productList) : undefined
    if (!isPending(line) || !found?.ok || !found.value.product.fresh) return line
    const { id, label, strength, fresh } = found.value.product
    const ratio = agedPerFresh(found.value.product)
    if (ratio < WORTH_SAYING) return line
    const inStockG = left.get(id) ?? Math.max(0, input.stockG[id] ?? 0)
    left.set(id, Math.max(0, inStockG - line.amountG))
    if (!((input.stockG[id] ?? 0) > 0)) {
      warnings.add(
        `${label} is counted as the label has it (${fresh.strength}), since none is in stock and what is bought is fresh. The old one has ${strength}: if that is what you pour, enter how much of it there is.`,
      )
      return line
    }
    const missingG = Math.max(0, line.amountG - inStockG)
    const share =
      missingG > 0
        ? `Only ${grams(line.amountG - missingG)} of this amount is in stock; for the rest take ${grams(missingG / ratio)} of a freshly bought one`
        : `The same from a freshly bought one would be ${grams(line.amountG / ratio)}`
    const caution = `Counted for the old ${label} (${strength}). ${share}. A fresh one is about ${Number(ratio.toPrecision(2))} times as strong.`
    return { ...line, cautions: [caution, ...line.cautions] }
  })
  return { lines: worded, warnings: [...warnings] }
}

/** What to say where an upkeep counts with one that aged and is used up first: what is bought after it is stronger. */
export function usedUpWords(product: Product, stockG: OpeningInput['stockG']): string[] {
  const ratio = agedPerFresh(product)
  if (!product.fresh || ratio < WORTH_SAYING) return []
  const { id, label, strength, fresh } = product
  return [
    `The amounts are of the old ${label} (${strength}), of which ${grams(stockG[id] ?? 0)} is in stock. When that is used up, take about ${Number((1 / ratio).toPrecision(2))} times as much of a freshly bought one (${fresh.strength}).`,
  ]
}

const isPending = (line: OpeningLine): line is DoseLine => line.kind === 'dose' && line.state !== 'done'
