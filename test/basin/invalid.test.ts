import { describe, expect, it } from 'vitest'
import { type BasinShape, measure, type Path, partition, waterAt } from '../../src/basin/index.ts'
import { box, circle, divided, polygon, relative, shape } from './shapes.ts'

function codeOf(s: BasinShape): string {
  const result = partition(s)
  return result.ok ? 'none' : `${result.problem.code} @ ${result.problem.path}`
}

const square = box(0, 0, 6, 4)

describe('shapes that make no sense are told apart, each with its place', () => {
  it.each<[string, BasinShape, string]>([
    ['a number that is none', shape(polygon([0, 0], [Number.NaN, 0], [6, 4])), 'not-a-number @ outline.segments[0]'],
    ['an infinite depth', shape(square, { floor: { kind: 'flat', depthM: Infinity } }), 'not-a-number @ floor.depthM'],
    ['a coordinate beyond any map', shape(polygon([0, 0], [1e300, 0], [6, 4])), 'out-of-range @ outline.segments[0]'],
    [
      'a depth beyond any sea',
      shape(square, { floor: { kind: 'flat', depthM: -1e200 } }),
      'out-of-range @ floor.depthM',
    ],
    ['a rim that is no number', shape(square, { freeboardM: Number.NaN }), 'not-a-number @ freeboardM'],
    [
      'a radius that is endless',
      shape(square, { wall: { kind: 'cove', radiusM: Infinity } }),
      'not-a-number @ wall.radiusM',
    ],
    [
      'a tolerance that is no number',
      shape(square, { tolerance: { planM: 0.02, depthM: Number.NaN } }),
      'not-a-number @ tolerance.depthM',
    ],
    [
      'an endless bulge',
      shape({ start: [0, 0], segments: [{ to: [6, 0], bulge: Infinity }, { to: [6, 4] }] }),
      'not-a-number @ outline.segments[0]',
    ],
    [
      'a handle that is no number',
      shape({ start: [0, 0], segments: [{ to: [6, 0], c1: [1, Number.NaN], c2: [2, 2] }, { to: [6, 4] }] }),
      'not-a-number @ outline.segments[0]',
    ],
    [
      'an island with a number that is none',
      shape(square, { islands: [polygon([1, 1], [2, Number.NaN], [2, 2])] }),
      'not-a-number @ islands[0].segments[0]',
    ],
    ['two points', shape(polygon([0, 0], [6, 0])), 'too-few-points @ outline'],
    ['no segment', shape({ start: [0, 0], segments: [] }), 'too-few-points @ outline'],
    ['the same point many times', shape(polygon([1, 1], [1, 1], [1, 1], [1, 1])), 'too-small @ outline'],
    ['all points on a line', shape(polygon([0, 0], [3, 0], [6, 0])), 'no-area @ outline'],
    ['a bow tie', shape(polygon([0, 0], [6, 4], [6, 0], [0, 4])), 'crosses-itself @ outline.segments[0]'],
    [
      'a bow tie over soundings, and one of them outside it',
      shape(polygon([0, 0], [6, 4], [6, 0], [0, 4]), {
        floor: { kind: 'soundings', edgeDepthM: 1, points: [[9, 9, 2]] },
      }),
      'crosses-itself @ outline.segments[0]',
    ],
    [
      'an island across the outline over soundings',
      shape(square, {
        islands: [polygon([-1, 1], [2, 1], [2, 2])],
        floor: { kind: 'soundings', edgeDepthM: 1, points: [[4, 2, 2]] },
      }),
      'island-meets-outline @ islands[0]',
    ],
    [
      'a figure of eight of arcs, its lobes turning against each other',
      shape({
        start: [0, 0],
        segments: [
          { to: [2, 0], bulge: -1 },
          { to: [4, 0], bulge: 1 },
          { to: [2, 0], bulge: 1 },
          { to: [0, 0], bulge: -1 },
        ],
      }),
      'crosses-itself @ outline.segments[0]',
    ],
    [
      'a spike of a curve that comes back as it went',
      shape({
        start: [0, 0],
        segments: [
          { to: [6, 0] },
          { to: [9, 3], bulge: 0.3 },
          { to: [6, 0], bulge: -0.3 },
          { to: [6, 4] },
          { to: [0, 4] },
        ],
      }),
      'crosses-itself @ outline.segments[0]',
    ],
    ['an island equal to the outline', shape(square, { islands: [square] }), 'island-meets-outline @ islands[0]'],
    [
      'an island that shares a side with the outline',
      shape(square, { islands: [box(0, 1, 1, 2)] }),
      'island-meets-outline @ islands[0]',
    ],
    [
      'islands that share a side',
      shape(square, { islands: [box(1, 1, 2, 2), box(2, 1, 3, 2)] }),
      'islands-meet @ islands[1]',
    ],
    [
      'islands that are one',
      shape(square, { islands: [box(1, 1, 2, 2), box(1, 1, 2, 2)] }),
      'islands-meet @ islands[1]',
    ],
    [
      'a figure of eight that touches in a point',
      shape(polygon([0, 0], [3, 2], [6, 0], [6, 4], [3, 2], [0, 4])),
      'crosses-itself @ outline.segments[0]',
    ],
    [
      'arcs that cross',
      shape({ start: [0, 0], segments: [{ to: [6, 0], bulge: -0.9 }, { to: [6, 1] }, { to: [0, 1] }] }),
      'crosses-itself @ outline.segments[0]',
    ],
    [
      'a cubic with a loop',
      shape({ start: [0, 0], segments: [{ to: [1, 0], c1: [6, 5], c2: [-5, 5] }, { to: [0.5, -3] }] }),
      'crosses-itself @ outline.segments[0]',
    ],
    [
      'a spike',
      shape(polygon([0, 0], [6, 0], [6, 2], [9, 2], [6, 2], [6, 4], [0, 4])),
      'doubles-back @ outline.segments[2]',
    ],
    [
      'an island across the outline',
      shape(square, { islands: [circle(6, 2, 1)] }),
      'island-meets-outline @ islands[0]',
    ],
    [
      'an island that touches the outline',
      shape(square, { islands: [circle(1, 2, 1)] }),
      'island-meets-outline @ islands[0]',
    ],
    [
      'an island outside',
      shape(square, { islands: [circle(3, 2, 0.5), circle(9, 2, 1)] }),
      'island-outside @ islands[1]',
    ],
    ['an island over all of the outline', shape(square, { islands: [box(-1, -1, 7, 5)] }), 'no-water @ islands[0]'],
    [
      'an island over the outline and over the island in it',
      shape(square, { islands: [circle(3, 2, 0.5), circle(3, 2, 9)] }),
      'no-water @ islands[1]',
    ],
    ['islands that cross', shape(square, { islands: [circle(2, 2, 1), circle(3, 2, 1)] }), 'islands-meet @ islands[1]'],
    [
      'an island in an island',
      shape(square, { islands: [circle(3, 2, 1), circle(3, 2, 0.4)] }),
      'island-in-island @ islands[1]',
    ],
    [
      'an island that crosses itself',
      shape(square, { islands: [polygon([1, 1], [3, 2], [3, 1], [1, 2])] }),
      'crosses-itself @ islands[0].segments[0]',
    ],
    [
      'a feature outside',
      shape(square, {
        features: [
          { kind: 'shelf', path: box(1, 1, 2, 2), depthM: 0.3 },
          { kind: 'shelf', path: box(8, 1, 9, 2), depthM: 0.3 },
        ],
      }),
      'feature-outside @ features[1]',
    ],
    [
      'a feature that crosses itself',
      shape(square, { features: [{ kind: 'shelf', path: polygon([1, 1], [3, 2], [3, 1], [1, 2]), depthM: 0.3 }] }),
      'crosses-itself @ features[0].path',
    ],
    [
      'no station',
      shape(square, { floor: { kind: 'profile', axis: { from: [0, 0], to: [6, 0] }, stations: [] } }),
      'stations-too-few @ floor.stations',
    ],
    [
      'stations that go back',
      shape(square, {
        floor: {
          kind: 'profile',
          axis: { from: [0, 0], to: [6, 0] },
          stations: [
            [0, 1],
            [3, 2],
            [3, 1],
          ],
        },
      }),
      'stations-not-rising @ floor.stations[2]',
    ],
    [
      'an axis without length',
      shape(square, { floor: { kind: 'profile', axis: { from: [1, 1], to: [1, 1] }, stations: [[0, 1]] } }),
      'axis-too-short @ floor.axis',
    ],
    [
      'a cove without radius',
      shape(square, { wall: { kind: 'cove', radiusM: 0 } }),
      'radius-not-positive @ wall.radiusM',
    ],
    ['a floor above the water', shape(square, { floor: { kind: 'flat', depthM: -0.1 } }), 'no-water @ floor'],
    ['a grain of dust', shape(box(0, 0, 2e-4, 3e-4)), 'too-small @ outline'],
    ['a lake', shape(box(0, 0, 10, 10_001)), 'too-large @ outline'],
    ['a round lake', shape(circle(0, 0, 5001)), 'too-large @ outline'],
    ['a country', shape(box(0, 0, 2e6, 10)), 'too-large @ outline'],
  ])('%s', (_, s, expected) => {
    expect(codeOf(s)).toBe(expected)
  })

  it('marks every place where an outline crosses itself', () => {
    const result = partition(shape(polygon([0, 0], [6, 4], [6, 0], [0, 4])))
    expect(!result.ok && result.problem.at).toEqual([[3, 2]])
    const comb = partition(shape(polygon([0, 0], [9, 0], [9, 3], [7, -1], [5, 3], [3, -1], [0, 3])))
    expect(!comb.ok && comb.problem.at?.length).toBe(4)
  })
})

