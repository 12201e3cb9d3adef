import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { depth } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, without } from './places.ts'

/** How deep the floor is along the walls; null lets the walls take the depth of the nearest sounding. */
export const setEdgeDepth = defineEdit({
  id: 'setEdgeDepth',
  label: 'Set depth at the walls',
  args: v.strictObject({ bodyId: Id, depthM: v.nullable(depth) }),
  apply: (spec, { bodyId, depthM }) =>
    editBody(spec, bodyId, (body) => {
      const { floor } = body
      const rest = without(body, 'depthsAssumed')
      if (floor.kind === 'soundings') return ok({ ...rest, floor: { ...floor, edgeDepthM: depthM } })
      if (floor.kind !== 'contours' && floor.kind !== 'dish') return fail(problem('no-edge-depth', 'bodyId'))
      if (depthM === null) return fail(problem('edge-depth-needed', 'depthM'))
      return ok({ ...rest, floor: { ...floor, edgeDepthM: depthM } })
    }),
})
