import type { Spec } from './types.ts'

/** More steps back than this are forgotten. */
export const MOST_STEPS = 200

/** In the past: the document before an edit. In the future: the one after it. The label is the edit's. */
export interface HistoryStep {
  readonly spec: Spec
  readonly label: string
  readonly mergeKey?: string | undefined
}

export interface History {
  /** Oldest first. */
  readonly past: readonly HistoryStep[]
  readonly present: Spec
  /** The next to be redone is the last. */
  readonly future: readonly HistoryStep[]
}

export function startHistory(spec: Spec): History {
  return { past: [], present: spec, future: [] }
}

/** The history with an edit done. Edits in a row with one merge key (one for each drag) are one step. */
export function record(history: History, spec: Spec, label: string, mergeKey?: string): History {
  if (spec === history.present) return history
  const last = history.past.at(-1)
  const continues = mergeKey !== undefined && last?.mergeKey === mergeKey && history.future.length === 0
  if (continues) return { ...history, present: spec }
  const step: HistoryStep =
    mergeKey === undefined ? { spec: history.present, label } : { spec: history.present, label, mergeKey }
  return { past: [...history.past, step].slice(-MOST_STEPS), present: spec, future: [] }
}

/** One step back; the same history where there is none. */
export function undo(history: History): History {
  const last = history.past.at(-1)
  if (last === undefined) return history
  const step: HistoryStep = { spec: history.present, label: last.label }
  return { past: history.past.slice(0, -1), present: last.spec, future: [...history.future, step] }
}

/** One step forward again; the same history where there is none. */
export function redo(history: History): History {
  const next = history.future.at(-1)
  if (next === undefined) return history
  const step: HistoryStep = { spec: history.present, label: next.label }
  return { past: [...history.past, step], present: next.spec, future: history.future.slice(0, -1) }
}

/** What undo would take back. */
export function undoLabel(history: History): string | undefined {
  return history.past.at(-1)?.label
}

/** What redo would do again. */
export function redoLabel(history: History): string | undefined {
  return history.future.at(-1)?.label
}
