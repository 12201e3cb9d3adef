import type { ComponentType } from 'react'
import { Basin } from './basin/index.ts'
import { Logbook } from './logbook/index.ts'
import { OpeningChapter } from './opening/index.ts'
import { SeasonChapter } from './season/index.ts'
import { WaterChapter } from './water/index.ts'

export interface Chapter {
  readonly id: 'basin' | 'water' | 'opening' | 'season' | 'logbook'
  readonly label: string
  readonly Component: ComponentType
}

/** The chapters of the ledger, in their order: one line each. */
export const CHAPTERS: readonly [Chapter, ...Chapter[]] = [
  { id: 'basin', label: 'Basin', Component: Basin },
  { id: 'water', label: 'Water', Component: WaterChapter },
  { id: 'opening', label: 'Opening', Component: OpeningChapter },
  { id: 'season', label: 'Season', Component: SeasonChapter },
  { id: 'logbook', label: 'Logbook', Component: Logbook },
]
