import type { Problem } from '../base/index.ts'
import { problem } from './problems.ts'
import { finite } from './shape-help.ts'

export type Treads = readonly (readonly [number, number])[]

/** A complaint about treads that are none, not numbers, or out of order. */
export function checkTreads(treads: Treads, path: string): Problem | undefined {
  if (treads.length === 0) return problem('treads-too-few', `${path}.treads`)
  for (let i = 0; i < treads.length; i++) {
    const [place, depth] = treads[i]!
    const wrong = finite(place, `${path}.treads[${i}][0]`) ?? finite(depth, `${path}.treads[${i}][1]`)
    if (wrong) return wrong
    if (i > 0 && !(place > treads[i - 1]![0])) return problem('treads-not-ordered', `${path}.treads[${i}]`)
  }
  return undefined
}

/** Treads of another number: those that stay keep their measures, new ones go on as the last two did. */
export function recounted(treads: Treads, count: number, goingM: number, riseM: number): Treads {
  const wanted = Math.max(1, Math.round(count))
  const out = treads.slice(0, wanted).map(([s, d]): readonly [number, number] => [s, d])
  while (out.length < wanted) {
    const [s, d] = out[out.length - 1] ?? [0, 0]
    out.push([s + goingM, d + riseM])
  }
  return out
}

/** Distance from tread to tread, the mean of the flight. */
export function meanStep(treads: Treads, which: 0 | 1, fallback: number): number {
  const n = treads.length
  return n < 2 ? fallback : (treads[n - 1]![which] - treads[0]![which]) / (n - 1)
}

/** Treads with an even distance from tread to tread. */
export function respaced(treads: Treads, which: 0 | 1, step: number): Treads {
  const first = treads[0]?.[which] ?? 0
  return treads.map(([s, d], i) => (which === 0 ? [first + i * step, d] : [s, first + i * step]))
}
