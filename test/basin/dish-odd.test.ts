import { describe, expect, it } from 'vitest'
import { type BasinShape, derivativesOf, measure, partition, volumeAtLevel } from '../../src/basin/index.ts'
import type { Feature } from '../../src/features/index.ts'
import { cap, dish, type Parts, pool } from './dishes.ts'
import { box, divided, polygon, relative, shape } from './shapes.ts'

describe('a dish that makes no sense is a problem', () => {
  it.each<[string, Parts, Partial<BasinShape>, string]>([
    ['no radius', { radiusM: 0 }, {}, 'dish-radius-not-positive @ floor.radiusM'],
    ['a radius below none', { radiusM: -1 }, {}, 'dish-radius-not-positive @ floor.radiusM'],
    ['a depth that is none', { depthM: Number.NaN }, {}, 'not-a-number @ floor.depthM'],
    ['a centre that is none', { centre: [0, Infinity] }, {}, 'not-a-number @ floor.centre'],
    ['more than half a sphere', { depthM: 3.01 }, {}, 'dish-beyond-half-sphere @ floor.depthM'],
  ])('%s', (_, parts, more, expected) => {
    const result = partition(shape(box(0, 0, 8, 4), { floor: dish(parts), ...more }))
    expect(!result.ok && `${result.problem.code} @ ${result.problem.path}`).toBe(expected)
  })

  it('but a cove that keeps off the hollow is none, and takes its own share; one that reaches it takes a little more', () => {
    const wall = { kind: 'cove', radiusM: 0.3 } as const
    const m = measure(
      pool(box(0, 0, 8, 4), { centre: [2, 2], radiusM: 1.5, edgeDepthM: 1, depthM: 1.4 }, [], { wall }),
      0,
    )
    const taken = 24 * 0.09 * (1 - Math.PI / 4) - 8 * 0.027 * (5 / 6 - Math.PI / 4)
    expect(relative(m.volumeM3, 32 + cap(0.4, 1.5) - taken)).toBeLessThan(1e-9)
  })

  it('and a hollow wholly outside the water changes nothing', () => {
    expect(relative(measure(pool(box(0, 0, 8, 4), { centre: [20, 2], edgeDepthM: 1 }), 0).volumeM3, 32)).toBeLessThan(
      1e-14,
    )
  })
})

describe('the volume over a dish has derivatives', () => {
  const parts = { centre: [0.6, 0.4] as const, radiusM: 2.2, edgeDepthM: 0.7, depthM: 1.9 }
  const features: Feature[] = [{ kind: 'shelf', path: box(-1, -1, 0.5, 1.2), depthM: 1 }]
  const outline = (dx: number) => polygon([-1.5, -1.2], [2.6 + dx, -1.2], [2.3, 2.2], [-1.5, 2.5])
  it.each([
    ['cap', parts],
    ['cone', parts],
    ['cap', { ...parts, edgeDepthM: 1.6, depthM: 0.4 }],
    ['cone', { ...parts, edgeDepthM: 1.6, depthM: 0.4 }],
  ] as const)('by depths, radius, centre and nodes that agree with differences: %s %o', (form, base) => {
    for (const level of [0, -0.85]) {
      const at = (more: Parts, dx = 0) => {
        const p = pool(outline(dx), { form, ...base, ...more }, features)
        return volumeAtLevel(p, level).volumeM3
      }
      const h = 1e-5
      const slope = (plus: Parts, minus: Parts) => (at(plus) - at(minus)) / (2 * h)
      const list = derivativesOf(pool(outline(0), { form, ...base }, features), level)
      const by = (path: string) => list.find((it) => it.path === path)!.value as number & [number, number]
      const { edgeDepthM: e, depthM: c, radiusM: r, centre } = base
      const near = (value: number, expected: number) => expect(Math.abs(value - expected)).toBeLessThan(1e-7)
      near(by('floor.edgeDepthM'), slope({ edgeDepthM: e + h }, { edgeDepthM: e - h }))
      near(by('floor.depthM'), slope({ depthM: c + h }, { depthM: c - h }))
      near(by('floor.radiusM'), slope({ radiusM: r + h }, { radiusM: r - h }))
      near(by('floor.centre')[0], slope({ centre: [centre[0] + h, centre[1]] }, { centre: [centre[0] - h, centre[1]] }))
      near(by('floor.centre')[1], slope({ centre: [centre[0], centre[1] + h] }, { centre: [centre[0], centre[1] - h] }))
      near(by('outline.segments[0].to')[0], (at({}, h) - at({}, -h)) / (2 * h))
    }
  })
})

describe('a hollow whose rim touches a shore from within, under a cove', () => {
  // Rays from there cross the rim at once and lie in the hollow, not before it.
  it('has the same volume within its bound, however it is turned', () => {
    const turned = (angle: number) => {
      const [c, s] = [Math.cos(angle), Math.sin(angle)]
      const at = ([x, y]: readonly [number, number]): [number, number] => [c * x - s * y, s * x + c * y]
      const outline = polygon(
        ...(
          [
            [0, 0],
            [8.67, 0],
            [8.67, 3.62],
            [6.07, 3.62],
            [5.72, 6.03],
            [2.6, 6.03],
            [2.34, 3.62],
            [0, 3.62],
          ] as const
        ).map(at),
      )
      const floor = {
        kind: 'dish',
        form: 'cone',
        centre: at([3.8, 2.32]),
        radiusM: 3.8,
        depthM: 1.856,
        edgeDepthM: 0.954,
      } as const
      return measure(divided(shape(outline, { floor, wall: { kind: 'cove', radiusM: 2.535 } })), -0.83)
    }
    const still = turned(0)
    for (const angle of [0.1, 0.7, 1.3, 2.2, 3]) {
      const { volumeM3, errors } = turned(angle)
      const off = Math.abs(volumeM3 - still.volumeM3)
      expect(off).toBeLessThan(errors.arithmeticM3 + still.errors.arithmeticM3)
      expect(off).toBeLessThan(1e-8)
    }
  })
})
