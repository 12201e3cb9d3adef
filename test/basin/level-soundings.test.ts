import { describe, expect, it } from 'vitest'
import { measure, type Path } from '../../src/basin/index.ts'
import { divided, shape } from './shapes.ts'

/** Two round lobes joined by a straight reach. */
const LOBES: Path = {
  start: [0, 1.5],
  segments: [{ to: [0, -1.5], bulge: 2 }, { to: [6, -1.5] }, { to: [6, 1.5], bulge: 2 }],
}

describe('soundings with the depth at the edge unknown', () => {
  it('ask for fine chords where the floor slopes, not all round a lobe that one of them makes level', () => {
    const p = divided(
      shape(LOBES, {
        floor: {
          kind: 'soundings',
          edgeDepthM: null,
          points: [
            [5, -0.3, 1.5],
            [5, 0.3, 0.9],
          ],
        },
      }),
    )
    // Chords 64 times finer all round came to 6,289 edges, and to the same volume.
    expect(p.edges.length).toBeLessThan(1000)
    const { volumeM3, errors } = measure(p, 0)
    expect(volumeM3).toBeCloseTo(44.81185265028583, 9)
    expect(errors.modelM3).toBeLessThan(5e-4 * volumeM3)
  })
})
