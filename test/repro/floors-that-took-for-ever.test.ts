import { describe, expect, it } from 'vitest'
import { partition, waterAt } from '../../src/basin/index.ts'
import { box, circle, divided, shape } from '../basin/shapes.ts'

// Found by npm run fuzz: each of these kept the processor busy for minutes.
describe('floors that took for ever', () => {
  it('a hollow much smaller than the pool beside round steps, under a leaning wall: halving went on below rounding', () => {
    const s = shape(box(30, -120, 210, -30), {
      floor: { kind: 'dish', form: 'cone', centre: [120, -75], radiusM: 0.65, edgeDepthM: 1, depthM: 0 },
      wall: { kind: 'battered', run: 1 },
      features: [
        {
          kind: 'roundSteps',
          centre: [75, -97.5],
          treads: [
            [3e-8, 0],
            [7.5, 0],
            [37.5, 0],
            [45, 0],
          ],
        },
      ],
    })
    const water = waterAt(divided(s), 0)
    expect(water.ok && water.value.volumeM3).toBeGreaterThan(1000)
  })

  it('a hollow whose depth is next to nothing: the sphere of its cap was endless', () => {
    const s = shape(circle(0, 0, 3), {
      floor: { kind: 'dish', form: 'cap', centre: [0, 0], radiusM: 0.5, edgeDepthM: 1, depthM: 1 + 2e-16 },
      wall: { kind: 'cove', radiusM: 0.03 },
    })
    expect(waterAt(divided(s), 0).ok).toBe(true)
  })

  it('soundings in a pool a thousandth of its island: the floor was fitted to the island first', () => {
    const result = partition(
      shape(circle(0, -5, 0.0057), {
        islands: [circle(-1, -5, 3)],
        floor: { kind: 'soundings', edgeDepthM: null, points: [[-0.0056, -5, 2]] },
      }),
    )
    expect(!result.ok && `${result.problem.code} @ ${result.problem.path}`).toBe('no-water @ islands[0]')
  })
})
