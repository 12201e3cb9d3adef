import type { Band, ScheduledStep, StartFigure, TargetPhase } from '../../../../plan/index.ts'
import { formatQuantity, type UnitSystem } from '../../../../units/index.ts'
import { formatReading, readingRow, shortValue } from '../../scale/index.ts'

/** "day 3", "days 3 to 7" */
export function daysWords({ fromDay, toDay }: { readonly fromDay: number; readonly toDay: number }): string {
  return fromDay === toDay ? `day ${fromDay}` : `days ${fromDay} to ${toDay}`
}

/** Where the owner stands in a start: "Day 3 of 28"; before it and after it in words. */
export function dayWords(day: number, lastDay: number): string {
  if (day < 1) return day === 0 ? 'It starts tomorrow' : `It starts in ${1 - day} days`
  if (day > lastDay) return `Day ${day}; the schedule ended with day ${lastDay}`
  return `Day ${day} of ${lastDay}`
}

/** What the readings say to a step that hangs on them; undefined where it doesn't. */
export function conditionWords({
  condition,
  applies,
}: Pick<ScheduledStep, 'condition' | 'applies'>): string | undefined {
  if (!condition) return undefined
  const words = condition.words
  if (applies === 'yes') return `Your readings ask for it: ${words}.`
  if (applies === 'no') return `Your readings do not ask for it: ${words}.`
  return `Measure first: ${words}.`
}

/** How far off a volume may be of which no range is told, as a share. */
const UNTOLD_SHARE = 0.05
const SYRINGE_M3 = 20e-6

/** A figure with its unit and as many digits as its range leaves; with both ends where they read otherwise. */
export function figureWords(
  { quantity, value, low, high }: Pick<StartFigure, 'quantity' | 'value' | 'low' | 'high'>,
  units: UnitSystem,
): { readonly best: string; readonly range: string | undefined } {
  // two digits of the range's width are all that the figure knows of itself; a volume of which none is told is rain or a
  // level times a surface, known in three figures at best
  const sigma = high > low ? (high - low) / 2 : quantity === 'volume' ? UNTOLD_SHARE * Math.abs(value) : undefined
  const options = sigma === undefined ? {} : { sigma }
  // a few millilitres are drawn up with a syringe, whatever the units of the house
  const isDrop = quantity === 'liquid' && value < SYRINGE_M3
  const say = (each: number) => formatQuantity(quantity, each, isDrop ? 'metric' : units, options)
  const [lowest, highest] = [say(low), say(high)]
  return { best: say(value), range: lowest === highest ? undefined : `${shortValue(lowest, highest)} to ${highest}` }
}

/** "Stabiliser: nothing is dosed for it on days 1 to 29." */
export function phaseWords({ key, change, ...days }: TargetPhase, units: UnitSystem): string {
  const label = readingRow(key)?.label ?? key
  if (change.kind === 'withheld') return `${label}: nothing is dosed for it on ${daysWords(days)}.`
  if (change.kind === 'upper-end') return `${label}: the upper end of its band on ${daysWords(days)}.`
  return `${label}: ${bandWords(key, change.band, units)} on ${daysWords(days)}.`
}

function bandWords(key: TargetPhase['key'], { low, high }: Band, units: UnitSystem): string {
  const [from, to] = [formatReading(key, low, units), formatReading(key, high, units)]
  return `${shortValue(from, to)} to ${to}`
}

/** What stands in the log for a step that is ticked. */
export function tickText(day: number, title: string): string {
  return `Day ${day}: ${title}.`
}

/** "1. Do this. 2. Do that." as its parts, so that they can be set as a list; undefined where nothing is numbered. */
export function numberedParts(text: string): readonly string[] | undefined {
  if (!text.startsWith('1. ')) return undefined
  const parts: string[] = []
  let rest = text
  for (let n = 1; rest.startsWith(`${n}. `); n++) {
    const next = rest.indexOf(` ${n + 1}. `)
    parts.push(rest.slice(`${n}. `.length, next < 0 ? undefined : next))
    rest = next < 0 ? '' : rest.slice(next + 1)
  }
  return parts
}
