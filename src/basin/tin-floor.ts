import type { FloorPlan } from './floor-kind.ts'
import type { NodeSet } from './node-set.ts'
import { last, next, Tin } from './tin.ts'
import type { Chain } from './tin-chains.ts'
import { bendShares, chordError } from './tin-curves.ts'
import { piecesOf } from './tin-pieces.ts'
import { fixSide, type Side } from './tin-sides.ts'
import { settleTies } from './tin-ties.ts'
import { CONTOUR, CURVED, SHORE, type Shares, type TinFigure, type WetTin } from './tin-types.ts'

/** A chord of a chain, by their numbers. */
export interface ChordAt {
  readonly chain: number
  readonly chord: number
}

/** The constrained Delaunay triangulation of a figure, or the chords that cross others. */
export function triangulated({ nodes, chains, shares, extentM }: TinFigure): WetTin | ChordAt[] {
  const tin = new Tin(16 * extentM)
  const point = new Int32Array(nodes.x.length)
  const own: Shares[] = [new Map(), new Map(), new Map(), new Map()]
  const order = [-1, -1, -1, -1]
  for (const node of inStripes(nodes, extentM)) {
    point[node] = tin.add(nodes.x[node]!, nodes.y[node]!)
    own[point[node]!] = shares[node]!
    order[point[node]!] = node
  }
  const renumbered = chains.map((chain) => ({ ...chain, nodes: chain.nodes.map((node) => point[node]!) }))
  const crossing: ChordAt[] = []
  const barred: Side[] = []
  for (const [chain, { nodes: way, isShore, offM }] of renumbered.entries())
    for (let i = 0; i < way.length; i++) {
      const mark = (isShore ? SHORE : CONTOUR) | (offM[i] === 0 ? 0 : CURVED)
      const inTheWay = fixSide(tin, way[i]!, way[(i + 1) % way.length]!, mark)
      if (!inTheWay) continue
      crossing.push({ chain, chord: i })
      barred.push(inTheWay)
    }
  if (crossing.length > 0) return [...crossing, ...chordsBetween(renumbered, barred)]
  return { tin, isWet: wetOf(tin), chains: renumbered, shares: own, order }
}

/** The chords that have these ends. */
function chordsBetween(chains: readonly Chain[], sides: readonly Side[]): ChordAt[] {
  const wanted = new Set(sides.flatMap(([a, b]) => [`${a} ${b}`, `${b} ${a}`]))
  return chains.flatMap(({ nodes }, chain) =>
    nodes.flatMap((node, chord) =>
      wanted.has(`${node} ${nodes[(chord + 1) % nodes.length]!}`) ? [{ chain, chord }] : [],
    ),
  )
}

/** The floor that is linear on a triangulation. */
export function tinFloor(wetTin: WetTin, { depths, extentM, grainM }: TinFigure): FloorPlan {
  settleTies(wetTin, depths, grainM)
  bendShares(wetTin)
  return { ...piecesOf(wetTin, depths, extentM, grainM), modelErrorM3: chordError(wetTin, depths) }
}

/** Nodes in stripes to and fro, so that each is found near the one before. */
function inStripes(nodes: NodeSet, extentM: number): number[] {
  const count = nodes.x.length
  const stripes = Math.ceil(Math.sqrt(count / 2))
  const stripe = Int32Array.from(nodes.x, (x) => Math.floor((x / extentM + 0.5) * stripes))
  return Array.from({ length: count }, (_, i) => i).sort((i, j) => {
    const s = stripe[i]! - stripe[j]!
    if (s !== 0) return s
    return (stripe[i]! & 1 ? -1 : 1) * (nodes.y[i]! - nodes.y[j]!)
  })
}

/** Triangles that are reached from outside over an odd number of shores. */
function wetOf(tin: Tin): Uint8Array {
  const count = tin.corners.length / 3
  const isWet = new Uint8Array(count)
  const seen = new Uint8Array(count)
  const stack: number[] = []
  const outside = (tin.across.indexOf(-1) / 3) | 0
  seen[outside] = 1
  stack.push(outside)
  while (stack.length > 0) {
    const t = stack.pop()!
    for (const e of [3 * t, next(3 * t), last(3 * t)]) {
      const twin = tin.across[e]!
      if (twin < 0) continue
      const beyond = (twin / 3) | 0
      if (seen[beyond] === 1) continue
      seen[beyond] = 1
      isWet[beyond] = (tin.fixed[e]! & SHORE) !== 0 ? 1 - isWet[t]! : isWet[t]!
      stack.push(beyond)
    }
  }
  return isWet
}
