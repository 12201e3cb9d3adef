import { describe, expect, test } from 'vitest'
import { areaOf, boundsOf, fitLoop, nearestOn, type Point, untangle } from '../../../src/basin/index.ts'
import { boxAround } from '../../../src/ui/plan/figures.ts'
import { untangledStroke } from '../../../src/ui/plan/untangled-stroke.ts'
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

describe('a loop that crosses itself', () => {
  /** A figure of eight of two unlike lobes, 12 by 5 m, drawn by a hand that trembles a little. */
  const eight = Array.from({ length: 200 }, (_, i): Point => {
    const a = ((i + 20) / 199) * 2 * Math.PI * 0.99
    const wide = Math.cos(a) > 0 ? 6 : 4
    return [wide * Math.cos(a) + 0.01 * Math.sin(i * 12.9898), 2.5 * Math.sin(2 * a)]
  })
  const size = Math.hypot(10, 5)

  test('is not taken as it is, and nearly the same line free of itself is found', () => {
    const fitted = fitLoop(eight, STROKE_FIT * size)
    expect(fitted.ok ? '' : fitted.problem.code).toBe('loop-crosses-itself')
    const free = untangledStroke(eight, size, STROKE_FIT * size)
    if (!free) throw new Error('not untangled')
    expect(free.segments.length).toBeLessThanOrEqual(16)
    // Free of itself: what is free already is handed back as it is.
    expect(untangle(free)).toBe(free)
    for (const [x, y] of eight) expect(nearestOn(free, x, y).distanceM).toBeLessThan(0.04 * size)
    // Both lobes are in it, none turned inside out: ∫ y dx over each half of (w cos a, 2.5 sin 2a) is w · 2.5 · 4/3.
    expect(Math.abs(areaOf(free)) / ((6 + 4) * 2.5 * (4 / 3))).toBeCloseTo(1, 1)
  })

  test('is not untangled where it is a scribble', () => {
    const scribble = Array.from({ length: 900 }, (_, i): Point => [5 * Math.sin(i * 1.7), 4 * Math.sin(i * 2.9 + 1)])
    expect(untangledStroke(scribble, 12, 0.07)).toBeUndefined()
  })
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
