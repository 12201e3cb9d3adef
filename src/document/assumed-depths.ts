import type { Floor } from '../basin/index.ts'
import { depthsOfFloor } from './floor-depths.ts'
import type { Body, OtherFloor } from './types.ts'

/** Of each depth of the floor, as `depthsOfFloor` lists them, whether nobody has said it. */
export function assumedDepths({ floor, depthsAssumed = false }: OtherFloor): readonly boolean[] {
  const depths = depthsOfFloor(floor)
  if (typeof depthsAssumed === 'boolean') return depths.map(() => depthsAssumed)
  const numbers = new Set(depthsAssumed)
  return depths.map((_, i) => numbers.has(i))
}

/** Whether nobody has said any depth of the floor. */
export function areAllAssumed(kept: OtherFloor): boolean {
  return assumedDepths(kept).every(Boolean) && kept.depthsAssumed !== undefined && kept.depthsAssumed !== false
}

/** The body with a floor, and of each of its depths whether nobody has said it; what isn't told was said. */
export function withFloor(body: Body, floor: Floor, assumed: readonly boolean[]): Body {
  const { depthsAssumed: _, ...rest } = body
  const depths = depthsOfFloor(floor)
  const numbers = depths.flatMap((_, i) => (assumed[i] ? [i] : []))
  if (numbers.length === 0) return { ...rest, floor }
  return { ...rest, floor, depthsAssumed: numbers.length === depths.length ? true : numbers }
}

/** A floor that is only moved or stretched says no depth that wasn't there; one of other depths says those that differ. */
export function stillAssumed(before: OtherFloor, floor: Floor): readonly boolean[] {
  const [was, now] = [depthsOfFloor(before.floor), depthsOfFloor(floor)]
  const isSameKind = before.floor.kind === floor.kind && was.length === now.length
  return assumedDepths(before).map((is, i) => is && isSameKind && was[i] === now[i])
}
