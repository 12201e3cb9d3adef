import type { BaseIssue } from 'valibot'
import type { ProblemCode } from './problems.ts'

type Place = readonly [number, number]

/** Places in the plan [m] that show a complaint of a schema; none where it has no place or what would tell it is wrong too. */
export function placesOfIssue(issue: BaseIssue<unknown>, code: ProblemCode): readonly Place[] {
  switch (code) {
    case 'one-control':
    case 'bulge-and-controls':
      return placesOf(partOf(issue.input, 'to'))
    case 'axis-without-length':
      return placesOf(partOf(issue.input, 'from'))
    case 'stations-out-of-order':
    case 'treads-out-of-order':
      return placesOf(latePlace(issue.input as readonly Place[], issue.path?.at(-1)?.input))
    default:
      return []
  }
}

/** Where the first pair lies that isn't beyond the one before it: along the axis of what holds it, or about its centre. */
function latePlace(pairs: readonly Place[], holder: unknown): unknown {
  const axis = partOf(holder, 'axis')
  const [from] = placesOf(partOf(axis, 'from'))
  const [to] = placesOf(partOf(axis, 'to'))
  if (!from || !to) return partOf(holder, 'centre')
  const [distanceM] = pairs.find(([at], i) => i > 0 && !(at > pairs[i - 1]![0]))!
  const share = distanceM / Math.hypot(to[0] - from[0], to[1] - from[1])
  return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
}

const partOf = (value: unknown, key: string): unknown =>
  (value as { readonly [key: string]: unknown } | undefined)?.[key]

function placesOf(value: unknown): readonly Place[] {
  return Array.isArray(value) && value.length === 2 && value.every(Number.isFinite) ? [value as unknown as Place] : []
}
