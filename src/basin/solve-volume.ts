import { bracketedRoot, fail, ok, type Problem, type Result } from '../base/index.ts'
import { volumeAtLevel } from './measure.ts'
import { partition } from './partition.ts'
import { problem } from './problems.ts'
import { NEARLY, ROUNDING } from './tolerance.ts'
import type { BasinShape } from './types.ts'

/** A family of shapes along one number, and the volume that one of them shall have. */
export interface VolumeWish {
  /** The shape for a value of the number, or why there is none. */
  readonly at: (x: number) => Result<BasinShape>
  readonly from: number
  readonly to: number
  readonly volumeM3: number
  readonly levelM: number
}

export interface VolumeMet {
  readonly x: number
  readonly shape: BasinShape
  readonly volumeM3: number
}

/** Stretches that are looked at for a change of sign; a family may rise and fall, and make no sense in places. */
const STRETCHES = 8
const HALVINGS = 40

/**
 * The value of one number at which a shape has a wanted volume: what to drag, type or scale it to. Of several the one
 * nearest to `from`.
 * Method: the family is looked at in a few places, where it stops making sense its edge is approached by halving, and a
 *   change of sign is closed in on by `bracketedRoot`.
 * Valid for: volumes that go on without a jump over the number; where they jump past the wish, that is a problem.
 * Accuracy: rounding, and never further from the wish than 1e-9 of it.
 */
export function solveForVolume(wish: VolumeWish): Result<VolumeMet> {
  const { from, to, volumeM3 } = wish
  if (![from, to, wish.levelM].every(Number.isFinite)) return fail(problem('not-a-number', ''))
  if (!(Number.isFinite(volumeM3) && volumeM3 > 0)) return fail(problem('volume-out-of-reach', ''))
  let trouble: Problem | undefined
  const off = (x: number): number => {
    const volume = volumeFor(wish, x)
    if (volume.ok) return volume.value - volumeM3
    trouble ??= volume.problem
    return Number.NaN
  }
  let a = from
  let fa = off(a)
  for (let i = 1; i <= STRETCHES; i++) {
    const b = i === STRETCHES ? to : from + ((to - from) * i) / STRETCHES
    const fb = off(b)
    const ends = bracket(off, a, fa, b, fb)
    if (ends) {
      const root = bracketedRoot(off, ends[0], ends[1], ROUNDING * Math.abs(to - from))
      // Off by more, the volume jumped there instead of passing through.
      if (root.ok && Math.abs(root.value.residual) <= NEARLY * volumeM3) return met(wish, root.value.x)
    }
    a = b
    fa = fb
  }
  return fail(trouble ?? problem('volume-not-met', ''))
}

function volumeFor({ at, levelM }: VolumeWish, x: number): Result<number> {
  const shape = at(x)
  if (!shape.ok) return shape
  const parts = partition(shape.value)
  return parts.ok ? ok(volumeAtLevel(parts.value, levelM).volumeM3) : parts
}

function met(wish: VolumeWish, x: number): Result<VolumeMet> {
  const shape = wish.at(x)
  if (!shape.ok) return shape
  const volume = volumeFor(wish, x)
  return volume.ok ? ok({ x, shape: shape.value, volumeM3: volume.value }) : volume
}

/** Two places with sense between which a function changes its sign, if the stretch has any. */
function bracket(f: (x: number) => number, a: number, fa: number, b: number, fb: number): [number, number] | undefined {
  const differ = (u: number, v: number): boolean => u === 0 || v === 0 || u > 0 !== v > 0
  if (!Number.isNaN(fa) && !Number.isNaN(fb)) return differ(fa, fb) ? [a, b] : undefined
  if (Number.isNaN(fa) && Number.isNaN(fb)) return undefined
  // From the end with sense toward the other one, as far as there is sense.
  let [good, value, bad] = Number.isNaN(fa) ? [b, fb, a] : [a, fa, b]
  for (let i = 0; i < HALVINGS; i++) {
    const m = (good + bad) / 2
    const fm = f(m)
    if (Number.isNaN(fm)) bad = m
    else if (differ(value, fm)) return [good, m]
    else [good, value] = [m, fm]
  }
  return undefined
}
