import type { Axis, Part, Partition, Point } from '../../basin/index.ts'
import { cutAlong } from '../sheet/scene.ts'

/** The section as drawn: distances from A [m], depths from the datum [m]. */
export interface DrawnCut {
  readonly pieces: readonly { readonly part: Part; readonly points: readonly Point[] }[]
  /** The bed from wall to wall, once for each stretch of water that the line crosses. */
  readonly beds: readonly (readonly Point[])[]
}

/** Cuts a basin along the whole line through an axis. */
export function drawnCut(parts: Partition, axis: Axis): DrawnCut {
  const { pieces, spans } = cutAlong(parts, axis)
  const beds = spans.map(([from, to]) =>
    pieces
      .filter((piece) => {
        const s = piece.points[0]?.[0] ?? Number.NaN
        return piece.part !== 'rim' && s >= from && s <= to
      })
      .flatMap((piece) => piece.points),
  )
  return { pieces, beds }
}

/** Where along a bed there is water at a level: pairs of distances [m]. The walls go on straight up beyond its ends. */
export function wetStretches(bed: readonly Point[], levelM: number): [fromM: number, toM: number][] {
  const stretches: [number, number][] = []
  const first = bed[0]
  const last = bed.at(-1)
  if (!first || !last) return []
  let from = first[1] + levelM > 0 ? first[0] : undefined
  for (let i = 1; i < bed.length; i++) {
    const a = bed[i - 1] as Point
    const b = bed[i] as Point
    const isWetA = a[1] + levelM > 0
    const isWetB = b[1] + levelM > 0
    if (isWetA === isWetB) continue
    const s = a[0] + ((b[0] - a[0]) * (-levelM - a[1])) / (b[1] - a[1])
    if (isWetB) from = s
    else {
      if (from !== undefined && s > from) stretches.push([from, s])
      from = undefined
    }
  }
  // A bed that ends at the wall's top is dry there only where the water stands below the datum.
  if (from !== undefined && last[0] > from) stretches.push([from, last[0]])
  return stretches
}

/** Whether a place of the section lies over the bed: below a shelf or behind a leaning wall there is paper. */
export function isInWater(beds: DrawnCut['beds'], sM: number, depthM: number): boolean {
  return beds.some((bed) =>
    bed.some((b, i) => {
      const a = bed[i - 1]
      if (!a || !(b[0] > a[0]) || sM < a[0] || sM > b[0]) return false
      return a[1] + ((b[1] - a[1]) * (sM - a[0])) / (b[0] - a[0]) >= depthM
    }),
  )
}
