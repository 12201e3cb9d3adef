import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { PathSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

export const addIsland = defineEdit({
  id: 'addIsland',
  label: 'Add island',
  args: v.strictObject({ bodyId: Id, path: PathSchema }),
  apply: (spec, { bodyId, path }) =>
    editBody(spec, bodyId, (body) => ok({ ...body, islands: [...body.islands, path] })),
})
