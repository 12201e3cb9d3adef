import { describe, expect, test } from 'vitest'
import type { System } from '../../../src/document/index.ts'
import { daysOf, rowsOf } from '../../../src/ui/ledger/logbook/entries.ts'
import { keepingWords } from '../../../src/ui/ledger/logbook/keeping.ts'

const system: System = {
  id: 'pool',
  plumbingM3: 0,
  volumeEstimates: [],
  water: {
    readings: [
      { at: '2026-05-02T09:00:00Z', method: 'drop-kit', values: { pH: 7.9 } },
      { at: '2026-05-04T09:00:00Z', method: 'drop-kit', values: { pH: 7.5 } },
    ],
    fill: { at: '2026-05-01T09:00:00Z', method: 'supplier', values: { pH: 7.7 } },
    targets: {},
  },
  equipment: { helpers: [] },
  stock: [],
  regime: { id: 'hypochlorite', products: {} },
  log: [
    { kind: 'note', id: 'a', at: '2026-05-04T09:00:00Z', text: 'Clear to the floor' },
    { kind: 'dose', id: 'b', at: '2026-05-02T18:30:00+02:00', product: 'bicarbonate', amountG: 6500 },
  ],
}

describe('the logbook’s list', () => {
  test('readings, doses, notes and fill water are one list, the newest first', () => {
    expect(rowsOf(system).map((row) => row.key)).toEqual(['a', 'readings-1', 'b', 'readings-0', 'fill'])
  })

  test('offsets count: half past six in the evening two hours east is before five o’clock Z', () => {
    const late: System = {
      ...system,
      log: [{ kind: 'note', id: 'z', at: '2026-05-02T17:00:00Z', text: '' }, ...system.log],
    }
    const keys = rowsOf(late).map((row) => row.key)
    expect(keys.indexOf('z')).toBeLessThan(keys.indexOf('b'))
  })

  test('readings keep their place in the document, so that the right one is removed', () => {
    const indices = rowsOf(system).flatMap((row) => (row.kind === 'readings' ? [row.index] : []))
    expect(indices).toEqual([1, 0])
  })

  test('a day is headed once', () => {
    const days = daysOf(rowsOf(system))
    expect(new Set(days.map((day) => day.label)).size).toBe(days.length)
    expect(days.flatMap((day) => day.rows)).toHaveLength(5)
  })
})

describe('where the plan is kept', () => {
  test('a failed save tells what to do, a linked plan is never called saved', () => {
    expect(keepingWords('own', 'failed')).toContain('Save a file')
    expect(keepingWords('link', 'saved')).not.toContain('Saved')
  })
})
