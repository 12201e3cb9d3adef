import { describe, expect, test } from 'vitest'
import { areaOf, boundsOf, flatten, nearestOn, type Path, STARTING_OUTLINES } from '../../src/basin/index.ts'
import {
  applyCommand,
  type Body,
  type CommandArgs,
  type CommandId,
  command,
  deepenedFloor,
  demoSpec,
  depthsOfFloor,
  type FloorKindId,
  floorAs,
  insetRing,
  isInside,
  isLineAssumed,
  movedFloor,
  movedPath,
  type Spec,
  validateSpec,
} from '../../src/document/index.ts'
import { floorOf } from './floor-command-samples.ts'
import { bodyOf, ISLAND, main, RECTANGLE, richSpec, STADIUM } from './samples.ts'

const KINDS: readonly FloorKindId[] = ['flat', 'profile', 'contours', 'soundings', 'dish']

function edited<Id extends CommandId>(spec: Spec, id: Id, args: CommandArgs<Id>): Spec {
  const result = applyCommand(spec, command(id, args))
  if (!result.ok) throw new Error(`${result.problem.code}: ${result.problem.what}`)
  return result.value
}
function refused<Id extends CommandId>(id: Id, args: CommandArgs<Id>): string {
  const result = applyCommand(richSpec, command(id, args))
  return result.ok ? 'ok' : result.problem.code
}

describe('another kind of floor', () => {
  test('any kind becomes any other, a valid document, and no depth is made up beyond those that were there', () => {
    for (const id of ['main', 'stadium', 'hopper', 'sounded', 'dished']) {
      const before = depthsOfFloor(bodyOf(richSpec, id).floor)
      for (const kind of KINDS) {
        const after = edited(richSpec, 'setFloorKind', { bodyId: id, kind })
        const { floor } = bodyOf(after, id)
        expect(floor.kind).toBe(kind)
        expect(validateSpec(after).ok).toBe(true)
        const depths = depthsOfFloor(floor)
        expect(Math.min(...depths), `${id} as ${kind}`).toBeGreaterThanOrEqual(Math.min(...before) - 1e-12)
        // A kind that needs a deeper place gets one where there was a single depth only.
        if (before.length > 1) expect(Math.max(...depths)).toBeLessThanOrEqual(Math.max(...before) + 1e-12)
      }
    }
  })

  test('to its own kind it is the same object', () => {
    for (const body of richSpec.bodies) expect(floorAs(body.floor.kind, body)).toBe(body.floor)
  })

  test('a flat floor made of a profile of which all is water lies half way between its ends', () => {
    const body = { ...bodyOf(richSpec, 'sketch') }
    const floor = {
      kind: 'profile',
      axis: { from: [0, 0], to: [9, 0] },
      stations: [
        [0, 1],
        [9, 2],
      ],
    } as const
    expect(floorAs('flat', { ...body, floor })).toEqual({ kind: 'flat', depthM: expect.closeTo(1.5, 9) })
  })

  test('a profile made of a flat floor runs along the longer side and changes no depth', () => {
    const floor = floorAs('profile', { ...bodyOf(richSpec, 'stadium'), outline: RECTANGLE })
    expect(floor).toEqual({
      kind: 'profile',
      axis: { from: [0, 2], to: [9, 2] },
      stations: [
        [0, 1.4],
        [9, 1.4],
      ],
    })
  })

  test('a flat floor becomes soundings without any, at its depth along the wall', () => {
    expect(floorAs('soundings', bodyOf(richSpec, 'stadium'))).toEqual({
      kind: 'soundings',
      edgeDepthM: 1.4,
      points: [],
    })
  })

  test('a dish fits into the water and depths assumed before stay marked so', () => {
    const after = edited(richSpec, 'setFloorKind', { bodyId: 'sketch', kind: 'dish' })
    const floor = floorOf(after, 'sketch', 'dish')
    expect(nearestOn(RECTANGLE, ...floor.centre).distanceM).toBeGreaterThan(floor.radiusM)
    expect(bodyOf(after, 'sketch').depthsAssumed).toBe(true)
    const edge = edited(after, 'setEdgeDepth', { bodyId: 'sketch', depthM: 1 })
    expect(bodyOf(edge, 'sketch').depthsAssumed).toEqual([1])
    expect('depthsAssumed' in bodyOf(edited(edge, 'setDish', { bodyId: 'sketch', depthM: 1.4 }), 'sketch')).toBe(false)
  })
})

