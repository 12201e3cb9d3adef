import { createStore } from 'zustand/vanilla'
import type { Spec } from '../../document/index.ts'
import type { AppStore } from '../../state/index.ts'

interface Told {
  readonly words: string
  /** The plan that the words are of: with the next edit they are over. */
  readonly spec: Spec | undefined
}

/** What undo or redo did last, for those who can't see it. */
export const stepsTold = createStore<Told>()(() => ({ words: '', spec: undefined }))

export function stepBack(app: Pick<AppStore, 'getState'>): void {
  const { canUndo, undoLabel, undo } = app.getState()
  undo()
  if (canUndo) tell(app, `Undone: ${undoLabel}`)
}

export function stepForward(app: Pick<AppStore, 'getState'>): void {
  const { canRedo, redoLabel, redo } = app.getState()
  redo()
  if (canRedo) tell(app, `Redone: ${redoLabel}`)
}

function tell(app: Pick<AppStore, 'getState'>, words: string): void {
  // The same words twice are only read out where something differs.
  const isSame = stepsTold.getState().words === words
  stepsTold.setState({ words: isSame ? `${words}\u00a0` : words, spec: app.getState().spec })
}
