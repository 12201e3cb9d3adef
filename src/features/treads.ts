import type { Problem } from '../base/index.ts'
import type { Point } from '../basin/index.ts'
import { problem } from './problems.ts'
import { finite } from './shape-help.ts'

export type Treads = readonly (readonly [number, number])[]

/** A complaint about treads that are none, not numbers, or out of order, with where such a tread begins. */
export function checkTreads(treads: Treads, path: string, placeAt: (distanceM: number) => Point): Problem | undefined {
  if (treads.length === 0) return problem('treads-too-few', `${path}.treads`)
  for (let i = 0; i < treads.length; i++) {
    const [place, depth] = treads[i]!
    const wrong = finite(place, `${path}.treads[${i}][0]`) ?? finite(depth, `${path}.treads[${i}][1]`)
    if (wrong) return wrong
    if (i > 0 && !(place > treads[i - 1]![0]))
      return problem('treads-not-ordered', `${path}.treads[${i}]`, [placeAt(place)])
  }
  return undefined
}
