import { evaluate, newJet } from './curve.ts'
import { splitsOf } from './edge-splits.ts'
import { hollowStep } from './hollow-mesh.ts'
import { norm } from './norm.ts'
import type { Edge, Partition } from './partition-types.ts'
import { chordsFor } from './path-draw.ts'
import type { PlanPoints } from './plan-points.ts'
import type { Sides } from './plan-remainder.ts'
import { type Foot, footOn } from './span.ts'
import type { Station } from './strip-stations.ts'

interface Crossed {
  readonly u: number
  readonly v: number
  /** Cells nearer to and further from the shore. */
  readonly below: number
  readonly above: number
}

/** How far from an edge that all but runs along a ray the ray's vertices may lie to be taken for the edge's, in merged points. */
const BESIDE_GRAINS = 8

const jet = newJet()
const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** Collects the vertices that the strip puts on edges, and lays every edge out as a chain of vertices. */
export class EdgeVertices {
  readonly chains: (readonly number[])[]
  private readonly p: Partition
  private readonly points: PlanPoints
  private readonly on: (number[] | undefined)[]
  private readonly crossed: (Crossed[] | undefined)[]
  /** Stretches along which the strip ends, by edge; inner edges by cell, as far as they were asked for. */
  private readonly ended: (Set<string> | undefined)[]
  private readonly inner: number[][] = []
  private incident: number[][] | undefined

  constructor(p: Partition, points: PlanPoints) {
    this.p = p
    this.points = points
    this.chains = new Array<readonly number[]>(p.edges.length)
    this.on = new Array<number[] | undefined>(p.edges.length)
    this.crossed = new Array<Crossed[] | undefined>(p.edges.length)
    this.ended = new Array<Set<string> | undefined>(p.edges.length)
  }

  /** The vertices along an edge of the shore, in its own direction. */
  layShore(edge: number, chain: readonly number[]): void {
    this.chains[edge] = chain
  }

  /** Two rays beside each other cross an edge. */
  cross(edge: number, u: number, v: number, below: number, above: number): void {
    const list = this.crossed[edge]
    const one: Crossed = { u, v, below, above }
    if (list) list.push(one)
    else this.crossed[edge] = [one]
  }

  /**
   * The strip ends along a side of a cell: where that runs along one of the cell's edges, as on a cut locus that a floor's
   * break follows, the edge gets the same two vertices and nothing between, so that the two fit. Where it runs on from one
   * edge to another in one line, each gets the one on it.
   */
  endAlong(cell: number, u: number, v: number): void {
    const inner = this.innerOf(cell)
    for (let i = 0; i < inner.length; i++) {
      const e = inner[i]!
      const hasU = this.isOn(e, u)
      const hasV = this.isOn(e, v)
      if (hasU !== hasV && this.isInLine(e, hasU ? v : u)) this.put(e, hasU ? u : v)
      if (!hasU || !hasV) continue
      this.put(e, u)
      this.put(e, v)
      const list = this.ended[e]
      if (list) list.add(pairKey(u, v))
      else this.ended[e] = new Set([pairKey(u, v)])
    }
  }

  /** The edges of a cell that have water on both sides. */
  private innerOf(cell: number): readonly number[] {
    const known = this.inner[cell]
    if (known) return known
    const { cells, edges } = this.p
    const inner: number[] = []
    for (const loop of cells[cell]!.loops)
      for (const half of loop) {
        const { left, right } = edges[half >> 1]!
        if (left >= 0 && right >= 0) inner.push(half >> 1)
      }
    this.inner[cell] = inner
    return inner
  }

  private isOn(e: number, v: number): boolean {
    const { p, points } = this
    const edge = p.edges[e]!
    const { from, to } = edge
    if (v === from || v === to) return true
    const x = points.x[v]!
    const y = points.y[v]!
    const hair = 2 * points.mergeM
    // An edge rises or falls throughout in x and in y, so its ends bound it.
    const x0 = p.nodeX[from]! - x
    const x1 = p.nodeX[to]! - x
    if ((x0 > hair && x1 > hair) || (x0 < -hair && x1 < -hair)) return false
    const y0 = p.nodeY[from]! - y
    const y1 = p.nodeY[to]! - y
    if ((y0 > hair && y1 > hair) || (y0 < -hair && y1 < -hair)) return false
    return footOn(edge.curve, edge.t0, edge.t1, x, y, foot).distance <= hair
  }