describe('the largest outline', () => {
  it.each<[string, Path, number]>([
    ['10 km long', box(0, 0, 1e4, 10), 1e5],
    ['10 km long and wide', box(0, 0, 1e4, 1e4), 1e8],
    ['10 km round, though the diagonal of its box is longer', circle(0, 0, 5000), 25e6 * Math.PI],
    ['10 km long and as far off as a document may hold', box(99_990_000, 0, 1e8, 10), 1e5],
  ])('may be %s', (_, outline, areaM2) => {
    expect(relative(measure(divided(shape(outline)), 0).volumeM3, 1.5 * areaM2)).toBeLessThan(1e-12)
  })

  it('is named in words where one is larger', () => {
    const result = partition(shape(box(0, 0, 10, 10_001)))
    expect(!result.ok && result.problem.what).toBe('The outline is more than 10 km across.')
  })
})

describe('an island over all of the outline', () => {
  it('is said to leave no water, with the place of its first point', () => {
    const result = partition(shape(square, { islands: [box(-1, -1, 7, 5)] }))
    expect(result).toEqual({
      ok: false,
      problem: {
        code: 'no-water',
        path: 'islands[0]',
        what: 'The island covers the whole outline.',
        why: 'It leaves no water to measure.',
        hint: 'Make it smaller and move it inside, or delete it.',
        at: [[-1, -1]],
      },
    })
  })
})

