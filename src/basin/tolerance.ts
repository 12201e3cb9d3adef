/** Half a unit in the last place of 1: the rounding of one operation, relative. */
export const ROUNDING = 2 ** -53

/** The smallest extent that a basin may have [m]. */
export const MIN_EXTENT_M = 1e-3

/** The greatest width or height of an outline [m], wherever it lies: far above any pool, and below a slip of units. */
export const MAX_EXTENT_M = 1e4

/** The largest number that a shape may hold [m, or 1]: a planet's size, and far from where products would overflow. */
export const MAX_NUMBER = 1e9

/** The shortest length that can give a direction or a slope [m]: a hundredth of the grain of the smallest basin. */
export const MIN_LENGTH_M = 1e-15

/**
 * The grain of a figure [m]: points nearer than this are one point, curves that stay nearer than this are one curve.
 * It answers for rounding only (of coordinates, intersections and decimal files), never for a person's inaccuracy.
 * Equation: max(1e-10 extent, 16 · 2⁻⁵² · largest coordinate).
 */
export function grainOf(extentM: number, largestCoordinateM: number): number {
  return Math.max(1e-10 * extentM, 32 * ROUNDING * largestCoordinateM)
}

/** True where a depth that falls by `slope` over `extentM` differs from a level floor by rounding only. */
export function isLevel(slope: number, extentM: number, depthScaleM: number): boolean {
  return slope * extentM <= 16 * ROUNDING * Math.max(depthScaleM, 1e-3 * extentM)
}

/** Two lengths are a tie where they differ by less than this, relative: far above rounding, far below what matters. */
export const TIE = 1e-11

/** How near to its wall a shore on a cove is lost in rounding, as a share of the radius. */
export const FOOT = 16 * ROUNDING

/**
 * How far below the foot of a wall water may stand and still be said to reach it [m]: on a cove of radius r the shore is
 * then nearer to the wall than rounding can tell (x²/2r < 2⁻⁴⁹ r).
 */
export function footSlack(radiusM: number): number {
  return radiusM * 2 ** -24
}

/** A bulge below this rises over its chord by less than its rounding. */
export const STRAIGHT = 2 ** -54

/** An arc that turns by less than this has its centre too far away to reckon from [rad]. */
export const ROUND_RAD = 1e-2

/** Below this turn a joint of the shore is smooth: a joint written in decimals is, and a corner so blunt holds no water [rad]. */
export const SMOOTH_RAD = 5e-7

/** Relative: two circles are one, two depths meet, a share is none. Rounding grown by a few square roots and quotients. */
export const NEARLY = 1e-9

/** How near the place of an extreme is closed in on, as a share of the stretch that holds it. */
export const CLOSE = 1e-10

/** A step inside a stretch, relative, where a limit at its end is asked for and the end itself has none. */
export const HAIR = 1e-6

/** How near a curve parallel to a cubic is fitted, as a share of the cubic's size: some 5e-8 m at a pool’s wall. */
export const OFFSET_FIT = 1e-8

/** The same where the cubic bends about as tightly as the width and chords stand for the parallel curve. */
export const OFFSET_CHORD = 1e-7

/**
 * How far chords of a triangulated floor may lie from curves of shore and contours, as a share of the square root of the
 * outline's area (which doesn't change with its direction): in a round pool 64 chords to a half turn.
 */
export const FLOOR_CHORD = 1.9e-4

/** How far outside the water a sounding may be written and still be said to lie on the shore [m]: a mm in a pool of 10 m. */
export function soundingSlack(extentM: number, planToleranceM: number): number {
  return Math.max(1e-4 * extentM, 3 * planToleranceM)
}

/** How far apart two passes are put where an untangled line met itself, in extents: wide enough to see, and to take hold of. */
export const UNTANGLE_GAP = 1e-2

/**
 * Ways to divide a plan, one after the other: first each span cut where it was found to meet others, then at every node
 * that lies on it; a coarser and a finer grain settle near-coincidences that straddle the first.
 */
export const DIVISION_TRIES = [
  { grains: 1, settles: false },
  { grains: 1, settles: true },
  { grains: 8, settles: true },
  { grains: 1 / 8, settles: true },
] as const

/** An arc whose centre is off by less than this share of its radius is an arc about that centre: rounding, grown a little. */
export const ABOUT = 1e-13

/** Where Gauss's rules of 10 and of 16 points agree to this, that of 16 points has the last bits of a smooth integrand. */
export const COARSE_RULE_AGREES = 1e-9

/** Vertices of a picture nearer than this many grains are one. */
export const MERGE_GRAINS = 64

/** The same beside walls: where two walls meet at a blunt corner, both find the line between them by roots of small slope. */
export const WALL_MERGE_GRAINS = 1e4

/** The skin of a sphere nearer to its middle plane than this share of its radius can't be told from upright. */
export const UPRIGHT = 2 ** -26

/** A slope that changes by less than this across an edge isn't a break to ink. */
export const SMOOTH_BREAK = 1e-3

/** Where a floor between soundings turns by less than this, about 5°, no line is drawn [rad]: soundings are not that sure. */
export const DRAWN_TURN = Math.PI / 36

/** Stretches that leave a node by less than this from one another are told apart as far out as both reach [rad]. */
export const NEAR_RAD = 1e-3
