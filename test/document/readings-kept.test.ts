import { describe, expect, test } from 'vitest'
import { deriveBody } from '../../src/derive/index.ts'
import {
  applyCommand,
  type Body,
  type Command,
  command,
  demoSpec,
  depthsOfFloor,
  depthToReference,
  type FloorKindId,
} from '../../src/document/index.ts'
import { FEATURES } from '../../src/features/index.ts'

const DEMO = demoSpec.bodies[0]!

/** All depths as they stand in the fields: those of the floor, then those of what stands in the water [m]. */
function read(body: Body): number[] {
  const ofFeatures = body.features.flatMap((feature) =>
    (FEATURES.get(feature.kind)?.fields ?? []).filter((field) => field.isDepth).map((field) => field.get(feature)),
  )
  return [...depthsOfFloor(body.floor), ...ofFeatures].map((depthM) => depthToReference(body, depthM))
}

type Heights = Pick<Partial<Body>, 'freeboardM' | 'tileLineM'>

function corrected(body: Body, heights: Heights): Body {
  return edited(body, command('correctReference', { bodyId: body.id, ...heights }))
}

/** Water that stands otherwise than was thought: its level, then the depths as they were read from it. */
function waterCorrected(body: Body, levelM: number): Body {
  const moved = edited(body, command('setLevel', { bodyId: body.id, levelM }))
  return edited(moved, command('deepenReadings', { bodyId: body.id, byM: body.levelM - levelM }))
}

function edited(body: Body, change: Command): Body {
  const done = applyCommand({ ...demoSpec, bodies: [body] }, change)
  if (!done.ok) throw new Error(done.problem.what)
  return done.value.bodies[0]!
}

const volumeOf = (body: Body) => {
  const { measures } = deriveBody(body)
  if (!measures.ok) throw new Error(measures.problem.what)
  return measures.value.volumeM3
}

const RIM = ['rim', { freeboardM: 0.15 }, (body: Body) => corrected(body, { freeboardM: 0.25 })] as const
const TILE_LINE = ['tile-line', {}, (body: Body) => corrected(body, { tileLineM: 0.1 })] as const
const WATER = ['water-now', { levelM: 0 }, (body: Body) => waterCorrected(body, 0.1)] as const

describe.each([RIM, TILE_LINE, WATER])('where what depths were read from the %s is put right', (from, was, put) => {
  const kinds: readonly FloorKindId[] = ['flat', 'profile', 'contours', 'soundings', 'dish']

  test.each(kinds)('every number read stays over a floor by %s, and the floor lies 0.1 m shallower', (kind) => {
    const made = applyCommand(demoSpec, command('setFloorKind', { bodyId: DEMO.id, kind }))
    if (!made.ok) throw new Error(made.problem.what)
    const { depthsAssumed: _, ...said } = made.value.bodies[0]!
    const before: Body = { ...said, ...was, depthsMeasuredFrom: from }
    const after = put(before)
    expect(read(after)).toEqual(read(before).map((depthM) => expect.closeTo(depthM, 9)))
    depthsOfFloor(after.floor).forEach((depthM, i) => {
      expect(depthM).toBeCloseTo((depthsOfFloor(before.floor)[i] ?? 0) - 0.1, 9)
    })
    expect(after.depthsAssumed).toBe(undefined)
  })

  test('which of them are assumed is still known', () => {
    const before: Body = { ...DEMO, ...was, depthsMeasuredFrom: from, depthsAssumed: [1] }
    expect(put(before).depthsAssumed).toEqual([1])
  })
})

test.each([RIM, TILE_LINE])(
  'depths that nobody has read from the %s keep their place in the water',
  (from, was, put) => {
    const before: Body = { ...DEMO, ...was, depthsMeasuredFrom: from, depthsAssumed: true }
    const after = put(before)
    expect(after.floor).toEqual(before.floor)
    expect(after.features).toEqual(before.features)
    expect(after.depthsAssumed).toBe(true)
  },
)

test('a tile line whose height isn’t known any more counts as level with the water', () => {
  const before: Body = { ...DEMO, tileLineM: 0.1, depthsMeasuredFrom: 'tile-line' }
  const after = edited(before, command('correctReference', { bodyId: before.id, tileLineM: undefined }))
  expect('tileLineM' in after).toBe(false)
  expect(read(after)).toEqual(read(before).map((depthM) => expect.closeTo(depthM, 9)))
})

test('a rim 0.1 m higher over the water than was thought leaves that much less water over the same tape', () => {
  const before: Body = {
    ...DEMO,
    features: [],
    wall: { kind: 'vertical' },
    freeboardM: 0.15,
    depthsMeasuredFrom: 'rim',
  }
  const after = corrected(before, { freeboardM: 0.25 })
  const { measures } = deriveBody(before)
  if (!measures.ok) throw new Error(measures.problem.what)
  // Upright walls: 0.1 m off the bottom is 0.1 m times the surface.
  expect(volumeOf(before) - volumeOf(after)).toBeCloseTo(0.1 * measures.value.waterSurfaceM2, 6)
})

test('a rim that no depth was read from moves no floor', () => {
  const before: Body = { ...DEMO, depthsMeasuredFrom: 'waterline' }
  expect(corrected(before, { freeboardM: 0.3 })).toEqual({ ...before, freeboardM: 0.3 })
})