describe('a depth line that nobody drew', () => {
  const hopper: Path = {
    start: [2, 1],
    segments: [{ to: [7, 1] }, { to: [7, 3] }, { to: [2, 3] }, { to: [2, 1] }],
  }
  const lines = (spec: Spec) => floorOf(spec, 'sketch', 'contours').rings
  const assumed = edited(richSpec, 'setFloorKind', { bodyId: 'sketch', kind: 'contours' })

  test('the first line that is drawn takes its place and its depth, and the second is one more', () => {
    expect(isLineAssumed(bodyOf(assumed, 'sketch'))).toBe(true)
    const drawn = edited(assumed, 'addContour', { bodyId: 'sketch', path: hopper })
    expect(lines(drawn)).toEqual([{ depthM: lines(assumed)[0]?.depthM, path: hopper }])
    expect(isLineAssumed(bodyOf(drawn, 'sketch'))).toBe(false)
    expect(lines(edited(drawn, 'addContour', { bodyId: 'sketch', path: hopper }))).toHaveLength(2)
  })

  test('one that was moved, or that another was set inside of, is somebody’s own and stays', () => {
    const moved = edited(assumed, 'movePoint', {
      bodyId: 'sketch',
      ring: { of: 'contour', index: 0 },
      node: 0,
      to: [4.5, 2],
    })
    expect(lines(edited(moved, 'addContour', { bodyId: 'sketch', path: hopper }))).toHaveLength(2)
    const inner = edited(assumed, 'addContour', { bodyId: 'sketch' })
    expect(lines(inner)).toHaveLength(2)
    expect(isLineAssumed(bodyOf(inner, 'sketch'))).toBe(false)
  })
})

describe('a ring inside an outline', () => {
  const outlines: [string, Path][] = [
    ['the example', demoSpec.bodies[0]!.outline],
    ['a rectangle', RECTANGLE],
    ['a stadium', STADIUM],
    ...STARTING_OUTLINES.rows.map(({ id, make }): [string, Path] => {
      const made = make({})
      if (!made.ok) throw new Error(id)
      return [id, made.value]
    }),
  ]
  test.each(outlines)('%s: it lies inside, clear of the wall, and holds a good part of the area', (_, outline) => {
    const ring = insetRing(outline, [], 0.4)
    const shore = flatten(outline, 0.005)
    let nearest = Number.POSITIVE_INFINITY
    for (const at of flatten(ring, 0.01)) {
      expect(isInside(shore, at)).toBe(true)
      nearest = Math.min(nearest, nearestOn(outline, at[0], at[1]).distanceM)
    }
    const box = boundsOf(outline)
    expect(nearest).toBeGreaterThan(0.02 * Math.min(box.maxX - box.minX, box.maxY - box.minY))
    const share = Math.abs(areaOf(ring) / areaOf(outline))
    expect(share).toBeGreaterThan(0.15)
    expect(share).toBeLessThan(0.9)
  })

  test('straight sides stay straight: of a rectangle the ring is a rectangle at one distance', () => {
    const box = boundsOf(insetRing(RECTANGLE, [], 0.5))
    expect(box.minX).toBeCloseTo(box.minY, 9)
    expect(box.maxX).toBeCloseTo(9 - box.minX, 9)
    expect(box.maxY).toBeCloseTo(4 - box.minX, 9)
  })

  test('it keeps off islands', () => {
    const ring = flatten(insetRing(RECTANGLE, [ISLAND], 0.4), 0.01)
    const dry = flatten(ISLAND, 0.01)
    for (const at of ring) expect(isInside(dry, at)).toBe(false)
  })
})

describe('floors move with the plan', () => {
  const turn = { a: 0, b: 1, c: -1, d: 0, e: 2, f: -3 }
  const mirror = { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 }

  test('turned and turned back four times, every floor is what it was', () => {
    for (const { floor } of richSpec.bodies) {
      let moved = floor
      for (let i = 0; i < 4; i++) moved = movedFloor(moved, { ...turn, e: 0, f: 0 })
      expect(depthsOfFloor(moved)).toEqual(depthsOfFloor(floor))
      expect(JSON.stringify(moved).replaceAll('-0', '0').length).toBeGreaterThan(20)
    }
    const hopper = floorOf(richSpec, 'hopper', 'contours')
    expect(movedFloor(hopper, turn)).toMatchObject({ rings: [{ path: { start: [1, 1] } }] })
  })

  test('in a mirror an arc stays an arc of the other hand, and the area changes its sign only', () => {
    const there = movedPath(STADIUM, mirror)
    expect(there.segments[1]!.bulge).toBe(-1)
    expect(areaOf(there)).toBeCloseTo(-areaOf(STADIUM), 12)
  })

  test('a dish that is stretched one way stays round, its area growing as the plan’s does', () => {
    const dish = floorOf(richSpec, 'dished', 'dish')
    const wide = movedFloor(dish, { a: 4, b: 0, c: 0, d: 1, e: 0, f: 0 })
    expect(wide).toMatchObject({ radiusM: 2 * dish.radiusM, depthM: dish.depthM })
  })

  test('lowered and raised again, every depth is back', () => {
    for (const { floor } of richSpec.bodies) {
      const back = deepenedFloor(deepenedFloor(floor, 0.5), -0.5)
      depthsOfFloor(floor).forEach((depthM, i) => {
        expect(depthsOfFloor(back)[i]).toBeCloseTo(depthM, 12)
      })
    }
  })
})

