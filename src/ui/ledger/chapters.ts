import { Basin } from './basin/index.ts'
import { deferred, type Part, present } from './Deferred.tsx'

export interface Chapter {
  readonly id: 'basin' | 'water' | 'opening' | 'season' | 'logbook'
  readonly label: string
  readonly part: Part
}

/** The chapters of the ledger, in their order: one line each. All but the first are fetched once the sheet stands. */
export const CHAPTERS: readonly [Chapter, ...Chapter[]] = [
  { id: 'basin', label: 'Basin', part: present(Basin) },
  { id: 'water', label: 'Water', part: deferred(async () => (await import('./water/index.ts')).WaterChapter) },
  { id: 'opening', label: 'Opening', part: deferred(async () => (await import('./opening/index.ts')).OpeningChapter) },
  { id: 'season', label: 'Season', part: deferred(async () => (await import('./season/index.ts')).SeasonChapter) },
  { id: 'logbook', label: 'Logbook', part: deferred(async () => (await import('./logbook/index.ts')).Logbook) },
]
