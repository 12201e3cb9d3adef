import { performance } from 'node:perf_hooks'
import { Worker } from 'node:worker_threads'
import { HANG_MS } from './examine.ts'
import type { Message, Task } from './worker.ts'

const DEFAULT_DOCUMENTS = 1_000_000
const DEFAULT_SEED = 20261124
/** A document may be slow to shrink; only one that stands still for as long as this hangs [ms]. */
const STANDSTILL_MS = 20 * HANG_MS

/** `npm run fuzz -- [documents] [--seed n]`: whole documents at random through the kernel, in a thread that is watched. */
async function main(args: readonly string[]): Promise<number> {
  const seedAt = args.indexOf('--seed')
  const seed = seedAt >= 0 ? Number(args[seedAt + 1]) : DEFAULT_SEED
  const first = args[0]
  const documents = first !== undefined && !first.startsWith('--') ? Number(first) : DEFAULT_DOCUMENTS
  if (!Number.isInteger(seed) || !Number.isInteger(documents) || documents <= 0)
    throw new Error('give a number of documents, and --seed with a whole number')
  console.log(`seed ${seed}, ${documents} documents`)
  const totals = new Map<string, number>()
  const progress = new Int32Array(new SharedArrayBuffer(12))
  let failures = 0
  let slowestMs = 0
  const start = performance.now()
  // A thread doesn't inherit the loader of TypeScript; it has to register its own.
  const [loader, script] = [import.meta.resolve('tsx/esm/api'), import.meta.resolve('./worker.ts')]
  const worker = new Worker(`import('${loader}').then(({ register }) => (register(), import('${script}')))`, {
    eval: true,
    workerData: { seed, documents, progress } satisfies Task,
  })
  const rate = () => Math.round((Atomics.load(progress, 0) * 1000) / (performance.now() - start))
  await new Promise<void>((resolve, reject) => {
    let last = -1
    const watch = setInterval(() => {
      const now = Atomics.load(progress, 0)
      console.log(`${now} documents, ${rate()} a second, ${failures} failures`)
      if (now === last) {
        failures++
        console.error(
          `HANG: document ${Atomics.load(progress, 2)} of seed ${Atomics.load(progress, 1)} has not come back in ${STANDSTILL_MS} ms`,
        )
        void worker.terminate().then(() => resolve())
      }
      last = now
    }, STANDSTILL_MS)
    const end = (): void => clearInterval(watch)
    worker.on('message', (message: Message) => {
      if (message.kind === 'failure') {
        failures++
        console.error(`FAILURE, seed ${message.seed}: ${message.error}\n${message.document}`)
      } else if (message.kind === 'counts') {
        slowestMs = Math.max(slowestMs, message.slowestMs)
        for (const [label, count] of Object.entries(message.counts)) totals.set(label, (totals.get(label) ?? 0) + count)
      }
    })
    worker.on('error', (error) => {
      end()
      reject(error)
    })
    worker.on('exit', () => {
      end()
      resolve()
    })
  })
  const rows = [...totals].sort(([a], [b]) => a.localeCompare(b))
  for (const [label, count] of rows) console.log(`${String(count).padStart(9)}  ${label}`)
  console.log(
    `${Atomics.load(progress, 0)} documents from seed ${seed}, ${rate()} a second, slowest ${Math.round(slowestMs)} ms, ${failures} failures`,
  )
  return failures === 0 ? 0 : 1
}

process.exitCode = await main(process.argv.slice(2))
