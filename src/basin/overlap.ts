import { fail, ok, type Result } from '../base/index.ts'
import { arrange } from './arrangement.ts'
import { facesOf } from './faces.ts'
import { ringsAround } from './labels.ts'
import { curvesOf } from './path.ts'
import { problem } from './problems.ts'
import { pushRing, ringOf, roughBox } from './rings.ts'
import type { Span } from './span.ts'
import { DIVISION_TRIES, grainOf } from './tolerance.ts'
import type { Path } from './types.ts'

/**
 * Area that two outlines have in common [m²]; 0 where they are apart or only touch.
 * Equation: the sum of the areas of the faces that lie inside both, in one arrangement of the two.
 * Valid for: outlines that bound a region each; one that crosses itself counts by the even-odd rule.
 * Source: own. Accuracy: rounding (exact curves, no flattening).
 */
export function overlapOf(a: Path, b: Path): Result<number> {
  const boxA = roughBox(curvesOf(a))
  const boxB = roughBox(curvesOf(b))
  if (boxA[0] >= boxB[2] || boxB[0] >= boxA[2] || boxA[1] >= boxB[3] || boxB[1] >= boxA[3]) return ok(0)
  const minX = Math.min(boxA[0], boxB[0])
  const minY = Math.min(boxA[1], boxB[1])
  const maxX = Math.max(boxA[2], boxB[2])
  const maxY = Math.max(boxA[3], boxB[3])
  const coordinate = Math.max(Math.abs(minX), Math.abs(maxX), Math.abs(minY), Math.abs(maxY))
  const grainM = grainOf(Math.hypot(maxX - minX, maxY - minY), coordinate)
  for (const { grains, settles } of DIVISION_TRIES) {
    const areaM2 = commonArea([a, b], (minX + maxX) / 2, (minY + maxY) / 2, grainM * grains, settles)
    if (areaM2 !== undefined) return ok(areaM2)
  }
  return fail(problem('cannot-divide', 'outline'))
}

function commonArea(
  paths: readonly Path[],
  originX: number,
  originY: number,
  grainM: number,
  settles: boolean,
): number | undefined {
  const spans: Span[] = []
  const counts = paths.map((path, id) => pushRing(ringOf(path, '', originX, originY, grainM), id, grainM, spans))
  const arrangement = arrange(spans, counts, grainM, () => false, settles)
  const faces = facesOf(arrangement)
  const around = faces && ringsAround(arrangement.edges, faces)
  if (!faces || !around) return undefined
  let areaM2 = 0
  faces.faces.forEach(({ outer, holes }, i) => {
    if (outer < 0 || !paths.every((_, id) => around[i]!.has(id))) return
    for (const loop of [outer, ...holes]) areaM2 += faces.loops[loop]!.moments.area
  })
  return Math.max(0, areaM2)
}
