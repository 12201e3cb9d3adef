import { memo, useId } from 'react'
import { type Point, svgPathOf, transformPath } from '../../basin/index.ts'
import type { Body } from '../../document/index.ts'
import { featureShapes } from '../sheet/feature-shapes.ts'
import { keyOf, OUTLINE, type Ring } from '../sheet/items.ts'
import { pathOfRing } from '../sheet/place-items.ts'
import { nodesOf, segmentAt } from './nodes.ts'
import { pathFrom } from './PlanGround.tsx'
import styles from './plan.module.css'

interface Props {
  readonly body: Body
  readonly selectedKey: string | undefined
  readonly origin: Point
}

/** The side or feature that is selected, drawn over the ink; in plan metres from `origin`. */
export const Selected = memo(function Selected({ body, selectedKey, origin }: Props) {
  const id = useId()
  if (selectedKey === undefined) return null
  const contours = body.floor.kind === 'contours' ? body.floor.rings : []
  const contour = contours.find((_, i) => keyOf({ kind: 'contour', contour: i }) === selectedKey)
  if (contour) return <path className={styles['selectedSegment']} d={pathFrom(contour.path, origin)} />
  const rings: Ring[] = [
    OUTLINE,
    ...body.islands.map((_, index): Ring => ({ of: 'island', index })),
    ...contours.map((_, index): Ring => ({ of: 'contour', index })),
  ]
  for (const ring of rings) {
    const path = pathOfRing({ body }, ring)
    if (!path) continue
    const segment = nodesOf(path).findIndex((_, i) => keyOf({ kind: 'middle', ring, segment: i }) === selectedKey)
    const placed = segment < 0 ? undefined : segmentAt(path, segment)
    if (!placed) continue
    const { from, ...rest } = placed
    const moved = transformPath(
      { start: from, segments: [rest] },
      { a: 1, b: 0, c: 0, d: 1, e: -origin[0], f: -origin[1] },
    )
    // Only the side itself: the line that would close it is left off.
    return <path className={styles['selectedSegment']} d={svgPathOf(moved).replace(/Z$/, '')} />
  }
  const feature = body.features.find((_, i) => keyOf({ kind: 'feature', feature: i }) === selectedKey)
  if (!feature) return null
  return (
    <>
      <clipPath id={id}>
        <path d={pathFrom(body.outline, origin)} />
      </clipPath>
      <path
        className={styles['selectedFeature']}
        d={featureShapes(feature, body.outline)
          .map((shape) => pathFrom(shape, origin))
          .join('')}
        clipPath={`url(#${id})`}
      />
    </>
  )
})
