import * as v from 'valibot'
import { START_INPUTS } from '../../plan/index.ts'
import type { DeviceEntry, LabelledProduct, PackagePrice, Start } from '../types.ts'
import type { SchemaOf } from './geometry.ts'
import { atLeastZero, between, finite, Id, LIMITS, Moment } from './numbers.ts'
import { namesOf, objectOf } from './object.ts'

/** A name that people read: never empty. */
export const Label = v.pipe(v.string(), v.minLength(1), v.maxLength(LIMITS.nameLength))
/** Above zero: nothing can be counted from none. */
const aboveZero = (high: number) => v.pipe(v.number(), v.finite(), v.gtValue(0), v.maxValue(high))

export const Amount = atLeastZero(1e9)
const PackageSchema = objectOf({ label: Label, massG: aboveZero(1e9), price: v.optional(Amount) })

/** What a label may leave out; its age decides what is left of liquid chlorine. */
const LABEL_OPTIONAL = {
  densityKgPerL: v.optional(aboveZero(20)),
  packages: v.optional(v.pipe(v.array(PackageSchema), v.maxLength(LIMITS.packages))),
  openedAt: v.optional(Moment),
  boughtAt: v.optional(Moment),
  storedC: v.optional(between(-50, 80)),
}
const LABEL = {
  label: Label,
  like: Id,
  strength: aboveZero(1000),
  basis: v.picklist(['percent-by-mass', 'trade-percent', 'available-chlorine']),
}
export const LabelledProductSchema: SchemaOf<LabelledProduct> = objectOf({ id: Id, ...LABEL, ...LABEL_OPTIONAL })

/** Some parts of a label; a part may be undefined only where a label may be without it. */
export const LABEL_CHANGES = {
  label: v.exactOptional(LABEL.label),
  like: v.exactOptional(LABEL.like),
  strength: v.exactOptional(LABEL.strength),
  basis: v.exactOptional(LABEL.basis),
  ...LABEL_OPTIONAL,
}

const PriceSchema: SchemaOf<PackagePrice> = objectOf({ product: Id, packageLabel: Label, price: Amount })
export const Currency = v.pipe(v.string(), v.minLength(1), v.maxLength(LIMITS.currencyLength))

const HeldSchema = objectOf({ product: Id, at: Moment })
const DEVICE = {
  kind: v.picklist(['feeder', 'skimmer', 'floater', 'bucket']),
  name: Label,
  isNew: v.boolean(),
  held: v.pipe(v.array(HeldSchema), v.maxLength(LIMITS.held)),
}
export const DeviceSchema: SchemaOf<DeviceEntry> = objectOf({ id: Id, ...DEVICE, held: v.optional(DEVICE.held, []) })
export const DEVICE_CHANGES = {
  kind: v.exactOptional(DEVICE.kind),
  name: v.exactOptional(DEVICE.name),
  isNew: v.exactOptional(DEVICE.isNew),
  held: v.exactOptional(DEVICE.held),
}

/** The id of a way of starting that this program knows. */
export const StartModeId = v.pipe(
  Id,
  v.check((id) => Object.hasOwn(START_INPUTS, id), 'no-such-start'),
)
export const StartValuesSchema = v.pipe(
  namesOf(Id, finite),
  v.check((values) => Object.keys(values).length <= LIMITS.startValues, 'start-values-many'),
)
export const StartSchema: SchemaOf<Start> = objectOf({
  mode: StartModeId,
  at: Moment,
  values: v.optional(StartValuesSchema),
})

export const OWNER = {
  ownProducts: v.optional(v.pipe(v.array(LabelledProductSchema), v.maxLength(LIMITS.ownProducts))),
  prices: v.optional(v.pipe(v.array(PriceSchema), v.maxLength(LIMITS.prices))),
  currency: v.optional(Currency),
  start: v.optional(StartSchema),
}
export const DevicesSchema = v.optional(v.pipe(v.array(DeviceSchema), v.maxLength(LIMITS.devices)))