describe('shapes that are only odd are measured', () => {
  const truth = measure(divided(shape(square)), 0).volumeM3

  it.each<[string, Path]>([
    ['points twice', polygon([0, 0], [0, 0], [6, 0], [6, 4], [6, 4], [0, 4], [0, 0], [0, 0])],
    ['points on straight sides', polygon([0, 0], [3, 0], [6, 0], [6, 4], [2, 4], [1, 4], [0, 4])],
    ['no closing segment', polygon([0, 0], [6, 0], [6, 4], [0, 4])],
    [
      'arcs without a bulge',
      { start: [0, 0], segments: [{ to: [6, 0], bulge: 0 }, { to: [6, 4], bulge: 1e-18 }, { to: [0, 4] }] },
    ],
    [
      'cubics that are straight',
      {
        start: [0, 0],
        segments: [{ to: [6, 0], c1: [2, 0], c2: [4, 0] }, { to: [6, 4], c1: [6, 0], c2: [6, 4] }, { to: [0, 4] }],
      },
    ],
  ])('with %s', (_, outline) => {
    expect(relative(measure(divided(shape(outline)), 0).volumeM3, truth)).toBeLessThan(1e-12)
  })

  it('with a segment of a picometre', () => {
    expect(
      relative(measure(divided(shape(polygon([0, 0], [6, 0], [6, 1e-12], [6, 4], [0, 4]))), 0).volumeM3, truth),
    ).toBeLessThan(1e-12)
  })

  it('when it is dry at the level asked for, as zero', () => {
    const m = measure(divided(shape(square)), -2)
    expect(m.volumeM3).toBe(0)
    expect(m.waterSurfaceM2).toBe(0)
    expect(m.wetted.totalM2).toBe(0)
    expect(m.perimeterM).toBe(0)
    expect(m.meanDepthM).toBe(0)
    expect(m.maxDepthM).toBe(0)
  })
})

