import { describe, expect, it } from 'vitest'
import { type BasinShape, measure, type Path, type Point, type Wall } from '../../src/basin/index.ts'
import { divided, polygon, shape } from './shapes.ts'

const turned = (angle: number, [x, y]: Point): Point => [
  Math.cos(angle) * x - Math.sin(angle) * y,
  Math.sin(angle) * x + Math.cos(angle) * y,
]

/** A pool of 8 × 5 m turned by an angle, its sides cut into so many parts, with a round shelf of radius 1 at (4, y). */
function pool(wall: Wall, y: number, angle: number, parts: number): BasinShape {
  const corners: Point[] = [
    [0, 0],
    [8, 0],
    [8, 5],
    [0, 5],
  ]
  const points = corners.flatMap(([x0, y0], i) => {
    const [x1, y1] = corners[(i + 1) % 4]!
    return Array.from(
      { length: parts },
      (_, k): Point => turned(angle, [x0 + ((x1 - x0) * k) / parts, y0 + ((y1 - y0) * k) / parts]),
    )
  })
  const path: Path = {
    start: turned(angle, [5, y]),
    segments: [
      { to: turned(angle, [3, y]), bulge: 1 },
      { to: turned(angle, [5, y]), bulge: 1 },
    ],
  }
  return shape(polygon(...points), { wall, features: [{ kind: 'shelf', path, depthM: 0.2 }] })
}

const WALLS: readonly Wall[] = [
  { kind: 'cove', radiusM: 0.3 },
  { kind: 'battered', run: 0.2 },
]

describe('a round shelf beside a wall', () => {
  // A cut in the shore is a place where rays are looked at: 96 of them to a side leave no dip to be missed.
  it.each(WALLS)('is found however little it reaches into the strip: %o', (wall) => {
    for (const reach of [0.1, 0.03, 0.004])
      for (const angle of [0.2, 0.9]) {
        const y = 0.3 + 1 - reach
        const whole = measure(divided(pool(wall, y, angle, 1)), -0.05)
        const parted = measure(divided(pool(wall, y, angle, 96)), -0.05)
        expect(Math.abs(whole.volumeM3 - parted.volumeM3)).toBeLessThan(1e-10)
        expect(Math.abs(whole.wetted.totalM2 - parted.wetted.totalM2)).toBeLessThan(1e-7)
      }
  })

  it.each(WALLS)('changes the volume by no jump where it comes to touch the shore: %o', (wall) => {
    for (const angle of [0, 0.2]) {
      const volumes = [-2e-6, -1e-6, -1e-9, 0, 1e-9, 1e-6, 2e-6].map(
        (apart) => measure(divided(pool(wall, 1 + apart, angle, 1)), -0.05).volumeM3,
      )
      for (let i = 1; i < volumes.length; i++) expect(Math.abs(volumes[i]! - volumes[i - 1]!)).toBeLessThan(4e-6)
    }
  })
})
