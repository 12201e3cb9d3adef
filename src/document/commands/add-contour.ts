import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { assumedDepths, withFloor } from '../assumed-depths.ts'
import { isLineAssumed } from '../floor-kinds.ts'
import { insetRing } from '../inset.ts'
import { problem } from '../problems.ts'
import { depth, PathSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, replaced } from './places.ts'

/** A ring drawn from the one outside it lies this share of the way to the middle, and is this much deeper [m]. */
const SHARE = 0.45
const DROP_M = 0.3

/**
 * Without a path the line is drawn inside the innermost one, or the outline; without a depth it is a step deeper than any.
 * One that is drawn takes the place, and the depth, of a line that nobody drew: the two would only cross. A depth that isn't
 * given is one that nobody has said.
 */
export const addContour = defineEdit({
  id: 'addContour',
  label: 'Add depth line',
  args: v.strictObject({ bodyId: Id, path: v.optional(PathSchema), depthM: v.optional(depth) }),
  apply: (spec, { bodyId, path, depthM }) =>
    editBody(spec, bodyId, (body) => {
      const { floor } = body
      if (floor.kind !== 'contours') return fail(problem('not-by-contours', 'bodyId'))
      const assumed = assumedDepths(body)
      const deepest = floor.rings.reduce<(typeof floor.rings)[number] | undefined>(
        (a, b) => (a && a.depthM >= b.depthM ? a : b),
        undefined,
      )
      if (path && isLineAssumed(body)) {
        const rings = floor.rings.map((ring) => ({ depthM: depthM ?? ring.depthM, path }))
        return ok(withFloor(body, { ...floor, rings }, depthM === undefined ? assumed : replaced(assumed, 1, false)))
      }
      const ring = {
        depthM: depthM ?? Math.max(floor.edgeDepthM, deepest?.depthM ?? floor.edgeDepthM) + DROP_M,
        path: path ?? insetRing(deepest?.path ?? body.outline, body.islands, SHARE),
      }
      return ok(withFloor(body, { ...floor, rings: [...floor.rings, ring] }, [...assumed, depthM === undefined]))
    }),
})
