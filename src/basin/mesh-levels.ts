import type { PlanPoints } from './plan-points.ts'

/**
 * The points of a shell: one for each depth that it has at a vertex of the plan. Depths that differ by rounding are one,
 * so that faces which meet there share the very same point.
 */
export class ShellPoints {
  readonly plan: PlanPoints
  count = 0
  /** Vertex of the plan that each point lies at, and its depth [m]. */
  vertex: Int32Array
  depth: Float64Array
  private readonly first: Int32Array
  private next: Int32Array
  private readonly grainM: number

  constructor(plan: PlanPoints, grainM: number) {
    this.plan = plan
    this.grainM = grainM
    const room = 2 * plan.x.length + 64
    this.first = new Int32Array(plan.x.length).fill(-1)
    this.next = new Int32Array(room)
    this.vertex = new Int32Array(room)
    this.depth = new Float64Array(room)
  }

  /** The point at a vertex for a computed depth: the nearest one there, or a new one where none is near. */
  settle(vertex: number, depth: number): number {
    let best = -1
    let bestM = this.grainM
    for (let i = this.first[vertex]!; i >= 0; i = this.next[i]!) {
      const offM = Math.abs(this.depth[i]! - depth)
      if (offM > bestM) continue
      best = i
      bestM = offM
    }
    if (best >= 0) return best
    const made = this.count++
    if (made === this.next.length) this.grow()
    this.vertex[made] = vertex
    this.depth[made] = depth
    this.next[made] = this.first[vertex]!
    this.first[vertex] = made
    return made
  }

  /** Writes the points at a vertex from one to another, both included, in that order; returns how many. */
  between(vertex: number, from: number, to: number, out: number[]): number {
    out[0] = from
    if (from === to) return 1
    let count = 1
    const a = this.depth[from]!
    const b = this.depth[to]!
    for (let i = this.first[vertex]!; i >= 0; i = this.next[i]!) {
      const d = this.depth[i]!
      if (!((d > a && d < b) || (d < a && d > b))) continue
      let k = count++
      for (; k > 1 && Math.abs(this.depth[out[k - 1]!]! - a) > Math.abs(d - a); k--) out[k] = out[k - 1]!
      out[k] = i
    }
    out[count++] = to
    return count
  }

  private grow(): void {
    const larger = <T extends Int32Array | Float64Array>(old: T, fresh: T): T => {
      fresh.set(old)
      return fresh
    }
    const room = 2 * this.next.length
    this.next = larger(this.next, new Int32Array(room))
    this.vertex = larger(this.vertex, new Int32Array(room))
    this.depth = larger(this.depth, new Float64Array(room))
  }
}
