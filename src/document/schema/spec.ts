import * as v from 'valibot'
import { RULE_IDS } from '../../water/index.ts'
import type { Body, Site, Spec, System } from '../types.ts'
import { FeatureSchema } from './feature.ts'
import { depth, FLOOR_KINDS, FloorSchema, PathSchema, type SchemaOf, ToleranceSchema, WallSchema } from './geometry.ts'
import { atLeastZero, between, Id, Index, LIMITS, Name } from './numbers.ts'
import { objectOf } from './object.ts'
import { SystemSchema } from './system.ts'

/** Where a document says nothing. They are those of the published contract. */
export const DEFAULTS = {
  freeboardM: 0.15,
  levelM: 0,
  tolerance: { planM: 0.02, depthM: 0.02 },
  systemId: 'pool',
} as const

export const ReferenceSchema = v.picklist(['waterline', 'water-now', 'tile-line', 'rim'])
export const SketchSchema = objectOf({
  knownLengthM: v.optional(atLeastZero(LIMITS.coordinateM)),
  knownWidthM: v.optional(atLeastZero(LIMITS.coordinateM)),
  scaleSigma: between(0, 10),
})
export const FreeboardSchema = atLeastZero(LIMITS.depthM)

/** A body as it is written: what it leaves out is filled in. */
export type WrittenBody = Omit<Body, 'system' | 'name'> & {
  readonly system?: string | undefined
  readonly name?: string | undefined
}

const Islands = v.pipe(v.array(PathSchema), v.maxLength(LIMITS.rings))
const Features = v.pipe(v.array(FeatureSchema), v.maxLength(LIMITS.features))
const DepthsAssumedSchema = v.union([v.boolean(), v.pipe(v.array(Index), v.maxLength(LIMITS.soundings + 1))])
/** One of each kind but the floor's own. */
const OtherFloors = v.pipe(
  v.array(objectOf({ floor: FloorSchema, depthsAssumed: v.optional(DepthsAssumedSchema) })),
  v.maxLength(FLOOR_KINDS.length - 1),
)
const OPTIONAL = {
  depthsMeasuredFrom: v.optional(ReferenceSchema),
  tileLineM: v.optional(depth),
  depthsAssumed: v.optional(DepthsAssumedSchema),
  otherFloors: v.optional(OtherFloors),
  sketch: v.optional(SketchSchema),
}

export const BodySchema: SchemaOf<WrittenBody> = objectOf({
  id: Id,
  name: v.optional(Name),
  system: v.optional(Id),
  outline: PathSchema,
  islands: v.optional(Islands, []),
  floor: FloorSchema,
  wall: v.optional(WallSchema, { kind: 'vertical' }),
  features: v.optional(Features, []),
  freeboardM: v.optional(FreeboardSchema, DEFAULTS.freeboardM),
  levelM: v.optional(depth, DEFAULTS.levelM),
  tolerance: v.optional(ToleranceSchema, { ...DEFAULTS.tolerance }),
  ...OPTIONAL,
})

const SAVED = {
  name: Name,
  system: Id,
  outline: PathSchema,
  islands: Islands,
  floor: FloorSchema,
  wall: WallSchema,
  features: Features,
  freeboardM: FreeboardSchema,
  levelM: depth,
  tolerance: ToleranceSchema,
}

/** A body with nothing left out. */
export const SavedBodySchema: SchemaOf<Body> = objectOf({ id: Id, ...SAVED, ...OPTIONAL })

/** Some parts of a body; a part may be undefined only where a body may be without it. */
export const BodyChangesSchema: SchemaOf<Partial<Body>> = objectOf({
  name: v.exactOptional(SAVED.name),
  system: v.exactOptional(SAVED.system),
  outline: v.exactOptional(SAVED.outline),
  islands: v.exactOptional(SAVED.islands),
  floor: v.exactOptional(SAVED.floor),
  wall: v.exactOptional(SAVED.wall),
  features: v.exactOptional(SAVED.features),
  freeboardM: v.exactOptional(SAVED.freeboardM),
  levelM: v.exactOptional(SAVED.levelM),
  tolerance: v.exactOptional(SAVED.tolerance),
  ...OPTIONAL,
})

const ClimateSchema = v.pipe(
  v.array(
    objectOf({
      airC: between(-90, 60),
      humidityPercent: between(0, 100),
      windMPerS: between(0, 100),
      sunshine: between(0, 1),
      waterC: v.optional(between(-5, 60)),
    }),
  ),
  v.length(12),
)

export const RULES_OF_SITE = {
  profile: v.optional(
    v.pipe(
      Id,
      v.check((id) => (RULE_IDS as readonly string[]).includes(id), 'no-such-rules'),
    ),
  ),
  chlorineFloorMgPerL: v.optional(between(0, 100)),
  chlorineCeilingMgPerL: v.optional(between(0, 100)),
}

export const SITE = {
  latitudeDeg: v.optional(between(-90, 90)),
  elevationM: v.optional(between(-500, 9000)),
  climate: v.optional(ClimateSchema),
  surface: v.optional(v.picklist(['plaster', 'vinyl', 'fibreglass', 'tile'])),
  rules: v.optional(objectOf(RULES_OF_SITE)),
  indoor: v.optional(v.boolean()),
}
export const SiteSchema: SchemaOf<Site> = objectOf(SITE)

/** A document as it is written, before its systems are made whole. */
export type WrittenSpec = Omit<Spec, 'bodies' | 'systems'> & {
  readonly bodies: readonly WrittenBody[]
  readonly systems?: readonly System[] | undefined
}

export const SpecSchema: SchemaOf<WrittenSpec> = objectOf({
  format: v.literal('shoalbook-spec'),
  version: v.literal(1),
  name: v.optional(Name, ''),
  bodies: v.pipe(v.array(BodySchema), v.maxLength(LIMITS.bodies)),
  systems: v.optional(v.pipe(v.array(SystemSchema), v.maxLength(LIMITS.systems))),
  site: v.optional(SiteSchema, {}),
})
