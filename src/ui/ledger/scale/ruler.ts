/** A mark on a ruler, and whether its number is written. */
export interface RulerMark {
  readonly value: number
  readonly isLabelled: boolean
}

const MOST_LABELS = 6

/**
 * Marks from zero to a length: numbers at steps of 1, 2 or 5 times a power of ten, with four or five finer marks between
 * two of them; never more than six numbers. Nothing for a length that is not above zero.
 */
export function rulerMarks(length: number): readonly RulerMark[] {
  if (!(length > 0) || !Number.isFinite(length)) return []
  const power = 10 ** Math.floor(Math.log10(length / MOST_LABELS))
  const factor = [1, 2, 5, 10].find((f) => length / (f * power) <= MOST_LABELS - 1) ?? 10
  const parts = factor === 2 ? 4 : 5
  const fine = (factor * power) / parts
  return Array.from({ length: Math.floor(length / fine + 1e-9) + 1 }, (_, i) => ({
    value: i * fine,
    isLabelled: i % parts === 0,
  }))
}
