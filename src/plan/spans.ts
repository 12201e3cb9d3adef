const MS_PER_HOUR = 3_600_000
const MIN_PER_HOUR = 60
const HOURS_PER_DAY = 24

/** A stretch of time in words, of two digits at most: minutes, hours or days. */
export function spanWords(hours: number): string {
  if (hours < 1) return `${Math.max(1, Math.round(hours * MIN_PER_HOUR))} min`
  if (hours < 2 * HOURS_PER_DAY) return `${hours < 10 ? Number(hours.toFixed(1)) : Math.round(hours)} h`
  return `${Math.round(hours / HOURS_PER_DAY)} days`
}

/** Hours from one moment to another. */
export const hoursBetween = (fromMs: number, toMs: number): number => (toMs - fromMs) / MS_PER_HOUR
