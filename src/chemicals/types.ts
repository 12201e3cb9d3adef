import type { SourceStatus } from '../water/index.ts'

/** What a product does to its neighbours; pairs that must not meet are in `incompatible.ts`. */
export type HazardGroup =
  | 'acid'
  | 'alkali'
  | 'carbonate'
  | 'calcium'
  | 'hypochlorite'
  | 'isocyanurate'
  | 'chlorineGas'
  | 'oxidiser'
  | 'reducer'
  | 'harmless'

type Form = 'solid' | 'granular' | 'tablet' | 'liquid' | 'gas'

/** What a product is reached for. */
type Use =
  | 'acid'
  | 'alkalinity'
  | 'base'
  | 'chlorine'
  | 'calcium'
  | 'magnesium'
  | 'borate'
  | 'stabiliser'
  | 'salt'
  | 'reducer'
  | 'oxidiser'

/** `count` mol of a formula for every `gPerMol` of `gPer100g`. */
export interface Part {
  readonly formula: string
  readonly count: number
  /** Grams of the stated substance in 100 g of product. */
  readonly gPer100g: number
  /** Molar mass of that substance, its water of crystals included [g/mol]. */
  readonly gPerMol: number
}

export interface Package {
  readonly label: string
  readonly massG: number
  readonly system: 'metric' | 'us'
  /** In the owner's currency, where the owner gave one. */
  readonly price?: number | undefined
}

/** What the strength on a label counts. */
export interface Active {
  readonly substance: string
  /** Its water of crystals included where the label counts it [g/mol]. */
  readonly gPerMol: number
  /** The strongest there can be [% by mass], and what to think where a label says more. */
  readonly mostPercent: number
  readonly moreMeans: string
}

interface Alias {
  readonly name: string
  readonly basis: 'g' | 'mL'
}

/** A number's origin; `status` says how far to trust it. */
export interface Sourced {
  readonly what: string
  readonly source: string
  readonly status: SourceStatus | 'the label'
}

export type CautionId =
  | 'gas-licensed'
  | 'no-acid-near'
  | 'never-mix'
  | 'own-feeder'
  | 'skimmer-pump-off'
  | 'into-water'
  | 'pump-running'
  | 'acid-burns'
  | 'lye-burns'
  | 'gear'
  | 'dust'
  | 'borate'
  | 'hot-dissolving'
  | 'open-cover'
  | 'wait-to-bathe'
  | 'not-on-surface'
  | 'keep-dry'
  | 'reducer-overshoot'
  | 'hard-to-undo'
  | 'stabiliser-stays'
  | 'slow-dissolving'
  | 'old-liquid'
  | 'label'

/** What standing has done to liquid chlorine [% in the basis of the label; days; °C]. */
export interface Ageing {
  readonly labelPercent: number
  readonly percent: number
  /** From the weakest to the strongest that the rate's uncertainty leaves. */
  readonly low: number
  readonly high: number
  readonly days: number
  readonly storedC: number
}

/** A product by what is in it, never by who sells it. */
export interface Product {
  readonly id: string
  readonly label: string
  /** Strength as a label prints it; acid is never named without it. */
  readonly strength: string
  readonly form: Form
  /** [g/mL]: of the liquid, or the bulk of a powder. */
  readonly densityGPerML: number
  /** True for bulk densities, which a scoop changes. */
  readonly isDensityRough: boolean
  /** Lightest and heaviest a scoop of it is likely to be, where it is scooped [g/mL]. */
  readonly bulkGPerML?: readonly [light: number, heavy: number] | undefined
  readonly contains: readonly Part[]
  /** Absent where no label gives a strength: gases, and ways of accounting. */
  readonly active?: Active | undefined
  /** Grams of Cl2 that oxidise alike, per gram; 0 where it holds none. */
  readonly availableChlorine: number
  readonly groups: readonly HazardGroup[]
  readonly uses: readonly Use[]
  readonly packages: readonly Package[]
  /** Mass of one tablet, where it is sold so [g]. */
  readonly pieceG?: number | undefined
  /** How it goes in, in one or two plain sentences. */
  readonly how: string
  /** Before anything else goes in: turnovers of the whole water, and hours at the least. */
  readonly wait: { readonly turnovers: number; readonly hoursAtLeast: number; readonly why: string }
  readonly cautions: readonly CautionId[]
  readonly sources: readonly Sourced[]
  readonly aliases: readonly Alias[]
  /** A way of accounting (chlorine used up, say), not a thing to buy. */
  readonly isAccounting: boolean
  /** Of an owner's own product: the generic one whose substance it is. */
  readonly likeId?: string | undefined
  /** Of the owner's liquid chlorine: what is left of the label's strength. */
  readonly ageing?: Ageing | undefined
  /** Of one that aged: the same as it is bought, at the label's strength. */
  readonly fresh?: Product | undefined
}
