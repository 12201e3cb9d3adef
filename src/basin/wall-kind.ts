import type { Problem } from '../base/index.ts'
import type { Linear } from './curve-linear.ts'
import { hollowDepth, type RayHollow } from './ray-hollow.ts'
import type { Wall } from './types.ts'

/** Floor, ruling depth and the ray's own geometry along one stretch of a ray that lies in one cell. */
export interface RaySpan {
  /** Distances from the shore where the stretch begins and ends [m]. */
  from: number
  to: number
  /** Depth of the floor below and of what rules there without the wall, linear along the ray: c0 + c1 n. */
  f0: number
  f1: number
  k0: number
  k1: number
  isFeature: boolean
  /** Fall of the floor, and of what rules, across the ray. */
  fAcross: number
  kAcross: number
  /** Where the floor is a hollow: its depth along the ray holds in place of f0 + f1 n, and rules where no feature does. */
  hollow: RayHollow | undefined
}

/** A stretch to be laid. All come from here, so that the engine knows them as one shape. */
export function newSpan(isFeature = false): RaySpan {
  return { from: 0, to: 0, f0: 0, f1: 0, k0: 0, k1: 0, isFeature, fAcross: 0, kAcross: 0, hollow: undefined }
}

/** Depth of the floor at a distance along a stretch [m]. */
export function floorOn({ hollow, f0, f1 }: RaySpan, n: number): number {
  return hollow === undefined ? f0 + f1 * n : hollowDepth(hollow, n)
}

/** Depth of what rules there without the wall [m]. */
export function rulingOn({ hollow, isFeature, k0, k1 }: RaySpan, n: number): number {
  return hollow === undefined || isFeature ? k0 + k1 * n : hollowDepth(hollow, n)
}

/** Foot and direction of a ray, and the width of the sheaf beside it: h0 + h1 n for each unit of t. */
export interface RayFrame {
  readonly x: number
  readonly y: number
  readonly nx: number
  readonly ny: number
  readonly h0: number
  readonly h1: number
}

/** What a wall's kind tells of itself to the engine that sweeps the strip along the shores. */
export interface WallLaw {
  /** Part that its surface is counted as. */
  readonly part: 'floor' | 'wall'
  /** The number that says how far it reaches: its path in a body, its name, its unit with a space before it, and itself. */
  readonly size: { readonly path: string; readonly name: string; readonly unit: string; readonly value: number }
  /** That number may be so great, not quite, and still leave water n from the shore over a floor that lies below the level. */
  readonly drySize: (floorM: number, n: number, levelM: number) => number
  /** Plan distance beyond which it changes nothing, where the water is at most so deep below the datum [m]. */
  readonly widthM: (deepestM: number) => number
  /** Depth that it allows at distance n from the shore over a floor [m below the datum]. */
  readonly allowedM: (floorM: number, n: number) => number
  /** ∂(allowed depth)/∂n, and by the floor's depth. */
  readonly leanAt: (floorM: number, n: number) => number
  readonly followsFloor: (floorM: number, n: number) => boolean
  /** ∂(allowed depth) by the wall's own number, where it makes the depth. */
  readonly byNumber: (floorM: number, n: number) => number
  /** True where its surface is so steep at the shore itself that integrals along the shore have roots at their ends. */
  readonly isSteepAtShore: boolean
  /** True where it comes up to the datum at the shore, however deep the floor. */
  readonly meetsDatumAtShore: boolean
  /** Depth right at the shore over a floor that is linear, where that floor is so deep: linear too. */
  readonly footOf: (floor: Linear, floorM: number) => Linear
  /** Where it goes from one line to another, they are zero. */
  readonly footBreaks: (floor: Linear) => readonly Linear[]
  /**
   * How far below that foot water may stand and be said to reach it [m]; less than nothing where the foot is no more than
   * a place that the floor comes to.
   */
  readonly footSlackM: (floorM: number) => number
  /**
   * Adds what it changes along a stretch of a ray at a level (see STRIP_SUMS), and returns a number for the pattern of
   * pieces there: as long as it stays the same the sums are smooth along the shore. Without sums it only tells the number.
   */
  readonly addSpan: (ray: RayFrame, span: RaySpan, levelM: number, sums: Float64Array | undefined) => number
  /** Writes what can't change sign within one pattern, at distance n in a stretch; returns how many there are. */
  readonly eventsAt: (span: RaySpan, n: number, levelM: number, out: Float64Array, from: number) => number
  /** Distance at which a stretch is deepest for all that the wall and what rules tell, within its ends [m]. */
  readonly deepestAt: (span: RaySpan) => number
}

/** All that the program knows of one kind of wall. */
export interface WallKind<W extends Wall> {
  readonly id: W['kind']
  readonly check: (wall: W) => Problem | undefined
  /** Nothing where the wall is upright. */
  readonly law: (wall: W) => WallLaw | undefined
}

/**
 * What a wall changes: volume and water surface and the surface's moments; wetted areas of floor, of features and of the
 * wall; shore that lies on it. All are added to what there is without it, so most are negative.
 */
export const STRIP_SUMS = ['volume', 'area', 'areaX', 'areaY', 'floor', 'feature', 'wall', 'shore'] as const
export const VOLUME = 0
export const AREA = 1
export const AREA_X = 2
export const AREA_Y = 3
export const FLOOR = 4
export const FEATURE = 5
export const WALL = 6
export const SHORE = 7

/** Depth of the datum itself. */
export const DATUM: Linear = { c: 0, gx: 0, gy: 0 }
