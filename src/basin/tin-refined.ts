import { fail, ok, type Result } from '../base/index.ts'
import type { FloorPlan } from './floor-kind.ts'
import { problem } from './problems.ts'
import { FLOOR_CHORD } from './tolerance.ts'

/** A floor on chords, finer ones where those cross because two curves come nearer to each other than their chords do. */
export function refined(extentM: number, plan: (chordM: number) => FloorPlan | undefined): Result<FloorPlan> {
  for (const finer of [1, 8, 64, 512]) {
    const floor = plan((extentM * FLOOR_CHORD) / finer)
    if (floor) return ok(floor)
  }
  return fail(problem('cannot-divide', 'floor'))
}
