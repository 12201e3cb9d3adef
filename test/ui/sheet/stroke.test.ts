import { describe, expect, test } from 'vitest'
import { boundsOf, fitLoop, nearestOn, type Point } from '../../../src/basin/index.ts'
import { boxAround } from '../../../src/ui/plan/figures.ts'
import { belowLine, shortNotes } from '../../../src/ui/sheet/Captions.tsx'
import { STROKE_FIT } from '../../../src/ui/sheet/gestures.ts'

/** Once around an oval of 9 by 5 m, pressed in at one long side by a share of its size, by a hand that trembles a little. */
function stroke(bend: number, tremble: number): Point[] {
  const size = Math.hypot(9, 5)
  return Array.from({ length: 160 }, (_, i): Point => {
    const a = (i / 159) * 2 * Math.PI * 0.985
    const inward = bend * size * Math.exp(-(((a - Math.PI / 2) / 0.35) ** 2))
    const off = tremble * size * Math.sin(i * 12.9898)
    return [4.5 * Math.cos(a) + off, 2.5 * Math.sin(a) - inward + off / 2]
  })
}

describe('a loop drawn by hand', () => {
  test.each([0.01, 0.02, 0.05])(
    'keeps an inward bend of %f of its size, and follows the line as nearly as it says',
    (bend) => {
      const line = stroke(bend, 0.001)
      const size = Math.hypot(9, 5)
      const fitted = fitLoop(line, STROKE_FIT * size)
      if (!fitted.ok) throw new Error(fitted.problem.code)
      for (const [x, y] of line)
        expect(nearestOn(fitted.value, x, y).distanceM).toBeLessThanOrEqual(STROKE_FIT * size * 1.01)
      // And not only each drawn point lies near it: it goes nowhere that wasn't drawn.
      const top = Math.max(...line.map(([, y]) => y))
      expect(Math.abs(boundsOf(fitted.value).maxY - top)).toBeLessThanOrEqual(STROKE_FIT * size * 1.01)
      expect(fitted.value.segments.length).toBeLessThanOrEqual(12)
    },
  )
})

test('the box around a stroke of any length is found', () => {
  const line = Array.from({ length: 300_000 }, (_, i): Point => [Math.cos(i), 2 * Math.sin(i)])
  const { minX, minY, maxX, maxY } = boxAround(line)
  expect([minX, minY, maxX, maxY]).toEqual([-1, -2, 1, 2].map((end) => expect.closeTo(end, 6)))
})

describe('the notes under the plan’s name', () => {
  test('are not struck out by the line of the overall length, wherever it runs', () => {
    for (let top = 0; top < 200; top++) {
      const base = 22 + belowLine(top)
      const line = Math.max(26, top - 30)
      // Letters reach about 11 px over their base and 4 below it.
      expect(line > base - 11 && line < base + 4, `top at ${top}`).toBe(false)
    }
  })
})

describe('what stands beside the section’s name', () => {
  const notes = ['vertical × 2', '', 'depths assumed: drag or type them', 'depth line assumed: draw your own']

  test('is cut down to what finds room on a narrow paper, without its advice', () => {
    expect(shortNotes(notes, { width: 390 })).toEqual(['vertical × 2', '', 'depths assumed'])
    expect(shortNotes(notes, { width: 320 })).toEqual(['vertical × 2', ''])
    expect(shortNotes(notes, { width: 620 })).toEqual(['vertical × 2', '', 'depths assumed', 'depth line assumed'])
  })
})
