import { type ChildProcess, fork } from 'node:child_process'
import { availableParallelism } from 'node:os'
import { performance } from 'node:perf_hooks'
import { withBundle } from '../support/bundled.ts'
import { HANG_MS } from './examine.ts'
import { CHUNK, type Message, type SlowDocument, type Task } from './worker.ts'

const DEFAULT_DOCUMENTS = 1_000_000
const DEFAULT_SEED = 20261124
/** A document may be slow to shrink; only one that stands still for as long as this hangs [ms]. */
const STANDSTILL_MS = 20 * HANG_MS
const REPORT_MS = 40_000
const HELP = `npm run fuzz -- [documents] [--seed n] [--processes n]
Takes documents at random through the kernel: ${DEFAULT_DOCUMENTS} of them from seed ${DEFAULT_SEED} in a process for each core.
One fails where something throws, where a number is none or volumes contradict each other, or where an answer (its figures, its
mesh, a level …) takes more than ${HANG_MS / 1000} s twice, by the clock or of the processor, whichever is less; what is so slow beside other
processes is examined once more at the end, by one that has the machine alone, and fails if it is slow there.
Documents whose answers take as long together are counted.`

/** One process at work: the documents of a seed that it has, the one in hand, and since when. */
interface Hand {
  readonly child: ChildProcess
  task: Task
  document: number
  since: number
}

/**
 * `npm run fuzz -- [documents] [--seed n] [--processes n]`: whole documents at random through the kernel, in as many
 * processes as there are cores. Every 500 documents have a seed of their own, counted up from the first: what fails is
 * found again with `--seed` and 500 documents, whichever process had it. `--help` says when one fails.
 */
async function main(args: readonly string[]): Promise<number> {
  if (args.includes('--help')) {
    console.log(HELP)
    return 0
  }
  const numberAfter = (name: string, otherwise: number): number => {
    const at = args.indexOf(name)
    return at >= 0 ? Number(args[at + 1]) : otherwise
  }
  const seed = numberAfter('--seed', DEFAULT_SEED)
  const processes = numberAfter('--processes', availableParallelism())
  const first = args[0]
  const documents = first !== undefined && !first.startsWith('--') ? Number(first) : DEFAULT_DOCUMENTS
  if (!Number.isInteger(seed) || !(Number.isInteger(documents) && documents > 0) || !(processes >= 1))
    throw new Error('give a number of documents, --seed with a whole number, --processes with at least 1')
  console.log(`seed ${seed}, ${documents} documents, ${processes} processes`)
  // Bundled as the page has it: it is the kernel's own speed that tells whether an answer hangs.
  return withBundle(new URL('./worker.ts', import.meta.url), (file) => new Run(file, seed, documents).finish(processes))
}

class Run {
  private readonly totals = new Map<string, number>()
  private readonly hands = new Set<Hand>()
  private readonly start = performance.now()
  private readonly worker: string
  private readonly seed: number
  private readonly documents: number
  private given = 0
  private done = 0
  private failures = 0
  private readonly slow: SlowDocument[] = []
  private slowest = { tookMs: 0, seed: 0, document: 0 }
  private end: () => void = () => {}

  constructor(worker: string, seed: number, documents: number) {
    this.worker = worker
    this.seed = seed
    this.documents = documents
  }

  async finish(processes: number): Promise<number> {
    const watch = setInterval(() => this.lookForHangs(), 1000)
    const report = setInterval(() => console.log(this.soFar()), REPORT_MS)
    await new Promise<void>((resolve) => {
      this.end = resolve
      for (let i = 0; i < processes; i++) this.startOne()
    })
    if (this.slow.length > 0) {
      console.log(`${this.slow.length} were slow beside others; now alone`)
      await new Promise<void>((resolve) => {
        this.end = resolve
        this.startOne({ seed: 0, documents: 0, from: 0, hasHung: false, alone: this.slow })
      })
    }
    clearInterval(watch)
    clearInterval(report)
    // A kernel that refuses everything would never fail.
    const measured = this.totals.get('basin: measured') ?? 0
    const counted = [...this.totals].reduce((sum, [label, n]) => sum + (label.startsWith('document: ') ? n : 0), 0)
    if (counted >= CHUNK && measured < counted / 3) this.fail(`only ${measured} of ${counted} were measured`)
    if (this.done !== this.documents) this.fail(`${this.done} of ${this.documents} came back`)
    for (const [label, count] of [...this.totals].sort(([a], [b]) => a.localeCompare(b)))
      console.log(`${String(count).padStart(9)}  ${label}`)
    console.log(`${this.soFar()}, from seed ${this.seed}`)
    return this.failures === 0 ? 0 : 1
  }

