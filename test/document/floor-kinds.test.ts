import { describe, expect, test } from 'vitest'
import { type Path, STARTING_OUTLINES } from '../../src/basin/index.ts'
import { deriveBody } from '../../src/derive/index.ts'
import {
  applyCommand,
  assumedDepths,
  type Body,
  blankSpec,
  type CommandArgs,
  type CommandId,
  command,
  depthsOfFloor,
  type FloorKindId,
  type Spec,
  validateSpec,
} from '../../src/document/index.ts'

const KINDS: readonly FloorKindId[] = ['flat', 'profile', 'contours', 'soundings', 'dish']
const FOOT = 0.3048
const bodyId = 'main'

function edited<Id extends CommandId>(spec: Spec, id: Id, args: CommandArgs<Id>): Spec {
  const result = applyCommand(spec, command(id, args))
  if (!result.ok) throw new Error(`${result.problem.code} at ${result.problem.path}: ${result.problem.what}`)
  return result.value
}
const main = (spec: Spec): Body => spec.bodies[0]!
function water(spec: Spec): { readonly m3: number; readonly sigmaM3: number } {
  const { measures, sigmaM3 } = deriveBody(main(spec))
  if (!measures.ok) throw new Error(`${measures.problem.path}: ${measures.problem.what}`)
  return { m3: measures.value.volumeM3, sigmaM3 }
}
const as = (spec: Spec, kind: FloorKindId) => edited(spec, 'setFloorKind', { bodyId, kind })

const outlines: [string, Path][] = STARTING_OUTLINES.rows.map(({ id, make }): [string, Path] => {
  const made = make({})
  if (!made.ok) throw new Error(id)
  return [id, made.value]
})
const fresh = (outline: Path) => edited(blankSpec(), 'drawOutline', { outline })
/** With 3′6″ typed at the one end and 8′ at the other. */
function typed(outline: Path): Spec {
  const { floor } = main(fresh(outline))
  if (floor.kind !== 'profile') throw new Error('a fresh floor slopes')
  const say = (spec: Spec, station: number, depthM: number) =>
    edited(spec, 'moveStation', { bodyId, station, sM: floor.stations[station]![0], depthM })
  return say(say(fresh(outline), 0, 3.5 * FOOT), 1, 8 * FOOT)
}

describe('what is known of depths', () => {
  const outline = outlines[0]![1]

  test('one depth that is typed leaves the other a guess, and the volume about half as unsure as before', () => {
    const none = fresh(outline)
    const { floor } = main(none)
    if (floor.kind !== 'profile') throw new Error('a fresh floor slopes')
    const one = edited(none, 'moveStation', { bodyId, station: 0, sM: 0, depthM: 1 })
    expect(main(none).depthsAssumed).toBe(true)
    expect(assumedDepths(main(one))).toEqual([false, true])
    expect(water(one).sigmaM3 / water(none).sigmaM3).toBeGreaterThan(0.4)
    expect(water(one).sigmaM3 / water(none).sigmaM3).toBeLessThan(0.65)
    const both = edited(one, 'moveStation', { bodyId, station: 1, sM: floor.stations[1]![0], depthM: 2 })
    expect('depthsAssumed' in main(both)).toBe(false)
    expect(water(both).sigmaM3).toBeLessThan(0.3 * water(one).sigmaM3)
    // Said just as it was guessed, it is said.
    const [, guess] = depthsOfFloor(floor)
    const sM = floor.stations[1]![0]
    const same = edited(one, 'moveStation', { bodyId, station: 1, sM, depthM: guess!, saysDepth: true })
    expect('depthsAssumed' in main(same)).toBe(false)
  })

  test('a station moved along says no depth, one put between two is as well known as they are, and numbers follow', () => {
    const none = fresh(outline)
    const moved = edited(none, 'moveStation', {
      bodyId,
      station: 0,
      sM: 0.5,
      depthM: depthsOfFloor(main(none).floor)[0]!,
    })
    expect(main(moved).depthsAssumed).toBe(true)
    const said = edited(none, 'moveStation', { bodyId, station: 1, sM: 99, depthM: 2 })
    const more = edited(said, 'addStation', { bodyId, sM: 2 })
    expect(assumedDepths(main(more))).toEqual([true, true, false])
    expect(assumedDepths(main(edited(more, 'removeStation', { bodyId, station: 0 })))).toEqual([true, false])
    const sure = edited(typed(outline), 'addStation', { bodyId, sM: 2 })
    expect('depthsAssumed' in main(sure)).toBe(false)
  })

  test('depths that were taken as they stand are guesses no longer', () => {
    const taken = edited(fresh(outline), 'setBody', { bodyId, body: { depthsAssumed: undefined } })
    expect('depthsAssumed' in main(taken)).toBe(false)
  })

  test('a sounding that is taken takes the place of the nearest guess', () => {
    const guesses = as(as(fresh(outline), 'contours'), 'soundings')
    const { floor } = main(guesses)
    if (floor.kind !== 'soundings') throw new Error('soundings')
    const [x, y] = floor.points[0]!
    const one = main(edited(guesses, 'addSounding', { bodyId, at: [x + 0.01, y], depthM: 1.5 }))
    if (one.floor.kind !== 'soundings') throw new Error('soundings')
    expect(one.floor.points).toHaveLength(floor.points.length)
    expect(assumedDepths(one)).toEqual(assumedDepths(one).map((_, i, all) => i < all.length - 1))
  })

  test('an edge depth that is only offered is a guess until it is typed', () => {
    const sounded = as(typed(outline), 'soundings')
    const offered = edited(sounded, 'setEdgeDepth', { bodyId, depthM: 1, isAssumed: true })
    expect(assumedDepths(main(offered))).toEqual([true, false, false])
    const said = edited(offered, 'setEdgeDepth', { bodyId, depthM: 1.1 })
    expect('depthsAssumed' in main(said)).toBe(false)
  })
})

