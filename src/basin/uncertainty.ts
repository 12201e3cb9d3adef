import type { Uncertainty } from './derivative-types.ts'
import { volumeAtLevel } from './measure.ts'
import type { Partition } from './partition-types.ts'
import { uncertaintyBy } from './sigma.ts'
import { volumeGradient } from './volume-gradient.ts'

/** What makes the volume at a level uncertain, by cause, and which measurements to take again (equations at `uncertaintyBy`). */
export function uncertaintyOf(p: Partition, levelM: number): Uncertainty {
  return uncertaintyBy(p, volumeGradient(p, levelM, false), volumeAtLevel(p, levelM).volumeM3)
}
