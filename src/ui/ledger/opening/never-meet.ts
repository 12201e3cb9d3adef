import { INCOMPATIBLE, type Incompatibility, type Product, type ProductList } from '../../../chemicals/index.ts'
import { productOf } from './amounts.ts'

export interface NeverMeetRow {
  readonly first: readonly string[]
  readonly second: readonly string[]
  readonly reason: string
  readonly source: string
  readonly kind: Incompatibility['kind']
}

/**
 * Which of these products must never meet outside the pool, gravest first: one row for each pair of groups, naming the
 * products of this plan that fall into it.
 */
export function neverMeet(productIds: readonly string[], list?: ProductList): readonly NeverMeetRow[] {
  const products = productsBy(productIds, list)
  const rows = INCOMPATIBLE.flatMap((row): NeverMeetRow[] => {
    const first = products.filter((product) => product.groups.includes(row.a))
    const second = products.filter((product) => product.groups.includes(row.b))
    const meets = first.some((a) => second.some((b) => a.id !== b.id))
    return meets
      ? [{ first: first.map(label), second: second.map(label), reason: row.reason, source: row.source, kind: row.kind }]
      : []
  })
  return [...rows.filter((row) => row.kind === 'danger'), ...rows.filter((row) => row.kind === 'clouds')]
}

/** Each of these once; ids that nobody knows are left out. */
export function productsBy(ids: readonly string[], list?: ProductList): readonly Product[] {
  return [...new Set(ids)].map((id) => productOf(id, list)).filter((product) => product !== undefined)
}

const label = (product: Product) => product.label

/** "a", "a or b", "a, b or c" */
export function orList(names: readonly string[]): string {
  if (names.length < 2) return names.join('')
  return `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`
}
