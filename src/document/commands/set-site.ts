import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { SITE } from '../schema/spec.ts'
import { defineEdit } from './define.ts'
import { changed } from './places.ts'

/** A key that is given as undefined is unknown from then on; one that isn't given stays. */
export const setSite = defineEdit({
  id: 'setSite',
  label: 'Change site',
  args: v.strictObject(SITE),
  apply: (spec, changes) => ok({ ...spec, site: changed(spec.site, changes) }),
})
