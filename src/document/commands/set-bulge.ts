import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { segmentAt, withSegment } from '../path-edit.ts'
import { between, Index } from '../schema/numbers.ts'
import { plain } from '../segment-kinds.ts'
import { defineEdit } from './define.ts'
import { editRingAt, RING } from './places.ts'

/** tan(θ/4) of the arc's angle θ, positive counter-clockwise; 0 makes a line. */
export const setBulge = defineEdit({
  id: 'setBulge',
  label: 'Bend side',
  args: v.strictObject({ ...RING, segment: Index, bulge: between(-100, 100) }),
  apply: (spec, { segment, bulge, ...at }) =>
    editRingAt(spec, at, 'segment', segment, (path) => {
      const straight = plain(segmentAt(path, segment))
      return ok(withSegment(path, segment, bulge === 0 ? straight : { ...straight, bulge }))
    }),
})
