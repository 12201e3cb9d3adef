import type { LogEntry } from '../../../document/index.ts'

/** An id that no entry of the log has yet, from the moment it is written. */
export function freshLogId(log: readonly LogEntry[], nowMs: number): string {
  const taken = new Set(log.map((entry) => entry.id))
  const base = `log-${Math.round(nowMs).toString(36)}`
  if (!taken.has(base)) return base
  for (let n = 2; ; n++) {
    const id = `${base}-${n}`
    if (!taken.has(id)) return id
  }
}
