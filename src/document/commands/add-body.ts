import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { SavedBodySchema } from '../schema/spec.ts'
import { defineEdit } from './define.ts'

export const addBody = defineEdit({
  id: 'addBody',
  label: 'Add basin',
  args: v.strictObject({ body: SavedBodySchema }),
  apply: (spec, { body }) => {
    if (spec.bodies.some(({ id }) => id === body.id)) return fail(problem('same-id', 'body.id', { received: body.id }))
    return ok({ ...spec, bodies: [...spec.bodies, body] })
  },
})