describe('the water that stands in a basin', () => {
  const sloping = divided(
    shape(square, {
      floor: {
        kind: 'profile',
        axis: { from: [0, 0], to: [6, 0] },
        stations: [
          [0, 1],
          [6, 2],
        ],
      },
    }),
  )

  it('is what it measures at the level, down to the last of it', () => {
    for (const levelM of [0, -1, -1.5, -1.999]) {
      const water = waterAt(sloping, levelM)
      expect(water.ok && water.value).toEqual(measure(sloping, levelM))
    }
  })

  it.each([
    ['at the lowest of the floor', -2],
    ['below all of the floor', -5],
  ])('is a problem of the level where that lies %s', (_, levelM) => {
    expect(waterAt(sloping, levelM)).toEqual({
      ok: false,
      problem: {
        code: 'no-water',
        path: 'levelM',
        what: 'The water level lies below every part of the floor.',
        why: 'The basin is empty, so there is no volume to reckon with.',
        hint: 'Raise the level to where the water stands, or correct the depths of the floor.',
      },
    })
  })

  it.each([
    ['an upright wall', { kind: 'vertical' }],
    ['a cove', { kind: 'cove', radiusM: 0.3 }],
    ['a leaning wall', { kind: 'battered', run: 0.25 }],
  ] as const)('is a problem of its own, not an empty pool, where a figure is no number, under %s', (_, wall) => {
    const sound = divided(shape(box(0, 0, 6, 3), { wall }))
    const cells = sound.cells.map((cell) => ({ ...cell, plane: { ...cell.plane, atOrigin: Number.NaN } }))
    const water = waterAt({ ...sound, cells, memory: [] }, 0)
    expect(!water.ok && [water.problem.code, water.problem.path]).toEqual(['arithmetic', 'outline'])
  })

  it('is a problem also where a cove fills the little that the floor alone would hold', () => {
    const bowl = divided(shape(circle(0, 0, 0.5), { wall: { kind: 'cove', radiusM: 1 } }))
    expect(waterAt(bowl, -1.36).ok).toBe(true)
    // The cove's lowest place lies at n = 0.5 of r = 1: 1.5 − (1 − √(1 − 0.5²)) = 1.366 m deep.
    const water = waterAt(bowl, -1.4)
    expect(!water.ok && water.problem.path).toBe('levelM')
  })
})
