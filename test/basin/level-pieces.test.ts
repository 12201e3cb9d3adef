import { describe, expect, it } from 'vitest'
import { measure, type Path } from '../../src/basin/index.ts'
import type { Feature } from '../../src/features/index.ts'
import { box, circle, divided, shape } from './shapes.ts'

const ringed = (island: Path, features: readonly Feature[]) =>
  shape(box(-3.6938259075, -2.8258035275, 3.6938259075, 2.8258035275), {
    islands: [island],
    features,
    floor: {
      kind: 'contours',
      edgeDepthM: 1.5,
      rings: [
        { depthM: 2.3164934077, path: box(-1.477530363, -1.130321411, 1.477530363, 1.130321411) },
        { depthM: 1.5, path: box(-0.7387651815, -0.5651607055, 0.7387651815, 0.5651607055) },
      ],
    },
  })

const sounded = (island: Path, features: readonly Feature[]) =>
  shape(box(-4, -3.7661855125, 4, 3.7661855125), {
    islands: [island],
    features,
    floor: {
      kind: 'soundings',
      edgeDepthM: 1.2,
      points: [
        [1.1957912076, 1.1258928967, 1.2],
        [-0.8315413762, 0.7829347823, 0.6],
      ],
    },
  })

/** A shelf below the floor, across the island and its surroundings: it changes nothing but how the plan is divided. */
const buried = (x: number, y: number): Feature => ({
  kind: 'shelf',
  path: box(x - 0.9, y - 0.8, x + 0.05, y + 0.07),
  depthM: 9,
})

describe('a level piece of a floor that goes round others', () => {
  it.each([
    ['contours', ringed, -2.127169347056, -1.627299930989, 0.192049962],
    ['soundings', sounded, -2.506688529766, 2.360163540216, 0.326352086],
  ] as const)('holds what it holds when it is cut: %s', (_, made, x, y, r) => {
    const island = circle(x, y, r)
    const whole = measure(divided(made(island, [])), 0.1).volumeM3
    const cut = measure(divided(made(island, [buried(x, y)])), 0.1).volumeM3
    expect(Math.abs(cut - whole)).toBeLessThan(1e-9)
  })
})
