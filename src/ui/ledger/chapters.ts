import type { ComponentType } from 'react'
import { Basin } from './basin/index.ts'
import { Logbook } from './logbook/index.ts'

export interface Chapter {
  readonly id: 'basin' | 'water' | 'opening' | 'season' | 'logbook'
  readonly label: string
  readonly Component: ComponentType
}

/** The chapters of the ledger, in their order: one line each. */
export const CHAPTERS: readonly [Chapter, ...Chapter[]] = [
  { id: 'basin', label: 'Basin', Component: Basin },
  { id: 'logbook', label: 'Logbook', Component: Logbook },
]
