import type { Partition } from './partition-types.ts'

/** Features that rule nowhere, by rising index: the floor or another feature is as shallow all over them. */
export function buriedFeatures(p: Partition): readonly number[] {
  const buried = new Set(p.shape.patches.map(({ feature }) => feature))
  for (const { feature } of p.cells) buried.delete(feature)
  return [...buried].sort((a, b) => a - b)
}
