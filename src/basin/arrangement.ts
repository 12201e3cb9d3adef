import { forEachNearPair } from './candidates.ts'
import { type Curve, evaluate, newJet } from './curve.ts'
import { meetings } from './intersect.ts'
import { NodeSet } from './node-set.ts'
import { norm } from './norm.ts'
import { type Foot, footOn, type Span } from './span.ts'

/** A stretch of a curve between two nodes; stretches that lie on one another are one, bounding several rings. */
export interface RawEdge {
  readonly curve: Curve
  readonly t0: number
  readonly t1: number
  readonly from: number
  readonly to: number
  rings: number[]
}

export interface Arrangement {
  readonly nodes: NodeSet
  readonly edges: RawEdge[]
}

/** A ring that meets itself, or a ring that meets another one, at a place. */
export interface RingContact {
  readonly a: Span
  readonly b: Span
  readonly x: number
  readonly y: number
}

interface Cut {
  t: number
  node: number
}

/**
 * Two neighbours that lie before and behind a joint within this cosine of one direction are nowhere as near as two grains to each
 * other but within some four of the joint.
 */
const GOES_ON = 0.45

const jet = newJet()
const onward = newJet()
const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/**
 * Cuts all spans where they meet and joins what coincides. `spansInRing[r]` is the number of spans of ring r;
 * `contacts` takes each meeting between rings that isn't a ring's own joint; once it returns true, the search ends there
 * and there are no edges. With `settles` every node also cuts each span that it lies on, whichever pair of spans found
 * it: where lines that coincide all but touch a curve, each may have found the contact elsewhere.
 */
export function arrange(
  spans: readonly Span[],
  spansInRing: readonly number[],
  grainM: number,
  contacts: (contact: RingContact) => unknown,
  settles = false,
): Arrangement {
  const nodes = new NodeSet(grainM)
  const cuts = new Map<Span, Cut[]>()
  for (const span of spans)
    cuts.set(span, [
      { t: span.t0, node: nodes.at(span.x0, span.y0) },
      { t: span.t1, node: nodes.at(span.x1, span.y1) },
    ])
  let isEnough = false
  forEachNearPair(spans, grainM, (a, b) => {
    if (isEnough) return
    const joined = a.ring >= 0 && a.ring === b.ring
    if (joined && isPlainJoint(a, b, spansInRing[a.ring]!)) return
    for (const m of meetings(a, b, grainM)) {
      if (joined && isJoint(a, b, m.x, m.y, spansInRing[a.ring]!, grainM)) continue
      if (a.ring >= 0 && b.ring >= 0 && contacts({ a, b, x: m.x, y: m.y }) === true) isEnough = true
      const node = nodes.at(m.x, m.y)
      cuts.get(a)!.push({ t: m.ta, node })
      cuts.get(b)!.push({ t: m.tb, node })
    }
  })
  if (isEnough) return { nodes, edges: [] }
  if (settles) settle(spans, cuts, nodes, grainM)
  return { nodes, edges: dropLooseEnds(mergeEdges(spans, cuts, nodes, grainM), nodes.x.length) }
}

/** Cuts every span at the nodes that lie within the grain of its inside. */
function settle(spans: readonly Span[], cuts: ReadonlyMap<Span, Cut[]>, nodes: NodeSet, grainM: number): void {
  const order = Array.from(nodes.x, (_, i) => i).sort((a, b) => nodes.x[a]! - nodes.x[b]!)
  for (const span of spans) {
    const list = cuts.get(span)!
    const cutAt = new Set(list.map((cut) => cut.node))
    let first = 0
    for (let end = order.length; first < end; ) {
      const middle = (first + end) >> 1
      if (nodes.x[order[middle]!]! < span.minX - grainM) first = middle + 1
      else end = middle
    }
    for (let i = first; i < order.length; i++) {
      const node = order[i]!
      const x = nodes.x[node]!
      const y = nodes.y[node]!
      if (x > span.maxX + grainM) break
      if (y < span.minY - grainM || y > span.maxY + grainM || cutAt.has(node)) continue
      footOn(span.curve, span.t0, span.t1, x, y, foot)
      if (foot.distance <= grainM && foot.t > span.t0 && foot.t < span.t1) list.push({ t: foot.t, node })
    }
  }
}

