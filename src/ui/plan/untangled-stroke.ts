import { fitLoop, type Path, type Point, untangle } from '../../basin/index.ts'
import { nodesOf } from './nodes.ts'

/** The stroke is untangled by points this far apart: as wide is what is left open where it crossed, a share of its size. */
const APART_SHARE = 0.025

/**
 * Nearly the line that a hand drew, free of itself, where the stroke crosses itself as a figure of eight does; undefined for a
 * scribble that no rule can read.
 * @param sizeM the diagonal of the box around the stroke
 * @param toleranceM how far the line may lie from the untangled stroke
 */
export function untangledStroke(stroke: readonly Point[], sizeM: number, toleranceM: number): Path | undefined {
  const [start] = stroke
  if (!start) return undefined
  const kept = [start]
  let last = start
  for (const point of stroke) {
    if (Math.hypot(point[0] - last[0], point[1] - last[1]) < APART_SHARE * sizeM) continue
    kept.push(point)
    last = point
  }
  const free = untangle({ start, segments: kept.slice(1).map((to) => ({ to })) })
  const fitted = free && fitLoop(nodesOf(free), toleranceM)
  // The fit may touch itself again where it rounds off a narrow place.
  return fitted?.ok ? untangle(fitted.value) : undefined
}