  /** True where a vertex lies in the line of a straight edge. */
  private isInLine(e: number, v: number): boolean {
    const { p, points } = this
    const { curve, from, to } = p.edges[e]!
    if (curve.kind !== 'line') return false
    const dx = p.nodeX[to]! - p.nodeX[from]!
    const dy = p.nodeY[to]! - p.nodeY[from]!
    const off = dx * (points.y[v]! - p.nodeY[from]!) - dy * (points.x[v]! - p.nodeX[from]!)
    return Math.abs(off) <= 2 * points.mergeM * norm(dx, dy)
  }

  /** Puts a station's vertices on every straight edge that runs along its ray, one after the other where they go on in line. */
  layAlong({ v, nx, ny }: Station): void {
    const { p } = this
    if (v.length < 2) return
    if (!this.incident) {
      this.incident = Array.from(p.nodeX, () => [])
      p.edges.forEach((edge, e) => {
        if (edge.left < 0 || edge.right < 0) return
        this.incident![edge.from]!.push(e)
        this.incident![edge.to]!.push(e)
      })
    }
    for (let i = 0; i < v.length; i++) {
      for (let node = v[i]!, next = -1; node >= 0 && node < p.nodeX.length; node = next) {
        const incident = this.incident[node]!
        next = -1
        for (let k = 0; k < incident.length; k++) next = Math.max(next, this.layOn(incident[k]!, node, v, nx, ny))
      }
    }
  }

  /** The same on one edge that ends at a node of the ray; returns its other end where the ray goes on over that, or −1. */
  private layOn(e: number, node: number, v: readonly number[], nx: number, ny: number): number {
    const { p, points } = this
    const { from, to, curve } = p.edges[e]!
    if (curve.kind !== 'line') return -1
    const other = from === node ? to : from
    const dx = points.x[other]! - points.x[node]!
    const dy = points.y[other]! - points.y[node]!
    const length = norm(dx, dy)
    const along = dx * nx + dy * ny
    if (Math.abs(along) < 0.5 * length) return -1
    let isPassed = false
    let isOwn = false
    for (const w of v) {
      const ex = points.x[w]! - points.x[node]!
      const ey = points.y[w]! - points.y[node]!
      const at = (ex * dx + ey * dy) / (length * length)
      if (w === other) isOwn = true
      else if (Math.abs(dx * ey - dy * ex) > BESIDE_GRAINS * points.mergeM * length) continue
      else if (w !== node && at > 0 && at < 1) this.put(e, w)
      else if (at > 1) isPassed = true
    }
    // A node that the ray itself names is gone on from by its own turn.
    return isPassed && !isOwn && along > 0 ? other : -1
  }

  private put(edge: number, vertex: number): void {
    const list = this.on[edge]
    if (list) list.push(vertex)
    else this.on[edge] = [vertex]
  }

  /** Lays out all other edges, and gives `sides` the borders of the cells where the strip doesn't lie against them. */
  finish(chordM: number, sides: Sides | undefined): void {
    const { p } = this
    p.edges.forEach((edge, e) => {
      if (this.chains[e]) return
      const crossed = this.crossed[e]
      const on = this.on[e]
      if (sides && (crossed || on)) this.layCrossed(edge, e, crossed ?? [], on ?? [], chordM, sides)
      else {
        const chain = [edge.from]
        this.pushBetween(edge, edge.t0, edge.t1, edge.to, chordM, chain)
        this.chains[e] = chain
        sides?.putChain(edge, chain, 0, chain.length - 1)
      }
    })
  }

