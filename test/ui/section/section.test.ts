import { describe, expect, test } from 'vitest'
import { deriveBody } from '../../../src/derive/index.ts'
import { type Body, demoSpec } from '../../../src/document/index.ts'
import { drawnCut, isInWater, wetStretches } from '../../../src/ui/section/cut.ts'
import { runsOf } from '../../../src/ui/section/slopes.ts'

describe('slopes of the floor', () => {
  test('a run steeper than 1 : 7 in water to 1.5 m passes the usual limit, 1 : 7 itself does not', () => {
    expect(
      runsOf([
        [0, 1],
        [7, 2],
      ])[0]?.usualLimit,
    ).toBeUndefined()
    expect(
      runsOf([
        [0, 1],
        [5, 2],
      ])[0]?.usualLimit,
    ).toBe(7)
  })

  test('in deeper water the limit is 1 : 3', () => {
    expect(
      runsOf([
        [0, 1.6],
        [4, 2.6],
      ])[0]?.usualLimit,
    ).toBeUndefined()
    expect(
      runsOf([
        [0, 1.6],
        [2, 2.6],
      ])[0]?.usualLimit,
    ).toBe(3)
  })

  test('a rising floor is as steep as a falling one, a level one has no slope', () => {
    expect(
      runsOf([
        [0, 2],
        [4, 1],
      ])[0]?.slope,
    ).toBeCloseTo(0.25, 12)
    expect(
      runsOf([
        [0, 2],
        [4, 2],
      ])[0]?.slope,
    ).toBe(0)
  })

  test('stations at one place make no run', () => {
    expect(
      runsOf([
        [1, 2],
        [1, 3],
      ]),
    ).toEqual([])
  })
})

describe('the section', () => {
  const body: Body = { ...demoSpec.bodies[0]!, wall: { kind: 'vertical' }, features: [] }
  const { partition } = deriveBody(body)
  if (!partition.ok) throw new Error(partition.problem.what)
  const { axis } = body.floor.kind === 'profile' ? body.floor : { axis: { from: [0, 0], to: [1, 0] } as const }
  const cut = drawnCut(partition.value, axis)

  test('the bed runs from wall to wall through every station, with distances from A', () => {
    const [bed = []] = cut.beds
    expect(cut.beds).toHaveLength(1)
    const stations = body.floor.kind === 'profile' ? body.floor.stations : []
    for (const [s, d] of stations.filter(([at]) => at > 0.1 && at < 10.5)) {
      expect(
        bed.some((p) => Math.abs(p[0] - s) < 1e-6 && Math.abs(p[1] - d) < 1e-6),
        `${s}`,
      ).toBe(true)
    }
    bed.forEach((p, i) => {
      if (i > 0) expect(p[0]).toBeGreaterThanOrEqual((bed[i - 1]?.[0] ?? 0) - 1e-9)
    })
  })

  test('full, it is wet from wall to wall; lowered below the shallow end, only the deep end is', () => {
    const [bed = []] = cut.beds
    const [whole] = wetStretches(bed, 0)
    expect(whole?.[0]).toBeCloseTo(bed[0]?.[0] ?? Number.NaN, 9)
    expect(whole?.[1]).toBeCloseTo(bed.at(-1)?.[0] ?? Number.NaN, 9)
    const low = wetStretches(bed, -1.35)
    expect(low).toHaveLength(1)
    // Between the stations 1.2 m deep at 3 m and 1.5 m deep at 5.4 m the floor is 1.35 m deep halfway.
    expect(low[0]?.[0]).toBeCloseTo(4.2, 9)
    expect(wetStretches(bed, -5)).toEqual([])
  })

  test('over its datum the water reaches the walls that go on straight up', () => {
    const [bed = []] = cut.beds
    const [over] = wetStretches(bed, 0.1)
    expect(over?.[1]).toBe(bed.at(-1)?.[0])
  })
})

test('a place under a shelf or behind a leaning wall is not in the water', () => {
  // A shelf 0.4 m deep to 2 m, then a floor at 1.5 m, and a wall that leans in from 5 m.
  const beds = [
    [
      [0, 0],
      [0, 0.4],
      [2, 0.4],
      [2, 1.5],
      [5, 1.5],
      [6, 0],
    ],
  ] as const
  expect(isInWater(beds, 1, 0.3)).toBe(true)
  expect(isInWater(beds, 1, 1.2)).toBe(false)
  expect(isInWater(beds, 3, 1.2)).toBe(true)
  expect(isInWater(beds, 5.9, 1)).toBe(false)
  expect(isInWater(beds, 7, 0.1)).toBe(false)
})
