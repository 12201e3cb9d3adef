import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import type { SoundingsFloor } from '../../basin/index.ts'
import { firstPointOf } from '../floor-depths.ts'
import { problem } from '../problems.ts'
import { depth, PointSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editFloor, removed } from './places.ts'

/** Where guesses stand in for soundings, one that is taken takes the place of the nearest of them. */
export const addSounding = defineEdit({
  id: 'addSounding',
  label: 'Add sounding',
  args: v.strictObject({ bodyId: Id, at: PointSchema, depthM: depth }),
  apply: (spec, { bodyId, at: [x, y], depthM }) =>
    editFloor(spec, bodyId, 'soundings', (floor, assumed) => {
      const first = firstPointOf(floor)
      const guess = nearestGuess(floor, assumed, x, y)
      if (floor.points.some((point, i) => i !== guess && point[0] === x && point[1] === y))
        return fail(problem('sounding-here', 'at'))
      const taken = [x, y, depthM] as const
      return guess < 0
        ? ok([{ ...floor, points: [...floor.points, taken] }, [...assumed, false]])
        : ok([
            { ...floor, points: [...removed(floor.points, guess), taken] },
            [...removed(assumed, guess + first), false],
          ])
    }),
})

/** Number of the guessed sounding nearest to a place, −1 where none is guessed. */
function nearestGuess(floor: SoundingsFloor, assumed: readonly boolean[], x: number, y: number): number {
  let nearest = -1
  let least = Number.POSITIVE_INFINITY
  for (const [i, point] of floor.points.entries()) {
    const farM = Math.hypot(point[0] - x, point[1] - y)
    if (!assumed[i + firstPointOf(floor)] || farM >= least) continue
    nearest = i
    least = farM
  }
  return nearest
}
