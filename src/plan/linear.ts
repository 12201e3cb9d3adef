/** A system's unknowns are amounts, one column each; rows are scaled by the caller to comparable units. */
export type Column = readonly number[]

export const dot = (a: Column, b: Column): number => a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
const DEPENDENT = 1e-10

/** Amounts that come nearest to the rows (least squares), or undefined where the columns are dependent. */
export function nearestAmounts(columns: readonly Column[], b: Column): number[] | undefined {
  // modified Gram–Schmidt on unit columns, then back substitution
  const norms = columns.map((column) => Math.sqrt(dot(column, column)))
  if (norms.some((norm) => !(norm > 0))) return undefined
  const q: number[][] = []
  const r: number[][] = []
  for (const [j, column] of columns.entries()) {
    let rest = column.map((value) => value / norms[j]!)
    const row: number[] = []
    for (const unit of q) {
      const share = dot(unit, rest)
      row.push(share)
      rest = rest.map((value, i) => value - share * unit[i]!)
    }
    const length = Math.sqrt(dot(rest, rest))
    if (length < DEPENDENT) return undefined
    row.push(length)
    q.push(rest.map((value) => value / length))
    r.push(row)
  }
  const amounts = q.map((unit) => dot(unit, b))
  for (let j = amounts.length - 1; j >= 0; j--) {
    for (let k = j + 1; k < amounts.length; k++) amounts[j]! -= r[k]![j]! * amounts[k]!
    amounts[j]! /= r[j]![j]!
  }
  return amounts.map((amount, j) => amount / norms[j]!)
}

/** What the rows still lack with these amounts. */
export function missedBy(columns: readonly Column[], amounts: readonly number[], b: Column): number[] {
  return b.map((value, i) => value - columns.reduce((sum, column, j) => sum + column[i]! * amounts[j]!, 0))
}

/** All choices of `size` out of `count`, earlier ones first. */
export function* subsets(count: number, size: number, from = 0): Generator<readonly number[]> {
  if (size === 0) yield []
  else
    for (let first = from; first <= count - size; first++)
      for (const rest of subsets(count, size - 1, first + 1)) yield [first, ...rest]
}