  private layCrossed(
    edge: Edge,
    e: number,
    crossed: readonly Crossed[],
    on: readonly number[],
    chordM: number,
    sides: Sides,
  ): void {
    const { p, points } = this
    // An edge rises or falls throughout in x and in y, so its vertices are in the order of this sum.
    const sx = Math.sign(p.nodeX[edge.to]! - p.nodeX[edge.from]!)
    const sy = Math.sign(p.nodeY[edge.to]! - p.nodeY[edge.from]!)
    const key = (v: number): number => sx * points.x[v]! + sy * points.y[v]!
    const inner = new Set(on)
    for (const { u, v } of crossed) inner.add(u).add(v)
    inner.delete(edge.from)
    inner.delete(edge.to)
    const lo = key(edge.from)
    const hi = key(edge.to)
    const stops = [...inner].filter((v) => key(v) > lo && key(v) < hi).sort((a, b) => key(a) - key(b))
    stops.unshift(edge.from)
    stops.push(edge.to)
    const placeOf = new Map<number, number>()
    stops.forEach((v, i) => {
      placeOf.set(v, i)
    })
    const covered = new Uint8Array(stops.length)
    for (const { u, v, below, above } of crossed) {
      const i = placeOf.get(u)
      const k = placeOf.get(v)
      const goesAlong = i !== undefined && k === i + 1 && edge.left === above && edge.right === below
      const goesAgainst = k !== undefined && i === k + 1 && edge.left === below && edge.right === above
      const first = goesAlong ? i : goesAgainst ? k : -1
      if (first >= 0 && !covered[first]) {
        covered[first] = 1
        continue
      }
      sides.put(below, u, v)
      sides.put(above, v, u)
    }
    const chain = [edge.from]
    for (let i = 0; i + 1 < stops.length; i++) {
      const first = chain.length - 1
      if (covered[i]) chain.push(stops[i + 1]!)
      else {
        const t0 = i === 0 ? edge.t0 : this.paramOf(edge, stops[i]!)
        const t1 = i + 2 === stops.length ? edge.t1 : this.paramOf(edge, stops[i + 1]!)
        const isEnded = this.ended[e]?.has(pairKey(stops[i]!, stops[i + 1]!))
        this.pushBetween(edge, t0, t1, stops[i + 1]!, isEnded ? Infinity : chordM, chain)
        sides.putChain(edge, chain, first, chain.length - 1)
      }
    }
    this.chains[e] = chain
  }

  private paramOf(edge: Edge, v: number): number {
    return footOn(edge.curve, edge.t0, edge.t1, this.points.x[v]!, this.points.y[v]!, foot).t
  }

  /** Goes on along an edge from the chain's last vertex to another, in chords. */
  private pushBetween(edge: Edge, t0: number, t1: number, to: number, chordM: number, chain: number[]): void {
    const { p, points } = this
    const { curve } = edge
    let n = t1 > t0 ? chordsFor(curve, t0, t1, chordM) : 1
    for (const cell of [edge.left, edge.right]) {
      const law = cell >= 0 ? p.cells[cell]!.law : undefined
      if (law) n = Math.max(n, Math.ceil((edge.length * (t1 - t0)) / (edge.t1 - edge.t0) / hollowStep(law, chordM)))
    }
    const ts = splitsOf(p, edge, t0, t1)
    if (n > 1 || ts.length > 0) {
      for (let i = 1; i < n; i++) ts.push(t0 + ((t1 - t0) * i) / n)
      ts.sort((a, b) => a - b)
      for (const t of ts) {
        const last = chain[chain.length - 1]!
        evaluate(curve, t, jet)
        if (norm(jet.x - points.x[last]!, jet.y - points.y[last]!) <= 8 * p.grainM) continue
        if (norm(jet.x - points.x[to]!, jet.y - points.y[to]!) <= 8 * p.grainM) continue
        chain.push(points.add(jet.x, jet.y))
      }
    }
    chain.push(to)
  }
}

function pairKey(u: number, v: number): string {
  return u < v ? `${u} ${v}` : `${v} ${u}`
}
