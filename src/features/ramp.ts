import { fail, ok, type Result } from '../base/index.ts'
import type { Band, Patch, Plane } from '../basin/index.ts'
import { problem } from './problems.ts'
import { finite, grip, movedPath, rectangle, unit } from './shape-help.ts'
import type { FeatureKind, Ramp } from './types.ts'

/** How far a new ramp goes down over its length [1]. */
const FALL = 1 / 8

export const RAMP: FeatureKind<Ramp> = {
  id: 'ramp',
  label: 'Ramp',
  help: 'A slope into the water: a beach entry, or a way down for wheels. It may begin above the waterline.',
  fields: [
    {
      id: 'fromDepthM',
      label: 'Depth where it begins',
      unit: 'm',
      isDepth: true,
      get: (f) => f.fromDepthM,
      set: (f, fromDepthM) => ({ ...f, fromDepthM }),
    },
    {
      id: 'toDepthM',
      label: 'Depth where it ends',
      unit: 'm',
      isDepth: true,
      get: (f) => f.toDepthM,
      set: (f, toDepthM) => ({ ...f, toDepthM }),
    },
  ],
  defaults: ({ at, toward, sizeM }) => {
    const [ux, uy] = unit(toward)
    return {
      kind: 'ramp',
      path: rectangle(at, toward, 2 * sizeM, sizeM),
      axis: { from: at, to: [at[0] + 2 * sizeM * ux, at[1] + 2 * sizeM * uy] },
      fromDepthM: 0.05,
      toDepthM: 0.05 + 2 * sizeM * FALL,
    }
  },
  handles: () => [
    grip<Ramp>(
      'axis.from',
      'Whole ramp',
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
    grip<Ramp>(
      'axis.to',
      'End of the slope',
      (f) => f.axis.to,
      (f, to) => ({ ...f, axis: { ...f.axis, to } }),
    ),
  ],
  patchesOf,
}

/** The slope between the ends of its axis, and the level parts of the footprint before and beyond them. */
function patchesOf(ramp: Ramp, index: number): Result<Patch[]> {
  const path = `features[${index}]`
  const { axis, fromDepthM, toDepthM } = ramp
  const wrong =
    finite(fromDepthM, `${path}.fromDepthM`) ??
    finite(toDepthM, `${path}.toDepthM`) ??
    [...axis.from, ...axis.to].map((value) => finite(value, `${path}.axis`)).find((it) => it !== undefined)
  if (wrong) return fail(wrong)
  const [ux, uy] = unit([axis.to[0] - axis.from[0], axis.to[1] - axis.from[1]])
  const run = Math.hypot(axis.to[0] - axis.from[0], axis.to[1] - axis.from[1])
  if (!(run > 0)) return fail(problem('axis-too-short', `${path}.axis`, [axis.from]))
  const level = (depthM: number): Plane => ({ atOrigin: depthM, dx: 0, dy: 0 })
  const s0 = -(axis.from[0] * ux + axis.from[1] * uy)
  const along = (atFrom: number, atTo: number): Plane => {
    const k = (atTo - atFrom) / run
    return { atOrigin: atFrom + k * s0, dx: k * ux, dy: k * uy }
  }
  const patch = (plane: Plane, band: Omit<Band, 'axis'>, weights: Patch['weights']): Patch => ({
    path: ramp.path,
    plane,
    feature: index,
    band: { axis, ...band },
    weights,
    depthNames: ['fromDepthM', 'toDepthM'],
  })
  return ok([
    patch(level(fromDepthM), { fromM: -Infinity, toM: 0 }, [{ depthIndex: 0, plane: level(1) }]),
    patch(fromDepthM === toDepthM ? level(fromDepthM) : along(fromDepthM, toDepthM), { fromM: 0, toM: run }, [
      { depthIndex: 0, plane: along(1, 0) },
      { depthIndex: 1, plane: along(0, 1) },
    ]),
    patch(level(toDepthM), { fromM: run, toM: Infinity }, [{ depthIndex: 1, plane: level(1) }]),
  ])
}
