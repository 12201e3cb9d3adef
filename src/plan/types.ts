import type { Problem } from '../base/index.ts'
import type { ProductList } from '../chemicals/index.ts'
import type { Equilibrium, PeopleReadingKey, WaterReading } from '../water/index.ts'

type ReadingKey = keyof WaterReading
export type KnownReading = { readonly [K in ReadingKey]?: number | undefined }
export type TargetKey =
  | 'pH'
  | 'ta_mg_per_L_as_CaCO3'
  | 'ch_mg_per_L_as_CaCO3'
  | 'cya_mg_per_L'
  | 'borate_mg_per_L_as_B'
  | 'fc_mg_per_L_as_Cl2'
  | 'salt_mg_per_L_as_NaCl'

export interface Band {
  readonly low: number
  readonly aim: number
  readonly high: number
}

export interface SourcedBand extends Band {
  /** Where the default comes from and how sure it is, in words for the owner. */
  readonly source: string
  readonly isOwn: boolean
  /** Set where nothing is done about a reading above it, for the time being. */
  readonly isHighLeft?: boolean | undefined
}

/** A key that is absent has no target: nothing is dosed for it. */
export type Targets = { readonly [K in TargetKey]?: SourcedBand | undefined }

export type Purpose =
  | 'acid'
  | 'alkalinity'
  | 'base'
  | 'openingChlorine'
  | 'dailyChlorine'
  | 'calcium'
  | 'borate'
  | 'stabiliser'
  | 'salt'

export interface GivenDose {
  readonly line?: string | undefined
  readonly product: string
  readonly amountG: number
  readonly atMs: number
}

/** How readings came about, by the words of the document. */
export type ReadingMethod = 'strip' | 'drop-kit' | 'photometer' | 'sensor' | 'laboratory' | 'supplier' | 'unknown'

/** A reading that an earlier measurement still tells where the newest lacks it. */
export interface KeptReading {
  readonly key: PeopleReadingKey
  readonly value: number
  readonly atMs: number
  readonly method: ReadingMethod
  /** What of `value` doses since have moved, by the sums, where any did. */
  readonly byDoses?: number | undefined
}

/** The rules that bathing and targets are held against, and a local floor and ceiling that are stricter than theirs. */
export interface LocalRules {
  /** The set of rules, by id; the default's where absent. */
  readonly rulesId?: string | undefined
  readonly chlorineFloorMgPerL?: number | undefined
  readonly chlorineCeilingMgPerL?: number | undefined
  /** Under a roof: some rules have another limit of combined chlorine there, and the sun takes no chlorine. */
  readonly isIndoor?: boolean | undefined
}

export interface OpeningInput extends LocalRules {
  readonly volumeM3: number
  readonly volumeSigmaM3: number
  readonly surface: 'plaster' | 'vinyl' | 'fibreglass' | 'tile' | undefined
  readonly regimeId: string
  readonly targets: Targets
  readonly products: { readonly [P in Purpose]?: string | undefined }
  readonly start: KnownReading
  /** Whose readings `start` are; only the pool's own can let anyone bathe. Absent where there are none. */
  readonly startIs: 'pool' | 'fill' | undefined
  readonly method: ReadingMethod | undefined
  /** Which of `start` and `metals` the newest readings lack and earlier ones told. */
  readonly kept?: readonly KeptReading[] | undefined
  /** Water for an exchange; without it an exchange can only be described. */
  readonly fill?: KnownReading | undefined
  readonly measuredAtMs: number | undefined
  readonly nowMs: number
  readonly turnoverHours: number | undefined
  /** Doses given, oldest first. Those from before the readings are in them already: they only keep products apart. */
  readonly given: readonly GivenDose[]
  readonly stockG: { readonly [productId: string]: number }
  readonly constants: 'default' | 'oracle' | 'wahman'
  /** Sizes that containers are bought in; metric where absent. */
  readonly packageSystem?: 'metric' | 'us' | undefined
  /** The exact amount unless whole packages are asked for. */
  readonly dosing?: 'reckoned' | 'whole-packages' | undefined
  /** By what to choose between ways that all reach the bands; fewest products where absent. */
  readonly objective?: 'fewest-products' | 'cheapest' | 'least-salt' | undefined
  /** The generic products and the owner's own, with the owner's prices on their packages; generic ones where absent. */
  readonly productList?: ProductList | undefined
  /** Metals as read, where anybody read them [mg/L]. */
  readonly metals?: MetalReadings | undefined
  /** Devices that help, by id: a mineral cartridge has to wait for metals. */
  readonly helpers?: readonly string[] | undefined
  /** Lines that dose nothing and were ticked as done. */
  readonly doneKeys?: readonly { readonly key: string; readonly atMs: number }[] | undefined
  /** Combined chlorine as it was read last, however long ago and whatever was dosed since, where it can be told [mg/L]. */
  readonly combinedMgPerL?: number | undefined
  /** When that was; by these readings where absent. */
  readonly combinedAtMs?: number | undefined
  /** Stabiliser as it was read last, however long ago. */
  readonly lastStabiliser?: LastStabiliser | undefined
  /** How chlorine is used up and whether its floor is held, by the upkeep; without it a reading counts for its whole day. */
  readonly holding?: Holding | undefined
  /** What is to be said of how the readings were taken, beside the plan. */
  readonly remarks?: readonly string[] | undefined
  /** How the readings of chlorine contradict each other, where they do: then nobody is cleared by them. */
  readonly chlorineClash?: string | undefined
  /** Why a start that is under way keeps the pool closed today, whatever is read. */
  readonly closedBecause?: string | undefined
  /** When a start that is under way began: readings from before it clear nobody. */
  readonly startedAtMs?: number | undefined
}

