import type { Problem, Result } from '../base/index.ts'
import type { BasinShape, Measures, Partition, Uncertainty } from '../basin/index.ts'
import type { ReadingSet, ReadingValues } from '../document/index.ts'
import type { TargetPhase, Targets } from '../plan/index.ts'
import type { Equilibrium, IndexDifference, ToldReading, Totals } from '../water/index.ts'
import type { Sanitation } from './sanitation.ts'

/** What a body of water comes to: one partition, from which every number and picture of it is taken. */
export interface DerivedBody {
  readonly bodyId: string
  readonly shape: BasinShape | undefined
  readonly partition: Result<Partition>
  /** At the body's own level. */
  readonly measures: Result<Measures>
  /** One standard deviation of the volume, the drawing's scale included [m³]. */
  readonly sigmaM3: number
  /** What the trade's rule would have said from length, width and two depths. */
  readonly rule: RuleOfThumb | undefined
}

/** The water of a body at some level. */
export interface BodyWater {
  readonly measures: Measures
  /** One standard deviation of the volume, the drawing's scale and assumed depths included [m³]. */
  readonly sigmaM3: number
}

/** What makes a body's volume unsure by measuring [m³]. */
export interface BodyUncertainty extends Omit<Uncertainty, 'largest'> {
  /** One standard deviation from depths that nobody has said. */
  readonly assumedM3: number
  /** What to measure first, the greatest first; `isTaken` where it would be measured again. */
  readonly largest: readonly (Uncertainty['largest'][number] & { readonly isTaken: boolean })[]
}

export interface RuleOfThumb {
  readonly lengthM: number
  readonly widthM: number
  readonly shallowM: number
  readonly deepM: number
  /** Share of the box of length × width × mean depth that the rule takes. */
  readonly factor: number
  readonly volumeM3: number
  /** (rule − drawing) / drawing. */
  readonly relativeError: number
}

/** The volume that doses are for: the drawing where there is one, else what was stated. */
export interface DerivedVolume {
  readonly from: 'drawing' | 'estimate'
  readonly m3: number
  readonly sigmaM3: number
  readonly plumbingM3: number
  readonly waterSurfaceM2: number | undefined
  readonly wettedM2: number | undefined
  readonly meanDepthM: number | undefined
  /** Stated volumes that are put aside because the drawing replaces them, with how far off they were. */
  readonly replaced: readonly { readonly m3: number; readonly sigmaM3: number; readonly relativeError: number }[]
}

/** The newest readings, merged with nothing: what was measured at one moment. */
export interface DerivedWater {
  readonly latest: ReadingSet | undefined
  /** Pool readings, or the fill water where the pool has none yet. */
  readonly from: 'readings' | 'fill' | undefined
  /** As they were read; what others tell stands in `told`. */
  readonly known: ReadingValues
  readonly measuredAtMs: number | undefined
  readonly ageHours: number | undefined
  /** Readings that nobody took but others tell, each with its range: calcium from total hardness, salt from conductivity. */
  readonly told: readonly ToldReading[]
  /** Readings that can't be true together. */
  readonly clashes: readonly Problem[]
  /** Solved where pH and alkalinity are known; unknown others are assumed, and said. */
  readonly solved: Result<{ readonly totals: Totals; readonly equilibrium: Equilibrium }> | undefined
  /** What was taken for readings that nobody made, in plain sentences. */
  readonly assumptions: readonly string[]
  /** Today's: those of ordinary times as a start that is under way has them; see `targetPhases`. */
  readonly targets: Targets
  /** What the start changes or withholds today. */
  readonly targetPhases: readonly TargetPhase[]
  readonly tableIndex: number | undefined
  /** Table index and calcite SI, term by term, with one sentence on why they differ and which to act on. */
  readonly indices: IndexDifference | undefined
  readonly sanitation: Sanitation
}
