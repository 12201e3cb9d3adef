import { ok, type Problem, type Result } from '../base/index.ts'
import { arcCurve, type Curve } from './curve.ts'
import type { FloorKind, FloorPiece, FloorPlan, FloorSite } from './floor-kind.ts'
import { problem } from './problems.ts'
import type { RadialLaw } from './radial-law.ts'
import { MIN_LENGTH_M, TIE } from './tolerance.ts'
import type { DishFloor, Plane } from './types.ts'
import { meanSquareDistance } from './wet-radial.ts'

export const DISH: FloorKind<DishFloor> = { id: 'dish', check, plan }

function check(floor: DishFloor): Problem | undefined {
  if (!floor.centre.every(Number.isFinite)) return problem('not-a-number', 'floor.centre')
  for (const name of ['radiusM', 'edgeDepthM', 'depthM'] as const)
    if (!Number.isFinite(floor[name])) return problem('not-a-number', `floor.${name}`)
  if (!(floor.radiusM > 0)) return problem('dish-radius-not-positive', 'floor.radiusM', [floor.centre])
  if (floor.form === 'cap' && Math.abs(floor.depthM - floor.edgeDepthM) > floor.radiusM * (1 + TIE))
    return problem('dish-beyond-half-sphere', 'floor.depthM', [floor.centre])
  return undefined
}

/** Piece 0 lies beyond the rim, piece 1 within it; a hollow without depth is no piece of its own. */
function plan(floor: DishFloor, site: FloorSite): Result<FloorPlan> {
  const level: Plane = { atOrigin: floor.edgeDepthM, dx: 0, dy: 0 }
  const whole: Plane = { atOrigin: 1, dx: 0, dy: 0 }
  const beyond: FloorPiece = { plane: level, within: [], weights: [{ depthIndex: 0, plane: whole }] }
  const { radiusM, edgeDepthM, depthM, form } = floor
  const x = floor.centre[0] - site.originX
  const y = floor.centre[1] - site.originY
  if (Math.abs(depthM - edgeDepthM) <= MIN_LENGTH_M || radiusM <= 4 * site.grainM)
    return ok({ pieces: [beyond], breaks: [], pieceAt: () => 0 })
  const law: RadialLaw = { form, x, y, radiusM, edgeDepthM, depthM }
  const box = [x - radiusM, y - radiusM, x + radiusM, y + radiusM] as const
  return ok({
    pieces: [beyond, { plane: { ...level }, law, within: [], weights: [], box }],
    breaks: [],
    edges: circleAbout(x, y, radiusM),
    pieceAt: (px, py) => (Math.hypot(px - x, py - y) < radiusM ? 1 : 0),
    // No face crosses the rim, so its mean square distance from the centre tells on which side it lies.
    pieceOf: (face) => (meanSquareDistance(face, x, y) < radiusM * radiusM ? 1 : 0),
  })
}

/** A circle as two arcs. */
export function circleAbout(x: number, y: number, radiusM: number): Curve[] {
  return [arcCurve(x + radiusM, y, x - radiusM, y, 1), arcCurve(x - radiusM, y, x + radiusM, y, 1)]
}
