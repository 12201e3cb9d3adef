import { type Curve, lineCurve } from './curve.ts'
import type { FloorPiece, FloorPlan, PieceCorner } from './floor-kind.ts'
import type { HalfPlane } from './half-planes.ts'
import { next, type Tin } from './tin.ts'
import { cappedSides } from './tin-curves.ts'
import { tinLocator } from './tin-locate.ts'
import { depthOfShares, SHORE, type Shares, type WetTin } from './tin-types.ts'
import { FLOOR_CHORD } from './tolerance.ts'
import type { Plane } from './types.ts'

/** The triangles of a floor as its linear pieces; level ones that hang on one depth and touch are one piece. */
export function piecesOf(wetTin: WetTin, depths: readonly number[], extentM: number, grainM: number): FloorPlan {
  const { tin, isWet, shares } = wetTin
  const { corners, across } = tin
  const z = shares.map((of) => depthOfShares(of, depths))
  const anchors = anchorsOf(wetTin)
  const pieceOf = new Int32Array(corners.length / 3).fill(-1)
  const pieces: FloorPiece[] = []
  const capped = cappedSides(wetTin, grainM)
  const capOf = new Map<number, number>()
  for (let t = 0; t < pieceOf.length; t++) {
    if (isWet[t] === 0 || pieceOf[t]! >= 0) continue
    const only = soleDepth(tin, shares, t)
    if (only < 0) {
      pieceOf[t] = pieces.length
      pieces.push({ ...slantedPiece(tin, shares, z, t, extentM, capped), corners: cornersOf(tin, t, anchors) })
      for (let e = 3 * t; e < 3 * t + 3; e++) {
        if (!capped.has(e)) continue
        capOf.set(e, pieces.length)
        pieces.push(capPiece(tin, shares, z, e, extentM))
      }
      continue
    }
    const stack = [t]
    pieceOf[t] = pieces.length
    while (stack.length > 0) {
      const here = stack.pop()!
      for (let e = 3 * here; e < 3 * here + 3; e++) {
        const beyond = across[e]! < 0 ? -1 : (across[e]! / 3) | 0
        if (beyond < 0 || isWet[beyond] === 0 || pieceOf[beyond]! >= 0 || soleDepth(tin, shares, beyond) !== only)
          continue
        pieceOf[beyond] = pieces.length
        stack.push(beyond)
      }
    }
    const flat = { atOrigin: depths[only]!, dx: 0, dy: 0 }
    pieces.push({ plane: flat, within: [], weights: [{ depthIndex: only, plane: { atOrigin: 1, dx: 0, dy: 0 } }] })
  }
  const edges: Curve[] = []
  for (let e = 0; e < corners.length; e++) {
    const twin = across[e]!
    if (twin < e) continue
    const a = pieceOf[(e / 3) | 0]!
    const b = pieceOf[(twin / 3) | 0]!
    if (a < 0 || b < 0 || a === b) continue
    edges.push(sideOf(tin, e))
  }
  for (const e of capOf.keys()) edges.push(sideOf(tin, e))
  const find = tinLocator(wetTin, extentM)
  const pieceAt = (x: number, y: number): number => {
    const { triangle, beyond } = find(x, y)
    return capOf.get(beyond) ?? pieceOf[triangle]!
  }
  return { pieces, breaks: [], edges, pieceAt }
}

function sideOf({ x, y, corners }: Tin, e: number): Curve {
  const u = corners[e]!
  const v = corners[next(e)]!
  return lineCurve(x[u]!, y[u]!, x[v]!, y[v]!)
}

type Anchor = NonNullable<PieceCorner['on']>

/** Where the points of ways lie on their curves. */
function anchorsOf({ chains }: WetTin): ReadonlyMap<number, Anchor> {
  const anchors = new Map<number, Anchor>()
  for (const { nodes, stretches, curves } of chains)
    nodes.forEach((node, i) => {
      const [curve, t] = stretches[i]!
      anchors.set(node, { curve: curves[curve]!, t })
    })
  return anchors
}

function cornersOf({ x, y, corners }: Tin, t: number, anchors: ReadonlyMap<number, Anchor>): PieceCorner[] {
  return [0, 1, 2].map((k) => {
    const point = corners[3 * t + k]!
    return { x: x[point]!, y: y[point]!, on: anchors.get(point) }
  })
}

/** The measured depth on which all of a triangle hangs, −1 where there are several. */
function soleDepth(tin: Tin, shares: readonly Shares[], t: number): number {
  let sole = -1
  for (let e = 3 * t; e < 3 * t + 3; e++) {
    const of = shares[tin.corners[e]!]!
    if (of.size !== 1) return -1
    for (const index of of.keys()) {
      if (sole >= 0 && sole !== index) return -1
      sole = index
    }
  }
  return sole
}

