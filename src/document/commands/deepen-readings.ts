import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { deepened } from '../readings-kept.ts'
import { depth } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

/** Every depth, of floors and of what stands on them, by as much: what was read from the water stays so where its level was wrong. */
export const deepenReadings = defineEdit({
  id: 'deepenReadings',
  label: 'Keep depths as they were read',
  args: v.strictObject({ bodyId: Id, byM: depth }),
  apply: (spec, { bodyId, byM }) => editBody(spec, bodyId, (body) => ok(deepened(body, byM))),
})
