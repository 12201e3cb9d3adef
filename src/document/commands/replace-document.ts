import * as v from 'valibot'
import { fail } from '../../base/index.ts'
import { problem } from '../problems.ts'
import type { Spec } from '../types.ts'
import { validateSpec } from '../validate.ts'
import { defineEdit } from './define.ts'

export const replaceDocument = defineEdit({
  id: 'replaceDocument',
  label: 'Open plan',
  args: v.strictObject({ spec: v.custom<Spec>((value) => typeof value === 'object' && value !== null) }),
  apply: (_, { spec }) => {
    const checked = validateSpec(spec)
    return checked.ok ? checked : fail(checked.problem[0] ?? problem('not-a-spec', ''))
  },
})