/** Neighbours along a ring that go on from their joint so that they can't come back to one another. */
function isPlainJoint(a: Span, b: Span, count: number): boolean {
  if (count < 3) return false
  const [p, q] =
    (a.index + 1) % count === b.index ? [a, b] : (b.index + 1) % count === a.index ? [b, a] : [undefined, undefined]
  if (!p || !q) return false
  const ux = p.x1 - p.x0
  const uy = p.y1 - p.y0
  const vx = q.x1 - q.x0
  const vy = q.y1 - q.y0
  // Both rise and fall the same ways: the boxes meet at the joint only.
  if (ux * vx >= 0 && uy * vy >= 0 && (ux * vx !== 0 || uy * vy !== 0)) return true
  evaluate(p.curve, p.t1, jet)
  evaluate(q.curve, q.t0, onward)
  const into = norm(jet.dx, jet.dy)
  const out = norm(onward.dx, onward.dy)
  const wayX = jet.dx / into + onward.dx / out
  const wayY = jet.dy / into + onward.dy / out
  // A span lies between its chord and its tangent, so one lies behind the joint and the other one before it.
  const way = norm(wayX, wayY)
  return (
    way >= 2 * GOES_ON &&
    ux * wayX + uy * wayY >= GOES_ON * way * norm(ux, uy) &&
    vx * wayX + vy * wayY >= GOES_ON * way * norm(vx, vy)
  )
}

function isJoint(a: Span, b: Span, x: number, y: number, count: number, grainM: number): boolean {
  const near = (px: number, py: number): boolean => norm(px - x, py - y) <= 2 * grainM
  if ((a.index + 1) % count === b.index && near(a.x1, a.y1)) return true
  return (b.index + 1) % count === a.index && near(b.x1, b.y1)
}

function mergeEdges(spans: readonly Span[], cuts: ReadonlyMap<Span, Cut[]>, nodes: NodeSet, grainM: number): RawEdge[] {
  const edges: RawEdge[] = []
  const byEnds = new Map<number, RawEdge[]>()
  const count = nodes.x.length
  for (const span of spans) {
    const list = cuts.get(span)!
    if (list.length > 2) list.sort((p, q) => p.t - q.t)
    let previous = list[0]!
    for (let i = 1; i < list.length; i++) {
      const next = list[i]!
      if (next.node === previous.node) {
        // The stretch is shorter than the grain and vanishes; what it leaves open is owned up to.
        if (next.t !== previous.t) {
          nodes.gapM = Math.max(nodes.gapM, awayFrom(nodes, next.node, span.curve, previous.t, next.t))
          nodes.slackM = grainM
        }
        continue
      }
      const edge: RawEdge = {
        curve: span.curve,
        t0: previous.t,
        t1: next.t,
        from: previous.node,
        to: next.node,
        rings: span.ring >= 0 ? [span.ring] : [],
      }
      previous = next
      const key = Math.min(edge.from, edge.to) * count + Math.max(edge.from, edge.to)
      const rivals = byEnds.get(key)
      const twin = rivals?.find((rival) => isSame(rival, edge, grainM))
      if (twin) {
        for (const ring of edge.rings) twin.rings = toggled(twin.rings, ring)
        continue
      }
      edges.push(edge)
      if (rivals) rivals.push(edge)
      else byEnds.set(key, [edge])
    }
  }
  return edges
}

/** How far the ends of a stretch lie from the node that took them, together [m]. */
function awayFrom(nodes: NodeSet, node: number, curve: Curve, t0: number, t1: number): number {
  let sum = 0
  for (const t of [t0, t1]) {
    evaluate(curve, t, jet)
    sum += norm(jet.x - nodes.x[node]!, jet.y - nodes.y[node]!)
  }
  return sum
}

/** A ring that runs along an edge twice doesn't bound anything there. */
function toggled(rings: readonly number[], ring: number): number[] {
  return rings.includes(ring) ? rings.filter((r) => r !== ring) : [...rings, ring]
}

function isSame(a: RawEdge, b: RawEdge, grainM: number): boolean {
  if (a.curve.kind === 'line' && b.curve.kind === 'line') return true
  for (let i = 1; i < 4; i++) {
    evaluate(b.curve, b.t0 + ((b.t1 - b.t0) * i) / 4, jet)
    if (footOn(a.curve, a.t0, a.t1, jet.x, jet.y, foot).distance > 2 * grainM) return false
  }
  return true
}

/** Without the edges that end in the open (break lines that reach into a cell and stop there). */
function dropLooseEnds(edges: RawEdge[], nodeCount: number): RawEdge[] {
  const degree = new Int32Array(nodeCount)
  const at: number[][] = []
  for (let i = 0; i < edges.length; i++) {
    for (const node of [edges[i]!.from, edges[i]!.to]) {
      degree[node]!++
      const list = at[node]
      if (list) list.push(i)
      else at[node] = [i]
    }
  }
  const gone = new Uint8Array(edges.length)
  const loose: number[] = []
  for (let n = 0; n < nodeCount; n++) if (degree[n] === 1) loose.push(n)
  while (loose.length > 0) {
    const node = loose.pop()!
    if (degree[node] !== 1) continue
    const index = at[node]!.find((i) => gone[i] === 0)!
    gone[index] = 1
    const edge = edges[index]!
    degree[edge.from]!--
    degree[edge.to]!--
    const other = edge.from === node ? edge.to : edge.from
    if (degree[other] === 1) loose.push(other)
  }
  return edges.filter((_, i) => gone[i] === 0)
}
