import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import type { Path } from '../../basin/index.ts'
import { sidesAfterRemoval } from '../bench-sides.ts'
import { nodeAt, nodeCount, segmentAt } from '../path-edit.ts'
import { problem } from '../problems.ts'
import { Index } from '../schema/numbers.ts'
import { kindOf, merged } from '../segment-kinds.ts'
import { defineEdit } from './define.ts'
import { editRingAt, RING, withBenches } from './places.ts'

export const removePoint = defineEdit({
  id: 'removePoint',
  label: 'Remove point',
  args: v.strictObject({ ...RING, node: Index }),
  apply: (spec, { node, ...at }) => {
    let count = 0
    const edited = editRingAt(spec, at, 'node', node, (path) => {
      count = nodeCount(path)
      const shorter = withoutNode(path, node)
      const isAllStraight = shorter.segments.every((segment) => kindOf(segment) === 'line')
      const fewest = isAllStraight ? 3 : 2
      return nodeCount(shorter) < fewest ? fail(problem('too-few-points', 'node')) : ok(shorter)
    })
    return withBenches(spec, at, sidesAfterRemoval(node, count), edited)
  },
})

function withoutNode(path: Path, node: number): Path {
  const n = nodeCount(path)
  const joined = merged(path, node)
  // The first node is where the path starts: the one after it becomes the start.
  if (node === 0) {
    const start = nodeAt(path, 1)
    return { ...path, start, segments: [...path.segments.slice(1, n - 1), { ...joined, to: start }] }
  }
  const kept = path.segments.flatMap((_, i) => (i === node ? [] : [i === node - 1 ? joined : segmentAt(path, i)]))
  return { ...path, segments: kept }
}
