import type { Floor, Path, Tolerance, Wall } from '../basin/index.ts'
import type { StrengthBasis } from '../chemicals/index.ts'
import type { Feature } from '../features/index.ts'
import type { PeopleReading } from '../water/index.ts'

/** One saved document: SI inside, depths positive downward from the nominal waterline (the datum). */
export interface Spec {
  readonly format: 'shoalbook-spec'
  readonly version: 1
  readonly name: string
  readonly bodies: readonly Body[]
  readonly systems: readonly System[]
  readonly site: Site
}

/** What depths are measured from when a person types them; stored depths are always from the datum. */
export type DepthReference = 'waterline' | 'water-now' | 'tile-line' | 'rim'

export interface Body {
  readonly id: string
  readonly name: string
  readonly system: string
  readonly outline: Path
  readonly islands: readonly Path[]
  readonly floor: Floor
  readonly wall: Wall
  readonly features: readonly Feature[]
  readonly freeboardM: number
  readonly levelM: number
  readonly tolerance: Tolerance
  readonly depthsMeasuredFrom?: DepthReference | undefined
  /** Height of the tile line above the datum [m]. */
  readonly tileLineM?: number | undefined
  /**
   * Which of the floor's depths nobody has said: all of them, or those of these numbers, counted as `depthsOfFloor` lists
   * them. Absent where every depth was said.
   */
  readonly depthsAssumed?: DepthsAssumed | undefined
  /** Floors of other kinds that this one took the place of, the newest last: each comes back with its kind. */
  readonly otherFloors?: readonly OtherFloor[] | undefined
  /** Present on a freehand drawing that has not been scaled by two known lengths yet. */
  readonly sketch?: Sketch | undefined
}

export type DepthsAssumed = boolean | readonly number[]

export interface OtherFloor {
  readonly floor: Floor
  readonly depthsAssumed?: DepthsAssumed | undefined
}

export interface Sketch {
  /** Overall lengths that are known so far: along x, along y [m]. */
  readonly knownLengthM?: number | undefined
  readonly knownWidthM?: number | undefined
  /** One standard deviation of the drawing's scale, as a fraction. */
  readonly scaleSigma: number
}

export interface VolumeEstimate {
  readonly from: 'stated' | 'meter' | 'timer' | 'tracer' | 'other'
  readonly m3: number
  readonly sigmaM3: number
  readonly note?: string | undefined
}

export type ReadingKey = keyof PeopleReading
/** As people's tests report them: what a water is solved from, and total chlorine, total hardness, metals and such besides. */
export type ReadingValues = PeopleReading
export type ReadingMethod = 'strip' | 'drop-kit' | 'photometer' | 'sensor' | 'laboratory' | 'supplier' | 'unknown'

/** Readings of one moment. An absent value is unknown, never zero. */
export interface ReadingSet {
  /** Local date and time, ISO 8601 with offset or Z. */
  readonly at: string
  readonly method: ReadingMethod
  readonly values: ReadingValues
  readonly note?: string | undefined
}

export interface TargetBand {
  readonly low: number
  readonly aim: number
  readonly high: number
}
export type TargetKey =
  | 'pH'
  | 'ta_mg_per_L_as_CaCO3'
  | 'ch_mg_per_L_as_CaCO3'
  | 'cya_mg_per_L'
  | 'borate_mg_per_L_as_B'
  | 'fc_mg_per_L_as_Cl2'
  | 'salt_mg_per_L_as_NaCl'
export type TargetOverrides = { readonly [K in TargetKey]?: TargetBand | undefined }

export interface Water {
  /** Newest last. */
  readonly readings: readonly ReadingSet[]
  /** The water that the pool is filled and topped up with. */
  readonly fill?: ReadingSet | undefined
  /** Only what the owner changed; the rest comes from surface and regime. */
  readonly targets: TargetOverrides
}

export type HelperId = 'mineral-cartridge' | 'oxidation-unit' | 'ozone' | 'uv'

export interface Equipment {
  /** Flow of the filter pump [m³/h]. */
  readonly pumpM3PerH?: number | undefined
  readonly pumpHoursPerDay?: number | undefined
  readonly coverHoursPerDay?: number | undefined
  readonly coverKind?: 'none' | 'bubble' | 'solid' | 'slatted' | undefined
  readonly helpers: readonly HelperId[]
  readonly devices?: readonly DeviceEntry[] | undefined
}

/** Which product serves each purpose; ids of the product table. */
export interface ChosenProducts {
  readonly acid?: string | undefined
  readonly alkalinity?: string | undefined
  readonly base?: string | undefined
  readonly openingChlorine?: string | undefined
  readonly dailyChlorine?: string | undefined
  readonly calcium?: string | undefined
  readonly borate?: string | undefined
  readonly stabiliser?: string | undefined
  readonly salt?: string | undefined
}