describe('depth lines', () => {
  const ring = { bodyId: 'hopper', ring: { of: 'contour', index: 0 } } as const

  test('their points are edited as an outline’s are', () => {
    const moved = edited(richSpec, 'movePoint', { ...ring, node: 1, to: [7.5, 1] })
    expect(floorOf(moved, 'hopper', 'contours').rings[0]!.path.segments[0]!.to).toEqual([7.5, 1])
    const more = edited(richSpec, 'insertPoint', { ...ring, segment: 0, t: 0.5 })
    expect(floorOf(more, 'hopper', 'contours').rings[0]!.path.segments.length).toBe(5)
    const curved = edited(richSpec, 'setSegmentKind', { ...ring, segment: 0, kind: 'arc' })
    expect(floorOf(curved, 'hopper', 'contours').rings[0]!.path.segments[0]!.bulge).not.toBe(undefined)
  })

  test('what is not there is a problem with its own words', () => {
    expect([
      refused('movePoint', { ...ring, ring: { of: 'contour', index: 3 }, node: 0, to: [0, 0] }),
      refused('movePoint', { ...main, ring: { of: 'contour', index: 0 }, node: 0, to: [0, 0] }),
      refused('setContourDepth', { bodyId: 'hopper', contour: 5, depthM: 1 }),
      refused('addContour', { bodyId: 'main' }),
      refused('addSounding', { bodyId: 'hopper', at: [0, 0], depthM: 1 }),
      refused('addSounding', { bodyId: 'sounded', at: [2, 2], depthM: 1 }),
      refused('moveSounding', { bodyId: 'sounded', sounding: 0, to: [5, 1.5] }),
      refused('removeSounding', { bodyId: 'sounded', sounding: 3 }),
      refused('setDish', { bodyId: 'main', radiusM: 1 }),
      refused('setEdgeDepth', { bodyId: 'main', depthM: 1 }),
      refused('setEdgeDepth', { bodyId: 'hopper', depthM: null }),
    ]).toEqual([
      'no-such-part',
      'not-by-contours',
      'no-such-part',
      'not-by-contours',
      'not-by-soundings',
      'sounding-here',
      'sounding-here',
      'no-such-part',
      'not-a-dish',
      'no-edge-depth',
      'edge-depth-needed',
    ])
  })
})

describe('a bench along the wall', () => {
  const benched = (fromSegment: number, toSegment: number): Spec => ({
    ...richSpec,
    bodies: richSpec.bodies.map(
      (body): Body =>
        body.id === 'stadium'
          ? {
              ...body,
              features: [{ kind: 'bench', along: { fromSegment, toSegment }, widthM: 0.5, depthM: 0.4 }],
            }
          : body,
    ),
  })
  const at = { bodyId: 'stadium', ring: { of: 'outline' } } as const
  const alongOf = (spec: Spec) => {
    const feature = bodyOf(spec, 'stadium').features[0]!
    if (!('along' in feature)) throw new Error('not along the wall')
    return [feature.along.fromSegment, feature.along.toSegment]
  }

  test('stays on its sides when a point is put in or taken out', () => {
    expect(alongOf(edited(benched(1, 2), 'insertPoint', { ...at, segment: 0, t: 0.5 }))).toEqual([2, 3])
    expect(alongOf(edited(benched(1, 2), 'insertPoint', { ...at, segment: 1, t: 0.5 }))).toEqual([1, 3])
    expect(alongOf(edited(benched(1, 2), 'insertPoint', { ...at, segment: 3, t: 0.5 }))).toEqual([1, 2])
    expect(alongOf(edited(benched(3, 0), 'insertPoint', { ...at, segment: 3, t: 0.5 }))).toEqual([3, 0])
    expect(alongOf(edited(benched(1, 2), 'removePoint', { ...at, node: 1 }))).toEqual([0, 1])
    expect(alongOf(edited(benched(1, 2), 'removePoint', { ...at, node: 0 }))).toEqual([0, 1])
    expect(alongOf(edited(benched(3, 0), 'removePoint', { ...at, node: 0 }))).toEqual([2, 2])
    // All round it stays all round.
    expect(alongOf(edited(benched(2, 1), 'removePoint', { ...at, node: 0 }))).toEqual([0, 2])
  })

  test('stays on its sides when arcs become curves in an uneven stretch, and is as wide as the mean of both ways', () => {
    const before = benched(1, 1)
    const after = edited(before, 'stretchOutline', { bodyId: 'stadium', axis: 'x', lengthM: 40 })
    const path = bodyOf(after, 'stadium').outline
    const [from = 0, to = 0] = alongOf(after)
    // The half circle at the right: from (3, −2) to (3, 2), stretched.
    expect(from === 0 ? path.start : path.segments[from - 1]!.to).toEqual([expect.closeTo(12, 9), -2])
    expect(path.segments[to]!.to).toEqual([expect.closeTo(12, 9), 2])
    expect(bodyOf(after, 'stadium').features[0]).toMatchObject({ widthM: expect.closeTo(1, 9) })
  })
})
