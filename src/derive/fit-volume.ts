import { fail, type Problem, type Result } from '../base/index.ts'
import { type BasinShape, solveForVolume } from '../basin/index.ts'
import { type Body, deepenedFloor, scaledPlan } from '../document/index.ts'
import { deriveBody, shapeOf } from './body.ts'

/** What may change so that a volume is met: all depths of the floor by as much, or the plan larger or smaller. */
export type VolumeMeans = 'depths' | 'plan'

export interface VolumeFit {
  /** Metres that every depth of the floor grows by, or the factor that the plan grows by. */
  readonly value: number
  readonly volumeM3: number
}

/** A floor may rise to this depth at its deepest or sink by this much, and the plan change by this factor, no further. */
const SHALLOWEST_M = 0.02
export const FIT_LIMITS = { mostDeeperM: 20, mostFactor: 4 } as const
const { mostDeeperM: MOST_DEEPER_M, mostFactor: MOST_FACTOR } = FIT_LIMITS

/** By how much the depths or the plan of a body have to change for its water, at its own level, to have a volume [m³]. */
export function fitVolume(body: Body, means: VolumeMeans, volumeM3: number): Result<VolumeFit> {
  const { measures } = deriveBody(body)
  if (!measures.ok) return measures
  const now = measures.value
  const at = (x: number): Result<BasinShape> => shapeOf(changedBy(body, means, x))
  const isMore = volumeM3 > now.volumeM3
  const wish = { at, volumeM3, levelM: body.levelM }
  // A first guess as if the walls were upright and all of it grew alike: what is looked at goes a good deal beyond it.
  if (means === 'plan') {
    const guess = Math.sqrt(Math.max(volumeM3, 0) / now.volumeM3)
    const to = isMore ? Math.min(MOST_FACTOR, 1 + 2.5 * (guess - 1)) : Math.max(1 / MOST_FACTOR, 1 - 1.8 * (1 - guess))
    return fitted(solveForVolume({ ...wish, from: 1, to }))
  }
  const guess = (volumeM3 - now.volumeM3) / now.waterSurfaceM2
  const to = isMore ? Math.min(MOST_DEEPER_M, 3 * guess) : Math.max(SHALLOWEST_M - now.maxDepthM, 3 * guess)
  return fitted(solveForVolume({ ...wish, from: 0, to }))
}

function fitted(met: Result<{ readonly x: number; readonly volumeM3: number }, Problem>): Result<VolumeFit> {
  return met.ok ? { ok: true, value: { value: met.value.x, volumeM3: met.value.volumeM3 } } : fail(met.problem)
}

function changedBy(body: Body, means: VolumeMeans, by: number): Body {
  return means === 'plan' ? scaledPlan(body, by) : { ...body, floor: deepenedFloor(body.floor, by) }
}
