const PATTERN =
  /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])T(?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d{1,9})?)?(?:Z|[+-](?:0\d|1[0-4]):[0-5]\d)$/

/** Whether the text is a date and time with an offset or Z, like 2026-04-28T09:30:00-07:00, of a day that exists. */
export function isMoment(text: string): boolean {
  if (!PATTERN.test(text) || Number.isNaN(Date.parse(text))) return false
  const [year = 0, month = 0, day = 0] = text.slice(0, 10).split('-').map(Number)
  return day <= new Date(Date.UTC(year, month, 0)).getUTCDate()
}

/** The moment in milliseconds since 1970; the text must be one. */
export function momentMs(text: string): number {
  return Date.parse(text)
}
