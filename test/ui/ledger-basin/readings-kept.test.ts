import { describe, expect, test } from 'vitest'
import { deriveBody } from '../../../src/derive/index.ts'
import {
  applyCommand,
  type Body,
  command,
  demoSpec,
  depthsOfFloor,
  depthToReference,
  type FloorKindId,
} from '../../../src/document/index.ts'
import { FEATURES } from '../../../src/features/index.ts'
import { readingsKept } from '../../../src/ui/ledger/basin/readings-kept.ts'

const DEMO = demoSpec.bodies[0]!

/** All depths as they stand in the fields: those of the floor, then those of what stands in the water [m]. */
function read(body: Body): number[] {
  const ofFeatures = body.features.flatMap((feature) =>
    (FEATURES.get(feature.kind)?.fields ?? []).filter((field) => field.isDepth).map((field) => field.get(feature)),
  )
  return [...depthsOfFloor(body.floor), ...ofFeatures].map((depthM) => depthToReference(body, depthM))
}

function corrected(body: Body, by: Parameters<typeof readingsKept>[1]): Body {
  const spec = { ...demoSpec, bodies: [body] }
  const done = applyCommand(spec, command('setBody', { bodyId: body.id, body: readingsKept(body, by) }))
  if (!done.ok) throw new Error(done.problem.what)
  return done.value.bodies[0]!
}

const volumeOf = (body: Body) => {
  const { measures } = deriveBody(body)
  if (!measures.ok) throw new Error(measures.problem.what)
  return measures.value.volumeM3
}

const CASES = [
  ['rim', { freeboardM: 0.15 }, { freeboardM: 0.25 }],
  ['tile-line', {}, { tileLineM: 0.1 }],
  ['water-now', { levelM: 0 }, { levelM: 0.1 }],
] as const

describe.each(CASES)('where what depths were read from the %s is put right', (depthsMeasuredFrom, was, now) => {
  const kinds: readonly FloorKindId[] = ['flat', 'profile', 'contours', 'soundings', 'dish']

  test.each(kinds)('every number read stays over a floor by %s, and the floor lies 0.1 m shallower', (kind) => {
    const made = applyCommand(demoSpec, command('setFloorKind', { bodyId: DEMO.id, kind }))
    if (!made.ok) throw new Error(made.problem.what)
    const { depthsAssumed: _, ...said } = made.value.bodies[0]!
    const before: Body = { ...said, ...was, depthsMeasuredFrom }
    const after = corrected(before, now)
    expect(after).toMatchObject(now)
    expect(read(after)).toEqual(read(before).map((depthM) => expect.closeTo(depthM, 9)))
    depthsOfFloor(after.floor).forEach((depthM, i) => {
      expect(depthM).toBeCloseTo((depthsOfFloor(before.floor)[i] ?? 0) - 0.1, 9)
    })
    expect(after.depthsAssumed).toBe(undefined)
  })

  test('depths that nobody has read keep their place in the water', () => {
    const before: Body = { ...DEMO, ...was, depthsMeasuredFrom, depthsAssumed: true }
    const after = corrected(before, now)
    expect(after.floor).toEqual(before.floor)
    expect(after.features).toEqual(before.features)
    expect(after.depthsAssumed).toBe(true)
  })

  test('which of them are assumed is still known', () => {
    const before: Body = { ...DEMO, ...was, depthsMeasuredFrom, depthsAssumed: [1] }
    expect(corrected(before, now).depthsAssumed).toEqual([1])
  })
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
  expect(readingsKept(before, { freeboardM: 0.3 })).toEqual({ freeboardM: 0.3 })
})
