import { Bench } from 'tinybench'

/** One line of the bench's output; times are medians. */
export type BenchRow =
  | { suite: string; case: string; what: string; oursMs: number; peer: string; peerMs: number; ratio: number }
  | { suite: string; case: string; what: string; oursPerS: number; peer: string; peerPerS: number; ratio: number }

/** Medians of functions measured one after the other in the same run [ms]. */
export async function medians(
  tasks: Readonly<Record<string, () => unknown>>,
  timeMs = 400,
): Promise<Record<string, number>> {
  const bench = new Bench({ time: timeMs, warmupTime: 5 * timeMs })
  for (const [name, task] of Object.entries(tasks)) bench.add(name, task)
  await bench.run()
  return Object.fromEntries(
    bench.tasks.map((task) => {
      const median = task.result && 'latency' in task.result ? task.result.latency.p50 : undefined
      if (median === undefined) throw new Error(`${task.name} gave no result`)
      return [task.name, median]
    }),
  )
}

/** A deterministic generator in [0, 1) (mulberry32), so that every run measures the same inputs. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}
