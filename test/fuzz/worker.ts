import { parentPort, workerData } from 'node:worker_threads'
import fc from 'fast-check'
import { type RawDocument, rawDocument } from './documents.ts'
import { examine } from './examine.ts'

/** What the worker is told: how many documents, from which seed on; and where it says how far it is. */
export interface Task {
  readonly seed: number
  readonly documents: number
  /** Documents done, the seed in hand, and the document of it in hand: the one to look at should it never come back. */
  readonly progress: Int32Array
}

export type Message =
  | { readonly kind: 'counts'; readonly counts: Readonly<Record<string, number>>; readonly slowestMs: number }
  | { readonly kind: 'failure'; readonly seed: number; readonly error: string; readonly document: string }
  | { readonly kind: 'done' }

/** Documents to a seed: small, so that a failure is found again at once. */
export const CHUNK = 500

/** Examines the documents of a seed; those that only serve to make a failure smaller are not counted. */
export function runChunk(
  seed: number,
  documents: number,
  onDocument: (labels: readonly string[], tookMs: number) => void,
  patienceMs?: number,
) {
  let hasFailed = false
  return fc.check(
    fc.property(rawDocument, (document: RawDocument) => {
      const start = performance.now()
      let labels: readonly string[] = ['failed']
      try {
        labels = examine(document, patienceMs)
      } finally {
        if (!hasFailed) onDocument(labels, performance.now() - start)
        if (labels[0] === 'failed') hasFailed = true
      }
    }),
    { seed, numRuns: documents, interruptAfterTimeLimit: 60_000, markInterruptAsFailure: false },
  )
}

if (parentPort) {
  const port = parentPort
  const task = workerData as Task
  for (let done = 0, seed = task.seed; done < task.documents; done += CHUNK, seed++) {
    const counts: Record<string, number> = {}
    Atomics.store(task.progress, 1, seed)
    Atomics.store(task.progress, 2, 0)
    let slowestMs = 0
    const details = runChunk(seed, Math.min(CHUNK, task.documents - done), (labels, tookMs) => {
      for (const label of labels) counts[label] = (counts[label] ?? 0) + 1
      slowestMs = Math.max(slowestMs, tookMs)
      Atomics.add(task.progress, 0, 1)
      Atomics.add(task.progress, 2, 1)
    })
    if (details.failed) {
      const error =
        details.errorInstance instanceof Error ? (details.errorInstance.stack ?? '') : String(details.errorInstance)
      port.postMessage({
        kind: 'failure',
        seed,
        error: error.split('\n').slice(0, 6).join('\n'),
        document: JSON.stringify(details.counterexample?.[0], (_, value) =>
          typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
        ),
      } satisfies Message)
    }
    port.postMessage({ kind: 'counts', counts, slowestMs } satisfies Message)
  }
  port.postMessage({ kind: 'done' } satisfies Message)
}