export interface Regime {
  /** A row of the plan's regimes. */
  readonly id: string
  readonly products: ChosenProducts
  readonly bathersPerDay?: number | undefined
  readonly bathingHours?: number | undefined
  /** What is really fed of the daily chlorine. */
  readonly feed?: { readonly amountG: number; readonly perWeek: number } | undefined
  /** Sizes that products are sold in where the owner buys; the plan's, so that changing the screen's units changes no dose. */
  readonly packages?: 'metric' | 'us' | undefined
  /** What is chosen by where several ways reach a target; the fewest products where absent. */
  readonly objective?: 'fewest-products' | 'cheapest' | 'least-salt' | undefined
  /** The exact amount where absent; whole packages only where chosen, and only where the result stays in its band. */
  readonly dosing?: 'reckoned' | 'whole-packages' | undefined
  /** Which published constants tell how much chlorine the stabiliser holds; O'Brien's where absent. */
  readonly chlorineConstants?: 'obrien' | 'wahman' | undefined
}

export interface StockItem {
  readonly product: string
  readonly amountG: number
}

export type LogEntry = DoseEntry | NoteEntry

/** A dose that was really given. `line` names the plan's line that it answers, if any. */
export interface DoseEntry {
  readonly kind: 'dose'
  readonly id: string
  readonly at: string
  readonly product: string
  readonly amountG: number
  readonly line?: string | undefined
}

export interface NoteEntry {
  readonly kind: 'note'
  readonly id: string
  readonly at: string
  readonly text: string
  /** The plan's line that is done by it, where that line doses nothing: waiting, measuring, brushing. */
  readonly line?: string | undefined
}

/** A product as the owner copies it from its label. */
export interface LabelledProduct {
  readonly id: string
  readonly label: string
  /** Id of the generic product whose substance it is. */
  readonly like: string
  readonly strength: number
  readonly basis: StrengthBasis
  readonly densityKgPerL?: number | undefined
  readonly packages?: readonly LabelledPackage[] | undefined
  readonly openedAt?: string | undefined
  readonly boughtAt?: string | undefined
  /** Where it stands [°C]. */
  readonly storedC?: number | undefined
}

export interface LabelledPackage {
  readonly label: string
  readonly massG: number
  /** One of the system's `prices` for it stands over this. */
  readonly price?: number | undefined
}

/** What one package costs, in the system's currency. */
export interface PackagePrice {
  readonly product: string
  readonly packageLabel: string
  readonly price: number
}

/** Something that chemicals go through, with all that it has held. */
export interface DeviceEntry {
  readonly id: string
  readonly kind: 'feeder' | 'skimmer' | 'floater' | 'bucket'
  readonly name: string
  /** Bought new for this pool, so that `held` is its whole history. */
  readonly isNew: boolean
  readonly held: readonly { readonly product: string; readonly at: string }[]
}

/** A way of starting that is under way. */
export interface Start {
  /** A row of the plan's starts. */
  readonly mode: string
  /** Its first day, ISO 8601 with offset or Z. */
  readonly at: string
  /** What the owner told it, by the start's own names and in canonical units. */
  readonly values?: { readonly [key: string]: number } | undefined
}

/** Water that is plumbed together: one chemistry. */
export interface System {
  readonly id: string
  readonly plumbingM3: number
  readonly volumeEstimates: readonly VolumeEstimate[]
  readonly water: Water
  readonly equipment: Equipment
  readonly stock: readonly StockItem[]
  readonly regime: Regime
  readonly log: readonly LogEntry[]
  /** When the owner means to start the opening, ISO 8601 with offset or Z. */
  readonly planStartAt?: string | undefined
  readonly ownProducts?: readonly LabelledProduct[] | undefined
  readonly prices?: readonly PackagePrice[] | undefined
  /** How the owner writes the currency of the prices. */
  readonly currency?: string | undefined
  readonly start?: Start | undefined
}

export type SurfaceKind = 'plaster' | 'vinyl' | 'fibreglass' | 'tile'

export interface ClimateMonth {
  readonly airC: number
  readonly humidityPercent: number
  readonly windMPerS: number
  /** Share of the possible sunshine, 0 to 1. */
  readonly sunshine: number
  readonly waterC?: number | undefined
}

export interface Site {
  readonly latitudeDeg?: number | undefined
  readonly elevationM?: number | undefined
  /** January first; twelve rows. */
  readonly climate?: readonly ClimateMonth[] | undefined
  readonly surface?: SurfaceKind | undefined
  readonly rules?: SiteRules | undefined
  /** Under a roof: some rules have another limit of combined chlorine there, and the sun takes no chlorine. */
  readonly indoor?: boolean | undefined
}

export interface SiteRules {
  /** A row of the water's rules for bathing; the default's figures where absent. */
  readonly profile?: string | undefined
  readonly chlorineFloorMgPerL?: number | undefined
  readonly chlorineCeilingMgPerL?: number | undefined
}
