import { describe, expect, test } from 'vitest'
import type { ContourLine } from '../../../src/basin/index.ts'
import { contourLabels, isClearOf, writeContour } from '../../../src/ui/solid/contour-labels.ts'
import { contourSegments, innerEdges, rimSegments } from '../../../src/ui/solid/line-segments.ts'

const open: ContourLine = {
  depthM: 1.5,
  closed: false,
  points: [
    [0, 0],
    [3, 0],
    [3, 4],
  ],
}
const closed: ContourLine = {
  depthM: 1,
  closed: true,
  points: [
    [0, 0],
    [2, 0],
    [2, 2],
  ],
}

describe('figures on the solid', () => {
  test('one stands only where it is clear of those before it, beside them or above', () => {
    const taken = [[100, 100] as const]
    expect(isClearOf([100, 100], taken)).toBe(false)
    expect(isClearOf([130, 110], taken)).toBe(false)
    expect(isClearOf([150, 100], taken)).toBe(true)
    expect(isClearOf([100, 126], taken)).toBe(true)
    expect(isClearOf([0, 0], [])).toBe(true)
  })
})

describe('ink on the solid', () => {
  test('a contour line lies level at its depth, and only a closed one comes round', () => {
    expect([...contourSegments([open])]).toEqual([0, 0, -1.5, 3, 0, -1.5, 3, 0, -1.5, 3, 4, -1.5])
    const around = [...contourSegments([closed])]
    expect(around).toHaveLength(18)
    expect(around.slice(12)).toEqual([2, 2, -1, 0, 0, -1])
  })

  test('the rim comes round every ring at its height', () => {
    const rim = rimSegments([new Float64Array([0, 0, 1, 0, 1, 1])], 0.25)
    expect(rim).toHaveLength(18)
    expect([...rim.slice(12)]).toEqual([1, 1, 0.25, 0, 0, 0.25])
  })

  test('edges below the rim are told apart: a break has floor on both sides, a step has not; the rim is left out', () => {
    const edges = new Float32Array([
      ...[0, 0, 0.1, 4, 0, 0.1],
      ...[2, 0, -1, 2, 3, -1],
      ...[3, 0, -0.5, 3, 3, -0.5],
      ...[0, 0, -1, 0, 0, 0.1],
    ])
    const sampleAt = (x: number) => ({ depthM: 1, part: x > 3 ? ('feature' as const) : ('floor' as const) })
    const { steps, breaks } = innerEdges(edges, 0.1, sampleAt)
    expect([...breaks].slice(0, 6)).toEqual([2, 0, -1, 2, 3, -1])
    expect(steps[0]).toBe(3)
    // An upright edge has no sides to look at; it is kept, at full strength where it is no break of the floor.
    expect(steps.length + breaks.length).toBe(18)
  })

  test('each depth has one figure, on its longest line, first at that line’s middle', () => {
    const short: ContourLine = {
      depthM: 1.5,
      closed: false,
      points: [
        [9, 9],
        [10, 9],
      ],
    }
    const tiny: ContourLine = {
      depthM: 2,
      closed: false,
      points: [
        [0, 0],
        [0.1, 0],
      ],
    }
    const labels = contourLabels([short, open, tiny])
    expect(labels.map((label) => label.depthM)).toEqual([1.5])
    expect(labels[0]!.places[0]).toEqual({ at: [3, 0.5], along: [0, 1] })
  })

  test('round depths are written short, in the unit that they are round in', () => {
    const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ')
    expect(plain(writeContour(5 * 0.3048, 'us'))).toBe('5 ft')
    expect(plain(writeContour(1.5, 'metric'))).toBe('1.5 m')
    expect(plain(writeContour(0.25, 'metric'))).toBe('0.25 m')
    expect(plain(writeContour(0.5 * 0.3048, 'us'))).toBe('6″')
  })
})
