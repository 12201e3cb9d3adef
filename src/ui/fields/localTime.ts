const two = (n: number) => String(n).padStart(2, '0')

/** The wall-clock form of a moment, as a date-and-time box holds it: `2026-05-02T09:30`; empty where there is none. */
export function localFromIso(iso: string | undefined): string {
  const at = new Date(iso ?? Number.NaN)
  if (Number.isNaN(at.getTime())) return ''
  return (
    `${String(at.getFullYear()).padStart(4, '0')}-${two(at.getMonth() + 1)}-${two(at.getDate())}` +
    `T${two(at.getHours())}:${two(at.getMinutes())}`
  )
}

/** ISO 8601 with the offset of this device at that moment; undefined where the text is no moment. */
export function isoFromLocal(local: string): string | undefined {
  const at = new Date(local)
  if (local === '' || Number.isNaN(at.getTime())) return undefined
  const east = -at.getTimezoneOffset()
  const sign = east < 0 ? '-' : '+'
  const offset = `${sign}${two(Math.floor(Math.abs(east) / 60))}:${two(Math.abs(east) % 60)}`
  return `${localFromIso(at.toISOString())}:00${offset}`
}

/** ISO 8601 with this device's offset of a moment in milliseconds since 1970, to the minute. */
export function isoFromMs(ms: number): string {
  return isoFromLocal(localFromIso(new Date(ms).toISOString())) ?? new Date(ms).toISOString()
}

/** "2 May 2026, 09:30" on this device's clock. */
export function sayMoment(iso: string): string {
  const at = new Date(iso)
  return Number.isNaN(at.getTime())
    ? iso
    : new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' }).format(at)
}