function slantedPiece(
  tin: Tin,
  shares: readonly Shares[],
  z: readonly number[],
  t: number,
  extentM: number,
  capped: ReadonlySet<number>,
): FloorPiece {
  const { x, y, corners } = tin
  const [a, b, c] = [corners[3 * t]!, corners[3 * t + 1]!, corners[3 * t + 2]!]
  const twice = (x[b]! - x[a]!) * (y[c]! - y[a]!) - (y[b]! - y[a]!) * (x[c]! - x[a]!)
  const hats = [hat(tin, a, b, c, twice), hat(tin, b, c, a, twice), hat(tin, c, a, b, twice)]
  const weights = new Map<number, Plane>()
  for (const [k, v] of [a, b, c].entries())
    for (const [index, share] of shares[v]!) {
      const sum = weights.get(index) ?? { atOrigin: 0, dx: 0, dy: 0 }
      const { atOrigin, dx, dy } = hats[k]!
      weights.set(index, {
        atOrigin: sum.atOrigin + share * atOrigin,
        dx: sum.dx + share * dx,
        dy: sum.dy + share * dy,
      })
    }
  const room = extentM * FLOOR_CHORD
  // Lines on it end on its very sides: past them those of many pieces about one point would cross each other there.
  const within: HalfPlane[] = []
  for (let e = 3 * t; e < 3 * t + 3; e++) {
    if ((tin.fixed[e]! & SHORE) !== 0 && !capped.has(e)) continue
    const u = corners[e]!
    const v = corners[next(e)]!
    const nx = y[u]! - y[v]!
    const ny = x[v]! - x[u]!
    within.push([nx, ny, nx * x[u]! + ny * y[u]!])
  }
  return {
    plane: planeThrough(tin, z, a, b, c, twice),
    within,
    weights: [...weights].map(([depthIndex, plane]) => ({ depthIndex, plane })),
    box: [
      Math.min(x[a]!, x[b]!, x[c]!) - room,
      Math.min(y[a]!, y[b]!, y[c]!) - room,
      Math.max(x[a]!, x[b]!, x[c]!) + room,
      Math.max(y[a]!, y[b]!, y[c]!) + room,
    ],
  }
}

/** The floor between a chord of the shore and the curve beyond it, level across the chord. */
function capPiece(
  { x, y, corners }: Tin,
  shares: readonly Shares[],
  z: readonly number[],
  e: number,
  extentM: number,
): FloorPiece {
  const u = corners[e]!
  const v = corners[next(e)]!
  const [dx, dy] = [x[v]! - x[u]!, y[v]! - y[u]!]
  const length2 = dx * dx + dy * dy
  /** From 0 at the chord's beginning to 1 at its end. */
  const on: Plane = { atOrigin: -(x[u]! * dx + y[u]! * dy) / length2, dx: dx / length2, dy: dy / length2 }
  const weights = new Map<number, Plane>()
  const add = (index: number, constant: number, factor: number): void => {
    const sum = weights.get(index) ?? { atOrigin: 0, dx: 0, dy: 0 }
    weights.set(index, {
      atOrigin: sum.atOrigin + constant + factor * on.atOrigin,
      dx: sum.dx + factor * on.dx,
      dy: sum.dy + factor * on.dy,
    })
  }
  for (const [index, share] of shares[u]!) add(index, share, -share)
  for (const [index, share] of shares[v]!) add(index, 0, share)
  const rise = z[v]! - z[u]!
  const room = extentM * FLOOR_CHORD
  return {
    plane: { atOrigin: z[u]! + rise * on.atOrigin, dx: rise * on.dx, dy: rise * on.dy },
    within: [[dy, -dx, dy * x[u]! - dx * y[u]!]],
    weights: [...weights].map(([depthIndex, plane]) => ({ depthIndex, plane })),
    box: [
      Math.min(x[u]!, x[v]!) - room,
      Math.min(y[u]!, y[v]!) - room,
      Math.max(x[u]!, x[v]!) + room,
      Math.max(y[u]!, y[v]!) + room,
    ],
  }
}

/** 1 at the first corner, 0 at the others. */
function hat({ x, y }: Tin, a: number, b: number, c: number, twice: number): Plane {
  const dx = (y[b]! - y[c]!) / twice
  const dy = (x[c]! - x[b]!) / twice
  return { atOrigin: 1 - dx * x[a]! - dy * y[a]!, dx, dy }
}

/** The depth through three corners, taken from the first one: level where all three are alike. */
function planeThrough({ x, y }: Tin, z: readonly number[], a: number, b: number, c: number, twice: number): Plane {
  const up = z[b]! - z[a]!
  const on = z[c]! - z[a]!
  const dx = (up * (y[c]! - y[a]!) - on * (y[b]! - y[a]!)) / twice
  const dy = (on * (x[b]! - x[a]!) - up * (x[c]! - x[a]!)) / twice
  return { atOrigin: z[a]! - dx * x[a]! - dy * y[a]!, dx, dy }
}
