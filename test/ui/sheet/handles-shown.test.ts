import { expect, test } from 'vitest'
import type { Point } from '../../../src/basin/index.ts'
import { handlesShown, MANY_POINTS } from '../../../src/ui/sheet/handles-shown.ts'
import { type Panes, toScreen, type View } from '../../../src/ui/sheet/view.ts'

const panes: Panes = { width: 900, height: 520, planHeight: 340, datumY: 380 }
const view: View = { turn: 0, scale: 40, u: 0, v: 0, stretch: 1, sectionScrollPx: 0 }
const circle = (count: number): Point[] =>
  Array.from({ length: count }, (_, i) => [
    4 * Math.cos((i / count) * 2 * Math.PI),
    4 * Math.sin((i / count) * 2 * Math.PI),
  ])

test('every point of an ordinary ring has its mark', () => {
  expect(handlesShown({ view, panes }, circle(MANY_POINTS), undefined)).toBeUndefined()
})

test('of a hundred thousand points those in sight that lie apart have one, the held one always, and coming nearer shows more', () => {
  const nodes = circle(100_000)
  const shown = handlesShown({ view, panes }, nodes, 54_321)!
  expect(shown.size).toBeGreaterThan(20)
  expect(shown.size).toBeLessThan(400)
  expect(shown.has(54_321)).toBe(true)
  for (const node of shown) {
    if (node === 54_321) continue
    const [x, y] = toScreen(view, panes, nodes[node]!)
    expect(x > -20 && x < 920 && y > -20 && y < 540).toBe(true)
  }
  const near = { ...view, scale: 2000, u: 4, v: 0 }
  const nearer = handlesShown({ view: near, panes }, nodes, undefined)!
  expect([...nearer].filter((node) => !shown.has(node)).length).toBeGreaterThan(3)
})
