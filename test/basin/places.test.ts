import { describe, expect, it } from 'vitest'
import { type BasinShape, type Path, type Point, partition, waterAt } from '../../src/basin/index.ts'
import { levelsKnown } from '../../src/basin/strip-sum.ts'
import { type Feature, patchesOf } from '../../src/features/index.ts'
import { BEAN, box, circle, divided, polygon, shape } from './shapes.ts'

function placesOf(s: BasinShape): readonly Point[] {
  const result = partition(s)
  if (result.ok) throw new Error('nothing is wrong')
  return result.problem.at ?? []
}

describe('places of a problem', () => {
  it('are named once, however many lines meet there', () => {
    const spike = polygon([0, 0], [3, 0], [3, 3], [3, 0], [6, 0], [6, 4], [0, 4])
    const touching = shape(box(0, 0, 6, 4), { islands: [circle(1, 2, 1)] })
    const twins = shape(box(0, 0, 6, 4), { islands: [box(1, 1, 2, 2), box(2, 2, 3, 3)] })
    for (const s of [shape(spike), touching, twins]) {
      const places = placesOf(s)
      expect(places.length).toBeGreaterThan(0)
      places.forEach(([x, y], i) => {
        for (const [u, v] of places.slice(0, i)) expect(Math.hypot(x - u, y - v)).toBeGreaterThan(1e-8)
      })
    }
    expect(placesOf(touching)).toEqual([[0, 2]])
    expect(placesOf(twins)).toEqual([[2, 2]])
  })
})

describe('a distance that does not rise', () => {
  const axis = { from: [1, 1], to: [4, 5] } as const
  const places = [
    [0, 0.5],
    [5, 1],
    [2.5, 0.8],
  ] as const

  it('is shown along the axis of a floor', () => {
    const floor = { kind: 'profile', axis, stations: places } as const
    expect(placesOf(shape(box(0, 0, 6, 6), { floor }))).toEqual([[2.5, 3]])
  })

  it.each<[string, Feature, Point]>([
    ['along the axis of steps', { kind: 'steps', path: box(1, 1, 3, 3), axis, treads: places }, [2.5, 3]],
    ['at the centre of round steps', { kind: 'roundSteps', centre: [2, 1], treads: places }, [2, 1]],
  ])('is shown %s', (_, feature, at) => {
    const made = patchesOf([feature], box(0, 0, 6, 6))
    expect(!made.ok && made.problem.at).toEqual([at])
  })
})

describe('a wall that takes all of the water', () => {
  // The greatest radius on a floor of depth D is that of a cove which comes down to the level at the reach n: r − √(2rn − n²) = D.
  it.each<[string, Path, number]>([
    ['a box', box(0, 0, 10, 5), 2.5],
    ['a round pool', circle(0, 0, 3), 3],
    ['a freeform pool', BEAN, 2.26],
  ])('is named with the reach and the greatest radius that leaves some, in %s', (_, outline, reachM) => {
    const at = (radiusM: number) => waterAt(divided(shape(outline, { wall: { kind: 'cove', radiusM } })), 0)
    const dry = at(400)
    if (dry.ok) throw new Error('it holds water')
    const { code, path, what, why, hint } = dry.problem
    expect(`${code} @ ${path}`).toBe('no-water @ wall.radiusM')
    expect(what).toContain('400 m')
    expect(why).toContain(`${reachM} m`)
    const most = Number(/below ([\d.]+) m/.exec(hint)![1])
    expect(Math.abs(most - (1.5 + reachM + Math.sqrt(3 * reachM)))).toBeLessThan(0.02)
    expect(at(0.98 * most).ok).toBe(true)
    expect(at(1.02 * most).ok).toBe(false)
  })

  it('is told without a sum of what it takes, which would be long', () => {
    const p = divided(shape(box(0, 0, 10, 5), { wall: { kind: 'cove', radiusM: 400 } }))
    expect(waterAt(p, 0).ok).toBe(false)
    expect(levelsKnown(p)).toEqual([])
    expect(waterAt(p, 500).ok).toBe(true)
    expect(levelsKnown(p)).toEqual([500])
  })

  it('is named with the greatest run where it hardly slopes', () => {
    const at = (run: number) => waterAt(divided(shape(box(0, 0, 10, 5), { wall: { kind: 'battered', run } })), -0.1)
    const dry = at(400)
    expect(dry.ok || [dry.problem.path, dry.problem.hint]).toEqual(['wall.run', 'Keep the run below 25.'])
    expect(at(24.5).ok).toBe(true)
    expect(at(25.5).ok).toBe(false)
  })
})
