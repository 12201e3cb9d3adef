import { fail, ok, type Problem, type Result } from '../base/index.ts'
import {
  areaOf,
  type BasinMesh,
  type BasinShape,
  boundsOf,
  derivativesOf,
  type Measures,
  measure,
  meshOf,
  type Partition,
  partition,
  type Uncertainty,
  uncertaintyOf,
  waterAt,
} from '../basin/index.ts'
import { assumedDepths, type Body, depthsOfFloor } from '../document/index.ts'
import { patchesOf } from '../features/index.ts'
import { memoByIdentity, memoLast } from './memo.ts'
import { placed } from './placed.ts'
import type { BodyUncertainty, BodyWater, DerivedBody, RuleOfThumb } from './types.ts'

/** The basin's shape of a body: its features come down to patches. */
export function shapeOf(body: Body): Result<BasinShape> {
  const patches = patchesOf(body.features, body.outline)
  if (!patches.ok) return patches
  return ok({
    outline: body.outline,
    islands: body.islands,
    floor: body.floor,
    wall: body.wall,
    patches: patches.value,
    freeboardM: body.freeboardM,
    tolerance: body.tolerance,
  })
}

// The level, the name and the like must not cost a new partition: shapes are kept by the parts that make them.
const shapes = new WeakMap<object, { readonly body: Body; readonly shape: Result<BasinShape> }>()

function sameShape(a: Body, b: Body): boolean {
  return (
    a.islands === b.islands &&
    a.floor === b.floor &&
    a.wall === b.wall &&
    a.features === b.features &&
    a.freeboardM === b.freeboardM &&
    a.tolerance === b.tolerance
  )
}

function stableShapeOf(body: Body): Result<BasinShape> {
  const known = shapes.get(body.outline)
  if (known && sameShape(known.body, body)) return known.shape
  const shape = shapeOf(body)
  shapes.set(body.outline, { body, shape })
  return shape
}

const partitionOf = memoByIdentity((shape: BasinShape): Result<Partition> => partition(shape))
const meshOfPartition = memoByIdentity(
  (parts: Partition): Result<BasinMesh> => meshOf(parts, { chordM: drawnChordM(parts) }),
)

/** Chord height of what is drawn, as a share of the extent: round steps look round from close by as well. */
const DRAWN_CHORD = 6e-5

/** Greatest height of curves over their chords in pictures of a body [m]; the same for all, so that lines lie on what they are drawn on. */
export function drawnChordM(parts: Partition): number {
  return DRAWN_CHORD * parts.extentM
}

/**
 * What the trade's rule of thumb says of a body [m³]: length × width × mean of shallow and deep × a factor.
 * Equation: V = f L W (d₁ + d₂)/2, f = 5.9 / 7.48052 for a rounded outline, 1 for a rectangular one.
 * Symbols: L, W sides of the box around the outline; d₁, d₂ shallowest and deepest of the floor's stations.
 * Valid for: outlines near an ellipse or a rectangle; that is the point of showing how far off it is elsewhere.
 * Source: trade multiplier 5.9 gal per ft³ of box for round and oval pools (common practice, from memory).
 * Accuracy: none is claimed.
 */
function ruleOfThumb(body: Body, measures: Measures): RuleOfThumb {
  const box = boundsOf(body.outline)
  const lengthM = Math.max(box.maxX - box.minX, box.maxY - box.minY)
  const widthM = Math.min(box.maxX - box.minX, box.maxY - box.minY)
  const depths = depthsOfFloor(body.floor)
  const shallowM = Math.min(...depths) + body.levelM
  const deepM = Math.max(...depths) + body.levelM
  const isRectangular = Math.abs(areaOf(body.outline)) > 0.97 * lengthM * widthM
  const factor = isRectangular ? 1 : 5.9 / (1728 / 231)
  const volumeM3 = factor * lengthM * widthM * ((shallowM + deepM) / 2)
  return { lengthM, widthM, shallowM, deepM, factor, volumeM3, relativeError: volumeM3 / measures.volumeM3 - 1 }
}

/** Depths that nobody has said yet may be off by this, all together (one standard deviation, our own judgement). */
const ASSUMED_DEPTH_SIGMA_M = 0.3

/** What the volume at a level grows by for each metre of each depth that nobody has said, with where it stands in the body [m²]. */
function assumedShares(
  body: Body,
  parts: Partition,
  levelM: number,
): readonly { readonly path: string; readonly m2: number }[] {
  const assumed = assumedDepths(body)
  if (!assumed.some(Boolean)) return []
  // Depths of the floor come as the floor lists them.
  const shares = derivativesOf(parts, levelM).flatMap(({ path, kind, value }) =>
    kind === 'depth' && path.startsWith('floor.') && typeof value === 'number' ? [{ path, m2: value }] : [],
  )
  return shares.filter((_, i) => assumed[i])
}

