import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { RULES_OF_SITE } from '../schema/spec.ts'
import { defineEdit } from './define.ts'
import { changed } from './places.ts'

/** Which rules for bathing hold, and a local floor and ceiling. A key that is given as undefined goes; one that isn't given stays. */
export const setRules = defineEdit({
  id: 'setRules',
  label: 'Change rules',
  args: v.strictObject(RULES_OF_SITE),
  apply: (spec, changes) => {
    const rules = changed(spec.site.rules ?? {}, changes)
    return ok({ ...spec, site: changed(spec.site, { rules: Object.keys(rules).length > 0 ? rules : undefined }) })
  },
})
