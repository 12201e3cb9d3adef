import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { movedBody, shift } from '../affine.ts'
import { distance } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

export const moveBasin = defineEdit({
  id: 'moveBasin',
  label: 'Move basin',
  args: v.strictObject({ bodyId: Id, dxM: distance, dyM: distance }),
  apply: (spec, { bodyId, dxM, dyM }) => editBody(spec, bodyId, (body) => ok(movedBody(body, shift(dxM, dyM)))),
})
