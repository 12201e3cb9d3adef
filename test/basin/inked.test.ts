import { describe, expect, it } from 'vitest'
import { depthAt, meshOf } from '../../src/basin/index.ts'
import { BEAN, divided, shape } from './shapes.ts'

describe('lines inked along round steps that run into a coved wall', () => {
  const p = divided(
    shape(BEAN, {
      floor: { kind: 'flat', depthM: 1.4 },
      wall: { kind: 'cove', radiusM: 0.6 },
      features: [
        {
          kind: 'roundSteps',
          centre: [3, 0.55],
          treads: [
            [0.6, 0.3],
            [0.9, 0.6],
            [1.2, 0.9],
          ],
        },
      ],
    }),
  )
  const mesh = meshOf(p, { chordM: 1e-3 })
  if (!mesh.ok) throw new Error(mesh.problem.code)
  const { edges, origin } = mesh.value

  it('end where the wall covers the steps', () => {
    let alongSteps = 0
    for (let i = 0; i < edges.length; i += 6) {
      const [x0, y0, z0, x1, y1, z1] = edges.slice(i, i + 6) as unknown as number[]
      const [x, y] = [(x0! + x1!) / 2 + origin[0], (y0! + y1!) / 2 + origin[1]]
      const lengthM = Math.hypot(x1! - x0!, y1! - y0!)
      if (lengthM < 5e-3) continue
      const aside = (side: number) =>
        depthAt(p, x - (side * 2e-3 * (y1! - y0!)) / lengthM, y + (side * 2e-3 * (x1! - x0!)) / lengthM)
      const [a, b] = [aside(1), aside(-1)]
      // The rim runs along the shore.
      if (!a || !b) continue
      alongSteps++
      const isStep = Math.abs(a.depthM - b.depthM) > 0.05 || a.part !== b.part
      expect(isStep, `${x}, ${y}, depth ${-(z0! + z1!) / 2}`).toBe(true)
    }
    expect(alongSteps).toBeGreaterThan(40)
  })
})
