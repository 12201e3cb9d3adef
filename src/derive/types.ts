import type { Result } from '../base/index.ts'
import type { BasinShape, Measures, Partition } from '../basin/index.ts'
import type { ReadingSet } from '../document/index.ts'
import type { KnownReading, Targets } from '../plan/index.ts'
import type { Equilibrium, Totals } from '../water/index.ts'

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
  readonly known: KnownReading
  readonly measuredAtMs: number | undefined
  readonly ageHours: number | undefined
  /** Solved where pH and alkalinity are known; unknown others are assumed, and said. */
  readonly solved: Result<{ readonly totals: Totals; readonly equilibrium: Equilibrium }> | undefined
  /** What was taken for readings that nobody made, in plain sentences. */
  readonly assumptions: readonly string[]
  readonly targets: Targets
  readonly tableIndex: number | undefined
}
