import type { Uncertainty } from './derivative-types.ts'
import { volumeAtLevel } from './measure.ts'
import type { Partition } from './partition-types.ts'
import { uncertaintyBy } from './sigma.ts'
import { exactGradient } from './volume-gradient.ts'

/** What makes the volume at a level uncertain, by cause, and which measurements to take again (equations at `uncertaintyBy`). */
export function uncertaintyOf(p: Partition, levelM: number): Uncertainty {
  return uncertaintyBy(p, exactGradient(p, levelM), volumeAtLevel(p, levelM).volumeM3)
}
