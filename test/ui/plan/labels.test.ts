import { describe, expect, test } from 'vitest'
import { boxesTouch, boxOfText, isCrossed, placeLabels, placesOnLine } from '../../../src/ui/plan/labels.ts'

describe('labels', () => {
  test('labels that would overlap give way to the earlier one', () => {
    const at = (x: number) => ({ x, box: boxOfText('4′ 2″', [x, 0], 13) })
    const placed = placeLabels([at(0), at(10), at(60)], [])
    expect(placed.map((p) => p.x)).toEqual([0, 60])
    expect(placed.every((a) => placed.every((b) => a === b || !boxesTouch(a.box, b.box)))).toBe(true)
  })

  test('what is taken stays free', () => {
    const candidate = { box: boxOfText('7 ft', [0, 0], 11) }
    expect(placeLabels([candidate], [{ x: 3, y: 2, halfWidth: 4, halfHeight: 4 }])).toEqual([])
  })

  test('a label sits on its line, in a straight stretch, and not at all on a short one', () => {
    const straight = [
      [0, 0],
      [200, 0],
    ] as const
    const places = placesOnLine(straight, 30)
    expect(places.length).toBeGreaterThan(0)
    for (const [x, y] of places) {
      expect(y).toBe(0)
      expect(x).toBeGreaterThanOrEqual(15)
      expect(x).toBeLessThanOrEqual(185)
    }
    expect(
      placesOnLine(
        [
          [0, 0],
          [40, 0],
        ],
        30,
      ),
    ).toEqual([])
  })

  test('a place where the line turns sharply is passed over', () => {
    const corner = [
      [0, 0],
      [100, 0],
      [100, 100],
    ] as const
    for (const [x, y] of placesOnLine(corner, 40)) expect(Math.hypot(x - 100, y)).toBeGreaterThan(10)
  })
})

describe('a line over a label', () => {
  const box = { x: 10, y: 10, halfWidth: 6, halfHeight: 3 }
  test.each([
    ['upright through it', [10, 0], [10, 40], true],
    ['level through it', [0, 9], [40, 9], true],
    ['wholly inside', [9, 9], [11, 11], true],
    ['aslant over a corner', [2, 10], [10, 2], true],
    ['aslant past a corner', [0, 8], [8, 0], false],
    ['ends before it', [0, 10], [3, 10], false],
    ['upright beside it', [17, 0], [17, 40], false],
    ['along its edge', [0, 13], [40, 13], false],
  ] as const)('%s: %s–%s', (_, from, to, crosses) => {
    expect(isCrossed(box, [from, to])).toBe(crosses)
    expect(isCrossed(box, [to, from])).toBe(crosses)
  })
})
