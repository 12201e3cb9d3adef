import * as v from 'valibot'
import type { Equipment, LogEntry, Regime, StockItem, System, VolumeEstimate } from '../types.ts'
import type { SchemaOf } from './geometry.ts'
import { atLeastZero, Id, LIMITS, Moment, Text } from './numbers.ts'
import { objectOf } from './object.ts'
import { DevicesSchema, OWNER } from './owner.ts'
import { WaterSchema } from './water.ts'

const DEFAULT_REGIME = 'stabilised'

export const EstimateSchema: SchemaOf<VolumeEstimate> = objectOf({
  from: v.picklist(['stated', 'meter', 'timer', 'tracer', 'other']),
  m3: v.pipe(
    atLeastZero(1e7),
    v.check((m3) => m3 > 0, 'not-above-zero'),
  ),
  sigmaM3: atLeastZero(1e7),
  note: v.optional(Text),
})

const hours = v.optional(atLeastZero(24))

export const EQUIPMENT = {
  pumpM3PerH: v.optional(atLeastZero(1e5)),
  pumpHoursPerDay: hours,
  coverHoursPerDay: hours,
  coverKind: v.optional(v.picklist(['none', 'bubble', 'solid', 'slatted'])),
}
export const HelpersSchema = v.pipe(
  v.array(v.picklist(['mineral-cartridge', 'oxidation-unit', 'ozone', 'uv'])),
  v.maxLength(20),
)
const EquipmentSchema: SchemaOf<Equipment> = objectOf({
  ...EQUIPMENT,
  helpers: v.optional(HelpersSchema, []),
  devices: DevicesSchema,
})

export const PURPOSES = [
  'acid',
  'alkalinity',
  'base',
  'openingChlorine',
  'dailyChlorine',
  'calcium',
  'borate',
  'stabiliser',
  'salt',
] as const satisfies readonly (keyof Regime['products'])[]

const product = v.optional(Id)
const PRODUCTS = {
  acid: product,
  alkalinity: product,
  base: product,
  openingChlorine: product,
  dailyChlorine: product,
  calcium: product,
  borate: product,
  stabiliser: product,
  salt: product,
} satisfies { readonly [P in keyof Regime['products']]-?: unknown }

export const BATHING = {
  bathersPerDay: v.optional(atLeastZero(1e5)),
  bathingHours: hours,
  feed: v.optional(objectOf({ amountG: atLeastZero(1e9), perWeek: atLeastZero(1e4) })),
  packages: v.optional(v.picklist(['metric', 'us'])),
  objective: v.optional(v.picklist(['fewest-products', 'cheapest', 'least-salt'])),
  dosing: v.optional(v.picklist(['reckoned', 'whole-packages'])),
  chlorineConstants: v.optional(v.picklist(['obrien', 'wahman'])),
}

const RegimeSchema: SchemaOf<Regime> = objectOf({
  id: v.optional(Id, DEFAULT_REGIME),
  products: v.optional(objectOf(PRODUCTS), {}),
  ...BATHING,
})

const StockSchema: SchemaOf<StockItem> = objectOf({ product: Id, amountG: atLeastZero(1e9) })

export const DOSE = { at: Moment, product: Id, amountG: atLeastZero(1e9), line: v.optional(Id) }
export const NOTE = { at: Moment, text: Text }

const LogEntrySchema: SchemaOf<LogEntry> = v.variant('kind', [
  objectOf({ kind: v.literal('dose'), id: Id, ...DOSE }),
  objectOf({ kind: v.literal('note'), id: Id, ...NOTE, line: v.optional(Id) }),
])

export const SystemSchema: SchemaOf<System> = objectOf({
  id: Id,
  plumbingM3: v.optional(atLeastZero(1e6), 0),
  volumeEstimates: v.optional(v.pipe(v.array(EstimateSchema), v.maxLength(LIMITS.estimates)), []),
  water: v.optional(WaterSchema, {}),
  equipment: v.optional(EquipmentSchema, {}),
  stock: v.optional(v.pipe(v.array(StockSchema), v.maxLength(LIMITS.stock)), []),
  regime: v.optional(RegimeSchema, {}),
  log: v.optional(v.pipe(v.array(LogEntrySchema), v.maxLength(LIMITS.log)), []),
  planStartAt: v.optional(Moment),
  ...OWNER,
})
