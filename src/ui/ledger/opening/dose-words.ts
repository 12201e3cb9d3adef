import type { ProductList } from '../../../chemicals/index.ts'
import type { DoseLine, OpeningLine } from '../../../plan/index.ts'
import { shortValue } from '../scale/index.ts'
import { productOf } from './amounts.ts'

/** Keeps a number and its unit on one line. */
const NBSP = '\u00a0'

/** What a line is headed with: a dose by its product, anything else by what is done. */
export function headingOf(line: OpeningLine, list?: ProductList): string {
  return line.kind === 'dose' ? (productOf(line.productId, list)?.label ?? line.title) : line.title
}

/** How a line is done, with its amounts in the owner's units, without the product's name that stands above it, and without the last full stop. */
export function howWords(
  line: OpeningLine,
  format: (productId: string, amountG: number) => string,
  list?: ProductList,
): string {
  const label = line.kind === 'dose' ? productOf(line.productId, list)?.label : undefined
  const how = label && line.how.startsWith(label) ? line.how.slice(line.how.indexOf('). ') + 3) : line.how
  const amounts = line.kind === 'dose' || line.kind === 'exchange' ? [] : (line.amounts ?? [])
  const told = amounts.reduce(
    (words, { text, productId, amountG }) => words.replace(text, () => format(productId, amountG)),
    how,
  )
  return told.trim().replace(/\.$/, '')
}

/** "13 lb to 15 lb, as sure as the volume is and the readings are"; nothing where both ends read the same. */
export function intervalWords(low: string, high: string): string | undefined {
  return low === high ? undefined : `${shortValue(low, high)} to ${high}, as sure as the volume is and the readings are`
}

/** What to do with the packages that a dose comes from. */
export function packageWords(
  line: Pick<DoseLine, 'packages' | 'amountG'>,
  format: (amountG: number) => string,
): string | undefined {
  const advice = line.packages
  if (!advice || advice.count === 0) return undefined
  // a package is called what stands on it; in other units than the owner's its content is told besides
  const content = format((line.amountG + advice.leftoverG) / advice.count)
  const unit = content.split(NBSP).at(1)?.split(' ')[0] ?? ''
  const label = advice.label.includes(unit) ? advice.label : `${advice.label} (${content})`
  const packages = advice.count === 1 ? `one package of ${label}` : `${advice.count} packages of ${label}`
  if (advice.isWhole) return `Exactly ${packages}, which stays inside the band`
  return advice.leftoverG > 0 ? `From ${packages}; ${format(advice.leftoverG)} left over` : `From ${packages}`
}

/** What to give first and measure, where too much is hard to undo and the volume is not sure. */
export function safeFirstWords(
  { safeFirstG, amountG }: Pick<DoseLine, 'safeFirstG' | 'amountG'>,
  format: (amountG: number) => string,
): string | undefined {
  if (safeFirstG === undefined || !(safeFirstG < amountG)) return undefined
  return `Give ${format(safeFirstG)} first, measure, then what is still lacking`
}
