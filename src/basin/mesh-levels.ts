/**
 * The depths that the shell has at each vertex of the plan. Depths that differ by rounding are one, so that faces which
 * meet there share the very same point.
 */
export class VertexLevels {
  private readonly levels: number[][] = []
  private readonly grainM: number

  constructor(grainM: number) {
    this.grainM = grainM
  }

  /** The agreed depth at a vertex for a computed one. */
  settle(vertex: number, depth: number): number {
    const list = this.levels[vertex]
    if (!list) {
      this.levels[vertex] = [depth]
      return depth
    }
    for (const known of list) if (Math.abs(known - depth) <= this.grainM) return known
    list.push(depth)
    return depth
  }

  /** The depths at a vertex from one to another, both included, in that order. */
  between(vertex: number, from: number, to: number): number[] {
    const lo = Math.min(from, to)
    const hi = Math.max(from, to)
    const inner = (this.levels[vertex] ?? []).filter((d) => d > lo && d < hi).sort((a, b) => a - b)
    const chain = lo === hi ? [lo] : [lo, ...inner, hi]
    return from <= to ? chain : chain.reverse()
  }
}
