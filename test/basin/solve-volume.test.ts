import { describe, expect, it } from 'vitest'
import { ok, type Result } from '../../src/base/index.ts'
import { type BasinShape, levelForVolume, measure, solveForVolume, transformPath } from '../../src/basin/index.ts'
import { BEAN, box, DEMO, divided, relative, shape } from './shapes.ts'

const family =
  (make: (x: number) => BasinShape) =>
  (x: number): Result<BasinShape> =>
    ok(make(x))

describe('the value of one number for a wanted volume', () => {
  it('finds the depth of a level floor', () => {
    const at = family((depthM) => shape(box(0, 0, 10, 5), { floor: { kind: 'flat', depthM } }))
    const met = solveForVolume({ at, from: 0.5, to: 3, volumeM3: 82.5, levelM: -0.1 })
    if (!met.ok) throw new Error(met.problem.what)
    expect(met.value.x).toBeCloseTo(1.75, 12)
    expect(relative(met.value.volumeM3, 82.5)).toBeLessThan(1e-12)
    expect(met.value.shape.floor).toEqual({ kind: 'flat', depthM: met.value.x })
  })

  it('finds the scale of a freeform pool with a cove, shelf and steps', () => {
    const at = family((k) => ({
      ...DEMO,
      wall: { kind: 'cove', radiusM: 0.25 },
      outline: transformPath(BEAN, { a: k, b: 0, c: 0, d: k, e: 0, f: 0 }),
    }))
    const met = solveForVolume({ at, from: 0.8, to: 1.6, volumeM3: 45, levelM: 0 })
    if (!met.ok) throw new Error(met.problem.what)
    expect(relative(measure(divided(met.value.shape), 0).volumeM3, 45)).toBeLessThan(1e-9)
  })

  it('moves a node up to where the outline would cross itself, no further', () => {
    const at = family((y) =>
      shape({ start: [0, 0], segments: [{ to: [4, 0] }, { to: [4, 4] }, { to: [2, y] }, { to: [0, 4] }] }),
    )
    // Below y = 0 the notch reaches through the opposite wall; above, the area is 8 + 2 y.
    for (const y of [0.001, 0.5, 3.2]) {
      const met = solveForVolume({ at, from: -3, to: 4, volumeM3: 1.5 * (8 + 2 * y), levelM: 0 })
      expect(met.ok && met.value.x).toBeCloseTo(y, 9)
    }
    const beyond = solveForVolume({ at, from: -3, to: 4, volumeM3: 1.5 * 40, levelM: 0 })
    expect(beyond.ok ? '' : beyond.problem.code).toBe('crosses-itself')
  })

  it('says so where nothing between the limits gives the volume, or the wish makes no sense', () => {
    const at = family((depthM) => shape(box(0, 0, 10, 5), { floor: { kind: 'flat', depthM } }))
    const wish = { at, from: 0.5, to: 3, levelM: 0 }
    const code = (volumeM3: number): string => {
      const met = solveForVolume({ ...wish, volumeM3 })
      return met.ok ? '' : met.problem.code
    }
    expect(code(500)).toBe('volume-not-met')
    expect(code(0)).toBe('volume-out-of-reach')
    expect(code(Number.NaN)).toBe('volume-out-of-reach')
    const endless = solveForVolume({ ...wish, to: Infinity, volumeM3: 50 })
    expect(endless.ok ? '' : endless.problem.code).toBe('not-a-number')
  })

  it('takes the place nearest to where it begins where several meet the wish, and never a jump', () => {
    // A shelf that is drawn through the pool: the volume falls and rises again.
    const at = family((x) =>
      shape(box(0, 0, 10, 5), { features: [{ kind: 'shelf', path: box(x, 1, x + 2, 4), depthM: 0.5 }] }),
    )
    const met = solveForVolume({ at, from: -1.5, to: 9.9, volumeM3: 75 - 3, levelM: 0 })
    if (!met.ok) throw new Error(met.problem.what)
    expect(met.value.x).toBeCloseTo(-1, 9)
    // The depth jumps past the wish: nothing is met.
    const step = family((x) => shape(box(0, 0, 10, 5), { floor: { kind: 'flat', depthM: x < 1 ? 1 : 2 } }))
    const jumped = solveForVolume({ at: step, from: 0, to: 2.2, volumeM3: 75, levelM: 0 })
    expect(jumped.ok ? '' : jumped.problem.code).toBe('volume-not-met')
  })
})

describe('the level for a volume at its extremes', () => {
  const pools: Record<string, BasinShape> = {
    demo: DEMO,
    coved: { ...DEMO, wall: { kind: 'cove', radiusM: 0.3 } },
    battered: { ...DEMO, wall: { kind: 'battered', run: 0.4 } },
  }
  for (const [name, pool] of Object.entries(pools))
    it(`is found for a drop, for a lake and for all between: ${name}`, () => {
      const p = divided(pool)
      const full = measure(p, 0).volumeM3
      for (const volumeM3 of [1e-9, 1e-6, 1e-3, 0.1, full / 2, full, 2 * full, 1e3, 1e6]) {
        const level = levelForVolume(p, volumeM3)
        if (!level.ok) throw new Error(`${volumeM3}: ${level.problem.what}`)
        expect(Math.abs(measure(p, level.value).volumeM3 - volumeM3)).toBeLessThan(1e-9 * volumeM3 + 1e-12)
      }
      const none = levelForVolume(p, 0)
      expect(none.ok && measure(p, none.value).volumeM3).toBe(0)
      for (const wrong of [-1, Number.NaN, Infinity]) expect(levelForVolume(p, wrong).ok).toBe(false)
    })
})
