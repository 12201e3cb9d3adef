import type { LogEntry, ReadingSet, System } from '../../../document/index.ts'

/** A line of the logbook, whatever it records. */
export type LogRow =
  | {
      readonly kind: 'readings'
      readonly key: string
      readonly at: string
      readonly set: ReadingSet
      readonly index: number
    }
  | { readonly kind: 'fill'; readonly key: string; readonly at: string; readonly set: ReadingSet }
  | { readonly kind: 'entry'; readonly key: string; readonly at: string; readonly entry: LogEntry }

export interface LogDay {
  /** "2 May 2026". */
  readonly label: string
  readonly rows: readonly LogRow[]
}

const momentOf = (iso: string): number => {
  const ms = new Date(iso).getTime()
  return Number.isNaN(ms) ? Number.NEGATIVE_INFINITY : ms
}

/** Readings, doses and notes of a system in one list, the newest first; of one moment, the last written first. */
export function rowsOf(system: System): readonly LogRow[] {
  const { fill, readings } = system.water
  const rows: LogRow[] = [
    ...(fill ? [{ kind: 'fill', key: 'fill', at: fill.at, set: fill } as const] : []),
    ...readings.map((set, index) => ({ kind: 'readings', key: `readings-${index}`, at: set.at, set, index }) as const),
    ...system.log.map((entry) => ({ kind: 'entry', key: entry.id, at: entry.at, entry }) as const),
  ]
  return rows
    .map((row, written) => ({ row, written, ms: momentOf(row.at) }))
    .sort((a, b) => (a.ms === b.ms ? b.written - a.written : a.ms < b.ms ? 1 : -1))
    .map(({ row }) => row)
}

/** The list by days of this device's clock. */
export function daysOf(rows: readonly LogRow[]): readonly LogDay[] {
  const day = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium' })
  const days: { label: string; rows: LogRow[] }[] = []
  for (const row of rows) {
    const at = new Date(row.at)
    const label = Number.isNaN(at.getTime()) ? row.at : day.format(at)
    const last = days[days.length - 1]
    if (last?.label === label) last.rows.push(row)
    else days.push({ label, rows: [row] })
  }
  return days
}

/** "09:30" on this device's clock; empty where there is no such moment. */
export function timeOf(iso: string): string {
  const at = new Date(iso)
  return Number.isNaN(at.getTime()) ? '' : new Intl.DateTimeFormat('en-GB', { timeStyle: 'short' }).format(at)
}