/** A stabiliser reading that stands until it is read again, with what doses since have added. */
export interface LastStabiliser {
  readonly mgPerL: number
  readonly atMs: number
  /** Water was exchanged since: how much of it is left has to be read. */
  readonly isExchanged: boolean
}

/** How a residual is used up: dR/dt = −k R − d. */
export interface Holding {
  /** The upkeep's judgement: the floor is held from dose to dose. */
  readonly isHeld: boolean
  /** k [1/day]. */
  readonly perDay: number
  /** d [mg/L day]. */
  readonly steadyMgPerLDay: number
}

export interface MetalReadings {
  readonly copper_mg_per_L?: number | undefined
  readonly iron_mg_per_L?: number | undefined
  readonly manganese_mg_per_L?: number | undefined
}

/** The water after a line: conserved totals solved anew, never a rule of thumb. */
export interface ExpectedWater {
  readonly reading: WaterReading
  readonly equilibrium: Equilibrium
  /** Readings in it that nobody took: what stands for them is assumed; absent where there are none. */
  readonly unknown?: readonly UnknownReading[] | undefined
}

export type UnknownReading = keyof WaterReading

/** How a reading stands at a line; only those that the line moves are listed. */
export interface Movement {
  readonly key: TargetKey | 'calciteSI'
  readonly before: number
  readonly after: number
  readonly band?: Band | undefined
  /** Whether `after` lies inside the band (ends count as inside). */
  readonly inBand: boolean
}

export interface Pour {
  /** 1-based; a dose that would move the water too far is split. */
  readonly index: number
  readonly amountG: number
  readonly hoursAfterStart: number
}

export interface PackageAdvice {
  readonly label: string
  readonly count: number
  /** True where whole packages are dosed because the result stays inside the band. */
  readonly isWhole: boolean
  readonly leftoverG: number
}

/** An amount that a sentence of a line names. */
export interface NamedAmount {
  /** As it stands in the sentence, in grams: a screen puts the owner's units in its place. */
  readonly text: string
  readonly productId: string
  readonly amountG: number
}

type LineState = 'done' | 'next' | 'later'

interface LineBase {
  /** Stable across re-planning while the line stands for the same job. */
  readonly key: string
  readonly title: string
  /** What, how much and how, in plain words. */
  readonly how: string
  readonly why: string
  /** Hours from the start of the plan. */
  readonly startHours: number
  readonly waitHours: number
  readonly state: LineState
  readonly cautions: readonly string[]
  /** True for work that may be left out: nothing later depends on it for safety. */
  readonly isOptional?: boolean | undefined
  /** Why this line stands elsewhere than the usual order has it, where it does. */
  readonly exception?: string | undefined
}

export interface DoseLine extends LineBase {
  readonly kind: 'dose'
  readonly purpose: Purpose
  readonly productId: string
  readonly amountG: number
  /** 95 % interval of the amount, from the volume's and the reading's uncertainty [g]. */
  readonly lowG: number
  readonly highG: number
  readonly pours: readonly Pour[]
  readonly packages?: PackageAdvice | undefined
  readonly movements: readonly Movement[]
  readonly after: ExpectedWater
  readonly given?: GivenDose | undefined
  /** Part of the amount to give before measuring again, where overshoot is hard to undo and the volume uncertain [g]. */
  readonly safeFirstG?: number | undefined
}

export interface ExchangeLine extends LineBase {
  readonly kind: 'exchange'
  readonly fraction: number
  readonly volumeM3: number
  readonly isAllowed: boolean
  /** How many times that fraction is exchanged, since a surface allows only so much at once. */
  readonly rounds: number
  readonly movements: readonly Movement[]
  readonly after?: ExpectedWater | undefined
}

export interface StepLine extends LineBase {
  readonly kind: 'circulate' | 'measure' | 'metals' | 'wait' | 'aerate'
  /** Amounts that `how` names. */
  readonly amounts?: readonly NamedAmount[] | undefined
  readonly movements: readonly Movement[]
  readonly after?: ExpectedWater | undefined
}

export type OpeningLine = DoseLine | ExchangeLine | StepLine

export interface PurchaseItem {
  readonly productId: string
  readonly label: string
  readonly needG: number
  readonly inStockG: number
  readonly packageLabel: string
  readonly count: number
  /** What has to be bought where stock is old and weaker than what is bought [g of a fresh one]. */
  readonly missingFreshG?: number | undefined
  /** What is over from stock and purchase when the plan is done [g]. */
  readonly leftoverG: number
  /** In the owner's currency; absent where this size has no price. */
  readonly cost?: number | undefined
}

/** What all purchases come to. */
export interface PurchaseSum {
  /** Only where every price is known. */
  readonly cost?: number | undefined
  /** How many of the products to buy have no price. */
  readonly pricesUnknown: number
}

export interface OpeningPlan {
  readonly lines: readonly OpeningLine[]
  readonly purchases: readonly PurchaseItem[]
  readonly purchaseSum: PurchaseSum
  /** Targets outside a code or a maker's range, with the reason; they stay the owner's. */
  readonly targetWarnings: readonly Problem[]
  /** Readings that the plan needs and does not have; nothing is dosed for them. */
  readonly missing: readonly { readonly key: TargetKey; readonly label: string; readonly why: string }[]
  /** Targets that these means cannot reach, each with what would. */
  readonly unreachable: readonly Problem[]
  /** Set where readings are older than 48 h or absent. */
  readonly measureAgain: boolean
  readonly startWater?: ExpectedWater | undefined
  readonly endWater?: ExpectedWater | undefined
  readonly warnings: readonly string[]
  /** May people bathe? Only a fresh measured reading inside limits says so; never an expectation. */
  readonly bathing: { readonly cleared: boolean; readonly reason: string }
}
