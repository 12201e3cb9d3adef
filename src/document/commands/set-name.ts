import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Name } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'

export const setName = defineEdit({
  id: 'setName',
  label: 'Rename',
  args: v.strictObject({ name: Name }),
  apply: (spec, { name }) => ok({ ...spec, name }),
})
