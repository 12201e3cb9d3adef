import type { Product, ProductList } from '../../../chemicals/index.ts'
import type { Purpose } from '../../../plan/index.ts'
import { productsFor } from '../opening/amounts.ts'

interface PurposeRow {
  readonly id: Purpose
  readonly label: string
  readonly use: Product['uses'][number]
}

/** What products are chosen for, as people ask for it. */
export const PURPOSES: readonly PurposeRow[] = [
  { id: 'acid', label: 'To lower pH', use: 'acid' },
  { id: 'alkalinity', label: 'To raise alkalinity', use: 'alkalinity' },
  { id: 'base', label: 'To raise pH', use: 'base' },
  { id: 'openingChlorine', label: 'First chlorine', use: 'chlorine' },
  { id: 'dailyChlorine', label: 'Daily chlorine', use: 'chlorine' },
  { id: 'calcium', label: 'Calcium', use: 'calcium' },
  { id: 'borate', label: 'Borate', use: 'borate' },
  { id: 'stabiliser', label: 'Stabiliser', use: 'stabiliser' },
  { id: 'salt', label: 'Salt', use: 'salt' },
]

/**
 * What can be chosen for a purpose, of the generic products or of `list`, the owner's. Gases go through licensed plant only and are not offered; a tablet is too slow for
 * the first chlorine.
 */
export function productOptions(purposeId: Purpose, list?: ProductList) {
  const purpose = PURPOSES.find((row) => row.id === purposeId)
  if (!purpose) return []
  return productsFor(purpose.use, list)
    .filter((product) => product.form !== 'gas' && !(purposeId === 'openingChlorine' && product.form === 'tablet'))
    .map(({ id, label, strength }) => ({ id, label, note: strength }))
}
