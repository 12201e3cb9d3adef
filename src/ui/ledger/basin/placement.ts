import { boundsOf, flatten, type Path, type Point, pointOn } from '../../../basin/index.ts'
import { type Body, isInside } from '../../../document/index.ts'
import type { Feature, Placement } from '../../../features/index.ts'
import { type WallFrame, wallFrameAt } from '../../plan/footprint.ts'
import { featureShapes } from '../../sheet/feature-shapes.ts'
import { middleOf } from './new-body.ts'

/** Share of the outline's smaller side that a new feature measures. */
const SIZE_SHARE = 0.3
/** Flattening for finding places, not for measuring: a share of the feature's size. */
const CHORD_SHARE = 0.01
/** How far a wall may bend into the water across the feature's width and still count as straight, as a share of it. */
const BEND_SHARE = 0.03
/** Places along the wall that are tried. */
const TRIES = 64
/** Places across a new feature, each way, at which it is asked what is there already. */
const SPREAD = 16

/**
 * A new feature where it covers none that is there: at the wall of the shallow end, else in the middle of the sides, at the deep
 * end, at the free wall nearest to the shallow end; where none is free, where it covers least.
 * @param make the feature as it would be at a place
 */
export function placeFeature(body: Body, make: (place: Placement) => Feature | undefined): Feature | undefined {
  const { outline } = body
  const box = boundsOf(outline)
  const middle = middleOf(outline)
  const sizeM = SIZE_SHARE * Math.min(box.maxX - box.minX, box.maxY - box.minY)
  const shallow: Point = body.floor.kind === 'profile' ? body.floor.axis.from : [box.minX, middle[1]]
  const ring = flatten(outline, CHORD_SHARE * sizeM)
  const taken = [...body.features.flatMap((there) => featureShapes(there, outline)), ...body.islands].map((path) =>
    flatten(path, CHORD_SHARE * sizeM),
  )
  const far = ([x, y]: Point) => Math.hypot(x - shallow[0], y - shallow[1])
  const step = Math.max(1, Math.floor(ring.length / TRIES))
  const usual: readonly Point[] = [
    shallow,
    [middle[0], box.maxY],
    [middle[0], box.minY],
    [2 * middle[0] - shallow[0], 2 * middle[1] - shallow[1]],
  ]
  const allRound = ring.filter((_, i) => i % step === 0).sort((p, q) => far(p) - far(q))
  const frames = [
    ...usual.map((near) => () => wallToStandAt(outline, near, sizeM)),
    ...allRound.map((near) => () => wallFrameAt(outline, near)),
  ]
  let best: { readonly feature: Feature; readonly covered: number } | undefined
  for (const frameOf of frames) {
    const frame = frameOf()
    // Where the usual places are taken, a wall that bends into the water is passed over.
    if (best && bendsInward(ring, frame, sizeM)) continue
    const feature = make({ at: frame.at, toward: frame.inward, outline, sizeM })
    if (!feature) return undefined
    const wet = pointsUnder(feature, outline).filter((point) => isInside(ring, point))
    const hits = wet.filter((point) => taken.some((there) => isInside(there, point)))
    const covered = wet.length === 0 ? 1 : hits.length / wet.length
    if (covered === 0) return feature
    if (!best || covered < best.covered) best = { feature, covered }
  }
  return best?.feature
}

/** Places spread evenly under a feature; of one along the wall, along the middle of its seat. */
function pointsUnder(feature: Feature, outline: Path): Point[] {
  if ('along' in feature) {
    return Array.from({ length: SPREAD }, (_, i) => {
      const on = pointOn(outline, feature.along.fromSegment, (i + 0.5) / SPREAD)
      const { at, inward } = wallFrameAt(outline, on)
      return [at[0] + (inward[0] * feature.widthM) / 2, at[1] + (inward[1] * feature.widthM) / 2]
    })
  }
  return featureShapes(feature, outline).flatMap((path) => {
    const { minX, minY, maxX, maxY } = boundsOf(path)
    const ring = flatten(path, CHORD_SHARE * Math.max(maxX - minX, maxY - minY))
    return Array.from({ length: SPREAD * SPREAD }, (_, k): Point => {
      const [i, j] = [k % SPREAD, Math.floor(k / SPREAD)]
      return [minX + ((i + 0.5) / SPREAD) * (maxX - minX), minY + ((j + 0.5) / SPREAD) * (maxY - minY)]
    }).filter((point) => isInside(ring, point))
  })
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
