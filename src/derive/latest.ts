import { momentMs, type ReadingSet, type System } from '../document/index.ts'

/** The newest of the pool's reading sets. */
export function latestReadings(system: System): ReadingSet | undefined {
  return system.water.readings.reduce<ReadingSet | undefined>(
    (newest, set) => (newest === undefined || momentMs(set.at) >= momentMs(newest.at) ? set : newest),
    undefined,
  )
}

/** Whether a set is the fill water's, only put on the pool's list: the same moment and the same figures. */
export function isCopyOf(set: ReadingSet, fill: ReadingSet): boolean {
  if (momentMs(set.at) !== momentMs(fill.at)) return false
  const keys = Object.keys({ ...set.values, ...fill.values }) as (keyof ReadingSet['values'])[]
  return keys.every((key) => set.values[key] === fill.values[key])
}

/** Whether a set tells of the pool itself, not of the main. */
export function isPools(set: ReadingSet, { water: { fill } }: System): boolean {
  return set.method !== 'supplier' && !(fill && isCopyOf(set, fill))
}
