import type { Part } from '../../basin/index.ts'
import { formatQuantity, type UnitSystem } from '../../units/index.ts'

/** A place on the shell that is pointed at. */
export interface Probe {
  readonly x: number
  readonly y: number
  readonly z: number
  readonly part: Part
  /** What the feature there is called, where there is one. */
  readonly featureName: string | undefined
}

const PART_WORDS: Readonly<Record<Part, string>> = {
  floor: 'floor',
  wall: 'wall',
  riser: 'riser',
  feature: 'tread',
  rim: 'wall above the water',
}

/** Differences of height below this are none to the eye [m]. */
const SAME_M = 0.002

/** What the words are said against. */
export interface Saying {
  /** Water level that is shown [m above the datum]. */
  readonly levelM: number
  /** Height above the datum of what depths are measured from [m]. */
  readonly referenceM: number
  readonly system: UnitSystem
}

/** "5 ft 7 in · floor"; with another level than the usual one also how much water stands over it. */
export function probeWords(probe: Probe, { levelM, referenceM, system }: Saying): string {
  const say = (metres: number) => formatQuantity('length', metres, system, { style: 'long' })
  const where = probe.part === 'feature' && probe.featureName ? probe.featureName : PART_WORDS[probe.part]
  const depthM = referenceM - probe.z
  const depth = depthM < -SAME_M ? `${say(-depthM)} above zero depth` : say(Math.max(depthM, 0))
  const words = `${depth} · ${where}`
  if (Math.abs(levelM) <= SAME_M || probe.part === 'rim') return words
  const overM = levelM - probe.z
  return overM > SAME_M ? `${words} · ${say(overM)} of water` : `${words} · dry`
}

/** Whether a point of the plan lies over the basin: inside the outline and outside its islands (even-odd rule). */
export function isOverBasin(rings: readonly ArrayLike<number>[], x: number, y: number): boolean {
  let inside = false
  for (const ring of rings)
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ax, ay, bx, by] = [ring[i]!, ring[i + 1]!, ring[j]!, ring[j + 1]!]
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside
    }
  return inside
}
