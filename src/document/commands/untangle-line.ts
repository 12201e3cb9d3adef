import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { sidesNearest } from '../bench-sides.ts'
import { closed } from '../path-edit.ts'
import { PathSchema } from '../schema/geometry.ts'
import { defineEdit } from './define.ts'
import { editRing, RING, withBenches } from './places.ts'

/** A line that crossed itself gives way to one that goes nearly the same way without. */
export const untangleLine = defineEdit({
  id: 'untangleLine',
  label: 'Untangle line',
  args: v.strictObject({ ...RING, path: PathSchema }),
  apply: (spec, { path, ...at }) => {
    const old = spec.bodies.find((body) => body.id === at.bodyId)?.outline
    const edited = editRing(spec, at, () => ok(path))
    return old ? withBenches(spec, at, sidesNearest(closed(old), path), edited) : edited
  },
})
