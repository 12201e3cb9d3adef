/** A system's unknowns are amounts, one column each; rows are scaled by the caller to comparable units. */
export type Column = readonly number[]

const dot = (a: Column, b: Column): number => a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
const DEPENDENT = 1e-10

/** Amounts that meet the rows exactly, or undefined where the columns are dependent or don't reach b. */
function exactAmounts(columns: readonly Column[], b: Column, tolerance: number): number[] | undefined {
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
  const scaled = amounts.map((amount, j) => amount / norms[j]!)
  const missed = b.map((value, i) => value - columns.reduce((sum, column, j) => sum + column[i]! * scaled[j]!, 0))
  return missed.every((value) => Math.abs(value) <= tolerance) ? scaled : undefined
}

function* subsets(count: number, size: number, from = 0): Generator<readonly number[]> {
  if (size === 0) yield []
  else
    for (let first = from; first <= count - size; first++)
      for (const rest of subsets(count, size - 1, first + 1)) yield [first, ...rest]
}

/**
 * Amounts, none below zero, of as few columns as possible that meet every row; earlier columns are preferred. Undefined
 * where no set of columns does. `hint` is a set to try first.
 */
export function fewestAmounts(
  columns: readonly Column[],
  b: Column,
  tolerance: number,
  hint?: readonly number[],
): { readonly amounts: readonly number[]; readonly used: readonly number[] } | undefined {
  const attempt = (used: readonly number[]) => {
    const found = exactAmounts(
      used.map((index) => columns[index]!),
      b,
      tolerance,
    )
    if (!found?.every((amount) => amount >= 0)) return undefined
    const amounts = columns.map(() => 0)
    for (const [at, index] of used.entries()) amounts[index] = found[at]!
    return { amounts, used }
  }
  if (hint) {
    const again = attempt(hint)
    if (again) return again
  }
  for (let size = 0; size <= Math.min(columns.length, b.length); size++)
    for (const used of subsets(columns.length, size)) {
      const found = attempt(used)
      if (found) return found
    }
  return undefined
}
