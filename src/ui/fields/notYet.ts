import type { Problem } from '../../base/index.ts'
import { isoFromMs, sayMoment } from './localTime.ts'

/** Clocks of two devices differ by a little [ms]. */
const SLACK_MS = 5 * 60_000

/** What is wrong with a moment of something that was done or measured where that moment is still to come. */
export function notYet(iso: string, nowMs: number): Problem | undefined {
  if (!(Date.parse(iso) > nowMs + SLACK_MS)) return undefined
  return {
    code: 'field-not-yet',
    path: '',
    what: 'This moment is still to come.',
    why: 'It would stand as the newest, before what is really in the water now.',
    hint: `It is ${sayMoment(isoFromMs(nowMs))} now on this device: give when it was really done.`,
  }
}
