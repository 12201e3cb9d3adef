import { describe, expect, test } from 'vitest'
import { areaOf, boundsOf } from '../../src/basin/index.ts'
import { PRODUCTS } from '../../src/chemicals/index.ts'
import { blankSpec, demoSpec, isSmooth } from '../../src/document/index.ts'
import { REGIMES } from '../../src/plan/index.ts'

const body = demoSpec.bodies[0]!

describe('the demonstration pool', () => {
  test('is 11 m by 5.6 m, smooth at every point, and travels counter-clockwise', () => {
    const box = boundsOf(body.outline)
    expect(box.maxX - box.minX).toBeCloseTo(11, 3)
    expect(box.maxY - box.minY).toBeCloseTo(5.6, 3)
    for (let i = 0; i < body.outline.segments.length; i++) expect(isSmooth(body.outline, i), `point ${i}`).toBe(true)
    expect(areaOf(body.outline)).toBeGreaterThan(40)
  })

  test('slopes no steeper than 1 : 7 down to 5 ft and 1 : 3 beyond (ISPSC chapter 7, on-ground storable residential)', () => {
    if (body.floor.kind !== 'profile') throw new Error('a profile was expected')
    for (const [i, [s, depth]] of body.floor.stations.entries()) {
      const [s0, depth0] = body.floor.stations[i - 1] ?? [s - 1, depth]
      const slope = (depth - depth0) / (s - s0)
      expect(slope).toBeLessThanOrEqual(depth <= 1.524 ? 1 / 7 : 1 / 3)
    }
  })

  test('speaks of products and regimes that there are', () => {
    for (const spec of [demoSpec, blankSpec()]) {
      for (const system of spec.systems) {
        expect(REGIMES.get(system.regime.id), system.regime.id).toBeDefined()
        for (const item of system.stock) expect(PRODUCTS.get(item.product), item.product).toBeDefined()
      }
    }
  })
})
