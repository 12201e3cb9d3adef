import { describe, expect, test } from 'vitest'
import { areaOf, flatten, nearestOn, type Path, STARTING_OUTLINES } from '../../../src/basin/index.ts'
import { demoSpec, isInside } from '../../../src/document/index.ts'
import { FEATURES } from '../../../src/features/index.ts'
import { nextStation } from '../../../src/ui/ledger/basin/floors.ts'
import { CARES, careOf } from '../../../src/ui/ledger/basin/measured.ts'
import { floorUnder, middleOf } from '../../../src/ui/ledger/basin/new-body.ts'
import { islandIn } from '../../../src/ui/ledger/basin/place-path.ts'
import { placementFor } from '../../../src/ui/ledger/basin/placement.ts'
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
  test('steps stand against the wall, not off it at a bend into the water, wherever their turn brings them', () => {
    const body = demoSpec.bodies[0]
    if (!body) throw new Error('the example has no body')
    const ring = flatten(body.outline, 0.01)
    const steps = FEATURES.get('steps')
    for (const count of [0, 1, 2, 3]) {
      const placement = placementFor({
        ...body,
        features: body.features.slice(0, 1).flatMap((f) => Array(count).fill(f)),
      })
      const made = steps?.defaults(placement)
      if (made?.kind !== 'steps') throw new Error('no steps')
      const { from, to } = made.axis
      const run = Math.hypot(to[0] - from[0], to[1] - from[1])
      const back: [number, number] = [(from[0] - to[0]) / run, (from[1] - to[1]) / run]
      // A little behind the ends of the flight's upper edge there is wall, not water.
      for (const side of [-0.45, 0.45]) {
        const [x, y] = [from[0] - back[1] * side * placement.sizeM, from[1] + back[0] * side * placement.sizeM]
        const behind: [number, number] = [x + back[0] * 0.06 * placement.sizeM, y + back[1] * 0.06 * placement.sizeM]
        expect(isInside(ring, behind), `place ${count}, side ${side}`).toBe(false)
      }
      expect(nearestOn(body.outline, ...from).distanceM).toBeLessThan(1e-6)
      expect(isInside(ring, to), 'the flight leads into the water').toBe(true)
    }
  })
})

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
