import { describe, expect, it } from 'vitest'
import { buriedFeatures, depthAt, measure, partition } from '../../src/basin/index.ts'
import { FEATURES, type Feature, patchesOf } from '../../src/features/index.ts'
import { box, divided, relative, shape } from '../basin/shapes.ts'

const PLACE = { at: [0, 2], toward: [1, 0], sizeM: 1.5 } as const

describe.each(FEATURES.rows.map((row) => [row.id, row] as const))('a new %s', (id, row) => {
  const made = row.defaults(PLACE)

  it('is of its kind, lies where it was put, and takes water from the basin', () => {
    expect(made.kind).toBe(id)
    const bare = measure(divided(shape(box(0, 0, 8, 4))), 0).volumeM3
    const with_ = measure(divided(shape(box(0, 0, 8, 4), { features: [made] })), 0).volumeM3
    expect(with_).toBeLessThan(bare - 0.1)
  })

  it('gives back every number that is typed into its fields', () => {
    for (const field of row.fields) {
      if (field.belongsTo && !field.belongsTo(made)) continue
      const value = field.unit === 'count' ? 5 : field.get(made) * 1.25
      expect(field.get(field.set(made, value))).toBeCloseTo(value, 12)
      expect(field.get(made)).toBe(field.get(row.defaults(PLACE)))
    }
  })

  it('comes along when a handle is dragged', () => {
    for (const handle of row.handles(made, box(0, 0, 8, 4))) {
      const [x, y] = handle.at(made)
      const moved = handle.moveTo(made, [x + 0.25, y + (handle.id.startsWith('treads') ? 0 : 0.5)])
      const [nx, ny] = handle.at(moved)
      expect(nx).toBeCloseTo(x + 0.25, 12)
      expect(ny).toBeCloseTo(handle.id.startsWith('treads') ? y : y + 0.5, 12)
    }
  })
})

describe('treads', () => {
  const flight = (treads: [number, number][]): Feature => ({
    kind: 'steps',
    path: box(0, 0, 1.2, 4),
    axis: { from: [0, 0], to: [1.2, 0] },
    treads,
  })

  it('hold the first depth before the first tread and the last one after the last', () => {
    const p = divided(
      shape(box(0, 0, 8, 4), {
        features: [
          flight([
            [0.4, 0.3],
            [0.8, 0.6],
          ]),
        ],
      }),
    )
    expect(depthAt(p, 0.1, 1)?.depthM).toBe(0.3)
    expect(depthAt(p, 0.7, 1)?.depthM).toBe(0.3)
    expect(depthAt(p, 1.1, 1)?.depthM).toBe(0.6)
    expect(depthAt(p, 1.3, 1)?.depthM).toBe(1.5)
  })

  it('are rings about a centre, each at its own depth even where an outer one is shallower', () => {
    const features: Feature[] = [
      {
        kind: 'roundSteps',
        centre: [4, 2],
        treads: [
          [0.5, 1.2],
          [1, 0.4],
        ],
      },
    ]
    const p = divided(shape(box(0, 0, 8, 4), { features }))
    expect(depthAt(p, 4.2, 2)?.depthM).toBe(1.2)
    expect(depthAt(p, 4.8, 2)?.depthM).toBe(0.4)
    expect(relative(measure(p, 0).volumeM3, 48 - Math.PI * (0.25 * 0.3 + 0.75 * 1.1))).toBeLessThan(1e-13)
  })

  it.each<[string, Feature, string]>([
    ['none at all', flight([]), 'treads-too-few @ features[0].treads'],
    [
      'going back',
      flight([
        [0.4, 0.3],
        [0.4, 0.6],
      ]),
      'treads-not-ordered @ features[0].treads[1]',
    ],
    ['not a number', flight([[0, Number.NaN]]), 'not-a-number @ features[0].treads[0][1]'],
    [
      'no axis',
      { ...flight([[0, 0.3]]), axis: { from: [0, 0], to: [0, 0] } } as Feature,
      'axis-too-short @ features[0].axis',
    ],
    [
      'no radius',
      { kind: 'roundSteps', centre: [1, 1], treads: [[0, 0.3]] },
      'radius-not-positive @ features[0].treads[0]',
    ],
    [
      'a shelf without a depth',
      { kind: 'shelf', path: box(0, 0, 1, 1), depthM: Infinity },
      'not-a-number @ features[0].depthM',
    ],
  ])('with %s are a problem', (_, feature, expected) => {
    const result = patchesOf([feature], box(0, 0, 8, 4))
    expect(!result.ok && `${result.problem.code} @ ${result.problem.path}`).toBe(expected)
  })

  it('outside the water are a problem of the plan, partly outside they are cut off', () => {
    const off = patchesOf([{ kind: 'roundSteps', centre: [20, 2], treads: [[1, 0.3]] }], box(0, 0, 8, 4))
    if (!off.ok) throw new Error()
    const result = partition({ ...shape(box(0, 0, 8, 4)), patches: off.value })
    expect(!result.ok && result.problem.code).toBe('feature-outside')
    const p = divided(
      shape(box(0, 0, 8, 4), { features: [{ kind: 'roundSteps', centre: [8, 2], treads: [[1, 0.3]] }] }),
    )
    expect(relative(measure(p, 0).wetted.featureM2, Math.PI / 2)).toBeLessThan(1e-13)
  })
})

describe('features that change nothing', () => {
  const shelf = (depthM: number, path = box(0, 0, 2, 2)): Feature => ({ kind: 'shelf', path, depthM })
  const outline = box(0, 0, 8, 4)
  const buried = (features: readonly Feature[]) => buriedFeatures(divided(shape(outline, { features })))

  it('are named by their index, and the volume is the same without them', () => {
    const features = [shelf(0.4), shelf(1.8, box(4, 0, 6, 2)), shelf(0.6, box(6, 2, 8, 4)), shelf(9, box(3, 2, 5, 4))]
    expect(buried(features)).toEqual([1, 3])
    const rest = features.filter((_, i) => i !== 1 && i !== 3)
    expect(
      relative(
        measure(divided(shape(outline, { features })), 0).volumeM3,
        measure(divided(shape(outline, { features: rest })), 0).volumeM3,
      ),
    ).toBeLessThan(1e-13)
  })

  it('are also those at the floor’s own depth and those under another feature', () => {
    expect(buried([shelf(1.5)])).toEqual([0])
    expect(buried([shelf(0.8, box(0.5, 0.5, 1.5, 1.5)), shelf(0.4)])).toEqual([0])
  })

  it('are none where any part stands out: one tread of a flight, or a shelf on a slope', () => {
    const flight: Feature = {
      kind: 'steps',
      path: box(0, 0, 1.2, 4),
      axis: { from: [0, 0], to: [1.2, 0] },
      treads: [
        [0.4, 1.4],
        [0.8, 1.7],
      ],
    }
    expect(buried([flight])).toEqual([])
    const stations: [number, number][] = [
      [0, 1],
      [8, 2],
    ]
    const floor = { kind: 'profile', axis: { from: [0, 0], to: [8, 0] }, stations } as const
    const onSlope = (depthM: number) =>
      buriedFeatures(divided(shape(outline, { floor, features: [shelf(depthM, box(2, 1, 4, 3))] })))
    // The floor falls from 1.25 to 1.5 m under the shelf.
    expect(onSlope(1.49)).toEqual([])
    expect(onSlope(1.51)).toEqual([0])
    expect(buried([])).toEqual([])
  })
})
