import { describe, expect, test } from 'vitest'
import { bandDepths, groundUnder, rampColour, rampPlace } from '../../../src/ui/plan/depth-steps.ts'

const FOOT = 0.3048

describe('depth bands', () => {
  test('a pool of 7 ft 3 in is divided at each foot, one of 2.2 m at each half metre', () => {
    expect(bandDepths(7.25 * FOOT, 'us').map((d) => Math.round(d / FOOT))).toEqual([1, 2, 3, 4, 5, 6, 7])
    expect(bandDepths(2.2, 'metric')).toEqual([0.5, 1, 1.5, 2])
  })

  test('no band is empty at the bottom, none at all without water, never more than the ramp can tell apart', () => {
    expect(bandDepths(2, 'metric')).toEqual([0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75])
    expect(bandDepths(0, 'us')).toEqual([])
    for (const depth of [0.3, 1, 3, 9, 40, 400]) expect(bandDepths(depth, 'us').length).toBeLessThan(9)
  })
})

describe('the ramp', () => {
  test('deeper is never paler, and the deepest place is the darkest', () => {
    const places = Array.from({ length: 50 }, (_, i) => rampPlace((i / 49) * 2.4, 2.4))
    places.forEach((place, i) => {
      if (i > 0) expect(place).toBeGreaterThanOrEqual(places[i - 1] ?? 0)
    })
    expect(places.at(-1)).toBe(6)
    expect(rampPlace(0, 2.4)).toBeGreaterThan(0)
  })

  test('a wading pool is not drawn as dark as a deep one', () => {
    expect(rampPlace(0.5, 0.5)).toBeLessThan(rampPlace(2, 2) / 2)
  })

  test('whole places are the tokens themselves, others mix two neighbours', () => {
    expect(rampColour(3)).toBe('var(--depth-3)')
    expect(rampColour(6)).toBe('var(--depth-6)')
    expect(rampColour(2.5)).toBe('color-mix(in oklab, var(--depth-2), var(--depth-3) 50%)')
  })
})

describe('what a figure stands on', () => {
  test('floor that a lowered water lays bare takes the dark ink, however deep it lies', () => {
    expect(groundUnder(2, 2.2, 0).isDeep).toBe(true)
    expect(groundUnder(2, 2.2, -2.1)).toEqual({ colour: 'var(--land)', isDeep: false })
    expect(groundUnder(2, 2.2, -2)).toEqual({ colour: 'var(--land)', isDeep: false })
    expect(groundUnder(2.1, 2.2, -2)).toEqual({ colour: rampColour(rampPlace(2.1, 2.2)), isDeep: true })
  })
})
