import { describe, expect, test } from 'vitest'
import { stationProblem } from '../../../src/ui/plan/station-place.ts'

const FT = 0.3048
const STATIONS = [
  [0, 1],
  [32 * FT, 2],
  [40 * FT, 2.5],
] as const

describe('a typed distance of a station', () => {
  test('one past its neighbour is refused, by the neighbour’s number and place', () => {
    expect(stationProblem(STATIONS, 0, 40 * FT, 'us')?.what).toMatch(/^It has to be before station 2, at 32′\s0″\.$/)
    expect(stationProblem(STATIONS, 1, 50 * FT, 'us')?.what).toMatch(/before station 3, at 40′/)
    expect(stationProblem(STATIONS, 2, 10 * FT, 'metric')?.what).toMatch(
      /^It has to be after station 2, at 9\.75\d*\sm\.$/,
    )
    expect(stationProblem(STATIONS, 1, -1, 'us')?.what).toMatch(/after station 1, at 0″/)
  })

  test('between its neighbours, and beyond the last, any is taken', () => {
    for (const [station, sM] of [
      [0, -3],
      [0, 31 * FT],
      [1, 33 * FT],
      [2, 90],
    ] as const)
      expect(stationProblem(STATIONS, station, sM, 'us')).toBe(undefined)
  })
})
