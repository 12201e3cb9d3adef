import { describe, expect, it } from 'vitest'
import { dipsBetween } from '../../src/basin/pattern-dips.ts'

/** Places found between points looked at, for events of t. */
function found(places: readonly number[], ...events: readonly ((t: number) => number)[]): number[] {
  const eventsAt = (t: number, out: Float64Array): number => {
    events.forEach((event, i) => {
      out[i] = event(t)
    })
    return events.length
  }
  return dipsBetween({ eventsAt }, Float64Array.from(places), places.length)
}

const PLACES = [0, 0.1, 0.2, 0.3, 0.4, 0.5]

describe('events that leave no trace at the points looked at', () => {
  it('are found where one dips through zero as a parabola', () => {
    const dips = found(PLACES, (t) => (t - 0.26) ** 2 - 1e-4)
    expect(dips.length).toBeGreaterThan(0)
    for (const t of dips) expect(Math.abs(t - 0.26)).toBeLessThan(0.01)
  })

  it('are found where one dips through zero at a corner', () => {
    const dips = found(PLACES, (t) => (t < 0.26 ? 20 : 1) * Math.abs(t - 0.26) - 0.02)
    expect(dips.length).toBeGreaterThan(0)
    for (const t of dips) expect((t < 0.26 ? 20 : 1) * Math.abs(t - 0.26)).toBeLessThan(0.02)
  })

  it('are found between the changes of two, one of which undoes the other', () => {
    const dips = found(
      PLACES,
      (t) => t - 0.33,
      (t) => 0.37 - t,
    )
    expect(dips.some((t) => t > 0.33 && t < 0.37)).toBe(true)
  })

  it('are none where all keep their sign or one alone changes it', () => {
    expect(
      found(
        PLACES,
        (t) => t + 1,
        (t) => t - 0.33,
      ),
    ).toEqual([])
  })
})
