import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, removed } from './places.ts'

export const removeIsland = defineEdit({
  id: 'removeIsland',
  label: 'Remove island',
  args: v.strictObject({ bodyId: Id, index: Index }),
  apply: (spec, { bodyId, index }) =>
    editBody(spec, bodyId, (body) =>
      index < body.islands.length
        ? ok({ ...body, islands: removed(body.islands, index) })
        : fail(problem('no-such-part', 'index', { detail: `island ${index + 1}` })),
    ),
})
