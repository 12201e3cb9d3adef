import { describe, expect, it } from 'vitest'
import { type BasinShape, measure, type Point } from '../../src/basin/index.ts'
import { divided, polygon, shape } from './shapes.ts'

/** An island with a corner on the rim of round steps, which its rays from there leave at once and cross again, or run along inside. */
function made(angle: number, corner: Point, radiusM: number): BasinShape {
  const at = ([x, y]: Point): Point => [
    Math.cos(angle) * x - Math.sin(angle) * y,
    Math.sin(angle) * x + Math.cos(angle) * y,
  ]
  const [x, y] = corner
  const outline: Point[] = [
    [0, 0],
    [9, 0],
    [9, 5],
    [0, 5],
  ]
  const island: Point[] = [
    [x, y],
    [x + 0.7, y],
    [x + 0.7, y - 0.6],
    [x - 0.5, y - 0.5],
  ]
  return shape(polygon(...outline.map(at)), {
    islands: [polygon(...island.map(at))],
    floor: { kind: 'flat', depthM: 1.6 },
    wall: { kind: 'cove', radiusM: 0.4 },
    features: [{ kind: 'roundSteps', centre: at([1.2, 2.75]), treads: [[radiusM, 0.8]] }],
  })
}

describe('a corner of an island on the rim of round steps', () => {
  it.each([
    [[3, 2.75], 1.8],
    [[2.7, 2.75], 1.5],
    [[2.45, 2.75], 1.25],
  ] as const)('keeps its volume, and its bound small, however the pool is turned: corner at %j', (corner, radiusM) => {
    const figures = Array.from({ length: 12 }, (_, k) => measure(divided(made(k * 0.37, [...corner], radiusM)), 0))
    for (const { volumeM3, errorBoundM3, wetted } of figures) {
      expect(Math.abs(volumeM3 - figures[1]!.volumeM3)).toBeLessThan(1e-9)
      expect(Math.abs(wetted.totalM2 - figures[1]!.wetted.totalM2)).toBeLessThan(1e-8)
      expect(errorBoundM3).toBeLessThan(1e-8)
    }
  })
})
