import type { OpeningLine } from '../../../plan/index.ts'

const HOUR_MS = 3_600_000
/** Times are told to the quarter of an hour, upward: a wait of 13.1 h is not known to the minute. */
const QUARTER_MS = HOUR_MS / 4
const HAIR_MS = 1000
/** Nobody doses in the dark: what would fall between these hours of the clock waits for the morning. */
const EVENING = 21
const MORNING = 7
export interface LineTimes {
  readonly startMs: number
  /** One for each pour, in their order. */
  readonly poursMs: readonly number[]
}

/**
 * When each line is due on the clock: the plan's hours are the earliest, and nights are slept through, whatever waits for the
 * morning. Everything that follows moves along, so that no wait gets shorter.
 */
export function calendarOf(lines: readonly OpeningLine[], originMs: number): ReadonlyMap<string, LineTimes> {
  const times = new Map<string, LineTimes>()
  let shiftMs = 0
  const due = (hours: number): number => {
    const earliestMs = originMs + hours * HOUR_MS + shiftMs
    // hours of the plan are not whole milliseconds: a hair past the quarter is the quarter
    const onTheQuarterMs = Math.ceil((earliestMs - HAIR_MS) / QUARTER_MS) * QUARTER_MS
    const atMs = afterNight(onTheQuarterMs)
    shiftMs += atMs - earliestMs
    return atMs
  }
  for (const line of lines) {
    if (line.state === 'done') {
      const startMs = originMs + line.startHours * HOUR_MS
      times.set(line.key, { startMs, poursMs: [startMs] })
      continue
    }
    const startMs = due(line.startHours)
    const pours = line.kind === 'dose' ? line.pours : []
    const poursMs = pours.map((pour, index) => (index === 0 ? startMs : due(line.startHours + pour.hoursAfterStart)))
    times.set(line.key, { startMs, poursMs })
  }
  return times
}

/** Whether the first chlorine, of water that stands below its band, comes only after a night. */
export function isChlorineLate(
  lines: readonly OpeningLine[],
  calendar: ReadonlyMap<string, LineTimes>,
  originMs: number,
): boolean {
  const chlorine = lines.find((line) => line.kind === 'dose' && line.purpose === 'openingChlorine')
  if (!chlorine || chlorine.state === 'done') return false
  const at = new Date(calendar.get(chlorine.key)?.startMs ?? originMs)
  return at.toDateString() !== new Date(originMs).toDateString()
}

/** The same moment by day, the next morning by night. */
function afterNight(atMs: number): number {
  const at = new Date(atMs)
  const hour = at.getHours()
  if (hour >= MORNING && hour < EVENING) return atMs
  at.setDate(at.getDate() + (hour >= EVENING ? 1 : 0))
  at.setHours(MORNING, 0, 0, 0)
  return at.getTime()
}

/** A start that was shown stays until it is an hour past: a plan that is looked at doesn't move by the minute. */
export function keptStart(shownMs: number | undefined, nowMs: number): number {
  const usual = usualStart(nowMs)
  return shownMs !== undefined && shownMs <= usual && nowMs < shownMs + HOUR_MS ? shownMs : usual
}

/** Where an opening starts as long as nobody chose otherwise: the next full hour of the day, or the next morning at nine. */
export function usualStart(nowMs: number): number {
  const at = new Date(nowMs)
  if (at.getMinutes() > 0 || at.getSeconds() > 0 || at.getMilliseconds() > 0) at.setHours(at.getHours() + 1, 0, 0, 0)
  const hour = at.getHours()
  if (hour >= MORNING && hour < EVENING - 3) return at.getTime()
  if (hour >= EVENING - 3) at.setDate(at.getDate() + 1)
  at.setHours(9, 0, 0, 0)
  return at.getTime()
}
