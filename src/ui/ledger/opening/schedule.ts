import { formatQuantity, type UnitSystem } from '../../../units/index.ts'

const DAY_MS = 24 * 3_600_000
/** Keeps a number and its unit on one line. */
const NBSP = '\u00a0'

const TIME = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })
const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' })
const DAY_AND_YEAR = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })

/** Calendar days between two moments, in local time: midnight counts, not 24 hours (and a clock change doesn't). */
function daysBetween(fromMs: number, toMs: number): number {
  const from = new Date(fromMs)
  const to = new Date(toMs)
  return Math.round(
    (Date.UTC(to.getFullYear(), to.getMonth(), to.getDate()) -
      Date.UTC(from.getFullYear(), from.getMonth(), from.getDate())) /
      DAY_MS,
  )
}

/** "Day 2, 09:00": the day counts from the calendar day of the start. */
export function dayAndTime(startMs: number, atMs: number): string {
  return `Day ${daysBetween(startMs, atMs) + 1}, ${TIME.format(atMs)}`
}

/** "2 May"; with the year where it isn't this one. */
export function dateOf(atMs: number, nowMs: number): string {
  return (new Date(atMs).getFullYear() === new Date(nowMs).getFullYear() ? DAY : DAY_AND_YEAR).format(atMs)
}

/** "2 May, 09:00" */
export function dateAndTimeOf(atMs: number, nowMs: number): string {
  return `${dateOf(atMs, nowMs)}, ${TIME.format(atMs)}`
}

/** "wait 6 h"; nothing to say where there is nothing to wait for. */
export function waitWords(waitHours: number, units: UnitSystem): string | undefined {
  if (!(waitHours > 0)) return undefined
  // A wait is rounded up to the half hour; a tenth of that is forgiven.
  const hours = waitHours < 1 ? waitHours : Math.ceil(2 * waitHours - 0.1) / 2
  return `wait ${spanWords(hours, units)}`
}

/** A span of time in the unit that people wait in: minutes, hours, days. */
export function spanWords(hours: number, units: UnitSystem): string {
  const whole = (value: number) => formatQuantity('number', value, units, { digits: 0 })
  if (hours < 0.99) return `${whole(hours * 60)}${NBSP}min`
  if (hours >= 72) return `${whole(hours / 24)}${NBSP}days`
  return `${formatQuantity('number', hours, units, { digits: Math.abs(hours - Math.round(hours)) < 0.05 ? 0 : 1 })}${NBSP}h`
}

/** "measured 3 days ago" */
export function ageWords(ageHours: number): string {
  if (ageHours < 0) return 'dated in the future'
  if (ageHours < 1) return 'measured within the hour'
  if (ageHours < 48) {
    const hours = Math.floor(ageHours)
    return `measured ${hours} ${hours === 1 ? 'hour' : 'hours'} ago`
  }
  const days = Math.floor(ageHours / 24)
  if (days < 60) return `measured ${days} days ago`
  return `measured ${Math.floor(days / 30.44)} months ago`
}
