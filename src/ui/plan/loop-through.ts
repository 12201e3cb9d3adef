import { type Path, type Point, type Segment, smoothThrough } from '../../basin/index.ts'

export interface LoopPoint {
  readonly at: Point
  readonly isSmooth: boolean
}

/** A run of points between two corners: a straight line where nothing lies between, else one smooth curve. */
function runThrough(points: readonly Point[]): Segment[] {
  const last = points.at(-1)
  if (points.length === 2 && last) return [{ to: last }]
  return smoothThrough(points, false)
}

/** The closed path through points: smooth where they are smooth, with a corner where they are corners. */
export function loopThrough(points: readonly LoopPoint[]): Path | undefined {
  const first = points[0]
  if (!first || points.length < 3) return undefined
  const corner = points.findIndex((point) => !point.isSmooth)
  if (corner < 0)
    return {
      start: first.at,
      segments: smoothThrough(
        points.map((point) => point.at),
        true,
      ),
    }
  const ring = [...points.slice(corner), ...points.slice(0, corner + 1)]
  const start = ring[0]
  if (!start) return undefined
  const segments: Segment[] = []
  let run: Point[] = [start.at]
  for (const point of ring.slice(1)) {
    run.push(point.at)
    if (point.isSmooth) continue
    segments.push(...runThrough(run))
    run = [point.at]
  }
  if (run.length > 1) segments.push(...runThrough([...run, start.at]))
  return { start: start.at, segments }
}
