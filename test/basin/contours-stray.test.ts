import { describe, expect, it } from 'vitest'
import { type BasinShape, contoursOf, depthAt } from '../../src/basin/index.ts'
import { contours, soundings } from './floor-shapes.ts'
import { circle, divided, polygon, shape } from './shapes.ts'

/**
 * Pools where a side of a triangulated floor runs along a ray of the wall, or all but: from a re-entrant corner or a joint of
 * the shore to a sounding, from a round shore to a contour's corner.
 */
const POOLS: readonly [string, BasinShape][] = [
  [
    'soundings in a keyhole under a cove',
    shape(
      {
        start: [0, 0],
        segments: [
          { to: [11.28907967871055, 0] },
          { to: [11.28907967871055, 5.090542806079611] },
          { to: [7.337901791161857, 5.090542806079611] },
          { to: [3.386723903613165, 5.090542806079611], bulge: 1 },
          { to: [0, 5.090542806079611] },
          { to: [0, 0] },
        ],
      },
      {
        floor: soundings(
          0.9702583684585988,
          [5.07439516391522, 1.3533805488493769, 1.087513495213352],
          [6.909901517284319, 0.4636516742063393, 2.2296920719323676],
          [10.580853583198193, 3.587624286801778, 1.255507596442476],
          [6.067333125809142, 5.804706635727539, 2.011928790970705],
          [4.324117236552704, 3.3274737633571867, 1.40924396275077],
          [2.1800366671258633, 0.3487589257060119, 2.088378543918952],
        ),
        wall: { kind: 'cove', radiusM: 0.565482677752152 },
      },
    ),
  ],
  [
    'two squares in a round pool under a leaning wall',
    shape(circle(0, 0, 4.239898833446205), {
      floor: contours(
        0.727,
        [
          1.417,
          polygon(
            [0.4588367154166876, -2.1733937888833057],
            [2.8231073959531714, -0.400190778480943],
            [1.0499043855508088, 1.9640799020555408],
            [-1.3143662949856751, 0.19087689165317812],
          ),
        ],
        [
          2.451,
          polygon(
            [0.9907976185373966, -1.02081183212177],
            [1.7000788226983419, -0.07510355990717632],
            [0.5179434824300998, 0.8114979452940051],
            [-0.19133772173084546, -0.1342103269205886],
          ),
        ],
      ),
      wall: { kind: 'battered', run: 0.3493 },
    }),
  ],
]

describe('contour lines of triangulated floors under walls that are not upright', () => {
  it.each(POOLS)('stray nowhere: %s', (_, s) => {
    const p = divided(s)
    const depths = Array.from({ length: 45 }, (__, i) => 0.05 + 0.05 * i)
    let places = 0
    for (const { depthM, points, closed } of contoursOf(p, depths)) {
      expect([depthM, closed, points.length > 2]).toEqual([depthM, closed, true])
      for (const [x, y] of points) {
        places++
        const here = depthAt(p, x, y)
        // The chords of a cove's steep foot are a few mm off in plan, which is some cm of depth.
        if (here) expect([x, y, Math.abs(here.depthM - depthM) < 0.06]).toEqual([x, y, true])
      }
    }
    expect(places).toBeGreaterThan(1000)
  })
})
