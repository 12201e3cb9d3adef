import { describe, expect, test } from 'vitest'
import { flightFor, TREAD_LEAST_M, treadsOf } from '../../../src/ui/plan/treads.ts'

const INCH = 0.0254

describe('steps', () => {
  test('risers lie between 7 and 12 in and divide the depth evenly (ISPSC 702.5.6–.7)', () => {
    for (let inches = 24; inches <= 96; inches++) {
      const flight = flightFor(inches * INCH)
      expect(flight.riserM / INCH, `${inches} in`).toBeGreaterThanOrEqual(7 - 1e-9)
      expect(flight.riserM / INCH, `${inches} in`).toBeLessThanOrEqual(12 + 1e-9)
      expect(flight.riserM * (flight.treads + 1)).toBeCloseTo(inches * INCH, 12)
    }
  })

  test('42 in of depth: four risers of 10½ in, so three treads of 11 in', () => {
    const flight = flightFor(42 * INCH)
    expect(flight.treads).toBe(3)
    expect(flight.riserM / INCH).toBeCloseTo(10.5, 9)
    expect(flight.treadM / INCH).toBeCloseTo(11, 9)
  })

  test('a run that was dragged is divided among the treads, never under 10 in each', () => {
    expect(flightFor(42 * INCH, 36 * INCH).treadM / INCH).toBeCloseTo(12, 9)
    expect(flightFor(42 * INCH, 12 * INCH).treadM).toBe(TREAD_LEAST_M)
  })

  test('treads start at the wall, round ones are outer radii', () => {
    const flight = { treads: 2, treadM: 0.3, riserM: 0.25, runM: 0.6 }
    expect(treadsOf(flight, false)).toEqual([
      [0, 0.25],
      [0.3, 0.5],
    ])
    expect(treadsOf(flight, true)).toEqual([
      [0.3, 0.25],
      [0.6, 0.5],
    ])
  })
})
