import { useStore } from 'zustand'
import { createStore, type StoreApi } from 'zustand/vanilla'
import { STARTING_OUTLINES } from '../../../basin/index.ts'
import type { AppStore } from '../../../state/index.ts'
import type { UnitSystem } from '../../../units/index.ts'
import { useAppStore } from '../../context.tsx'
import { type OutlineValues, startValues } from './start-values.ts'

/** The form that is chosen, and what was typed for each form, the measure typed last at the end [m]. */
export interface StartDraft {
  readonly kindId: string
  readonly typed: Readonly<Record<string, OutlineValues>>
}

const BEFORE: StartDraft = { kindId: STARTING_OUTLINES.rows[0]?.id ?? '', typed: {} }

/** What was typed for the form that is chosen [m]. */
export const typedIn = ({ kindId, typed }: StartDraft): OutlineValues => typed[kindId] ?? {}

export function withMeasure(draft: StartDraft, id: string, m: number): StartDraft {
  const { [id]: _, ...before } = typedIn(draft)
  return { ...draft, typed: { ...draft.typed, [draft.kindId]: { ...before, [id]: m } } }
}

/** The chosen form as it was at first. */
export function withUsual({ kindId, typed: { [kindId]: _, ...typed } }: StartDraft): StartDraft {
  return { kindId, typed }
}

/** Another form: its own measures as they were left, and those that both forms have as they were typed last, if it closes with them. */
export function withForm(draft: StartDraft, kindId: string, units: UnitSystem): StartDraft {
  const kind = STARTING_OUTLINES.get(kindId)
  const own = draft.typed[kindId] ?? {}
  if (!kind || kindId === draft.kindId) return draft
  const shared = Object.entries(typedIn(draft)).filter(([id]) => kind.parameters.some((p) => p.id === id))
  const both: OutlineValues = { ...own, ...Object.fromEntries(shared) }
  const closes = kind.make({ ...startValues(kind, units), ...both }).ok
  return { kindId, typed: { ...draft.typed, [kindId]: closes ? both : own } }
}

const drafts = new WeakMap<AppStore, StoreApi<StartDraft>>()

/** The draft of a starting outline, kept while the page is open: also over another chapter, and when the drawing is undone. */
export function useStartDraft(): readonly [StartDraft, (step: (draft: StartDraft) => StartDraft) => void] {
  const app = useAppStore()
  let store = drafts.get(app)
  if (!store) {
    store = createStore<StartDraft>()(() => BEFORE)
    drafts.set(app, store)
  }
  const { setState } = store
  return [useStore(store), setState]
}
