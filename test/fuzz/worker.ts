import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { type RawDocument, rawDocument } from './documents.ts'
import { examine, Slow } from './examine.ts'

/** What a process is told: how many documents of which seed. */
export interface Task {
  readonly seed: number
  readonly documents: number
  /** The first that is examined. */
  readonly from: number
  /** True where the one before it hung: it is told of. */
  readonly hasHung: boolean
  /** Documents that were slow beside others, to be examined by a process that has the machine alone, instead of drawn ones. */
  readonly alone?: readonly SlowDocument[]
}

/** A document that was slow twice, and where it came from. */
export interface SlowDocument {
  readonly seed: number
  readonly index: number
  readonly document: RawDocument
}

/** What it tells: which document it takes in hand, what failed, and at the end of a task how its documents came out. */
export type Message =
  | { readonly kind: 'began'; readonly document: number }
  /** One that is looked at again when the machine has nothing else to do. */
  | { readonly kind: 'slow'; readonly slow: SlowDocument; readonly error: string }
  /** Still at work: a failed document is made smaller, or slow ones are looked at alone. */
  | { readonly kind: 'busy' }
  | {
      readonly kind: 'failure'
      readonly seed: number
      readonly error: string
      readonly document: string
      /** False where more is told of a failure that has been counted. */
      readonly isNew: boolean
    }
  | {
      readonly kind: 'done'
      /** The first document that was not examined: what is behind a failure. */
      readonly next: number
      readonly counts: Readonly<Record<string, number>>
      readonly slowestMs: number
      readonly slowestDocument: number
    }

/** Documents to a seed: small, so that a failure is found again at once. */
export const CHUNK = 500

/** A chunk that takes longer is a failure of its own [ms]. */
const LONGEST_MS = 600_000

/** A failure is made smaller for so long at most [ms]. */
const SHRINKING_MS = 60_000

/** Of a long run's ordinary pools with a triangulated floor under a leaning wall one in so many: there are enough of them. */
const LEANING = 3

/** What to examine, and who is told of it. */
interface Chunk {
  readonly seed: number
  readonly documents: number
  /** Of ordinary pools with a triangulated floor under a leaning wall one in so many is kept. */
  readonly leaning: number
  /** Documents before this one are passed over. */
  readonly from?: number
  readonly onDocument: (labels: readonly string[], tookMs: number) => void
  readonly onPassed?: (document: RawDocument, index: number) => void
  /** Where there is one, a slow document is no failure: it is told of. */
  readonly onSlow?: (document: RawDocument, error: Slow) => void
  /** The first failure as it came; then nothing, at each document that only serves to make it smaller. */
  readonly onShrinking?: (first: { readonly error: unknown; readonly document: RawDocument } | undefined) => void
}

/** Examines the documents of a seed up to the first that fails, which is made smaller. */
export function runChunk({ seed, documents, leaning, from = 0, onDocument, onPassed, onSlow, onShrinking }: Chunk) {
  let hasFailed = false
  let failedAt = Number.POSITIVE_INFINITY
  let index = 0
  return fc.check(
    fc.property(rawDocument(leaning), (document: RawDocument) => {
      const start = performance.now()
      if (start - failedAt > SHRINKING_MS) return
      if (!hasFailed && index++ < from) {
        onPassed?.(document, index - 1)
        return
      }
      try {
        const labels = examine(document)
        if (!hasFailed) onDocument(labels, performance.now() - start)
        else onShrinking?.(undefined)
      } catch (error) {
        if (error instanceof Slow && onSlow && !hasFailed) {
          onSlow(document, error)
          onDocument(['slow beside others'], performance.now() - start)
          return
        }
        if (!hasFailed) onDocument(['failed'], performance.now() - start)
        onShrinking?.(hasFailed ? undefined : { error, document })
        if (!hasFailed) failedAt = performance.now()
        hasFailed = true
        throw error
      }
    }),
    { seed, numRuns: documents, interruptAfterTimeLimit: LONGEST_MS, markInterruptAsFailure: true },
  )
}

/** Times that a slow document is looked at before it fails: in a process of its own no code is compiled yet. */
const LOOKS = 3

function errorOf(document: RawDocument): unknown {
  let last: unknown
  for (let i = 0; i < LOOKS; i++)
    try {
      examine(document)
      return undefined
    } catch (error) {
      last = error
    }
  return last
}

function runTask(task: Task, tell: (message: Message) => void): void {
  if (task.alone) {
    for (const { seed, index, document } of task.alone) {
      const error = errorOf(document)
      const text = `document ${index}: ${error instanceof Error ? error.message : String(error)}`
      if (error) tell({ kind: 'failure', seed, error: text, document: JSON.stringify(document), isNew: true })
      tell({ kind: 'busy' })
    }
    tell({ kind: 'done', next: 0, counts: {}, slowestMs: 0, slowestDocument: 0 })
    return
  }
  const { seed, documents, from, hasHung } = task
  const counts: Record<string, number> = {}
  let done = from
  let slowestMs = 0
  let slowestDocument = 0
  const fail = (what: string, error: unknown, document: unknown, isNew: boolean): void => {
    const text = error instanceof Error ? (error.stack ?? '') : String(error)
    tell({
      kind: 'failure',
      seed,
      isNew,
      error: `${what}: ${text.split('\n').slice(0, 6).join('\n')}`,
      document: JSON.stringify(document, (_, value) =>
        typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
      ),
    })
  }
  const details = runChunk({
    seed,
    documents,
    leaning: LEANING,
    from,
    onDocument: (labels, tookMs) => {
      for (const label of labels) counts[label] = (counts[label] ?? 0) + 1
      if (tookMs > slowestMs) {
        slowestMs = tookMs
        slowestDocument = done
      }
      tell({ kind: 'began', document: ++done })
    },
    onPassed: (document, i) => {
      if (hasHung && i === from - 1) fail(`document ${i}`, 'it hung', document, false)
    },
    onSlow: (document, { message }) => tell({ kind: 'slow', slow: { seed, index: done, document }, error: message }),
    // At once as it came, for making it smaller may take long.
    onShrinking: (first) =>
      first ? fail(`document ${done - 1}`, first.error, first.document, true) : tell({ kind: 'busy' }),
  })
  if (details.counterexample) fail('made smaller', details.errorInstance, details.counterexample[0], false)
  else if (details.failed) fail(`${done} of ${documents} documents`, 'the time was over', undefined, true)
  tell({ kind: 'done', next: done, counts, slowestMs, slowestDocument })
}

// Only where this file is a process of its own; the tests' own processes have a channel too.
if (process.argv[1] === fileURLToPath(import.meta.url))
  process.on('message', (task: Task) => runTask(task, (message) => process.send?.(message)))
