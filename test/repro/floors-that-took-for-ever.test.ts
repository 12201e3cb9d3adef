import { describe, expect, it } from 'vitest'
import type { Curve } from '../../src/basin/curve.ts'
import { measure, partition, waterAt } from '../../src/basin/index.ts'
import { shoreRuns } from '../../src/basin/shore-runs.ts'
import type { Feature } from '../../src/features/index.ts'
import { box, circle, divided, polygon, relative, shape } from '../basin/shapes.ts'

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

  it('a bench a thousandth of a millimetre from a wall, round slits narrower than that: each step along it was halved', () => {
    const slit = (x: number): [number, number][] => [
      [x, 0],
      [x, 0.03],
      [x + 1e-8, 0.03],
      [x + 1e-8, 0],
    ]
    const s = shape(polygon([0, 0], ...slit(0.02), ...slit(0.04), [0.05, 0], [0.05, 0.05], [0, 0.05]), {
      floor: { kind: 'flat', depthM: 40 },
      wall: { kind: 'battered', run: 2.8e-8 },
      features: [{ kind: 'bench', along: { fromSegment: 3, toSegment: 0 }, widthM: 1e-6, depthM: 0.4 }],
    })
    const water = waterAt(divided(s), 0)
    expect(water.ok && relative(water.value.volumeM3, 0.05 * 0.05 * 40)).toBeLessThan(1e-3)
  })

  it('a step along a curve whose far end is six thousand kilometres away: it was walked along as fast as the curve is there', () => {
    let looks = 0
    const far: Curve = {
      ...{ kind: 'cubic', x0: -1, y0: -0.4, ax: -1, ay: -0.4, bx: -0.7, by: -0.39, y1: -6e6 },
      get x1() {
        looks++
        return -0.6
      },
    }
    const p = divided(shape(box(-2, -1, 2, 1), { wall: { kind: 'battered', run: 0.25 } }))
    const runs = shoreRuns(p, far, 0, 0.004, 0.8)
    expect(runs[0]?.t0).toBe(0)
    expect(runs.at(-1)?.t1).toBe(0.004)
    expect(looks).toBeLessThan(1000)
  })

  it('a ramp all but level in the middle of a hollow: where the two cross, far beside it, was divided with it', () => {
    const hollow = { kind: 'dish', form: 'cap', centre: [0.7, 0], radiusM: 8, edgeDepthM: -0.5, depthM: 2.7 } as const
    const within = (features: Feature[]) => waterAt(divided(shape(circle(0, 0, 1), { floor: hollow, features })), -0.5)
    const ramp = within([
      {
        kind: 'ramp',
        path: circle(0.7, 0, 0.1),
        axis: { from: [1, 6], to: [0, 4] },
        fromDepthM: 0,
        toDepthM: 1e-9,
      },
    ])
    const shelf = within([{ kind: 'shelf', path: circle(0.7, 0, 0.1), depthM: 0 }])
    expect(ramp.ok && shelf.ok && relative(ramp.value.volumeM3, shelf.value.volumeM3)).toBeLessThan(1e-9)
  })

  it('shores nearer to each other than nodes are told apart, under a contour floor: it had no piece for the water', () => {
    const result = partition(
      shape(polygon([-210, 59.99999997], [0, 59.99999997], [0, 60], [-210, 60]), {
        floor: { kind: 'contours', edgeDepthM: 1, rings: [] },
      }),
    )
    expect(result.ok && relative(measure(result.value, 1).volumeM3, 210 * 3e-8 * 2)).toBeLessThan(1e-6)
  })
})
