import { flatten, nearestOn, type Point } from '../../basin/index.ts'
import { isInside } from '../../document/index.ts'
import type { Selection } from '../../state/index.ts'
import { reachOf } from '../plan/hit.ts'
import { featureShapes } from './feature-shapes.ts'
import { type Item, OUTLINE, type Ring } from './items.ts'
import { isContourSelected } from './place-floor-items.ts'
import { pathOfRing } from './place-items.ts'
import type { Scene } from './scene.ts'
import type { Press } from './usePointerGestures.ts'
import { fromScreen } from './view.ts'

interface Side {
  readonly ring: Ring
  readonly segment: number
  readonly t: number
}

/** What a press without a drag means where no handle is: a side, a depth line, a feature, or nothing at all. */
export function pickAt(scene: Scene, press: Press, selection: Selection | undefined): Item | undefined {
  const { view, panes, body } = scene
  if (press.at[1] > panes.planHeight) return undefined
  const at = fromScreen(view, panes, press.at)
  const side = sideAt(scene, at, reachOf(press.pointerType) / view.scale)
  // A depth line is taken as a whole first; pressed again, by its side.
  if (side?.ring.of === 'contour' && !isContourSelected(selection, side.ring.index))
    return { kind: 'contour', contour: side.ring.index }
  if (side) return { kind: 'middle', ring: side.ring, segment: side.segment }
  const feature = body.features.findLastIndex((f) =>
    featureShapes(f, body.outline).some((shape) => isInside(flatten(shape, 0.02), at)),
  )
  return feature >= 0 ? { kind: 'feature', feature } : undefined
}

/** The side nearest to a place, within reach [m]. */
export function sideAt(scene: Scene, at: Point, reachM: number): Side | undefined {
  const { floor, islands } = scene.body
  const contours = floor.kind === 'contours' ? floor.rings : []
  const rings: Ring[] = [
    OUTLINE,
    ...islands.map((_, index): Ring => ({ of: 'island', index })),
    ...contours.map((_, index): Ring => ({ of: 'contour', index })),
  ]
  let best: (Side & { readonly far: number }) | undefined
  for (const ring of rings) {
    const path = pathOfRing(scene, ring)
    if (!path) continue
    const near = nearestOn(path, at[0], at[1])
    if (near.distanceM <= reachM && near.distanceM < (best?.far ?? Number.POSITIVE_INFINITY))
      best = { ring, segment: near.segmentIndex, t: near.t, far: near.distanceM }
  }
  return best
}
