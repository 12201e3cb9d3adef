import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { splitSegment } from '../../basin/index.ts'
import { sidesAfterSplit } from '../bench-sides.ts'
import { between, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editRingAt, RING, withBenches } from './places.ts'

/** A new point on the outline as it is: the form stays to the last digit or two. */
export const insertPoint = defineEdit({
  id: 'insertPoint',
  label: 'Insert point',
  args: v.strictObject({ ...RING, segment: Index, t: between(1e-6, 1 - 1e-6) }),
  apply: (spec, { segment, t, ...at }) =>
    withBenches(
      spec,
      at,
      sidesAfterSplit(segment),
      editRingAt(spec, at, 'segment', segment, (path) => ok(splitSegment(path, segment, t))),
    ),
})
