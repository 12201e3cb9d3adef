import { type JsonSchema, toJsonSchema } from '@valibot/to-json-schema'
import type { GenericSchema } from 'valibot'
import { SpecSchema } from '../../src/document/index.ts'
import { FeatureSchema } from '../../src/document/schema/feature.ts'
import {
  AxisSchema,
  FloorSchema,
  PathSchema,
  PointSchema,
  SegmentSchema,
  WallSchema,
} from '../../src/document/schema/geometry.ts'
import { Moment } from '../../src/document/schema/numbers.ts'
import { DeviceSchema, LabelledProductSchema, StartSchema } from '../../src/document/schema/owner.ts'
import { BodySchema } from '../../src/document/schema/spec.ts'
import { SystemSchema } from '../../src/document/schema/system.ts'
import { BandSchema, ReadingSetSchema } from '../../src/document/schema/water.ts'

/** Parts that are written once and referred to. */
const definitions: { readonly [name: string]: GenericSchema } = {
  Moment,
  Point: PointSchema,
  Segment: SegmentSchema,
  Path: PathSchema,
  Axis: AxisSchema,
  Floor: FloorSchema,
  Wall: WallSchema,
  Feature: FeatureSchema,
  Band: BandSchema,
  ReadingSet: ReadingSetSchema,
  LabelledProduct: LabelledProductSchema,
  Device: DeviceSchema,
  Start: StartSchema,
  Body: BodySchema,
  System: SystemSchema,
}

type Written = { [key: string]: unknown }

/** What the program checks by a function and JSON Schema can say too. */
const BY_HAND: { readonly [name: string]: Written } = {
  Segment: { dependentRequired: { c1: ['c2'], c2: ['c1'] }, not: { required: ['bulge', 'c1'] } },
  Moment: { format: 'date-time' },
}

/** The published schema of a spec, JSON Schema 2020-12, out of the one that the program itself checks with. */
export function specJsonSchema(): JsonSchema {
  const schema = toJsonSchema(SpecSchema, {
    target: 'draft-2020-12',
    typeMode: 'input',
    ignoreActions: ['finite', 'check'],
    definitions,
  }) as Written
  const $defs = schema['$defs'] as { [name: string]: Written }
  for (const [name, words] of Object.entries(BY_HAND)) $defs[name] = { ...$defs[name], ...words }
  const { $schema, ...rest } = schema
  return {
    $schema,
    $id: 'https://shoalbook.example/schema/spec-1.json',
    title: 'Shoalbook spec, version 1',
    description:
      'A pool: bodies of water as drawn, systems of water that is plumbed together, and the site. SI inside: metres, m³, kg, °C, mg/L; angles in degrees. Depth is positive downward from the nominal waterline. An absent reading is unknown, never zero. Further keys are kept.',
    ...rest,
  } as JsonSchema
}
