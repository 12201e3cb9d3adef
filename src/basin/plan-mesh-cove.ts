import { arrange } from './arrangement.ts'
import { coveRings } from './cove-rings.ts'
import { type Curve, lineCurve } from './curve.ts'
import { facesOf } from './faces.ts'
import { flipToDelaunay } from './flip.ts'
import type { Partition } from './partition-types.ts'
import type { PlanMesh } from './plan-mesh.ts'
import type { Span } from './span.ts'
import { triangulate } from './triangulate.ts'

/** A plan mesh with the rings of its cove laid in: one more arrangement, of straight lines only. */
export function withCoveRings(p: Partition, plain: PlanMesh, r: number, chordM: number): PlanMesh | undefined {
  const spans: Span[] = []
  const owner = new Map<Curve, Owner[]>()
  const sides = new Map<string, Owner[]>()
  let family = 0
  plain.chains.forEach((chain, edge) => {
    for (let step = 0; step + 1 < chain.length; step++) {
      const a = chain[step]!
      const b = chain[step + 1]!
      // An arc and its chord may have become one side: it is laid in once, and all that run there own it.
      const key = a < b ? `${a} ${b}` : `${b} ${a}`
      const known = sides.get(key)
      if (known) {
        known.push({ edge, step, forward: known[0]!.first === a, first: a })
        continue
      }
      const span = straight(plain.x[a]!, plain.y[a]!, plain.x[b]!, plain.y[b]!, family++)
      const owners: Owner[] = [{ edge, step, forward: true, first: a }]
      sides.set(key, owners)
      owner.set(span.curve, owners)
      spans.push(span)
    }
  })
  for (const line of coveRings(p, r, chordM))
    for (let i = 0; i + 3 < line.length; i += 2)
      if (Math.hypot(line[i + 2]! - line[i]!, line[i + 3]! - line[i + 1]!) > 16 * p.grainM)
        spans.push(straight(line[i]!, line[i + 1]!, line[i + 2]!, line[i + 3]!, family++))
  const divided = divide(spans, p.grainM)
  if (!divided) return undefined
  const { arrangement, faces } = divided
  const cellOfFace = cellsOfFaces(p, arrangement.edges, faces, owner)
  const triangles: number[] = []
  const cellOf: number[] = []
  const { x, y } = arrangement.nodes
  faces.faces.forEach((face, f) => {
    const cell = cellOfFace[f]!
    if (cell < 0 || face.outer < 0) return
    const rings = [face.outer, ...face.holes].map((loop) =>
      faces.loops[loop]!.halves.map((half) => {
        const edge = arrangement.edges[half >> 1]!
        return half & 1 ? edge.to : edge.from
      }),
    )
    const own = triangulate(rings, x, y)
    // Ear cutting leaves triangles along one ring; the nearest neighbours across the strip follow the curve.
    flipToDelaunay(own, x, y)
    for (const v of own) triangles.push(v)
    for (let k = 0; k < own.length; k += 3) cellOf.push(cell)
  })
  return { x, y, triangles, cellOf, sliverM2: plain.sliverM2, ...chainsOf(plain, arrangement.edges, owner) }
}

/** Rings of neighbouring stretches meet in points that halving found: a picture may join them over a wider gap than a number. */
const GAPS_IN_GRAINS = [8, 64, 512, 4096, 32_768] as const

/** The faces that the lines make, points joined over the smallest gap with which their topology closes. */
function divide(spans: readonly Span[], grainM: number) {
  for (const gap of GAPS_IN_GRAINS) {
    const arrangement = arrange(spans, [], gap * grainM, () => {})
    const faces = facesOf(arrangement)
    if (faces) return { arrangement, faces }
  }
  return undefined
}

function straight(x0: number, y0: number, x1: number, y1: number, index: number): Span {
  return {
    curve: lineCurve(x0, y0, x1, y1),
    t0: 0,
    t1: 1,
    ring: -1,
    index,
    x0,
    y0,
    x1,
    y1,
    minX: Math.min(x0, x1),
    minY: Math.min(y0, y1),
    maxX: Math.max(x0, x1),
    maxY: Math.max(y0, y1),
  }
}

/** A step of an edge's chain that runs along a side, the side's own way or against it. */
interface Owner {
  readonly edge: number
  readonly step: number
  readonly forward: boolean
  readonly first: number
}

type Lines = readonly {
  readonly curve: Curve
  readonly t0: number
  readonly t1: number
  readonly from: number
  readonly to: number
}[]

/** A face beside a cell's edge belongs to that cell; one that rings alone bound has its neighbour's. −2 not yet known. */
function cellsOfFaces(
  p: Partition,
  edges: Lines,
  faces: NonNullable<ReturnType<typeof facesOf>>,
  owner: ReadonlyMap<Curve, readonly Owner[]>,
): Int32Array {
  const cellOf = new Int32Array(faces.faces.length).fill(-2)
  cellOf[0] = -1
  edges.forEach((line, e) => {
    const owners = owner.get(line.curve)
    if (!owners) return
    const left = owners.map(({ edge, forward }) => (forward ? p.edges[edge]!.left : p.edges[edge]!.right))
    const right = owners.map(({ edge, forward }) => (forward ? p.edges[edge]!.right : p.edges[edge]!.left))
    // A cell that lies on both sides of one side has no width left; the outermost two remain.
    cellOf[faces.faceOf[2 * e]!] = left.find((cell) => !right.includes(cell)) ?? left[0]!
    cellOf[faces.faceOf[2 * e + 1]!] = right.find((cell) => !left.includes(cell)) ?? right[0]!
  })
  for (let changed = true; changed; ) {
    changed = false
    edges.forEach((line, e) => {
      if (owner.has(line.curve)) return
      const a = faces.faceOf[2 * e]!
      const b = faces.faceOf[2 * e + 1]!
      if (cellOf[a]! === -2 && cellOf[b]! !== -2) {
        cellOf[a] = cellOf[b]!
        changed = true
      } else if (cellOf[b]! === -2 && cellOf[a]! !== -2) {
        cellOf[b] = cellOf[a]!
        changed = true
      }
    })
  }
  return cellOf
}

/** The vertices along each edge of the partition, with those that rings added. */
function chainsOf(plain: PlanMesh, edges: Lines, owner: ReadonlyMap<Curve, readonly Owner[]>) {
  const parts: { step: number; t0: number; from: number; to: number }[][] = plain.chains.map(() => [])
  for (const line of edges)
    for (const { edge, step, forward } of owner.get(line.curve) ?? [])
      parts[edge]!.push(
        forward
          ? { step, t0: line.t0, from: line.from, to: line.to }
          : { step, t0: 1 - line.t1, from: line.to, to: line.from },
      )
  const headings: number[][] = []
  const chains = parts.map((list, edge) => {
    list.sort((a, b) => a.step - b.step || a.t0 - b.t0)
    const known = plain.headings[edge]!
    const heading: number[] = []
    const at = (step: number, t: number): void => {
      const i = 2 * step
      const u = 1 - t
      heading.push(u * known[i]! + t * known[i + 2]!, u * known[i + 1]! + t * known[i + 3]!)
    }
    const chain: number[] = []
    for (const { step, t0, from, to } of list) {
      if (chain.length === 0) {
        chain.push(from)
        at(step, t0)
      }
      chain.push(to)
      const next = list[list.findIndex((q) => q.step === step && q.t0 === t0) + 1]
      at(step, next && next.step === step ? next.t0 : 1)
    }
    headings.push(heading)
    return chain
  })
  return { chains, headings }
}
