import { fromDisplay, type UnitSystem } from '../../units/index.ts'

const FOOT_STEPS = [0.25, 0.5, 1, 2, 5, 10, 20, 50]
const METRE_STEPS = [0.1, 0.25, 0.5, 1, 2, 5, 10, 20]
/** More bands than this can't be told apart on the ramp. */
const MOST_BANDS = 8
/** Depth at which the ramp ends in a basin that is shallower: a wading pool is not drawn as dark as a deep one [m]. */
const RAMP_END_M = 1.8

/** Round depths of the unit system that divide a basin into bands, above zero and below the deepest place [m]. */
export function bandDepths(maxDepthM: number, system: UnitSystem): number[] {
  if (!(maxDepthM > 0)) return []
  const steps = (system === 'metric' ? METRE_STEPS : FOOT_STEPS).map((step) => fromDisplay('length', step, system))
  const step = steps.find((s) => maxDepthM / s <= MOST_BANDS) ?? maxDepthM / MOST_BANDS
  const depths: number[] = []
  // A round depth met only at the very bottom would leave a band of no width.
  for (let i = 1; i * step < maxDepthM * (1 - 1e-6); i++) depths.push(i * step)
  return depths
}

/** Deep water takes more of the ramp than shallow: most floors lie in the deeper half, and shelves should stay pale. */
const RAMP_POWER = 1.45
/** The palest tint is still water, not paper. */
const PALEST = 0.45

/** The place of a depth on the ramp, 0 to 6. */
export function rampPlace(depthM: number, maxDepthM: number): number {
  const share = Math.max(0, depthM) / Math.max(maxDepthM, RAMP_END_M)
  return Math.min(6, PALEST + (6.2 - PALEST) * share ** RAMP_POWER)
}

/** The ramp's colour at a place on it, mixed of the two tokens beside it. */
export function rampColour(place: number): string {
  const low = Math.min(5, Math.floor(place))
  const share = Math.round((place - low) * 100)
  if (share === 0) return `var(--depth-${low})`
  if (share === 100) return `var(--depth-${low + 1})`
  return `color-mix(in oklab, var(--depth-${low}), var(--depth-${low + 1}) ${share}%)`
}

/** Whether figures on this tint need the light ink. */
export function isDeepTint(place: number): boolean {
  return place > 3.7
}

/** What a figure stands on: the tint of its depth, or floor that a lowered water lays bare [m above the datum]. */
export function groundUnder(
  depthM: number,
  maxDepthM: number,
  levelM: number,
): { readonly colour: string; readonly isDeep: boolean } {
  if (levelM < 0 && depthM <= -levelM + 1e-9) return { colour: 'var(--land)', isDeep: false }
  const place = rampPlace(depthM, maxDepthM)
  return { colour: rampColour(place), isDeep: isDeepTint(place) }
}
