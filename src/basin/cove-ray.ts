import type { Fan, Fans, Ray } from './cove-fan.ts'
import { evaluate, newJet } from './curve.ts'
import { type Linear, zerosAlong } from './curve-linear.ts'
import { cellAt } from './depth-at.ts'
import type { Partition } from './partition-types.ts'
import { HAIR } from './tolerance.ts'

/** An empty crossing to write into. */
export function newCrossing(): Crossing {
  return { cells: [], from: [], edges: [] }
}

/** The stretches of a ray in one cell each: cell numbers, and the distances where each begins; `edges` names what is crossed. */
export interface Crossing {
  readonly cells: number[]
  readonly from: number[]
  readonly edges: number[]
}

const jet = newJet()

/** Edges between cells that rays of a fan, r long, could cross. */
export function edgesNear(p: Partition, fans: Fans, fan: Fan, r: number): number[] {
  const own = fan.shore >= 0 ? fans.shores[fan.shore]! : undefined
  const minX = (own ? own.minX : fan.x) - r
  const maxX = (own ? own.maxX : fan.x) + r
  const minY = (own ? own.minY : fan.y) - r
  const maxY = (own ? own.maxY : fan.y) + r
  const near: number[] = []
  p.edges.forEach((edge, i) => {
    if (edge.left < 0 || edge.right < 0) return
    const x0 = p.nodeX[edge.from]!
    const x1 = p.nodeX[edge.to]!
    const y0 = p.nodeY[edge.from]!
    const y1 = p.nodeY[edge.to]!
    if (Math.min(x0, x1) > maxX || Math.max(x0, x1) < minX || Math.min(y0, y1) > maxY || Math.max(y0, y1) < minY) return
    near.push(i)
  })
  return near
}

/** Follows a ray of length n through the cells; writes over what `out` held. */
export function followRay(p: Partition, fan: Fan, near: readonly number[], ray: Ray, n: number, out: Crossing): void {
  let cell = fan.cell >= 0 ? fan.cell : cellAt(p, ray.x + HAIR * n * ray.nx, ray.y + HAIR * n * ray.ny)
  out.cells.length = 1
  out.from.length = 1
  out.edges.length = 0
  out.cells[0] = cell
  out.from[0] = 0
  if (near.length === 0) return
  collectHits(p, near, ray, n)
  for (let i = 0; i < hits.length; i++) {
    const { n: at, edge: e } = hits[i]!
    const edge = p.edges[e]!
    if (edge.left === cell) cell = edge.right
    else if (edge.right === cell) cell = edge.left
    else {
      // Through a node, or along an edge: ask the plan.
      const middle = (at + (i + 1 < hits.length ? hits[i + 1]!.n : n)) / 2
      const found = cellAt(p, ray.x + middle * ray.nx, ray.y + middle * ray.ny)
      if (found >= 0) cell = found
    }
    out.cells.push(cell)
    out.from.push(at)
    out.edges.push(e)
  }
}

const hits: { n: number; edge: number }[] = []

function collectHits(p: Partition, near: readonly number[], ray: Ray, n: number): void {
  hits.length = 0
  const ex = ray.x + n * ray.nx
  const ey = ray.y + n * ray.ny
  const minX = Math.min(ray.x, ex)
  const maxX = Math.max(ray.x, ex)
  const minY = Math.min(ray.y, ey)
  const maxY = Math.max(ray.y, ey)
  const across: Linear = { c: ray.x * ray.ny - ray.y * ray.nx, gx: -ray.ny, gy: ray.nx }
  for (const e of near) {
    const edge = p.edges[e]!
    // An edge rises or falls throughout, so its ends bound it.
    const x0 = p.nodeX[edge.from]!
    const x1 = p.nodeX[edge.to]!
    if ((x0 < minX && x1 < minX) || (x0 > maxX && x1 > maxX)) continue
    const y0 = p.nodeY[edge.from]!
    const y1 = p.nodeY[edge.to]!
    if ((y0 < minY && y1 < minY) || (y0 > maxY && y1 > maxY)) continue
    for (const t of zerosAlong(edge.curve, edge.t0, edge.t1, across)) {
      evaluate(edge.curve, t, jet)
      const at = (jet.x - ray.x) * ray.nx + (jet.y - ray.y) * ray.ny
      if (at > 4 * p.grainM && at < n) hits.push({ n: at, edge: e })
    }
  }
  if (hits.length > 1) hits.sort((a, b) => a.n - b.n)
}
