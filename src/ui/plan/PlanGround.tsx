import { memo, useMemo } from 'react'
import {
  bandsOf,
  contoursOf,
  type Partition,
  type Path,
  type Point,
  svgPathOf,
  transformPath,
} from '../../basin/index.ts'
import { drawnChordM } from '../../derive/index.ts'
import type { Body } from '../../document/index.ts'
import { featureShapes } from '../sheet/feature-shapes.ts'
import { rampColour, rampPlace } from './depth-steps.ts'
import { planEdges } from './edge-path.ts'
import styles from './plan.module.css'
import { ringsPath } from './svg-rings.ts'

/** The `d` of a path's exact curves, counted from an origin. */
export function pathFrom(path: Path, [x, y]: Point): string {
  return svgPathOf(transformPath(path, { a: 1, b: 0, c: 0, d: 1, e: -x, f: -y }))
}

interface WaterProps {
  readonly parts: Partition
  readonly depthsM: readonly number[]
  readonly maxDepthM: number
  readonly levelM: number
  readonly origin: Point
}

/** Depth tints and contour lines of a basin, in plan metres from `origin`; floor above the water is left as paper. */
export const PlanWater = memo(function PlanWater({ parts, depthsM, maxDepthM, levelM, origin }: WaterProps) {
  // A lowered water lays bare whatever is not deeper than its fall.
  const shoreM = -levelM
  const bands = useMemo(() => {
    const cuts = [
      ...new Set([Number.NEGATIVE_INFINITY, ...depthsM, ...(levelM < 0 ? [shoreM] : []), Number.POSITIVE_INFINITY]),
    ]
    cuts.sort((a, b) => a - b)
    return bandsOf(parts, cuts, drawnChordM(parts)).map((band) => ({ ...band, d: ringsPath(band.rings, origin, true) }))
  }, [parts, depthsM, levelM, shoreM, origin])
  const contours = useMemo(
    () =>
      contoursOf(parts, depthsM, drawnChordM(parts))
        // One that has shrunk to a point, as over a sounding at just that depth, has nothing to draw.
        .filter(({ points }) => points.length > 1)
        .map((line) => ({
          depthM: line.depthM,
          d: ringsPath([line.points], origin, line.closed),
        })),
    [parts, depthsM, origin],
  )
  const shore = useMemo(
    () =>
      levelM < 0
        ? contoursOf(parts, [shoreM], drawnChordM(parts)).map((line) => ringsPath([line.points], origin, line.closed))
        : [],
    [parts, levelM, shoreM, origin],
  )
  return (
    <>
      {bands.map((band) => {
        const isDry = band.toM <= shoreM + 1e-9
        const from = Math.max(band.fromM, 0)
        const colour = rampColour(rampPlace((from + Math.min(band.toM, maxDepthM)) / 2, maxDepthM))
        const paint = isDry ? 'var(--land)' : colour
        return <path key={`${band.fromM}`} className={styles['band']} d={band.d} fill={paint} stroke={paint} />
      })}
      {contours.map((line) => (
        <path key={`${line.depthM}-${line.d}`} className={styles['contour']} d={line.d} />
      ))}
      {shore.map((d) => (
        <path key={d} className={styles['shore']} d={d} />
      ))}
    </>
  )
})

interface InkProps {
  readonly body: Body
  readonly parts: Partition | undefined
  readonly origin: Point
  /** Where the floor bends: all of it, only the net between soundings, or nothing. */
  readonly breaks: 'all' | 'net' | 'none'
}

/** The lines of the plan, in plan metres from `origin`: outline and islands in ink, edges of features, breaks of the floor. */
export const PlanInk = memo(function PlanInk({ body, parts, origin, breaks }: InkProps) {
  const edges = useMemo(() => (parts ? planEdges(parts, origin) : undefined), [parts, origin])
  const outline = useMemo(() => pathFrom(body.outline, origin), [body.outline, origin])
  const islands = useMemo(() => body.islands.map((island) => pathFrom(island, origin)), [body.islands, origin])
  return (
    <>
      {parts
        ? null
        : body.features.map((feature) => {
            const d = featureShapes(feature, body.outline)
              .map((shape) => pathFrom(shape, origin))
              .join('')
            return <path key={d} className={styles['featureGhost']} d={d} />
          })}
      {edges && breaks === 'all' ? <path className={styles['break']} d={edges.breaks} /> : null}
      {edges && breaks === 'net' ? <path className={styles['net']} d={edges.breaks} /> : null}
      {edges ? <path className={styles['featureEdge']} d={edges.features} /> : null}
      {islands.map((d) => (
        <path key={d} className={styles['island']} d={d} />
      ))}
      <path className={styles['outline']} d={outline} data-shape="outline" />
    </>
  )
})
