import { describe, expect, test } from 'vitest'
import type { Path } from '../../../src/basin/index.ts'
import { demoSpec, depthsOfFloor } from '../../../src/document/index.ts'
import {
  coveCaution,
  depthCaution,
  hollowCaution,
  leanCaution,
  lengthCaution,
  levelCaution,
  placeCaution,
  rimCaution,
  riseCaution,
  stationCaution,
  widthCaution,
} from '../../../src/ui/ledger/basin/unusual.ts'

const FT = 0.3048

describe('figures that hardly any pool has', () => {
  test('a slip of the keys or of the unit is said at the field, in the owner’s units', () => {
    expect(depthCaution(40 * FT, 'us')).toMatch(/^Deeper than 19′\s8″/)
    expect(depthCaution(40 * FT, 'metric')).toMatch(/^Deeper than 6/)
    expect(lengthCaution(900 * FT, 'us')).toMatch(/^Longer than 328′/)
    expect(rimCaution(99 * FT, 'us')).toMatch(/^The rim would stand/)
    expect(leanCaution(80 / 12)).toMatch(/^More than 45°/)
    expect(stationCaution(900 * FT, 11)).toMatch(/^Far outside the section/)
    expect(stationCaution(-20, 11)).toMatch(/^Far outside the section/)
    expect(levelCaution(0.4, 0.15)).toMatch(/over the rim/)
  })

  test('what stands in the pool and is larger than it, or far from it, is said too', () => {
    const pool: Path = {
      start: [0, 0],
      segments: [{ to: [30 * FT, 0] }, { to: [30 * FT, 15 * FT] }, { to: [0, 15 * FT] }, { to: [0, 0] }],
    }
    for (const feet of [30, 40, 200]) expect(widthCaution(feet * FT, pool, 'us')).toMatch(/which is 15′\s0″ wide/)
    expect(widthCaution(15 * FT, pool, 'us')).toBe(undefined)
    expect(placeCaution([500 * FT, 7 * FT], pool)).toMatch(/^Far outside the pool/)
    expect(placeCaution([15 * FT, -40 * FT], pool)).toMatch(/^Far outside the pool/)
    expect(placeCaution([32 * FT, 7 * FT], pool)).toBe(undefined)
  })

  test('a depth above the waterline says how far it stands out of it', () => {
    expect(depthCaution(-5 * FT, 'us')).toMatch(/^This stands 5′\s0″ above the waterline\.$/)
    expect(depthCaution(-1.5, 'metric')).toMatch(/^This stands 1\.5.* above/)
    expect(depthCaution(0, 'us')).toBe(undefined)
  })

  test('a drop is compared with the pool’s depth, a cove with that at the walls', () => {
    const floor = { kind: 'flat', depthM: 5 * FT } as const
    expect(riseCaution(6 * FT, { floor }, 'us')).toMatch(/^More than the pool is deep: .* 5′\s0″\./)
    expect(riseCaution(10 * FT * 0.1, { floor }, 'us')).toBe(undefined)
    for (const riseM of [0, -5 * FT]) expect(riseCaution(riseM, { floor }, 'us')).toMatch(/^These treads don’t go down/)
    expect(coveCaution(6 * FT, { floor, levelM: 0 })).toMatch(/edge then lies inside the outline/)
    expect(coveCaution(5 * FT, { floor, levelM: 0 })).toBe(undefined)
    expect(coveCaution(5 * FT, { floor, levelM: -0.2 })).toMatch(/inside the outline/)
    const soundings = { kind: 'soundings', edgeDepthM: 1, points: [[1, 1, 2]] } as const
    expect(coveCaution(1.2, { floor: soundings, levelM: 0 })).toMatch(/inside the outline/)
    expect(coveCaution(1.2, { floor: { ...soundings, edgeDepthM: null }, levelM: 0 })).toBe(undefined)
  })

  test('a hollow that reaches nowhere into the pool changes nothing', () => {
    const pool: Path = { start: [0, 0], segments: [{ to: [9, 0] }, { to: [9, 5] }, { to: [0, 5] }, { to: [0, 0] }] }
    expect(hollowCaution([11, 2], 1.5, pool)).toMatch(/changes nothing/)
    expect(hollowCaution([10, 2], 1.5, pool)).toBe(undefined)
    expect(hollowCaution([4, 2], 0.1, pool)).toBe(undefined)
  })

  test('nothing is said of usual ones, nor of the example', () => {
    const body = demoSpec.bodies[0]
    if (body?.floor.kind !== 'profile') throw new Error('the example has no profile')
    for (const depthM of [...depthsOfFloor(body.floor), 5]) expect(depthCaution(depthM, 'us')).toBe(undefined)
    for (const [sM] of body.floor.stations) expect(stationCaution(sM, 11)).toBe(undefined)
    expect(lengthCaution(50, 'us')).toBe(undefined)
    expect(rimCaution(body.freeboardM, 'us')).toBe(undefined)
    expect(leanCaution(1)).toBe(undefined)
    expect(levelCaution(body.levelM, body.freeboardM)).toBe(undefined)
    expect(levelCaution(-2, 0.15)).toBe(undefined)
  })
})
