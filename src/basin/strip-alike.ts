import { fansOf, type Ray, rayAt } from './cove-fan.ts'
import { evaluate, newJet } from './curve.ts'
import { lengthMoments } from './edge-integrals.ts'
import type { Cell, Partition } from './partition-types.ts'
import { integratePattern, type Patterned } from './pattern-integral.ts'
import { slopeOf } from './planes.ts'
import { stripOf } from './strip.ts'
import { wallWork } from './strip-rings.ts'
import type { StripPiece } from './strip-types.ts'
import type { Plane } from './types.ts'
import { FLOOR, newSpan, STRIP_SUMS, type WallLaw } from './wall-kind.ts'

/** A piece whose rays are all as wide as the strip and cross nothing, over one cell of floor that the wall reaches everywhere. */
export interface AlikePiece {
  readonly piece: StripPiece
  readonly cell: Cell
  /** ∫ h0 dt and ∫ h1 dt: length of shore [m], and turn away from the water. */
  readonly h0: number
  readonly h1: number
  /** Where all of it is under water [m above the datum]. */
  readonly wetFromM: number
}

const jet = newJet()

/** What makes a piece's rays alike, or nothing where they aren't. */
export function alikePiece(p: Partition, law: WallLaw, piece: StripPiece): AlikePiece | undefined {
  const { fan, t0, t1, by, cells, edges } = piece
  if (!(t1 > t0)) return undefined
  const cell = p.cells[cells[0]!]
  if (by !== -1 || edges.length > 0 || !cell || cell.patch >= 0 || cell.law) return undefined
  // A wall whose foot moves with the depth is the same all along a level floor only.
  if (wallWork(p, cell) !== 'plain' && !(slopeOf(cell.plane) === 0 && cell.minDepthM > 0)) return undefined
  const wetFromM = law.meetsDatumAtShore ? 0 : p.grainM - law.allowedM(cell.minDepthM, 0)
  const made = { piece, cell, h0: 0, h1: t1 - t0, wetFromM }
  if (fan.shore < 0) return made
  const { edge, curve, side } = fansOf(p).shores[fan.shore]!
  const isWhole = t0 === fan.t0 && t1 === fan.t1
  const h0 = isWhole ? p.edges[edge]!.length : lengthMoments(curve, t0, t1).length
  if (curve.kind === 'line') return { ...made, h0, h1: 0 }
  if (curve.kind === 'arc') return { ...made, h0, h1: -side * curve.turn * (t1 - t0) }
  evaluate(curve, t0, jet)
  const { dx, dy } = jet
  evaluate(curve, t1, jet)
  if ((dx === 0 && dy === 0) || (jet.dx === 0 && jet.dy === 0)) return undefined
  // An edge bends one way by at most a quarter turn.
  return { ...made, h0, h1: -side * Math.atan2(dx * jet.dy - dy * jet.dx, dx * jet.dx + dy * jet.dy) }
}

const span = newSpan()
const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }
const inner = new Float64Array(STRIP_SUMS.length)
const floor = new Float64Array(1)
const scales = new Float64Array(1)

/**
 * What the wall changes along a piece whose rays are alike, while all of it is under water.
 * Method: what a ray adds is linear in its h0 and h1, so that these summed along the shore give the whole at once
 *   (Steiner's formula). Beside a bend over a slope the wetted floor hangs on the ray's direction too, and is integrated.
 * Accuracy: rounding; that wetted floor as the whole strip's.
 */
export function addAlike(p: Partition, law: WallLaw, alike: AlikePiece, levelM: number, sums: Float64Array): void {
  const { piece, cell, h0, h1 } = alike
  const fans = fansOf(p)
  const { widthM } = stripOf(p)
  const { plane } = cell
  const isSame = slopeOf(plane) === 0 || (h1 === 0 && piece.fan.shore >= 0)
  const lay = (t: number): void => {
    rayAt(fans, piece.fan, t, ray)
    layOver(plane, widthM)
    inner.fill(0)
  }
  lay(isSame ? (piece.t0 + piece.t1) / 2 : piece.t0)
  ray.h0 = h0
  ray.h1 = h1
  law.addSpan(ray, span, levelM, inner)
  for (let k = 0; k < inner.length; k++) if (k !== FLOOR || isSame) sums[k]! += inner[k]!
  if (isSame) return
  const f: Patterned = {
    addAt: (t, out) => {
      lay(t)
      law.addSpan(ray, span, levelM, inner)
      out[0]! += inner[FLOOR]!
      return 0
    },
    scales,
    isShort: true,
  }
  // Areas need a tenth of the care that volumes do.
  scales[0] = 10 * widthM * widthM
  floor[0] = 0
  integratePattern(f, piece.t0, piece.t1, false, false, floor)
  sums[FLOOR]! += floor[0]!
}

/** Lays the one stretch of a ray over a cell of floor. */
function layOver({ atOrigin, dx, dy }: Plane, widthM: number): void {
  const { x, y, nx, ny } = ray
  span.to = widthM
  span.f0 = atOrigin + dx * x + dy * y
  span.f1 = dx * nx + dy * ny
  span.fAcross = dy * nx - dx * ny
  span.k0 = span.f0
  span.k1 = span.f1
  span.kAcross = span.fAcross
}
