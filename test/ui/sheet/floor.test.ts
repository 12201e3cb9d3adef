import { expect, test } from 'vitest'
import type { Floor } from '../../../src/basin/index.ts'
import { floorBetween } from '../../../src/ui/sheet/useScene.ts'

const FLOOR: Floor = {
  kind: 'profile',
  axis: { from: [0, 0], to: [10, 0] },
  stations: [
    [2, 1],
    [6, 3],
    [8, 2],
  ],
}

test('the deepest floor in sight is a station’s or that at the edge of the paper', () => {
  expect(floorBetween(FLOOR, -5, 20)).toBe(3)
  expect(floorBetween(FLOOR, 3, 4)).toBeCloseTo(2, 12)
  expect(floorBetween(FLOOR, 7, 7.5)).toBeCloseTo(2.5, 12)
  expect(floorBetween(FLOOR, -5, 0)).toBe(1)
  expect(floorBetween(FLOOR, 9, 12)).toBe(2)
  expect(floorBetween({ kind: 'flat', depthM: 1.4 }, 0, 1)).toBe(1.4)
})
