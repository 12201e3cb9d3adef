import type { WaterReading } from '../water/index.ts'
import type { Band, TargetKey } from './types.ts'

/** One way to act on a reading at the pool's edge. */
export interface DeckDose {
  /** The reading that asks for it, in the row's own unit. */
  readonly value: number
  readonly readingText: string
  readonly productId: string
  readonly productLabel: string
  /** Rounded down to two digits. */
  readonly amountG: number
  /** Before rounding. */
  readonly exactG: number
  /** Even parts to give it in, half a turnover apart. */
  readonly pours: number
  /** pH after the exact amount, by the kernel. */
  readonly pHAfter: number
}

export interface DeckRow {
  /** Stable: `pH-high`, `pH-low`, else the reading's own key. */
  readonly key: string
  readonly label: string
  readonly reading: TargetKey
  readonly band: Band
  readonly doses: readonly DeckDose[]
}

/** A page for the pool's edge: reading → dose, in this pool's volume. */
export interface DeckCard {
  readonly rows: readonly DeckRow[]
  readonly cautions: readonly string[]
  readonly madeFor: {
    readonly volumeM3: number
    /** One standard deviation. */
    readonly volumeSigmaM3: number
    readonly waterIs: 'measured' | 'targets'
    readonly measuredAtMs?: number | undefined
    /** The water that the doses are counted in. */
    readonly water: WaterReading
    /** Of these, readings that nobody took beside measured ones: the targets stand in for them. */
    readonly assumed: readonly TargetKey[]
    /** Wanted, but read by nobody, and so counted as none: with it pH would take more. */
    readonly countedAsNone: readonly TargetKey[]
    readonly text: string
  }
}
