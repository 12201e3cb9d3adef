import { describe, expect, it } from 'vitest'
import { type BasinShape, depthAt, type Floor, meshOf, PARTS, type Wall } from '../../src/basin/index.ts'
import { contours, soundings } from './floor-shapes.ts'
import { box, circle, divided, polygon, shape } from './shapes.ts'

const SQUARES = contours(
  0.727,
  [1.417, polygon([0.459, -2.173], [2.823, -0.4], [1.05, 1.964], [-1.314, 0.191])],
  [2.451, polygon([0.991, -1.021], [1.7, -0.075], [0.518, 0.811], [-0.191, -0.134])],
)
const SOUNDED = soundings(0.85, [1.2, 0.9, 1.6], [3.1, 2.7, 1.3], [4.4, 0.8, 2.1], [6.2, 2.2, 2.4], [5.3, 3.3, 1.1])
const COVE: Wall = { kind: 'cove', radiusM: 0.45 }
const BATTER: Wall = { kind: 'battered', run: 0.35 }

const pool = (outline: BasinShape['outline'], floor: Floor, wall: Wall): BasinShape => shape(outline, { floor, wall })

describe('a picture of a triangulated floor under a wall that is not upright', () => {
  it.each<[string, BasinShape]>([
    ['two squares in a round pool under a cove', pool(circle(0, 0, 4.24), SQUARES, COVE)],
    ['two squares in a round pool under a leaning wall', pool(circle(0, 0, 4.24), SQUARES, BATTER)],
    ['soundings in a box under a cove', pool(box(0, 0, 7.5, 4), SOUNDED, COVE)],
    ['soundings in a box under a leaning wall', pool(box(0, 0, 7.5, 4), SOUNDED, BATTER)],
  ])('has no blade that stands out of its surface: %s', (_, s) => {
    const p = divided(s)
    const chordM = 2.5e-4 * p.extentM
    const mesh = meshOf(p, { chordM })
    if (!mesh.ok) throw new Error(mesh.problem.code)
    const { origin, positions, indices, parts } = mesh.value
    const corner = (i: number): [number, number, number] => {
      const k = 3 * indices[i]!
      return [positions[k]! + origin[0], positions[k + 1]! + origin[1], positions[k + 2]!]
    }
    let steep = 0
    for (let t = 0; t < indices.length; t += 3) {
      if (['riser', 'rim'].includes(PARTS[parts[t / 3]!]!)) continue
      const [a, b, c] = [corner(t), corner(t + 1), corner(t + 2)]
      const plan = ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2
      const longest = Math.max(
        ...[
          [a, b],
          [b, c],
          [c, a],
        ].map(([u, v]) => Math.hypot(u![0] - v![0], u![1] - v![1])),
      )
      // Narrower than a mm: seen from above a line.
      if (!(2 * Math.abs(plan) < 1e-3 * longest) || longest < 0.05) continue
      steep++
      const [x, y, z] = [0, 1, 2].map((k) => (a[k]! + b[k]! + c[k]!) / 3) as [number, number, number]
      const depths = [0, 1, 2, 3]
        .map((k) =>
          depthAt(p, x + 2 * chordM * Math.cos((k * Math.PI) / 2), y + 2 * chordM * Math.sin((k * Math.PI) / 2)),
        )
        .flatMap((here) => (here ? [here.depthM] : []))
      if (depths.length < 4) continue
      const off = Math.max(0, Math.min(...depths) + z, -z - Math.max(...depths))
      expect([x, y, off < 0.03]).toEqual([x, y, true])
    }
    expect(steep).toBeGreaterThan(0)
  })
})
