import * as v from 'valibot'
import type {
  ReadingMethod,
  ReadingSet,
  ReadingValues,
  TargetBand,
  TargetKey,
  TargetOverrides,
  Water,
} from '../types.ts'
import type { SchemaOf } from './geometry.ts'
import { atLeastZero, between, finite, LIMITS, Moment, Text } from './numbers.ts'
import { objectOf } from './object.ts'

const amount = v.optional(atLeastZero(1e6))

/** An absent reading is unknown: there is no default here, and there must never be one. */
const READINGS = {
  pH: v.optional(between(0, 14)),
  ta_mg_per_L_as_CaCO3: amount,
  ch_mg_per_L_as_CaCO3: amount,
  mg_hardness_mg_per_L_as_CaCO3: amount,
  sulfate_mg_per_L: amount,
  cya_mg_per_L: amount,
  borate_mg_per_L_as_B: amount,
  fc_mg_per_L_as_Cl2: amount,
  salt_mg_per_L_as_NaCl: amount,
  temperature_C: v.optional(between(-5, 60)),
  tc_mg_per_L_as_Cl2: amount,
  cc_mg_per_L_as_Cl2: amount,
  th_mg_per_L_as_CaCO3: amount,
  copper_mg_per_L: amount,
  iron_mg_per_L: amount,
  manganese_mg_per_L: amount,
  conductivity_uS_per_cm: amount,
  tds_mg_per_L: amount,
} satisfies { readonly [K in keyof ReadingValues]-?: unknown }

const ReadingValuesSchema: SchemaOf<ReadingValues> = objectOf(READINGS)

const MethodSchema: SchemaOf<ReadingMethod> = v.picklist([
  'strip',
  'drop-kit',
  'photometer',
  'sensor',
  'laboratory',
  'supplier',
  'unknown',
])

export const ReadingSetSchema: SchemaOf<ReadingSet> = objectOf({
  at: Moment,
  method: v.optional(MethodSchema, 'unknown'),
  values: ReadingValuesSchema,
  note: v.optional(Text),
})

export const BandSchema: SchemaOf<TargetBand> = v.pipe(
  objectOf({ low: finite, aim: finite, high: finite }),
  v.check((band) => band.low <= band.aim && band.aim <= band.high, 'band-out-of-order'),
)

export const TARGET_KEYS = [
  'pH',
  'ta_mg_per_L_as_CaCO3',
  'ch_mg_per_L_as_CaCO3',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'fc_mg_per_L_as_Cl2',
  'salt_mg_per_L_as_NaCl',
] as const satisfies readonly TargetKey[]

const band = v.optional(BandSchema)
const TARGETS = {
  pH: band,
  ta_mg_per_L_as_CaCO3: band,
  ch_mg_per_L_as_CaCO3: band,
  cya_mg_per_L: band,
  borate_mg_per_L_as_B: band,
  fc_mg_per_L_as_Cl2: band,
  salt_mg_per_L_as_NaCl: band,
} satisfies { readonly [K in TargetKey]: unknown }

const TargetsSchema: SchemaOf<TargetOverrides> = objectOf(TARGETS)

export const WaterSchema: SchemaOf<Water> = objectOf({
  readings: v.optional(v.pipe(v.array(ReadingSetSchema), v.maxLength(LIMITS.readings)), []),
  fill: v.optional(ReadingSetSchema),
  targets: v.optional(TargetsSchema, {}),
})