describe('another kind of floor', () => {
  test.each(outlines)('%s: holds as much water to 3 %, no deeper than was said, and within its own ±', (_, outline) => {
    const before = typed(outline)
    const { m3 } = water(before)
    for (const kind of KINDS) {
      const after = as(before, kind)
      expect(validateSpec(after).ok).toBe(true)
      const now = water(after)
      expect(Math.abs(now.m3 / m3 - 1), kind).toBeLessThan(0.03)
      expect(Math.max(...depthsOfFloor(main(after).floor)), kind).toBeLessThanOrEqual(8 * FOOT + 1e-9)
      if (kind === 'profile' || kind === 'soundings') continue
      expect(main(after).depthsAssumed, kind).toBe(true)
      expect(Math.abs(now.m3 - m3)).toBeLessThan(1.96 * now.sigmaM3)
      expect(now.sigmaM3).toBeGreaterThan(3 * water(before).sigmaM3)
    }
  })

  test.each(outlines)('%s: all kinds one after the other and back is the same document again', (_, outline) => {
    for (const start of [typed(outline), fresh(outline)]) {
      const through = (['flat', 'contours', 'soundings', 'dish', 'flat'] as const).reduce(as, start)
      expect(Math.abs(water(through).m3 / water(start).m3 - 1)).toBeLessThan(0.03)
      expect(as(through, 'profile')).toEqual(start)
    }
  })

  test('a flat floor gets no deeper place out of nothing', () => {
    const flat = edited(fresh(outlines[0]![1]), 'setFloor', { bodyId, floor: { kind: 'flat', depthM: 1.5 } })
    for (const kind of KINDS) {
      const depths = depthsOfFloor(main(as(flat, kind)).floor)
      expect(depths, kind).toEqual(depths.map(() => 1.5))
      expect(water(as(flat, kind)).m3).toBeCloseTo(water(flat).m3, 6)
      if (kind !== 'flat') expect(main(as(flat, kind)).depthsAssumed).toBe(true)
    }
  })

  test.each(outlines)(
    '%s: a slope as soundings goes no deeper anywhere, and is off by little on the whole',
    (_, outline) => {
      const { measures } = deriveBody(main(as(typed(outline), 'soundings')))
      if (!measures.ok) throw new Error(measures.problem.what)
      expect(measures.value.maxDepthM).toBeLessThan(8.1 * FOOT)
    },
  )

  test('depths typed on two kinds are kept on both', () => {
    const sloped = typed(outlines[0]![1])
    const flat = edited(as(sloped, 'flat'), 'setFloor', { bodyId, floor: { kind: 'flat', depthM: 1.9 } })
    const back = as(flat, 'profile')
    expect(main(back).floor).toEqual(main(sloped).floor)
    expect(main(as(back, 'flat')).floor).toEqual({ kind: 'flat', depthM: 1.9 })
    // A kind without any depth said on it is made from what was said last.
    expect(depthsOfFloor(main(as(flat, 'dish')).floor)).toEqual([1.9, 1.9])
  })

  test('a guess follows what is said later on the floor it was made from', () => {
    const sloped = typed(outlines[0]![1])
    const again = as(as(sloped, 'soundings'), 'profile')
    const deeper = edited(again, 'moveStation', { bodyId, station: 1, sM: 99, depthM: 3 })
    expect(depthsOfFloor(main(as(deeper, 'soundings')).floor)).toContain(3)
  })

  test('a floor that is kept goes with the plan, and not to another plan', () => {
    const sloped = typed(outlines[0]![1])
    const scaled = (spec: Spec) => edited(spec, 'scaleUniform', { bodyId, factor: 2 })
    expect(as(scaled(as(sloped, 'flat')), 'profile')).toEqual(scaled(sloped))
    expect('otherFloors' in main(edited(as(sloped, 'flat'), 'drawOutline', { outline: outlines[1]![1] }))).toBe(false)
  })
})

test('an owner who measures in feet starts from round feet, one who measures in metres from round metres', () => {
  const started = (roundIn: 'metres' | 'feet') =>
    main(edited(blankSpec(), 'drawOutline', { outline: outlines[0]![1], roundIn }))
  const feet = started('feet')
  expect(depthsOfFloor(feet.floor).map((m) => m / FOOT)).toEqual([expect.closeTo(3.5, 12), expect.closeTo(5.5, 12)])
  expect(feet.freeboardM / FOOT).toBeCloseTo(0.5, 12)
  expect(depthsOfFloor(started('metres').floor)).toEqual([1.1, 1.7])
  expect(started('metres').freeboardM).toBe(0.15)
})
