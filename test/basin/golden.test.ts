import { describe, expect, it } from 'vitest'
import { type BasinShape, levelForVolume, measure, type Path, partition, volumeAtLevel } from '../../src/basin/index.ts'
import { type Feature, patchesOf } from '../../src/features/index.ts'
import golden from '../golden/basin/cases.json'
import { relative } from './shapes.ts'

/** Lines and arcs are closed form; cubics and coves are integrated. */
function toleranceOf(row: (typeof golden.cases)[number]): number {
  const body = row.spec.bodies[0]!
  const curved = JSON.stringify(body.outline).includes('"c1"')
  return curved || body.wall.kind === 'cove' ? 1e-7 : 1e-9
}

// Source: test/golden/basin/cases.json and the provenance stated in it.
describe('golden basins', () => {
  for (const row of golden.cases) {
    const body = row.spec.bodies[0]!
    const patches = patchesOf(body.features as unknown as Feature[], body.outline as unknown as Path)
    if (!patches.ok) throw new Error(row.id)
    const result = partition({
      outline: body.outline,
      islands: body.islands,
      floor: body.floor,
      wall: body.wall,
      patches: patches.value,
      freeboardM: body.freeboardM,
    } as unknown as BasinShape)
    const tolerance = toleranceOf(row)
    it(`agrees with the truth of ${row.id} in volume, surface, wetted area and perimeter within ${tolerance}`, () => {
      if (!result.ok) throw new Error(JSON.stringify(result.problem))
      const m = measure(result.value, body.levelM)
      const { expected } = row
      expect(relative(m.volumeM3, expected.volumeM3)).toBeLessThan(tolerance)
      expect(relative(m.waterSurfaceM2, expected.waterSurfaceM2)).toBeLessThan(tolerance)
      expect(relative(m.wetted.totalM2, expected.wettedM2)).toBeLessThan(tolerance)
      expect(relative(m.perimeterM, expected.perimeterM)).toBeLessThan(tolerance)
      expect(m.errorBoundM3).toBeGreaterThanOrEqual(
        Math.abs(m.volumeM3 - expected.volumeM3) * 0.999 - 1e-12 * expected.volumeM3,
      )
    })
    it(`agrees with the truth of ${row.id} at every level, and finds each level again from its volume`, () => {
      if (!result.ok) throw new Error(JSON.stringify(result.problem))
      for (const [levelM, volumeM3] of row.expected.levels as [number, number][]) {
        expect(relative(volumeAtLevel(result.value, levelM).volumeM3, volumeM3)).toBeLessThan(tolerance)
        const level = levelForVolume(result.value, volumeM3)
        expect(level.ok && Math.abs(level.value - levelM)).toBeLessThan(1e-8)
      }
    })
  }
})
