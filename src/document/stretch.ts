import { fail, ok, type Result } from '../base/index.ts'
import { boundsOf } from '../basin/index.ts'
import { movedBody, stretchAbout } from './affine.ts'
import { problem } from './problems.ts'
import type { Body, Sketch } from './types.ts'

/** What remains unsure of a sketch's scale once one of its two lengths is known. */
const HALF_KNOWN_SIGMA = 0.1

/**
 * The body, stretched about the centre of its box until one overall dimension is as given. A sketch of which the other
 * dimension isn't known yet grows alike both ways, which keeps its proportions as drawn; with both known it is a sketch
 * no longer.
 */
export function stretched(body: Body, axis: 'x' | 'y', lengthM: number): Result<Body> {
  if (body.sketch === undefined) return stretchedTo(body, axis, lengthM, false)
  const isOtherKnown = (axis === 'x' ? body.sketch.knownWidthM : body.sketch.knownLengthM) !== undefined
  const scaled = stretchedTo(body, axis, lengthM, !isOtherKnown)
  if (!scaled.ok) return scaled
  const { sketch: old, ...drawing } = scaled.value
  if (isOtherKnown || old === undefined) return ok(drawing)
  const known = axis === 'x' ? { knownLengthM: lengthM } : { knownWidthM: lengthM }
  const sketch: Sketch = { ...old, ...known, scaleSigma: Math.min(old.scaleSigma, HALF_KNOWN_SIGMA) }
  return ok({ ...drawing, sketch })
}

function stretchedTo(body: Body, axis: 'x' | 'y', lengthM: number, isUniform: boolean): Result<Body> {
  let result = body
  // Arcs turn into curves under an uneven stretch and differ from them a little, so a second pass makes the length exact.
  for (let pass = 0; pass < 3; pass++) {
    const box = boundsOf(result.outline)
    const extent = axis === 'x' ? box.maxX - box.minX : box.maxY - box.minY
    if (!(extent > 0)) return fail(problem('no-length', 'axis', { detail: 'outline' }))
    const by = lengthM / extent
    if (Math.abs(by - 1) < 1e-14) break
    const centre = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] as const
    result = movedBody(
      result,
      stretchAbout(centre, axis === 'x' || isUniform ? by : 1, axis === 'y' || isUniform ? by : 1),
    )
  }
  return ok(result)
}