/**
 * Volume's standard deviation with what the drawing itself is unsure of [m³].
 * Equation: σ² = σ_points² + (2 s V)² + (σ_d A)².
 * Symbols: s the sketch's scale as a fraction (it moves the plan's area by 2 s); σ_d the common error of assumed depths; A what
 *   the volume grows by for each metre of them: the water surface where all are assumed, else their share of it.
 */
function sigmaOf(body: Body, parts: Partition, measures: Measures): number {
  const fromScale = body.sketch ? 2 * body.sketch.scaleSigma * measures.volumeM3 : 0
  return Math.hypot(measures.sigmaM3, fromScale, sigmaOfAssumed(body, parts, measures))
}

/** What depths that nobody has said add to the volume's standard deviation [m³]. */
function sigmaOfAssumed(body: Body, parts: Partition, measures: Measures): number {
  const assumed = assumedDepths(body)
  if (!assumed.some(Boolean)) return 0
  const m2 = assumed.every(Boolean)
    ? measures.waterSurfaceM2
    : Math.abs(assumedShares(body, parts, measures.levelM).reduce((sum, share) => sum + share.m2, 0))
  return ASSUMED_DEPTH_SIGMA_M * m2
}

/** What makes the volume of a partition at a level unsure, by cause; kept for the level asked last. */
const uncertaintyAt = memoLast((parts: Partition, levelM: number): Uncertainty => uncertaintyOf(parts, levelM))

/**
 * What makes a body's volume at its own level unsure, by measuring; and which measurements matter most, those that nobody has
 * taken yet among them. Nothing where it can't be measured.
 */
export const deriveUncertainty = memoLast((body: Body): BodyUncertainty | undefined => {
  const { partition: parts, measures } = deriveBody(body)
  if (!parts.ok || !measures.ok) return undefined
  const measured = uncertaintyAt(parts.value, body.levelM)
  const untaken = assumedShares(body, parts.value, body.levelM).map(({ path, m2 }) => ({
    path,
    kind: 'depth' as const,
    sigmaM3: ASSUMED_DEPTH_SIGMA_M * Math.abs(m2),
    isTaken: false,
  }))
  const taken = measured.largest
    .filter(({ path }) => !untaken.some((depth) => depth.path === path))
    .map((each) => ({ ...each, isTaken: true }))
  return {
    ...measured,
    assumedM3: sigmaOfAssumed(body, parts.value, measures.value),
    largest: [...untaken, ...taken].filter(({ sigmaM3 }) => sigmaM3 > 0).sort((a, b) => b.sigmaM3 - a.sigmaM3),
  }
})

/** Everything that a body of water comes to at its own level. */
export const deriveBody = memoByIdentity((body: Body): DerivedBody => {
  const shape = stableShapeOf(body)
  if (!shape.ok) return failed(body, shape.problem)
  const parts = partitionOf(shape.value)
  if (!parts.ok) return failed(body, parts.problem)
  const measures = waterAt(parts.value, body.levelM)
  return {
    bodyId: body.id,
    shape: shape.value,
    partition: parts,
    measures,
    sigmaM3: measures.ok ? sigmaOf(body, parts.value, measures.value) : Number.NaN,
    rule: measures.ok ? ruleOfThumb(body, measures.value) : undefined,
  }
})

/**
 * A body's water at a level that is asked for, what makes it unsure included. Dry is no problem there: then all figures are
 * zero. What can't be measured at its own level either is one.
 */
export const deriveBodyAt = memoLast((body: Body, levelM: number): Result<BodyWater> => {
  const { partition: parts, measures, sigmaM3 } = deriveBody({ ...body, levelM })
  if (!parts.ok) return parts
  if (measures.ok) return ok({ measures: measures.value, sigmaM3 })
  const dry = measure(parts.value, levelM)
  if (!(dry.volumeM3 <= dry.errorBoundM3)) return measures
  return ok({ measures: dry, sigmaM3: sigmaOf(body, parts.value, dry) })
})

function failed(body: Body, trouble: Problem): DerivedBody {
  const problem = placed(trouble, body)
  return {
    bodyId: body.id,
    shape: undefined,
    partition: fail(problem),
    measures: fail(problem),
    sigmaM3: Number.NaN,
    rule: undefined,
  }
}

/** The watertight display mesh of a body, from the same partition as its numbers. */
export function deriveMesh(body: Body): Result<BasinMesh> {
  const { partition: parts } = deriveBody(body)
  return parts.ok ? meshOfPartition(parts.value) : parts
}
