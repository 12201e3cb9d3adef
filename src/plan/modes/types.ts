import type { Result } from '../../base/index.ts'
import type { ProductList } from '../../chemicals/index.ts'
import type { Quantity } from '../../units/index.ts'
import type { OwnChlorineLimits, PeopleReading, PeopleReadingKey, SourceStatus } from '../../water/index.ts'
import type { Surface } from '../surfaces.ts'
import type { Band, ExpectedWater, Purpose, TargetKey, Targets } from '../types.ts'

/** Where a statement comes from and how sure that is. */
export interface Origin {
  readonly source: string
  readonly status: SourceStatus
}

/** A number that the owner gives to a start; the document keeps it under `key`, in the canonical unit of `quantity`. */
export interface StartInput {
  readonly key: string
  readonly label: string
  readonly quantity: Quantity
  readonly low: number
  readonly high: number
  /** What the sums take where nothing is given; without one and without a value the figures stay away. */
  readonly usual?: number | undefined
  /** True where the figures need it from the owner. */
  readonly isNeeded: boolean
  readonly help: string
}

/** What a step has people handle: its cautions follow from it. */
export type Handling =
  | 'acid'
  | 'alkali'
  | 'chlorine'
  | 'calcium'
  | 'stabiliser'
  | 'salt'
  | 'borate'
  | 'draining'
  | 'electricity'
  | 'cover'

/** A condition on readings, on the targets of that day, or on a figure; `words` say it to people. */
export type StepCondition = { readonly words: string } & (
  | { readonly on: 'reading'; readonly key: PeopleReadingKey; readonly is: 'above' | 'below'; readonly value: number }
  | { readonly on: 'target'; readonly keys: readonly TargetKey[]; readonly is: 'above' | 'below' | 'outside' }
  /** The figure's best guess stands above this. */
  | { readonly on: 'figure'; readonly key: string; readonly above: number }
  /** `inFill`: the fill water's own count where the pool's were not read, since the pool is full of it. */
  | { readonly on: 'metals'; readonly inFill?: boolean | undefined }
  | { readonly on: 'combined' }
)

/** One thing to do, on a day or on each of several days. */
export interface StartStep extends Origin {
  readonly key: string
  readonly fromDay: number
  readonly toDay: number
  readonly title: string
  readonly what: string
  readonly how: string
  readonly why: string
  /** How often on each of its days, where it is more than once in all. */
  readonly often?: string | undefined
  readonly condition?: StepCondition | undefined
  readonly handles: readonly Handling[]
  /** True where nobody bathes on its days, whatever is read. */
  readonly closesPool?: boolean | undefined
  /** Only for these surfaces, where it is not for all. */
  readonly surfaces?: readonly Surface['id'][] | undefined
  /** Only where the pool has a target for it. */
  readonly needsTarget?: TargetKey | undefined
  /** Figures to show beside it. */
  readonly figures?: readonly string[] | undefined
}

/** A target that is another one, or none, for some days. */
export interface TargetPhase extends Origin {
  readonly key: TargetKey
  readonly fromDay: number
  readonly toDay: number
  /** Withheld: nothing is dosed for it. Upper end: aim at the top of the band. Band: this one, unless the owner has an own. */
  readonly change:
    | { readonly kind: 'withheld' }
    | { readonly kind: 'upper-end' }
    /** `isHighLeft`: nothing is done about a reading above it, whoever's the band is. */
    | { readonly kind: 'band'; readonly band: Band; readonly isHighLeft?: boolean | undefined }
  readonly why: string
}

/** A number reckoned for this start, in the canonical unit of `quantity`. */
export interface StartFigure extends Origin {
  readonly key: string
  readonly label: string
  readonly quantity: Quantity
  readonly value: number
  /** Plausible range. */
  readonly low: number
  readonly high: number
  readonly how: string
}

/** What a reading should show; to be measured, never to be trusted. */
export interface ExpectedReading {
  readonly key: PeopleReadingKey
  readonly before: number
  readonly value: number
  readonly low: number
  readonly high: number
}

export interface StartFigures {
  readonly figures: readonly StartFigure[]
  readonly expected: readonly ExpectedReading[]
  /** The best guess as a whole water, where pH and alkalinity from before are known. */
  readonly expectedWater?: ExpectedWater | undefined
  readonly warnings: readonly string[]
}

/** Inputs after checking: given ones, and the usual value of the others that have one. */
export type StartValues = { readonly [key: string]: number | undefined }

export interface StartContext {
  readonly volumeM3: number
  /** Of the water at its usual level. */
  readonly waterSurfaceM2: number
  readonly surface: Surface['id'] | undefined
  /** The pool's targets without any start; see `targetsAt`. */
  readonly targets: Targets
  /** The pool's last readings from before the start moment (before winter, the rain, the party, the drain). */
  readonly before?: PeopleReading | undefined
  /** The pool's last readings since. */
  readonly now?: PeopleReading | undefined
  readonly fill?: PeopleReading | undefined
  /** How `now` was measured; a row of the table of test methods. */
  readonly method?: string | undefined
  readonly rules?: (OwnChlorineLimits & { readonly profile?: string | undefined }) | undefined
  readonly isIndoor?: boolean | undefined
  readonly regimeId: string
  readonly products: { readonly [P in Purpose]?: string | undefined }
  /** Products to look ids up in; the generic ones where absent. */
  readonly productList?: ProductList | undefined
  readonly constants: 'default' | 'oracle' | 'wahman'
}

export type StartModeId =
  | 'new-plaster'
  | 'liner-or-shell'
  | 'filled-pool'
  | 'spring-opening'
  | 'unknown-pool'
  | 'mid-season'
  | 'heavy-rain'
  | 'partial-drain'
  | 'party'
  | 'winter-closing'

/** A way of starting: a new one is a row. */
export interface StartMode {
  readonly id: StartModeId
  readonly label: string
  /** When to choose it. */
  readonly when: string
  readonly dayOne: string
  readonly lastDay: number
  /** Whose word comes before all of this. */
  readonly whoRules: string
  readonly inputs: readonly StartInput[]
  /** Readings to have before anything is corrected. */
  readonly reads: readonly PeopleReadingKey[]
  readonly targets: readonly TargetPhase[]
  readonly steps: readonly StartStep[]
  readonly notes: readonly string[]
  /** Where the pool stays closed after the last day, until another start is begun: what to do meanwhile. */
  readonly staysClosed?: { readonly title: string; readonly how: string; readonly why: string } | undefined
  readonly figures?: ((values: StartValues, context: StartContext) => Result<StartFigures>) | undefined
}

/** A step for this pool. */
export interface ScheduledStep extends StartStep {
  /** Whether the readings ask for it: `measure` where a reading that decides is missing. */
  readonly applies: 'yes' | 'no' | 'measure'
  readonly cautions: readonly string[]
}

export interface StartSchedule {
  readonly mode: StartMode
  readonly steps: readonly ScheduledStep[]
  /** Targets that change for some days; only those that the pool has. */
  readonly targetPhases: readonly TargetPhase[]
  /** Readings that this start wants and nobody has taken since it began. */
  readonly unread: readonly PeopleReadingKey[]
  /** Inputs still needed for the figures. */
  readonly missing: readonly StartInput[]
  readonly figures: readonly StartFigure[]
  readonly expected: readonly ExpectedReading[]
  readonly expectedWater?: ExpectedWater | undefined
  readonly warnings: readonly string[]
  /** When people may go in again. */
  readonly bathing: string
  readonly notes: readonly string[]
}
