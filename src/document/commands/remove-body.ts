import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'

/** Its system stays: readings and stated volumes are not the drawing's. */
export const removeBody = defineEdit({
  id: 'removeBody',
  label: 'Remove basin',
  args: v.strictObject({ bodyId: Id }),
  apply: (spec, { bodyId }) =>
    spec.bodies.some((body) => body.id === bodyId)
      ? ok({ ...spec, bodies: spec.bodies.filter((body) => body.id !== bodyId) })
      : fail(problem('no-such-body', 'bodyId', { detail: bodyId })),
})
