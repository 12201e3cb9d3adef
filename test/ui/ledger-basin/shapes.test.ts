import { describe, expect, test } from 'vitest'
import { areaOf, flatten, nearestOn, type Path, STARTING_OUTLINES } from '../../../src/basin/index.ts'
import { deriveBody } from '../../../src/derive/index.ts'
import { type Body, demoSpec, isInside } from '../../../src/document/index.ts'
import { FEATURES, type Feature } from '../../../src/features/index.ts'
import { nextStation } from '../../../src/ui/ledger/basin/floors.ts'
import { CARES, careOf } from '../../../src/ui/ledger/basin/measured.ts'
import { floorUnder, middleOf } from '../../../src/ui/ledger/basin/new-body.ts'
import { islandIn } from '../../../src/ui/ledger/basin/place-path.ts'
import { placeFeature } from '../../../src/ui/ledger/basin/placement.ts'
import { nodesOf } from '../../../src/ui/ledger/basin/ring.ts'
import { startValues } from '../../../src/ui/ledger/basin/start-values.ts'

const open: Path = {
  start: [0, 0],
  segments: [{ to: [4, 0] }, { to: [4, 2], bulge: 0.5 }, { to: [0, 2], c1: [3, 3], c2: [1, 3] }],
}
const closed: Path = { ...open, segments: [...open.segments, { to: [0, 0] }] }

describe('the points of a ring', () => {
  test('each is listed once, whether or not the path comes back to its start', () => {
    expect(nodesOf(closed).map((node) => node.at)).toEqual([
      [0, 0],
      [4, 0],
      [4, 2],
      [0, 2],
    ])
    expect(nodesOf(open)).toEqual(nodesOf(closed))
  })

  test('what runs on to the next point is named', () => {
    expect(nodesOf(closed).map((node) => node.next)).toEqual(['line', 'arc', 'curve', 'line'])
  })
})

describe('the next station', () => {
  test('a new station goes into the longest stretch', () => {
    expect(
      nextStation([
        [0, 1],
        [2, 1],
        [8, 2],
      ]),
    ).toBe(5)
    expect(nextStation([[3, 1.2]])).toBe(4)
  })
})

describe('where a feature is put', () => {
  const body = demoSpec.bodies[0]!
  const made = (id: string, on: Body): { readonly feature: Feature; readonly sizeM: number } => {
    let sizeM = 0
    const feature = placeFeature(on, (place) => {
      sizeM = place.sizeM
      return FEATURES.get(id)?.defaults(place)
    })
    if (!feature) throw new Error(`no ${id}`)
    return { feature, sizeM }
  }
  const withMore = (on: Body, id: string): Body => ({ ...on, features: [...on.features, made(id, on).feature] })
  const round: Body = { ...body, features: [], islands: [], outline: circle(4) }

  test('steps stand against the wall, not off it at a bend into the water, wherever their turn brings them', () => {
    const ring = flatten(body.outline, 0.01)
    let now: Body = { ...body, features: [] }
    for (const count of [0, 1, 2, 3]) {
      const { feature, sizeM } = made('steps', now)
      if (feature.kind !== 'steps') throw new Error('no steps')
      const { from, to } = feature.axis
      const run = Math.hypot(to[0] - from[0], to[1] - from[1])
      const back: [number, number] = [(from[0] - to[0]) / run, (from[1] - to[1]) / run]
      // A little behind the ends of the flight's upper edge there is wall, not water.
      for (const side of [-0.45, 0.45]) {
        const [x, y] = [from[0] - back[1] * side * sizeM, from[1] + back[0] * side * sizeM]
        const behind: [number, number] = [x + back[0] * 0.06 * sizeM, y + back[1] * 0.06 * sizeM]
        expect(isInside(ring, behind), `place ${count}, side ${side}`).toBe(false)
      }
      expect(nearestOn(body.outline, ...from).distanceM).toBeLessThan(1e-6)
      expect(isInside(ring, to), 'the flight leads into the water').toBe(true)
      now = { ...now, features: [...now.features, feature] }
    }
  })

  test.each([
    ['the example', { ...body, features: [] }],
    ['a round pool', round],
    ['a round pool with a flat floor', { ...round, floor: { kind: 'flat', depthM: 1.2 } } as Body],
  ])('a shelf, steps, round steps and a second shelf keep off each other in %s', (_, empty) => {
    let now: Body = empty
    for (const id of ['shelf', 'steps', 'roundSteps', 'shelf']) now = withMore(now, id)
    const areas = now.features.map((feature) => wettedBy({ ...empty, features: [feature] }))
    const all = wettedBy(now)
    // What two features share would be counted once only when they stand together.
    expect(all / areas.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 2)
  })

  test('one that was taken away leaves its place free again, and the first is at the shallow end', () => {
    const two = withMore(withMore(round, 'shelf'), 'steps')
    const [shelf, steps] = two.features
    expect(made('shelf', { ...two, features: [steps!] }).feature).toEqual(shelf)
    expect(made('steps', { ...two, features: [shelf!] }).feature).toEqual(steps)
  })

  test('with no free wall left it is still put somewhere', () => {
    const full: Body = { ...round, features: [{ kind: 'shelf', path: circle(5), depthM: 0.3 }] }
    expect(made('steps', full).feature.kind).toBe('steps')
  })
})

