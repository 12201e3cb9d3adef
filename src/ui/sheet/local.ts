import { createContext, useContext } from 'react'
import { useStore } from 'zustand'
import { createStore, type StoreApi } from 'zustand/vanilla'
import { invariant } from '../../base/index.ts'
import type { Path, Point } from '../../basin/index.ts'
import { EMPTY_DRAFT, type PointsDraft } from '../plan/points-draft.ts'
import type { Snapped } from '../plan/snap.ts'

/** A number written on the drawing while something is dragged. */
export interface Remark {
  /** In the plan [m]. */
  readonly at: Point
  readonly text: string
}

/** What the sheet shows only for the moment; nothing of it is saved. */
export interface LocalState {
  /** Under the pointer, in the plan [m]. */
  readonly hover: Point | undefined
  /** The keyboard's cross hairs, in the plan [m]. */
  readonly cursor: Point | undefined
  readonly guides: Snapped['guides']
  readonly remarks: readonly Remark[]
  /** The loop that is being drawn freehand [m]. */
  readonly stroke: readonly Point[]
  /** Nearly the loop that was drawn, free of itself where it crossed itself: it may be taken. */
  readonly untangled: Path | undefined
  readonly draft: PointsDraft
  /** Footprints of a feature that is being dragged or picked into being. */
  readonly ghost: readonly Path[]
  /** Side of the outline where a bench in the making begins. */
  readonly benchFrom: number | undefined
  /** Side of the outline that the keys have come to with a bench. */
  readonly benchAt: number | undefined
  /** Where the keys have begun a feature against the wall, in the plan [m]. */
  readonly wallFrom: Point | undefined
  /** Where the next sounding is; its depth is being asked for [m]. */
  readonly sounded: Point | undefined
  /** What was just drawn wants a number: the strip's first field is to have the focus. */
  readonly isAsking: boolean
  /** Item that a drag has hold of. */
  readonly grabbed: string | undefined
  /** Said to screen readers. */
  readonly spoken: string
}

const AT_REST: LocalState = {
  hover: undefined,
  cursor: undefined,
  guides: [],
  remarks: [],
  stroke: [],
  untangled: undefined,
  draft: EMPTY_DRAFT,
  ghost: [],
  benchFrom: undefined,
  benchAt: undefined,
  wallFrom: undefined,
  sounded: undefined,
  isAsking: false,
  grabbed: undefined,
  spoken: '',
}

export type LocalStore = StoreApi<LocalState>

export function createLocalStore(): LocalStore {
  return createStore<LocalState>()(() => AT_REST)
}

const LocalContext = createContext<LocalStore | undefined>(undefined)
export const LocalProvider = LocalContext.Provider

function useLocalStore(): LocalStore {
  const store = useContext(LocalContext)
  invariant(store, 'part of the sheet is rendered inside the sheet')
  return store
}

export function useLocal<T>(selector: (state: LocalState) => T): T {
  return useStore(useLocalStore(), selector)
}
