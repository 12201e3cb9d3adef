import { fail, ok, type Result } from '../base/index.ts'
import type { Patch } from '../basin/index.ts'
import { problem } from './problems.ts'
import { finite, grip, movedPath, rectangle, unit } from './shape-help.ts'
import { GOING_M, RISE_M, treadFields } from './tread-fields.ts'
import { checkTreads } from './treads.ts'
import type { FeatureKind, Steps } from './types.ts'

const { count, going, rise, firstDepth } = treadFields<Steps>()

export const STEPS: FeatureKind<Steps> = {
  id: 'steps',
  label: 'Steps',
  help: 'A flight of straight treads down into the water.',
  fields: [count, going, rise, firstDepth],
  defaults: ({ at, toward, sizeM }) => {
    const [ux, uy] = unit(toward)
    const run = 3 * GOING_M
    return {
      kind: 'steps',
      path: rectangle(at, toward, run, sizeM),
      axis: { from: at, to: [at[0] + run * ux, at[1] + run * uy] },
      treads: [
        [0, RISE_M],
        [GOING_M, 2 * RISE_M],
        [2 * GOING_M, 3 * RISE_M],
      ],
    }
  },
  handles: () => [
    grip<Steps>(
      'axis.from',
      'Whole flight',
      (f) => f.axis.from,
      (f, to) => {
        const dx = to[0] - f.axis.from[0]
        const dy = to[1] - f.axis.from[1]
        return {
          ...f,
          path: movedPath(f.path, dx, dy),
          axis: { from: to, to: [f.axis.to[0] + dx, f.axis.to[1] + dy] },
        }
      },
    ),
    grip<Steps>(
      'axis.to',
      'Direction of the flight',
      (f) => f.axis.to,
      (f, to) => ({ ...f, axis: { ...f.axis, to } }),
    ),
  ],
  patchesOf,
}

/** One patch a tread: the part of the footprint between two lines across the axis. */
function patchesOf(steps: Steps, index: number): Result<Patch[]> {
  const path = `features[${index}]`
  const { from, to } = steps.axis
  const numbers = [...from, ...to].map((value) => finite(value, `${path}.axis`)).find((wrong) => wrong !== undefined)
  if (numbers) return fail(numbers)
  if (!(Math.hypot(to[0] - from[0], to[1] - from[1]) > 0))
    return fail(problem('axis-too-short', `${path}.axis`, [from]))
  const [ux, uy] = unit([to[0] - from[0], to[1] - from[1]])
  const wrong = checkTreads(steps.treads, path, (s) => [from[0] + s * ux, from[1] + s * uy])
  if (wrong) return fail(wrong)
  const last = steps.treads.length - 1
  return ok(
    steps.treads.map(
      ([s, depthM], i): Patch => ({
        path: steps.path,
        plane: { atOrigin: depthM, dx: 0, dy: 0 },
        feature: index,
        depthNames: [`treads[${i}][1]`],
        band: {
          axis: steps.axis,
          fromM: i === 0 ? -Infinity : s,
          toM: i === last ? Infinity : steps.treads[i + 1]![0],
          names: [`treads[${i}][0]`, `treads[${Math.min(i + 1, last)}][0]`],
        },
      }),
    ),
  )
}
