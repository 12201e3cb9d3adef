import type { Division } from './cells.ts'
import { type Curve, lineCurve } from './curve.ts'
import { boxPlanes, clipLine, type HalfPlane } from './half-planes.ts'
import { lawCrossings } from './law-crossing.ts'
import { roughBox } from './rings.ts'
import { pushSpans, type Span } from './span.ts'
import type { Band, Plane } from './types.ts'

/** A band of a patch in the frame of the partition: signed distances from its two lines are linear. */
export function bandPlanes(band: Band, originX: number, originY: number): HalfPlane[] {
  const { from, to } = band.axis
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const ux = (to[0] - from[0]) / length
  const uy = (to[1] - from[1]) / length
  const s0 = (originX - from[0]) * ux + (originY - from[1]) * uy
  const planes: HalfPlane[] = []
  if (Number.isFinite(band.fromM)) planes.push([ux, uy, band.fromM - s0])
  if (Number.isFinite(band.toM)) planes.push([-ux, -uy, s0 - band.toM])
  return planes
}

/** The straight lines on which the depth changes its rule: floor breaks, edges of bands, and where two depths cross. */
export function breakSpans(division: Division, out: Span[]): void {
  const { shape, rings, floor, patchRings, patchPlanes, originX, originY, extentM, grainM } = division
  // Lines reach past what they cut, so that they cross it rather than end on it.
  const margin = extentM / 64
  const boxOf = (ring: number): HalfPlane[] => {
    const r = rings[ring]!
    return boxPlanes(r.minX - margin, r.minY - margin, r.maxX + margin, r.maxY + margin)
  }
  let family = 0
  const add = (line: HalfPlane, within: readonly HalfPlane[], id: number): void => {
    const ends = clipLine(line[0], line[1], line[2], within)
    if (!ends || Math.hypot(ends[2] - ends[0], ends[3] - ends[1]) <= 4 * grainM) return
    pushSpans(lineCurve(...ends), -1, grainM, out, id)
  }
  const whole = boxOf(0)
  const breaksFamily = family++
  for (const { line, within } of floor.breaks) add(line, [...whole, ...within], breaksFamily)
  // All spans of a family bear its number: they are not compared with each other.
  const addCurve = (curve: Curve, id: number): void => {
    const from = out.length
    pushSpans(curve, -1, grainM, out, id)
    for (let i = from + 1; i < out.length; i++) out[i] = { ...out[i]!, index: id }
  }
  const edgesFamily = family++
  for (const edge of floor.edges ?? []) addCurve(edge, edgesFamily)
  shape.patches.forEach((patch, i) => {
    const box = boxOf(patchRings[i]!.path)
    const band = patch.band ? bandPlanes(patch.band, originX, originY) : []
    for (const [a, b, c] of band) add([a, b, -c], box, family++)
    const plane = patchPlanes[i]!
    const { minX, minY, maxX, maxY } = rings[patchRings[i]!.path]!
    for (const piece of floor.pieces) {
      const { box: own } = piece
      if (own && (own[0] > maxX || own[1] > maxY || own[2] < minX || own[3] < minY)) continue
      if (piece.law !== undefined) {
        const id = family++
        for (const curve of lawCrossings(piece.law, plane, grainM)) {
          // Beside the footprint the crossing is no edge; what is left of it there ends loose and is dropped.
          const [x0, y0, x1, y1] = roughBox([curve])
          if (x0 <= maxX + margin && x1 >= minX - margin && y0 <= maxY + margin && y1 >= minY - margin)
            addCurve(curve, id)
        }
        continue
      }
      const line = difference(plane, piece.plane)
      if (line) add(line, [...box, ...band, ...piece.within, ...whole], family++)
    }
    for (let k = 0; k < i; k++) {
      const line = difference(plane, patchPlanes[k]!)
      if (line) add(line, [...box, ...boxOf(patchRings[k]!.path), ...whole], family++)
    }
  })
}

/** The line on which two depths are equal, if they are not parallel. */
function difference(p: Plane, q: Plane): HalfPlane | undefined {
  const a = p.dx - q.dx
  const b = p.dy - q.dy
  return a === 0 && b === 0 ? undefined : [a, b, p.atOrigin - q.atOrigin]
}
