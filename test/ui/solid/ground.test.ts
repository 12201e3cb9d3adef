import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { openingOf, rimDistanceOf, sheetOf } from '../../../src/ui/solid/ground.ts'
import { isOverBasin } from '../../../src/ui/solid/probe.ts'

/** A bent outline with an island in it. */
const OUTLINE = [0, 0, 8, 0, 8, 6, 5, 6, 5, 2, 3, 2, 3, 6, 0, 6]
const ISLAND = [0.8, 0.5, 1.6, 0.5, 1.6, 1.5, 0.8, 1.5]
const RINGS = [OUTLINE, ISLAND]

function triangleHas(corners: Float32Array, t: number, x: number, y: number): boolean {
  const [ax, ay, bx, by, cx, cy] = [...corners.subarray(t, t + 6)] as [number, number, number, number, number, number]
  const side = (px: number, py: number, qx: number, qy: number) => (qx - px) * (y - py) - (qy - py) * (x - px)
  const [a, b, c] = [side(ax, ay, bx, by), side(bx, by, cx, cy), side(cx, cy, ax, ay)]
  return (a > 0 && b > 0 && c > 0) || (a < 0 && b < 0 && c < 0)
}

describe('the ground around the basin', () => {
  test('the opening’s fans cover a place an odd number of times exactly where it is over water', () => {
    const fans = openingOf(RINGS)
    const spot = fc.tuple(fc.double({ min: -2, max: 10, noNaN: true }), fc.double({ min: -2, max: 8, noNaN: true }))
    fc.assert(
      fc.property(spot, ([x, y]) => {
        // Fractions that no edge or diagonal passes through.
        const [px, py] = [Math.floor(x * 97) / 97 + 0.00317, Math.floor(y * 89) / 89 + 0.00411]
        let times = 0
        for (let t = 0; t < fans.length; t += 6) if (triangleHas(fans, t, px, py)) times++
        expect(times % 2 === 1).toBe(isOverBasin(RINGS, px, py))
      }),
      { seed: 7, numRuns: 400 },
    )
  })

  test('the sheet is the box with its margin', () => {
    const sheet = sheetOf(RINGS, 2)
    const [xs, ys] = [0, 1].map((k) => [...sheet].filter((_, i) => i % 2 === k)) as [number[], number[]]
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([-2, 10, -2, 8])
  })

  test('distances from the rim are true to half a cell, inside the island and around corners too', () => {
    const away = rimDistanceOf(RINGS, 1.5, 160)
    const distanceAt = (x: number, y: number) => {
      const i = Math.floor((x - away.originX) / away.cellM)
      const j = Math.floor((y - away.originY) / away.cellM)
      return away.texels[j * away.width + i]!
    }
    for (const [x, y, far] of [
      [4, -0.5, 0.5],
      [-0.3, -0.4, 0.5],
      [4, 2.4, 0.4],
      [9, 3, 1],
      [1.2, 1, 0.4],
      [-1.4, 3, 1.4],
    ] as const)
      expect(Math.abs(distanceAt(x, y) - far)).toBeLessThan(away.cellM * 0.75 + 0.003)
    expect(distanceAt(9.45, 7.45)).toBe(1.5)
  })
})
