import { describe, expect, test } from 'vitest'
import { boxesTouch, boxOfText, placeLabels, placesOnLine } from '../../../src/ui/plan/labels.ts'

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
