import { fail, ok, type Result } from '../base/index.ts'
import type { Patch, Path, Point } from '../basin/index.ts'
import { problem } from './problems.ts'
import { finite, grip } from './shape-help.ts'
import { GOING_M, RISE_M, treadFields } from './tread-fields.ts'
import { checkTreads } from './treads.ts'
import type { FeatureKind, RoundSteps } from './types.ts'

const { count, going, rise, firstDepth } = treadFields<RoundSteps>()

export const ROUND_STEPS: FeatureKind<RoundSteps> = {
  id: 'roundSteps',
  label: 'Round steps',
  help: 'A flight of round treads about one centre, as in a corner.',
  fields: [
    count,
    {
      id: 'firstRadiusM',
      label: 'Radius of the first tread',
      unit: 'm',
      get: (f) => f.treads[0]?.[0] ?? 0,
      set: (f, radius) => {
        const by = radius - (f.treads[0]?.[0] ?? 0)
        return { ...f, treads: f.treads.map(([r, d]) => [r + by, d] as const) }
      },
    },
    going,
    rise,
    firstDepth,
  ],
  defaults: ({ at, sizeM }) => ({
    kind: 'roundSteps',
    centre: at,
    treads: [
      [sizeM / 2, RISE_M],
      [sizeM / 2 + GOING_M, 2 * RISE_M],
      [sizeM / 2 + 2 * GOING_M, 3 * RISE_M],
    ],
  }),
  handles: (steps) => [
    grip<RoundSteps>(
      'centre',
      'Centre of the flight',
      (f) => f.centre,
      (f, centre) => ({ ...f, centre }),
    ),
    ...steps.treads.map((_, i) =>
      grip<RoundSteps>(
        `treads[${i}]`,
        `Radius of tread ${i + 1}`,
        (f): Point => [f.centre[0] + (f.treads[i]?.[0] ?? 0), f.centre[1]],
        (f, to) => ({
          ...f,
          treads: f.treads.map(([r, d], k) =>
            k === i ? ([Math.hypot(to[0] - f.centre[0], to[1] - f.centre[1]), d] as const) : ([r, d] as const),
          ),
        }),
      ),
    ),
  ],
  patchesOf,
}

/** One patch a tread: a disc without the disc of the tread before. */
function patchesOf(steps: RoundSteps, index: number): Result<Patch[]> {
  const path = `features[${index}]`
  const wrong =
    finite(steps.centre[0], `${path}.centre`) ??
    finite(steps.centre[1], `${path}.centre`) ??
    checkTreads(steps.treads, path, () => steps.centre)
  if (wrong) return fail(wrong)
  if (!(steps.treads[0]![0] > 0)) return fail(problem('radius-not-positive', `${path}.treads[0]`))
  return ok(
    steps.treads.map(([radiusM, depthM], i): Patch => {
      const disc: Patch = {
        path: circle(steps.centre, radiusM),
        plane: { atOrigin: depthM, dx: 0, dy: 0 },
        feature: index,
        depthNames: [`treads[${i}][1]`],
        measuredFrom: { kind: 'centre', centre: steps.centre, radiusName: `treads[${i}][0]` },
      }
      return i === 0 ? disc : { ...disc, except: circle(steps.centre, steps.treads[i - 1]![0]) }
    }),
  )
}

function circle([x, y]: Point, r: number): Path {
  return {
    start: [x + r, y],
    segments: [
      { to: [x - r, y], bulge: 1 },
      { to: [x + r, y], bulge: 1 },
    ],
  }
}
