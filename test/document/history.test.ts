import { describe, expect, test } from 'vitest'
import {
  blankSpec,
  demoSpec,
  depthFromReference,
  depthToReference,
  MOST_STEPS,
  record,
  redo,
  redoLabel,
  type Spec,
  startHistory,
  undo,
  undoLabel,
} from '../../src/document/index.ts'

const named = (name: string): Spec => ({ ...demoSpec, name })

describe('history', () => {
  test('undo and redo walk the same documents, with their labels', () => {
    let h = record(record(startHistory(named('a')), named('b'), 'Rename'), named('c'), 'Move point')
    expect([undoLabel(h), redoLabel(h)]).toEqual(['Move point', undefined])
    h = undo(h)
    expect([h.present.name, undoLabel(h), redoLabel(h)]).toEqual(['b', 'Rename', 'Move point'])
    h = undo(undo(undo(h)))
    expect([h.present.name, undoLabel(h), redoLabel(h)]).toEqual(['a', undefined, 'Rename'])
    h = redo(redo(redo(h)))
    expect([h.present.name, undoLabel(h), redoLabel(h)]).toEqual(['c', 'Move point', undefined])
  })

  test('a drag is one step; another drag is another', () => {
    let h = startHistory(named('0'))
    for (const name of ['1', '2', '3']) h = record(h, named(name), 'Move point', 'drag-1')
    for (const name of ['4', '5']) h = record(h, named(name), 'Move point', 'drag-2')
    expect([undo(h).present.name, undo(undo(h)).present.name]).toEqual(['3', '0'])
  })

  test('a drag after an undo starts a step of its own, and what was undone is gone', () => {
    let h = record(record(startHistory(named('0')), named('1'), 'Move point', 'k'), named('2'), 'Rename')
    h = record(undo(h), named('3'), 'Move point', 'k')
    expect([h.future.length, undo(h).present.name]).toEqual([0, '1'])
  })

  test('an edit that changes nothing is no step, and the oldest steps are let go', () => {
    const spec = blankSpec()
    expect(record(startHistory(spec), spec, 'Nothing')).toEqual(startHistory(spec))
    let h = startHistory(named('start'))
    for (let i = 0; i < MOST_STEPS + 50; i++) h = record(h, named(`${i}`), 'Rename')
    expect([h.past.length, h.past[0]!.spec.name]).toEqual([MOST_STEPS, '49'])
  })
})

describe('depths by what they were measured from', () => {
  const body = { ...demoSpec.bodies[0]!, freeboardM: 0.15, levelM: -0.08, tileLineM: 0.05 }
  test.each([
    ['waterline', 1.2],
    ['rim', 1.05],
    ['tile-line', 1.15],
    ['water-now', 1.28],
    [undefined, 1.2],
  ] as const)('1.2 m from the %s is %d m from the datum, and back', (depthsMeasuredFrom, depthM) => {
    const b = { ...body, depthsMeasuredFrom }
    expect(depthFromReference(b, 1.2)).toBeCloseTo(depthM, 12)
    expect(depthToReference(b, depthFromReference(b, 1.2))).toBeCloseTo(1.2, 12)
  })
})
