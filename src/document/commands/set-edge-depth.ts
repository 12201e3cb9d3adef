import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { assumedDepths, withFloor } from '../assumed-depths.ts'
import { firstPointOf } from '../floor-depths.ts'
import { problem } from '../problems.ts'
import { depth } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, replaced } from './places.ts'

/**
 * How deep the floor is along the walls; null lets the walls take the depth of the nearest sounding. With `isAssumed` it is a
 * start that nobody has said.
 */
export const setEdgeDepth = defineEdit({
  id: 'setEdgeDepth',
  label: 'Set depth at the walls',
  args: v.strictObject({ bodyId: Id, depthM: v.nullable(depth), isAssumed: v.optional(v.boolean()) }),
  apply: (spec, { bodyId, depthM, isAssumed = false }) =>
    editBody(spec, bodyId, (body) => {
      const { floor } = body
      const assumed = assumedDepths(body)
      if (floor.kind === 'soundings') {
        const others = assumed.slice(firstPointOf(floor))
        return ok(withFloor(body, { ...floor, edgeDepthM: depthM }, depthM === null ? others : [isAssumed, ...others]))
      }
      if (floor.kind !== 'contours' && floor.kind !== 'dish') return fail(problem('no-edge-depth', 'bodyId'))
      if (depthM === null) return fail(problem('edge-depth-needed', 'depthM'))
      return ok(withFloor(body, { ...floor, edgeDepthM: depthM }, replaced(assumed, 0, isAssumed)))
    }),
})