function circle(radiusM: number): Path {
  return {
    start: [radiusM, 0],
    segments: [[-radiusM, 0] as const, [radiusM, 0] as const].map((to) => ({ to, bulge: 1 })),
  }
}

/** Area of a body's features, where two lie over each other counted once [m²]. */
function wettedBy(body: Body): number {
  const { measures } = deriveBody(body)
  if (!measures.ok) throw new Error(measures.problem.what)
  return measures.value.wetted.featureM2
}

describe('how well it was measured', () => {
  test('every row is told from the others by its tolerance, coarser down the list', () => {
    for (const care of CARES) expect(careOf({ ...care.tolerance })).toBe(care)
    const plans = CARES.map((care) => care.tolerance.planM)
    expect([...plans].sort((a, b) => a - b)).toEqual(plans)
  })

  test('a typed tolerance is no row', () => {
    expect(careOf({ planM: 0.021, depthM: 0.02 })).toBeUndefined()
  })
})

describe('the numbers that a starting outline begins with', () => {
  test.each(STARTING_OUTLINES.rows.map((outline) => [outline.id, outline] as const))(
    '%s can be drawn as it is offered, in metres and in feet',
    (_, outline) => {
      for (const units of ['metric', 'us', 'imperial'] as const) {
        const values = startValues(outline, units)
        expect(outline.make(values).ok).toBe(true)
        for (const { id, minM, maxM } of outline.parameters) {
          expect(values[id]).toBeGreaterThanOrEqual(minM)
          expect(values[id]).toBeLessThanOrEqual(maxM)
        }
      }
    },
  )

  test('a rectangle in feet begins with whole feet', () => {
    const [outline] = STARTING_OUTLINES.rows
    for (const metres of Object.values(startValues(outline!, 'us'))) {
      expect(Math.abs(metres / 0.3048 - Math.round(metres / 0.3048))).toBeLessThan(1e-9)
    }
  })
})

describe('a floor under a new outline', () => {
  test('its axis keeps its place in the box, its stations their share of the axis, its depths', () => {
    const floor = {
      kind: 'profile',
      axis: { from: [0, 1], to: [4, 1] },
      stations: [
        [0, 1],
        [2, 1.5],
        [4, 2],
      ],
    } as const
    const square: Path = { start: [0, 0], segments: [{ to: [4, 0] }, { to: [4, 2] }, { to: [0, 2] }] }
    const wide: Path = { start: [10, 0], segments: [{ to: [18, 0] }, { to: [18, 2] }, { to: [10, 2] }] }
    expect(floorUnder(floor, square, wide)).toEqual({
      kind: 'profile',
      axis: { from: [10, 1], to: [18, 1] },
      stations: [
        [0, 1],
        [4, 1.5],
        [8, 2],
      ],
    })
  })
})

describe('a new island', () => {
  test('is a circle in the middle of the outline, wholly inside it', () => {
    const outline: Path = { start: [0, 0], segments: [{ to: [8, 0] }, { to: [8, 4] }, { to: [0, 4] }] }
    const island = islandIn(outline)
    expect(middleOf(island)[0]).toBeCloseTo(4, 9)
    expect(middleOf(island)[1]).toBeCloseTo(2, 9)
    // Radius 0.075 of the smaller side: π r².
    expect(Math.abs(areaOf(island))).toBeCloseTo(Math.PI * 0.3 ** 2, 9)
  })
})
