import { fail, ok, type Result } from '../base/index.ts'
import type { Patch } from '../basin/index.ts'
import { problem } from './problems.ts'
import { finite, grip, movedPath, rectangle, unit } from './shape-help.ts'
import { checkTreads, meanStep, recounted, respaced } from './treads.ts'
import type { FeatureKind, Steps } from './types.ts'

const GOING_M = 0.3
const RISE_M = 0.25

export const STEPS: FeatureKind<Steps> = {
  id: 'steps',
  label: 'Steps',
  fields: [
    {
      id: 'count',
      label: 'Treads',
      unit: 'count',
      get: (f) => f.treads.length,
      set: (f, n) => ({
        ...f,
        treads: recounted(f.treads, n, meanStep(f.treads, 0, GOING_M), meanStep(f.treads, 1, RISE_M)),
      }),
    },
    {
      id: 'goingM',
      label: 'Depth of a tread, front to back',
      unit: 'm',
      get: (f) => meanStep(f.treads, 0, GOING_M),
      set: (f, step) => ({ ...f, treads: respaced(f.treads, 0, step) }),
    },
    {
      id: 'riseM',
      label: 'Drop from tread to tread',
      unit: 'm',
      get: (f) => meanStep(f.treads, 1, RISE_M),
      set: (f, step) => ({ ...f, treads: respaced(f.treads, 1, step) }),
    },
    {
      id: 'firstDepthM',
      label: 'Depth of the first tread',
      unit: 'm',
      get: (f) => f.treads[0]?.[1] ?? 0,
      set: (f, depth) => {
        const by = depth - (f.treads[0]?.[1] ?? 0)
        return { ...f, treads: f.treads.map(([s, d]) => [s, d + by] as const) }
      },
    },
  ],
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
  const wrong = checkTreads(steps.treads, path)
  if (wrong) return fail(wrong)
  const last = steps.treads.length - 1
  return ok(
    steps.treads.map(
      ([s, depthM], i): Patch => ({
        path: steps.path,
        plane: { atOrigin: depthM, dx: 0, dy: 0 },
        feature: index,
        band: {
          axis: steps.axis,
          fromM: i === 0 ? -Infinity : s,
          toM: i === last ? Infinity : steps.treads[i + 1]![0],
        },
      }),
    ),
  )
}
