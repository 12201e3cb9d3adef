import { describe, expect, test } from 'vitest'
import { isInside } from '../../../src/document/index.ts'
import { distanceToLine, hitTarget, REACH_PX, reachOf } from '../../../src/ui/plan/hit.ts'

describe('taking hold', () => {
  test('a finger reaches half of 44 px, a mouse less', () => {
    expect(reachOf('touch')).toBe(22)
    expect(reachOf('mouse')).toBe(REACH_PX.mouse)
    expect(reachOf('mouse')).toBeLessThan(reachOf('pen'))
  })

  test('of two at one place the handle wins over the node', () => {
    const targets = [
      { id: 'node', at: [100, 100] as const, rank: 1 },
      { id: 'handle', at: [101, 100] as const, rank: 0 },
    ]
    expect(hitTarget(targets, [100, 100], 9)?.id).toBe('handle')
  })

  test('a press right on a node means it, though a handle is within reach', () => {
    const targets = [
      { id: 'node', at: [100, 100] as const, rank: 1 },
      { id: 'handle', at: [118, 100] as const, rank: 0 },
    ]
    expect(hitTarget(targets, [100, 100], 22)?.id).toBe('node')
  })

  test('nothing within reach is nothing', () => {
    expect(hitTarget([{ id: 'a', at: [0, 0] as const, rank: 0 }], [20, 0], 9)).toBeUndefined()
  })

  test('distance to a line counts its closing side only where it is closed', () => {
    const line = [
      [0, 0],
      [10, 0],
      [10, 10],
    ] as const
    expect(distanceToLine(line, [5, 6], false)).toBeCloseTo(5, 12)
    expect(distanceToLine(line, [5, 5], true)).toBeCloseTo(0, 12)
  })

  test('inside a ring with a bay is told from outside', () => {
    const ring = [
      [0, 0],
      [6, 0],
      [6, 6],
      [3, 2],
      [0, 6],
    ] as const
    expect(isInside(ring, [1, 3])).toBe(true)
    expect(isInside(ring, [3, 4])).toBe(false)
  })
})
