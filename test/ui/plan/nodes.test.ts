import { describe, expect, test } from 'vitest'
import { type Path, pointOn } from '../../../src/basin/index.ts'
import {
  bulgeOfRadius,
  bulgeThrough,
  controlsAt,
  directionAt,
  middleOf,
  nodesOf,
  radiusOf,
  segmentAt,
  segmentLength,
} from '../../../src/ui/plan/nodes.ts'

const OPEN: Path = { start: [0, 0], segments: [{ to: [4, 0] }, { to: [4, 3] }] }
const SHUT: Path = { start: [0, 0], segments: [{ to: [4, 0] }, { to: [4, 3] }, { to: [0, 0] }] }
const CIRCLE: Path = {
  start: [2, 0],
  segments: [
    { to: [-2, 0], bulge: 1 },
    { to: [2, 0], bulge: 1 },
  ],
}

describe('nodes and segments', () => {
  test('a path has the same nodes whether its closing line is written out or not', () => {
    expect(nodesOf(OPEN)).toEqual(nodesOf(SHUT))
    expect(segmentAt(OPEN, 2)).toEqual({ from: [4, 3], to: [0, 0] })
    expect(segmentAt(SHUT, 3)).toBeUndefined()
    expect(middleOf(OPEN, 2)).toEqual([2, 1.5])
  })

  test('lengths of a line and of a half circle are exact', () => {
    expect(segmentLength({ from: [0, 0], to: [3, 4] })).toBeCloseTo(5, 12)
    expect(segmentLength({ from: [2, 0], to: [-2, 0], bulge: 1 })).toBeCloseTo(2 * Math.PI, 9)
  })

  test('an arc leaves and arrives along its tangents', () => {
    const half = segmentAt(CIRCLE, 0)
    expect(half && directionAt(half, 'start')?.[1]).toBeCloseTo(1, 12)
    expect(half && directionAt(half, 'end')?.[1]).toBeCloseTo(-1, 12)
  })

  test('a curve whose handle lies on its point takes the next one for its direction', () => {
    const curve = { from: [0, 0] as const, to: [3, 0] as const, c1: [0, 0] as const, c2: [2, 2] as const }
    const [x = 0, y = 0] = directionAt(curve, 'start') ?? []
    expect(x).toBeCloseTo(Math.SQRT1_2, 12)
    expect(y).toBeCloseTo(Math.SQRT1_2, 12)
  })

  test('a node has the handles of the curves on both of its sides', () => {
    const path: Path = {
      start: [0, 0],
      segments: [
        { to: [4, 0], c1: [1, 1], c2: [3, 1] },
        { to: [0, 0], c1: [3, -1], c2: [1, -1] },
      ],
    }
    expect(controlsAt(path, 0).map((c) => c.at)).toEqual([
      [1, -1],
      [1, 1],
    ])
    expect(controlsAt(SHUT, 1)).toEqual([])
  })
})

describe('bulge, radius and rise', () => {
  test('the arc pulled through a point passes it at its middle, on either side', () => {
    for (const pulled of [
      [2, -0.7],
      [2, 1.1],
    ] as const) {
      const bulge = bulgeThrough([0, 0], [4, 0], pulled)
      const arc: Path = { start: [0, 0], segments: [{ to: [4, 0], bulge }] }
      expect(pointOn(arc, 0, 0.5)[1]).toBeCloseTo(pulled[1], 9)
    }
  })

  test('radius and bulge are each other’s inverse, lesser and greater arc apart', () => {
    for (const bulge of [0.2, -0.5, 0.99, 1.7, -3]) {
      expect(bulgeOfRadius(4, radiusOf(4, bulge), bulge)).toBeCloseTo(bulge, 9)
    }
    expect(radiusOf(4, 0)).toBe(Number.POSITIVE_INFINITY)
  })

  test('a radius that cannot span the chord is refused', () => {
    expect(bulgeOfRadius(4, 1.9, 0.3)).toBeUndefined()
    expect(bulgeOfRadius(4, 2, 0.3)).toBeCloseTo(1, 6)
  })
})
