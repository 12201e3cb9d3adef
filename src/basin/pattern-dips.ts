import { leastBetween } from '../base/index.ts'
import type { Patterned } from './pattern-integral.ts'
import { HAIR } from './tolerance.ts'

/** Steps' edges have a dozen or two of them. */
const MOST_EVENTS = 2048

let eventsSeen = new Float64Array(0)
const eventsT = new Float64Array(MOST_EVENTS)

/**
 * Places between the points looked at where an event has the other sign, for it dips through zero and comes back.
 * Method: where the middle one of three values is nearest to zero, and the parabola through them comes nearer by a quarter,
 *   the event's least value is closed in on; and so it is between two values where the lines through them and those beside them
 *   cross nearer to zero by as much, for an event may have a corner there.
 */
export function dipsBetween({ eventsAt }: Pick<Patterned, 'eventsAt'>, places: Float64Array, looked: number): number[] {
  const dips: number[] = []
  if (!eventsAt) return dips
  let count = 0
  for (let k = 0; k < looked; k++) {
    const here = eventsAt(places[k]!, eventsT)
    if (k === 0) {
      count = here
      if (eventsSeen.length < count * looked) eventsSeen = new Float64Array(count * looked)
    } else if (here !== count) return dips
    for (let i = 0; i < count; i++) eventsSeen[k * count + i] = eventsT[i]!
  }
  const seek = (i: number, sign: number, s: number, t: number): void => {
    const dip = leastBetween(
      (at) => {
        eventsAt(at, eventsT)
        return sign * eventsT[i]!
      },
      s,
      t,
      HAIR * (t - s),
    )
    if (dip.value < 0) dips.push(dip.x)
  }
  for (let k = 1; k + 2 < looked; k++)
    for (let i = 0; i < count; i++) {
      const first = eventsSeen[k * count + i]!
      const sign = first > 0 ? 1 : -1
      const second = sign * eventsSeen[(k + 1) * count + i]!
      if (!(second > 0)) continue
      const fall = (sign * (first - eventsSeen[(k - 1) * count + i]!)) / (places[k]! - places[k - 1]!)
      const rise = (sign * eventsSeen[(k + 2) * count + i]! - second) / (places[k + 2]! - places[k + 1]!)
      if (!(fall < 0 && rise > 0)) continue
      const step = places[k + 1]! - places[k]!
      const corner = (second - sign * first - rise * step) / (fall - rise)
      const least = Math.min(sign * first, second)
      if (corner > 0 && corner < step && sign * first + fall * corner < (3 / 4) * least)
        seek(i, sign, places[k]!, places[k + 1]!)
    }
  for (let k = 1; k + 1 < looked; k++)
    for (let i = 0; i < count; i++) {
      const middle = eventsSeen[k * count + i]!
      const sign = middle > 0 ? 1 : -1
      const before = sign * eventsSeen[(k - 1) * count + i]!
      const after = sign * eventsSeen[(k + 1) * count + i]!
      const least = sign * middle
      if (!(before > least && after > least)) continue
      const [s, m, t] = [places[k - 1]!, places[k]!, places[k + 1]!]
      if (!(lowest(before - least, s - m, after - least, t - m) < -least / 4)) continue
      seek(i, sign, s, t)
    }
  for (let k = 0; k + 1 < looked; k++) pushBetweenChanges(count, k, places, dips)
  return dips
}

const changes: number[] = []

/**
 * Between two points where several events change their sign one may undo what another one did: a place between each two of their
 * changes, as lines through both points have them.
 */
function pushBetweenChanges(count: number, k: number, places: Float64Array, out: number[]): void {
  changes.length = 0
  for (let i = 0; i < count; i++) {
    const before = eventsSeen[k * count + i]!
    const after = eventsSeen[(k + 1) * count + i]!
    if (before > 0 === after > 0) continue
    changes.push(places[k]! + (before / (before - after)) * (places[k + 1]! - places[k]!))
  }
  if (changes.length < 2) return
  changes.sort((a, b) => a - b)
  for (let i = 1; i < changes.length; i++) {
    const middle = (changes[i - 1]! + changes[i]!) / 2
    if (middle > changes[i - 1]!) out.push(middle)
  }
}

/** Least value of the parabola through zero at 0 and through two values above it on both sides. */
function lowest(before: number, s: number, after: number, t: number): number {
  const bend = (before / s - after / t) / (s - t)
  const fall = before / s - bend * s
  return (-fall * fall) / (4 * bend)
}
