import { type Curve, lineCurve } from './curve.ts'
import type { FloorPiece, FloorPlan, PieceCorner } from './floor-kind.ts'
import type { HalfPlane } from './half-planes.ts'
import { next, type Tin } from './tin.ts'
import { tinLocator } from './tin-locate.ts'
import { depthOfShares, SHORE, type Shares, type WetTin } from './tin-types.ts'
import { FLOOR_CHORD } from './tolerance.ts'
import type { Plane } from './types.ts'

/** The triangles of a floor as its linear pieces; level ones that hang on one depth and touch are one piece. */
export function piecesOf(wetTin: WetTin, depths: readonly number[], extentM: number): FloorPlan {
  const { tin, isWet, shares } = wetTin
  const { corners, across } = tin
  const z = shares.map((of) => depthOfShares(of, depths))
  const anchors = anchorsOf(wetTin)
  const pieceOf = new Int32Array(corners.length / 3).fill(-1)
  const pieces: FloorPiece[] = []
  for (let t = 0; t < pieceOf.length; t++) {
    if (isWet[t] === 0 || pieceOf[t]! >= 0) continue
    const only = soleDepth(tin, shares, t)
    if (only < 0) {
      pieceOf[t] = pieces.length
      pieces.push({ ...slantedPiece(tin, shares, z, t, extentM), corners: cornersOf(tin, t, anchors) })
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
    const u = corners[e]!
    const v = corners[next(e)]!
    edges.push(lineCurve(tin.x[u]!, tin.y[u]!, tin.x[v]!, tin.y[v]!))
  }
  const find = tinLocator(wetTin, extentM)
  return { pieces, breaks: [], edges, pieceAt: (x, y) => pieceOf[find(x, y)]! }
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
    if ((tin.fixed[e]! & SHORE) !== 0) continue
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
