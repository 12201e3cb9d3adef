import type { Span } from './span.ts'

/** Calls `visit` once for every pair of spans whose boxes come within the grain of each other (sweep along x). */
export function forEachNearPair(spans: readonly Span[], grainM: number, visit: (a: Span, b: Span) => void): void {
  const order = spans.map((_, i) => i).sort((i, j) => spans[i]!.minX - spans[j]!.minX)
  const active: Span[] = []
  for (const i of order) {
    const span = spans[i]!
    const left = span.minX - grainM
    let kept = 0
    for (let k = 0; k < active.length; k++) {
      const other = active[k]!
      if (other.maxX < left) continue
      active[kept++] = other
      if (other.minY <= span.maxY + grainM && other.maxY >= span.minY - grainM) visit(other, span)
    }
    active.length = kept
    active.push(span)
  }
}
