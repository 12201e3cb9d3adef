import * as v from 'valibot'
import type { Axis, Floor, Path, Point, Tolerance, Wall } from '../../basin/index.ts'
import { atLeastZero, between, LIMITS } from './numbers.ts'
import { objectOf } from './object.ts'

/** A schema whose output is a T of the document's types: a drift between the two doesn't compile. */
export type SchemaOf<T> = v.GenericSchema<unknown, T>

const coordinate = between(-LIMITS.coordinateM, LIMITS.coordinateM)
/** A length along something [m]. */
export const distance = coordinate
/** Positive downward; negative stands out of the water. */
export const depth = between(-LIMITS.depthM, LIMITS.depthM)

export const PointSchema: SchemaOf<Point> = v.strictTuple([coordinate, coordinate])

export const SegmentSchema = v.pipe(
  objectOf({
    to: PointSchema,
    bulge: v.optional(between(-1e6, 1e6)),
    c1: v.optional(PointSchema),
    c2: v.optional(PointSchema),
  }),
  v.check((s) => (s.c1 === undefined) === (s.c2 === undefined), 'one-control'),
  v.check((s) => s.bulge === undefined || (s.c1 === undefined && s.c2 === undefined), 'bulge-and-controls'),
)

export const PathSchema: SchemaOf<Path> = objectOf({
  start: PointSchema,
  segments: v.pipe(v.array(SegmentSchema), v.minLength(1), v.maxLength(LIMITS.segments)),
})

export const AxisSchema: SchemaOf<Axis> = v.pipe(
  objectOf({ from: PointSchema, to: PointSchema }),
  v.check((axis) => axis.from[0] !== axis.to[0] || axis.from[1] !== axis.to[1], 'axis-without-length'),
)

/** Pairs of a distance and a depth, the distances rising. */
export const profileOf = (disorder: string) =>
  v.pipe(
    v.array(v.strictTuple([distance, depth])),
    v.minLength(1),
    v.maxLength(LIMITS.stations),
    v.check((pairs) => pairs.every((pair, i) => i === 0 || pair[0] > (pairs[i - 1]?.[0] ?? 0)), disorder),
  )

/** How far something reaches all round [m]. */
export const radius = atLeastZero(LIMITS.coordinateM)
/** A cap of a sphere, or a cone. */
export const DishFormSchema = v.picklist(['cap', 'cone'])

export const FLOOR_KINDS = [
  'flat',
  'profile',
  'contours',
  'soundings',
  'dish',
] as const satisfies readonly Floor['kind'][]

export const FloorSchema: SchemaOf<Floor> = v.variant('kind', [
  objectOf({ kind: v.literal('flat'), depthM: depth }),
  objectOf({ kind: v.literal('profile'), axis: AxisSchema, stations: profileOf('stations-out-of-order') }),
  objectOf({
    kind: v.literal('contours'),
    edgeDepthM: depth,
    rings: v.pipe(v.array(objectOf({ depthM: depth, path: PathSchema })), v.maxLength(LIMITS.rings)),
  }),
  objectOf({
    kind: v.literal('soundings'),
    edgeDepthM: v.nullable(depth),
    points: v.pipe(v.array(v.strictTuple([coordinate, coordinate, depth])), v.maxLength(LIMITS.soundings)),
  }),
  objectOf({
    kind: v.literal('dish'),
    form: DishFormSchema,
    centre: PointSchema,
    radiusM: radius,
    edgeDepthM: depth,
    depthM: depth,
  }),
])

export const WallSchema: SchemaOf<Wall> = v.variant('kind', [
  objectOf({ kind: v.literal('vertical') }),
  objectOf({ kind: v.literal('cove'), radiusM: atLeastZero(LIMITS.depthM) }),
  objectOf({ kind: v.literal('battered'), run: atLeastZero(1000) }),
])

export const ToleranceSchema: SchemaOf<Tolerance> = objectOf({
  planM: atLeastZero(1000),
  depthM: atLeastZero(1000),
  tapeScale: v.optional(atLeastZero(1)),
  datumM: v.optional(atLeastZero(1000)),
})
