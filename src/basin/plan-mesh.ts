import { evaluate, newJet } from './curve.ts'
import { type Linear, rangeAlong, zerosAlong } from './curve-linear.ts'
import type { Cell, Edge, Partition } from './partition-types.ts'
import { chordsFor } from './path-draw.ts'
import { withCoveRings } from './plan-mesh-cove.ts'
import { triangulate } from './triangulate.ts'

/** The plan in triangles, which meet along shared vertices; each belongs to one cell. */
export interface PlanMesh {
  readonly x: number[]
  readonly y: number[]
  /** Vertices along each edge, from its first to its last node. */
  readonly chains: readonly (readonly number[])[]
  /** Direction of the edge's curve at each of those vertices, x and y in turn. */
  readonly headings: readonly (readonly number[])[]
  readonly triangles: readonly number[]
  readonly cellOf: readonly number[]
  /** Greatest area between the plan's curves and their chords, summed [m²]. */
  readonly sliverM2: number
}

const jet = newJet()
const remembered = new WeakMap<Partition, Map<number, PlanMesh>>()

/** The chord height that a picture of this plan asks for if nothing else is said [m]. */
export function defaultChord(p: Partition): number {
  return p.extentM * 1.5e-4
}

/** The plan of a partition in triangles whose sides stay within `chordM` of the curves. Remembered by partition. */
export function planMesh(p: Partition, chordM: number): PlanMesh {
  let known = remembered.get(p)
  if (!known) {
    known = new Map()
    remembered.set(p, known)
  }
  let mesh = known.get(chordM)
  if (!mesh) {
    mesh = build(p, chordM)
    const { wall } = p.shape
    if (wall.kind === 'cove') mesh = withCoveRings(p, mesh, wall.radiusM, chordM) ?? mesh
    known.set(chordM, mesh)
  }
  return mesh
}

function build(p: Partition, chordM: number): PlanMesh {
  const x = Array.from(p.nodeX)
  const y = Array.from(p.nodeY)
  const headings: number[][] = []
  let sliverM2 = 0
  const chains = p.edges.map((edge) => {
    const { curve, t0, t1 } = edge
    const n = chordsFor(curve, t0, t1, chordM)
    if (curve.kind !== 'line') sliverM2 += (2 / 3) * edge.length * chordM
    const ts = [...splits(p, edge)]
    for (let i = 1; i < n; i++) ts.push(t0 + ((t1 - t0) * i) / n)
    ts.sort((a, b) => a - b)
    const chain = [edge.from]
    const heading: number[] = []
    evaluate(curve, t0, jet)
    heading.push(jet.dx, jet.dy)
    let last = chain[0]!
    for (const t of ts) {
      evaluate(curve, t, jet)
      if (Math.hypot(jet.x - x[last]!, jet.y - y[last]!) <= 8 * p.grainM) continue
      if (Math.hypot(jet.x - p.nodeX[edge.to]!, jet.y - p.nodeY[edge.to]!) <= 8 * p.grainM) continue
      last = x.length
      x.push(jet.x)
      y.push(jet.y)
      chain.push(last)
      heading.push(jet.dx, jet.dy)
    }
    chain.push(edge.to)
    evaluate(curve, t1, jet)
    heading.push(jet.dx, jet.dy)
    headings.push(heading)
    return chain
  })
  const triangles: number[] = []
  const cellOf: number[] = []
  p.cells.forEach((cell, i) => {
    const rings = cell.loops.map((loop) => ringOf(loop, chains))
    const own = triangulate(rings, x, y)
    for (const v of own) triangles.push(v)
    for (let k = 0; k < own.length; k += 3) cellOf.push(i)
  })
  return { x, y, chains, headings, triangles, cellOf, sliverM2 }
}

/** Where along an edge one side stops being the shallower, or the wall's foot passes the datum or the rim. */
function splits(p: Partition, edge: Edge): number[] {
  const { curve, t0, t1 } = edge
  const left = edge.left < 0 ? undefined : p.cells[edge.left]!
  const right = edge.right < 0 ? undefined : p.cells[edge.right]!
  const lines: Linear[] = []
  if (left && right) {
    if (left.plane !== right.plane) lines.push(linear(left, right.plane.atOrigin, right.plane.dx, right.plane.dy))
  } else {
    const cell = (left ?? right)!
    if (cell.minDepthM < 0) lines.push(linear(cell, 0, 0, 0), linear(cell, -p.shape.freeboardM, 0, 0))
  }
  return lines.flatMap((line) => {
    const [lo, hi] = rangeAlong(curve, t0, t1, line)
    return lo < -p.grainM && hi > p.grainM ? zerosAlong(curve, t0, t1, line) : []
  })
}

function linear(cell: Cell, c: number, gx: number, gy: number): Linear {
  return { c: cell.plane.atOrigin - c, gx: cell.plane.dx - gx, gy: cell.plane.dy - gy }
}

function ringOf(loop: readonly number[], chains: readonly (readonly number[])[]): number[] {
  const ring: number[] = []
  for (const half of loop) {
    const chain = chains[half >> 1]!
    if (half & 1) for (let i = chain.length - 1; i > 0; i--) ring.push(chain[i]!)
    else for (let i = 0; i < chain.length - 1; i++) ring.push(chain[i]!)
  }
  return ring
}
