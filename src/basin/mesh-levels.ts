import type { PlanPoints } from './plan-points.ts'

/**
 * The points of a shell: one for each depth that it has at a vertex of the plan. Depths that differ by rounding are one,
 * so that faces which meet there share the very same point.
 */
export class ShellPoints {
  readonly x: number[] = []
  readonly y: number[] = []
  readonly depth: number[] = []
  private readonly first: Int32Array
  private readonly next: number[] = []
  private readonly plan: PlanPoints
  private readonly grainM: number

  constructor(plan: PlanPoints, grainM: number) {
    this.plan = plan
    this.grainM = grainM
    this.first = new Int32Array(plan.x.length).fill(-1)
  }

  /** The point at a vertex for a computed depth. */
  settle(vertex: number, depth: number): number {
    for (let i = this.first[vertex]!; i >= 0; i = this.next[i]!)
      if (Math.abs(this.depth[i]! - depth) <= this.grainM) return i
    const made = this.depth.length
    this.x.push(this.plan.x[vertex]!)
    this.y.push(this.plan.y[vertex]!)
    this.depth.push(depth)
    this.next.push(this.first[vertex]!)
    this.first[vertex] = made
    return made
  }

  /** The points at a vertex from one to another, both included, in that order. */
  between(vertex: number, from: number, to: number, out: number[]): number[] {
    out.length = 0
    out.push(from)
    if (from === to) return out
    const a = this.depth[from]!
    const b = this.depth[to]!
    for (let i = this.first[vertex]!; i >= 0; i = this.next[i]!) {
      const d = this.depth[i]!
      if (!((d > a && d < b) || (d < a && d > b))) continue
      let k = out.length
      while (k > 1 && Math.abs(this.depth[out[k - 1]!]! - a) > Math.abs(d - a)) k--
      out.splice(k, 0, i)
    }
    out.push(to)
    return out
  }
}
