import { describe, expect, test } from 'vitest'
import { boundsOf, type Path } from '../../../src/basin/index.ts'
import { applyCommand, demoSpec, type Spec } from '../../../src/document/index.ts'
import { originOnSheet } from '../../../src/ui/plan/OriginMark.tsx'
import { edits } from '../../../src/ui/sheet/edits.ts'
import type { Turn, View } from '../../../src/ui/sheet/view.ts'

const panes = { width: 400, height: 500, planHeight: 300, datumY: 340 }
const view = (turn: Turn, u: number, v: number): View => ({ turn, scale: 20, u, v, stretch: 1, sectionScrollPx: 0 })

describe('the mark that x and y are counted from', () => {
  test('stands at the plan’s own 0, and its letters point the way that x and y grow, however the sheet is turned', () => {
    // The middle of the pane looks at 5 m right of 0 and 2 m up from it.
    expect(originOnSheet(view(0, 5, 2), panes)).toEqual({ at: [100, 190], isInSight: true, x: [1, 0], y: [0, -1] })
    const ways = ([0, 1, 2, 3] as const).map((turn) => {
      const { x, y } = originOnSheet(view(turn, 0, 0), panes)
      return [...x, ...y].map((k) => Math.round(k) || 0)
    })
    // Down the screen is +: a quarter turn to the left sends x up and y left.
    expect(ways).toEqual([
      [1, 0, 0, -1],
      [0, -1, -1, 0],
      [-1, 0, 0, 1],
      [0, 1, 1, 0],
    ])
  })

  test('out of sight it stands at the paper’s edge nearest to it, never over the section', () => {
    const { at, isInSight } = originOnSheet(view(0, 30, 20), panes)
    expect(isInSight).toBe(false)
    expect(at).toEqual([18, 282])
    expect(originOnSheet(view(0, 0, 9), panes).isInSight).toBe(false)
  })
})

test('an outline drawn on a blank sheet is counted from the corner of its own box, one drawn anew from where it was before', () => {
  const outline: Path = { start: [7, -3], segments: [{ to: [12, -3] }, { to: [12, 4], bulge: 0.5 }, { to: [7, -3] }] }
  const settings = { units: 'us', theme: 'system' } as const
  const drawn = (spec: Spec) => {
    const done = applyCommand(spec, edits.draw(outline, { settings, spec }))
    if (!done.ok) throw new Error(done.problem.what)
    const box = boundsOf(done.value.bodies[0]!.outline)
    return { minX: box.minX, minY: box.minY, widthM: box.maxX - box.minX }
  }
  const { minX, maxX, minY } = boundsOf(outline)
  expect(drawn({ ...demoSpec, bodies: [] })).toEqual({ minX: 0, minY: 0, widthM: expect.closeTo(maxX - minX, 9) })
  expect(drawn(demoSpec)).toEqual({ minX, minY, widthM: maxX - minX })
})
