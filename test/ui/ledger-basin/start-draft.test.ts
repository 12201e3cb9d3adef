import { describe, expect, test } from 'vitest'
import { STARTING_OUTLINES } from '../../../src/basin/index.ts'
import { type StartDraft, typedIn, withForm, withMeasure, withUsual } from '../../../src/ui/ledger/basin/start-draft.ts'
import { startValues } from '../../../src/ui/ledger/basin/start-values.ts'

const rectangle: StartDraft = { kindId: 'rectangle', typed: {} }

describe('the measures typed for a starting outline', () => {
  test('are there again when one comes back to the form', () => {
    const typed = withMeasure(withMeasure(rectangle, 'lengthM', 12), 'cornerRadiusM', 0.5)
    const circle = withMeasure(withForm(typed, 'circle', 'metric'), 'diameterM', 7)
    expect(typedIn(circle)).toEqual({ diameterM: 7 })
    const back = withForm(circle, 'rectangle', 'metric')
    expect(typedIn(back)).toEqual({ lengthM: 12, cornerRadiusM: 0.5 })
    expect(typedIn(withForm(back, 'circle', 'metric'))).toEqual({ diameterM: 7 })
  })

  test('go along to a form that has them too, the last one typed first', () => {
    const ellipse = withForm(withMeasure(rectangle, 'lengthM', 12), 'ellipse', 'us')
    expect(typedIn(ellipse)).toEqual({ lengthM: 12 })
    expect(typedIn(withForm(withMeasure(ellipse, 'lengthM', 9), 'rectangle', 'us'))).toEqual({ lengthM: 9 })
  })

  test('stay behind where the other form would not close with them', () => {
    for (const { id } of STARTING_OUTLINES.rows) {
      for (const lengthM of [0.2, 3, 8, 40, 900]) {
        const kind = STARTING_OUTLINES.get(id)!
        const there = withForm(withMeasure(rectangle, 'lengthM', lengthM), id, 'metric')
        expect(kind.make({ ...startValues(kind, 'metric'), ...typedIn(there) }).ok, `${id} ${lengthM}`).toBe(true)
      }
    }
    expect(typedIn(withForm(withMeasure(rectangle, 'lengthM', 2), 'kidney', 'metric'))).toEqual({})
  })

  test('go when the usual ones are asked for, those of other forms stay', () => {
    const both = withMeasure(withForm(withMeasure(rectangle, 'lengthM', 12), 'circle', 'metric'), 'diameterM', 7)
    expect(withUsual(both)).toEqual({ kindId: 'circle', typed: { rectangle: { lengthM: 12 } } })
  })
})
