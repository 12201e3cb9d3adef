import type { ProductList } from '../chemicals/index.ts'
import type { KnownReading, LocalRules, OpeningInput, TargetKey, Targets } from './types.ts'

export interface UpkeepInput extends LocalRules {
  readonly volumeM3: number
  readonly waterSurfaceM2: number
  readonly meanDepthM: number
  readonly latitudeDeg: number
  readonly elevationM: number
  readonly dayOfYear: number
  readonly airC: number
  readonly waterC: number
  readonly humidityPercent: number
  readonly windMPerS: number
  readonly sunshine: number
  readonly bathersPerDay: number
  readonly bathingHours: number
  readonly coverHoursPerDay: number
  readonly coverKind: 'none' | 'bubble' | 'solid' | 'slatted'
  readonly helpers: readonly string[]
  readonly water: KnownReading
  readonly fill?: KnownReading | undefined
  readonly targets: Targets
  readonly chlorineProductId: string
  /** What is really fed now of that product; absent where nobody said. */
  readonly feed?: { readonly gPerDose: number; readonly dosesPerWeek: number } | undefined
  readonly acidProductId: string
  /** The generic products and the owner's own; generic ones where absent. */
  readonly productList?: ProductList | undefined
  /** What is in stock [g]: what is not is bought, as strong as its label. */
  readonly stockG?: OpeningInput['stockG'] | undefined
  readonly pumpHoursPerDay: number
  readonly constants: 'default' | 'oracle' | 'wahman'
}

/** One term of a demand; terms add up to the total. */
export interface DemandTerm {
  readonly id: string
  readonly label: string
  readonly value: number
  /** Plausible range of this term (about 95 %). */
  readonly low: number
  readonly high: number
  readonly how: string
  readonly source: string
}

export interface Upkeep {
  /** Chlorine used [mg/L a day as Cl2]. */
  readonly chlorineTerms: readonly DemandTerm[]
  readonly chlorineMgPerLDay: number
  readonly chlorineLowMgPerLDay: number
  readonly chlorineHighMgPerLDay: number
  /** Both absent where stabiliser is unknown: the sun's share then spans too far for one amount. */
  readonly productGPerDay?: number | undefined
  readonly productGPerWeek?: number | undefined
  readonly productLowGPerDay: number
  readonly productHighGPerDay: number
  readonly packagesPerWeek?: { readonly label: string; readonly count: number } | undefined
  /** What a week of that product brings along [mg/L]. */
  readonly bringsPerWeek: readonly { readonly key: TargetKey; readonly label: string; readonly mgPerL: number }[]
  /** Alkalinity to take out so that pH holds [meq/L a day], by cause. */
  readonly acidTerms: readonly DemandTerm[]
  /** Days until pH, left alone, drifts from its aim to an end of its band; absent where it stays inside for a fortnight. */
  readonly pHDriftDays?: number | undefined
  readonly acidGPerFortnight: number
  readonly acidLowGPerFortnight: number
  readonly acidHighGPerFortnight: number
  readonly evaporationMmPerDay: number
  readonly evaporationLowMmPerDay: number
  readonly evaporationHighMmPerDay: number
  readonly evaporationM3PerWeek: number
  readonly floor: {
    readonly mgPerL: number
    /** A twentieth of the stabiliser, as advice; absent without stabiliser. */
    readonly adviceMgPerL?: number | undefined
    readonly reason: string
    readonly isHeld: boolean
    /** What the least of reading, aim and lowest residual lacks to the floor [mg/L]. */
    readonly lackingMgPerL: number
    /** The residual before each dose: at the feed where one is known, else at one dose a day to the band's upper end [mg/L]. */
    readonly lowestMgPerL: number
    /** What the feed brings less than holding the floor uses; absent without a known feed [mg/L day]. */
    readonly shortOfSupplyMgPerLDay?: number | undefined
  }
  readonly contactTimes?:
    | readonly { readonly organism: string; readonly minutes: number; readonly source: string }[]
    | undefined
  readonly helperNotes: readonly string[]
  /**
   * Why the doses are not to be given as they stand: the pool is closed, readings can't be trusted, a device must not hold the
   * daily chlorine by what it held before. Absent where nothing stands against them; among `warnings` too.
   */
  readonly blocked?: readonly string[] | undefined
  readonly warnings: readonly string[]
}
