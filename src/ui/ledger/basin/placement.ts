import { boundsOf, flatten, type Path, type Point } from '../../../basin/index.ts'
import { type Body, isInside } from '../../../document/index.ts'
import type { Placement } from '../../../features/index.ts'
import { type WallFrame, wallFrameAt } from '../../plan/footprint.ts'
import { middleOf } from './new-body.ts'

/** Share of the outline's smaller side that a new feature measures. */
const SIZE_SHARE = 0.3
/** Flattening for finding places, not for measuring: a share of the feature's size. */
const CHORD_SHARE = 0.01
/** How far a wall may bend into the water across the feature's width and still count as straight, as a share of it. */
const BEND_SHARE = 0.03
/** Places along the wall that are tried. */
const TRIES = 64

/** Where the next feature of a body is put: at the wall of the shallow end, then at the others by turns. */
export function placementFor(body: Body): Placement {
  const box = boundsOf(body.outline)
  const middle = middleOf(body.outline)
  const sizeM = SIZE_SHARE * Math.min(box.maxX - box.minX, box.maxY - box.minY)
  const shallow: Point = body.floor.kind === 'profile' ? body.floor.axis.from : [box.minX, middle[1]]
  const places: readonly Point[] = [
    shallow,
    [middle[0], box.maxY],
    [middle[0], box.minY],
    [2 * middle[0] - shallow[0], 2 * middle[1] - shallow[1]],
  ]
  const near = places[body.features.length % places.length] ?? shallow
  const { at, inward } = wallToStandAt(body.outline, near, sizeM)
  return { at, toward: inward, outline: body.outline, sizeM }
}

/** The wall nearest to a point that doesn't bend into the water there: a straight edge would stand off it on both sides. */
function wallToStandAt(outline: Path, near: Point, widthM: number): WallFrame {
  const ring = flatten(outline, CHORD_SHARE * widthM)
  const first = wallFrameAt(outline, near)
  if (!bendsInward(ring, first, widthM)) return first
  const step = Math.max(1, Math.floor(ring.length / TRIES))
  const others = ring
    .filter((_, i) => i % step === 0)
    .map((point) => wallFrameAt(outline, point))
    .filter((frame) => !bendsInward(ring, frame, widthM))
  const far = ({ at }: WallFrame) => Math.hypot(at[0] - first.at[0], at[1] - first.at[1])
  return (
    others.reduce<WallFrame | undefined>(
      (best, frame) => (best && far(best) <= far(frame) ? best : frame),
      undefined,
    ) ?? first
  )
}

/** Whether water lies behind the tangent at either side of a place. */
function bendsInward(ring: readonly Point[], { at, along, inward }: WallFrame, widthM: number): boolean {
  return [-0.5, 0.5].some((half) =>
    isInside(ring, [
      at[0] + (half * along[0] - BEND_SHARE * inward[0]) * widthM,
      at[1] + (half * along[1] - BEND_SHARE * inward[1]) * widthM,
    ]),
  )
}