  private soFar(): string {
    const rate = Math.round((this.done * 1000) / (performance.now() - this.start))
    const { tookMs, seed, document } = this.slowest
    return (
      `${this.done} documents, ${rate} a second, ${this.failures} failures, ` +
      `slowest ${Math.round(tookMs)} ms (document ${document} of seed ${seed})`
    )
  }

  /** A process that takes what is next, or the rest of a seed of which a document hung. */
  private startOne(rest?: Task): void {
    if (!rest && this.given >= this.documents) {
      if (this.hands.size === 0) this.end()
      return
    }
    // Room for what a document leaves behind, or a tenth of the time goes into clearing it away.
    const child = fork(this.worker, {
      execArgv: ['--enable-source-maps', '--max-semi-space-size=64'],
      // A document may hold numbers that JSON doesn't know.
      serialization: 'advanced',
    })
    const task = { seed: 0, documents: 0, from: 0, hasHung: false }
    const hand: Hand = { child, task, document: 0, since: performance.now() }
    this.hands.add(hand)
    child.on('message', (message: Message) => this.hear(hand, message))
    child.on('exit', (code, signal) => {
      if (!this.hands.delete(hand)) return
      this.fail(`a process ended (${code ?? signal}) at document ${hand.document} of seed ${hand.task.seed}`)
      this.startOne()
    })
    if (rest) this.give(hand, rest)
    else this.giveNext(hand)
  }

  private giveNext(hand: Hand): void {
    const documents = Math.min(CHUNK, this.documents - this.given)
    if (documents <= 0) {
      this.hands.delete(hand)
      hand.child.disconnect()
      if (this.hands.size === 0) this.end()
      return
    }
    const seed = this.seed + Math.floor(this.given / CHUNK)
    this.given += documents
    this.give(hand, { seed, documents, from: 0, hasHung: false })
  }

  private give(hand: Hand, task: Task): void {
    hand.task = task
    hand.document = task.from
    hand.since = performance.now()
    hand.child.send(task)
  }

  private hear(hand: Hand, message: Message): void {
    hand.since = performance.now()
    if (message.kind === 'began') hand.document = message.document
    else if (message.kind === 'failure') {
      if (message.isNew) this.failures++
      console.log(`FAILURE, seed ${message.seed}, ${message.error}\n${message.document}`)
    } else if (message.kind === 'slow') {
      this.slow.push(message.slow)
      const { seed, index, document } = message.slow
      console.log(
        `slow beside others, document ${index} of seed ${seed}: ${message.error}\n${JSON.stringify(document)}`,
      )
    } else if (message.kind === 'done') {
      const { task } = hand
      this.done += message.next - task.from
      if (message.slowestMs > this.slowest.tookMs)
        this.slowest = { tookMs: message.slowestMs, seed: task.seed, document: message.slowestDocument }
      for (const [label, count] of Object.entries(message.counts))
        this.totals.set(label, (this.totals.get(label) ?? 0) + count)
      // What is behind a failure is examined too.
      if (message.next > task.from && message.next < task.documents)
        this.give(hand, { ...task, from: message.next, hasHung: false })
      else this.giveNext(hand)
    }
  }

  private fail(what: string): void {
    this.failures++
    console.log(`FAILURE, ${what}`)
  }

  private lookForHangs(): void {
    for (const hand of this.hands) {
      if (performance.now() - hand.since < STANDSTILL_MS) continue
      this.fail(`HANG: document ${hand.document} of seed ${hand.task.seed} has not come back in ${STANDSTILL_MS} ms`)
      this.hands.delete(hand)
      hand.child.kill('SIGKILL')
      this.done += hand.document + 1 - hand.task.from
      this.startOne({ ...hand.task, from: hand.document + 1, hasHung: true })
    }
  }
}

process.exitCode = await main(process.argv.slice(2))
