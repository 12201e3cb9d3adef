import { expect, test } from 'vitest'
import { demoSpec } from '../../../src/document/index.ts'
import type { AppStoreState } from '../../../src/state/index.ts'
import { isOver } from '../../../src/ui/sheet/useSpoken.ts'
import { stepBack, stepForward, stepsTold } from '../../../src/ui/shell/steps-told.ts'

test('what was said is over with an edit, another tool or selection, not with the same one taken anew', () => {
  const selection = { kind: 'feature', bodyId: 'main', feature: 1 } as const
  const now = { spec: demoSpec, tool: 'select', selection } as const
  expect(isOver(now, { ...now, selection: { ...selection } })).toBe(false)
  expect(isOver(now, { ...now, selection: undefined })).toBe(true)
  expect(isOver(now, { ...now, tool: 'shelf' })).toBe(true)
  expect(isOver(now, { ...now, spec: { ...demoSpec } })).toBe(true)
})

test('undo and redo are told by what they did, and nothing is where there is no step', () => {
  const done: string[] = []
  const app = (state: Partial<AppStoreState>) => ({
    getState: () =>
      ({
        spec: demoSpec,
        undo: () => done.push('undo'),
        redo: () => done.push('redo'),
        ...state,
      }) as unknown as AppStoreState,
  })
  stepBack(app({ canUndo: false, undoLabel: undefined }))
  expect(stepsTold.getState().words).toBe('')
  stepBack(app({ canUndo: true, undoLabel: 'Move point' }))
  expect(stepsTold.getState()).toEqual({ words: 'Undone: Move point', spec: demoSpec })
  stepBack(app({ canUndo: true, undoLabel: 'Move point' }))
  expect(stepsTold.getState().words).toBe('Undone: Move point\u00a0')
  stepForward(app({ canRedo: true, redoLabel: 'Set level' }))
  expect(stepsTold.getState().words).toBe('Redone: Set level')
  expect(done).toEqual(['undo', 'undo', 'undo', 'redo'])
})
