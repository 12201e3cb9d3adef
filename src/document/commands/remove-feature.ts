import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, removed } from './places.ts'

export const removeFeature = defineEdit({
  id: 'removeFeature',
  label: 'Remove feature',
  args: v.strictObject({ bodyId: Id, index: Index }),
  apply: (spec, { bodyId, index }) =>
    editBody(spec, bodyId, (body) =>
      index < body.features.length
        ? ok({ ...body, features: removed(body.features, index) })
        : fail(problem('no-such-part', 'index', { detail: `feature ${index + 1}` })),
    ),
})
