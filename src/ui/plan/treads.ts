/**
 * Steps into the water. ISPSC 702.5.6–.7 (protruding in-pool stairs): treads at least 10 in, risers 7 to 12 in and
 * uniform. Treads of 10 to 12 in and a riser near 10 in: common practice, no source.
 */
const INCH = 0.0254
export const TREAD_LEAST_M = 10 * INCH
const TREAD_USUAL_M = 11 * INCH
const RISER_LEAST_M = 7 * INCH
const RISER_MOST_M = 12 * INCH
const RISER_USUAL_M = 10 * INCH

export interface Flight {
  readonly treads: number
  readonly treadM: number
  readonly riserM: number
  readonly runM: number
}

/** Treads that divide the depth at the foot evenly, within a run from the wall; without one, of usual treads. */
export function flightFor(footDepthM: number, runM?: number): Flight {
  const depth = Math.max(footDepthM, 2 * RISER_LEAST_M)
  const most = Math.max(2, Math.floor(depth / RISER_LEAST_M + 1e-9))
  const least = Math.max(2, Math.ceil(depth / RISER_MOST_M - 1e-9))
  const risers = Math.min(most, Math.max(least, Math.round(depth / RISER_USUAL_M)))
  const treads = risers - 1
  const treadM = runM === undefined ? TREAD_USUAL_M : Math.max(TREAD_LEAST_M, runM / treads)
  return { treads, treadM, riserM: Math.max(footDepthM, 0.02) / risers, runM: treadM * treads }
}

/** Each tread's start and depth, from the wall outward; `isRound` gives outer radii instead of starts. */
export function treadsOf(flight: Flight, isRound: boolean): [number, number][] {
  return Array.from({ length: flight.treads }, (_, i) => [
    (isRound ? i + 1 : i) * flight.treadM,
    (i + 1) * flight.riserM,
  ])
}
