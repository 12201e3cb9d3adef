import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { withSegment } from '../path-edit.ts'
import { Index } from '../schema/numbers.ts'
import { asKind } from '../segment-kinds.ts'
import { defineEdit } from './define.ts'
import { editRingAt, RING } from './places.ts'

export const setSegmentKind = defineEdit({
  id: 'setSegmentKind',
  label: 'Change side',
  args: v.strictObject({ ...RING, segment: Index, kind: v.picklist(['line', 'arc', 'curve']) }),
  apply: (spec, { segment, kind, ...at }) =>
    editRingAt(spec, at, 'segment', segment, (path) => ok(withSegment(path, segment, asKind(path, segment, kind)))),
})
