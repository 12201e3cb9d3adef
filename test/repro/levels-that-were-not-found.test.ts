import { describe, expect, it } from 'vitest'
import { levelForVolume, measure, volumeAtLevel } from '../../src/basin/index.ts'
import { circle, divided, shape } from '../basin/shapes.ts'

// Found by npm run fuzz: volumes jump by what an integral along the wall is off by, and a level between two of them is the answer.
describe('a level for a volume under a cove over soundings with a ramp, a shelf and an island', () => {
  const s = shape(circle(0, 0, 3), {
    islands: [circle(1.03833011885, 0, 0.12444324405)],
    floor: {
      kind: 'soundings',
      edgeDepthM: null,
      points: [
        [0.75, 0, 0.9],
        [-0.30000000000000004, 0, 0.9],
        [1.5, 0, 0.9],
        [-2.1184329033, 0, 2.1170207373],
        [0.8539450839000001, 0, 2.0499032126],
      ],
    },
    wall: { kind: 'cove', radiusM: 0.1 },
    features: [
      {
        kind: 'shelf',
        path: {
          start: [-2.8639178951, -1.2246753008],
          segments: [
            { to: [-0.4145672935000002, -1.2246753008] },
            { to: [-0.4145672935000002, 0.6123376504] },
            { to: [-2.8639178951, 0.6123376504] },
          ],
        },
        depthM: 1.1507085564,
      },
      {
        kind: 'ramp',
        path: circle(-0.75, 0, 1),
        axis: { from: [-3.695518130045147, -1.5307337294603591], to: [3.695518130045147, 1.5307337294603591] },
        fromDepthM: 0.23525511719999997,
        toDepthM: 0.6,
      },
    ],
  })
  const { volumeM3 } = measure(divided(s), 0.2)

  it.each(Array.from({ length: 20 }, (_, i) => 0.009 + i * 0.00009))('is found for %f of all', (share) => {
    const p = divided(s)
    const level = levelForVolume(p, share * volumeM3)
    if (!level.ok) throw new Error(level.problem.code)
    const { errors } = measure(p, level.value)
    const off = Math.abs(volumeAtLevel(p, level.value).volumeM3 - share * volumeM3)
    expect(off).toBeLessThan(errors.arithmeticM3 + 1e-9 * volumeM3)
    expect(off).toBeLessThan(1e-6)
  })
})
