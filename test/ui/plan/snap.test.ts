import { describe, expect, test } from 'vitest'
import { snapLines, snapPoint } from '../../../src/ui/plan/snap.ts'

const INCH = 0.0254
const isWhole = (si: number, unit: number) => Math.abs(si / unit - Math.round(si / unit)) < 1e-6

describe('snapping', () => {
  test('free water: whole inches in feet, whole centimetres in metres', () => {
    const us = snapPoint([1.2345, 2.3456], [], 0.1, 'us')
    expect(isWhole(us.at[0], INCH) && isWhole(us.at[1], INCH)).toBe(true)
    expect(snapPoint([1.2345, 2.3456], [], 0.1, 'metric').at).toEqual([1.23, 2.35])
  })

  test('near the level of another point it lies exactly level, and says why', () => {
    const snapped = snapPoint([5.37, 2.04], snapLines([[1.03, 2.0001]], []), 0.1, 'metric')
    expect(snapped.at[1]).toBe(2.0001)
    expect(isWhole(snapped.at[0] - 1.03, 0.01)).toBe(true)
    expect(snapped.guides.map((g) => g.what)).toEqual(['in line'])
  })

  test('level of one point and plumb of another meet exactly', () => {
    const lines = snapLines(
      [
        [0, 2],
        [5, 7],
      ],
      [],
    )
    const snapped = snapPoint([5.04, 1.97], lines, 0.1, 'metric')
    expect(snapped.at).toEqual([5, 2])
    expect(snapped.guides).toHaveLength(2)
  })

  test('a right angle to a slanting neighbour is exact and keeps a whole length', () => {
    const along = [0.6, 0.8] as const
    const lines = snapLines([], [{ at: [1, 1], along }])
    // 2 m square to the neighbour, a little off.
    const snapped = snapPoint([1 - 0.8 * 2 + 0.01, 1 + 0.6 * 2 + 0.012], lines, 0.06, 'metric')
    const [dx, dy] = [snapped.at[0] - 1, snapped.at[1] - 1]
    expect(dx * along[0] + dy * along[1]).toBeCloseTo(0, 12)
    expect(isWhole(Math.hypot(dx, dy), 0.01)).toBe(true)
    expect(snapped.guides[0]?.what).toBe('right angle')
  })

  test('on the tangent of a neighbour it goes on straight', () => {
    const snapped = snapPoint([3.02, 0.03], snapLines([], [{ at: [0, 0], along: [1, 0] }]), 0.1, 'metric')
    expect(snapped.at).toEqual([3.02, 0])
    expect(snapped.guides[0]?.what).toBe('tangent')
  })

  test('out of reach nothing draws', () => {
    expect(snapPoint([5.37, 2.5], snapLines([[1, 2]], []), 0.1, 'metric').guides).toEqual([])
  })
})
