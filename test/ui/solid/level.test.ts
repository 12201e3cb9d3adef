import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  isSameLevel,
  levelOfTick,
  levelScale,
  placeOfLevel,
  shareWords,
  tickOfLevel,
  waterWords,
} from '../../../src/ui/solid/level.ts'

const depth = fc.double({ min: 0.05, max: 6, noNaN: true })
const freeboard = fc.double({ min: 0, max: 0.6, noNaN: true })
const system = fc.constantFrom('us' as const, 'metric' as const, 'imperial' as const)

describe('the level slider', () => {
  test('its ends are just empty and just the rim, and the waterline is one of its ticks', () => {
    fc.assert(
      fc.property(depth, freeboard, system, (deepestM, freeboardM, units) => {
        const scale = levelScale(deepestM, freeboardM, units)
        expect(levelOfTick(scale, scale.lowTick)).toBe(-deepestM)
        expect(levelOfTick(scale, scale.highTick)).toBe(freeboardM)
        expect(Object.is(levelOfTick(scale, 0), 0)).toBe(true)
        expect(scale.lowTick).toBeLessThanOrEqual(0)
        expect(scale.highTick).toBeGreaterThanOrEqual(0)
      }),
      { seed: 11 },
    )
  })

  test('ticks come back from their levels, and between the ends they are whole inches or centimetres', () => {
    fc.assert(
      fc.property(depth, freeboard, system, fc.nat(), (deepestM, freeboardM, units, any) => {
        const scale = levelScale(deepestM, freeboardM, units)
        const tick = scale.lowTick + (any % (scale.highTick - scale.lowTick + 1))
        const levelM = levelOfTick(scale, tick)
        if (tick > scale.lowTick && tick < scale.highTick) {
          expect(tickOfLevel(scale, levelM)).toBe(tick)
          const step = units === 'metric' ? 0.01 : 0.0254
          expect(Math.abs(levelM / step - Math.round(levelM / step))).toBeLessThan(1e-9)
        }
        expect(placeOfLevel(scale, levelM)).toBeGreaterThanOrEqual(0)
        expect(placeOfLevel(scale, levelM)).toBeLessThanOrEqual(1)
      }),
      { seed: 12 },
    )
  })

  test('the further up, the further along', () => {
    const scale = levelScale(2.4, 0.15, 'metric')
    const places = [-2.4, -1, -0.2, 0, 0.1, 0.15].map((levelM) => placeOfLevel(scale, levelM))
    expect(places).toEqual(places.toSorted((a, b) => a - b))
    expect(new Set(places).size).toBe(places.length)
  })

  test('a level outside the basin is held at its ends; half a millimetre is the same level', () => {
    const scale = levelScale(2, 0.1, 'us')
    expect(levelOfTick(scale, 1e6)).toBe(0.1)
    expect(levelOfTick(scale, -1e6)).toBe(-2)
    expect(isSameLevel(0, 0.0004)).toBe(true)
    expect(isSameLevel(0, 0.001)).toBe(false)
  })

  test('a basin with no depth and no freeboard still has a scale', () => {
    const scale = levelScale(0, 0, 'us')
    expect(levelOfTick(scale, tickOfLevel(scale, 3))).toBe(0)
    expect(placeOfLevel(scale, 0)).toBe(0)
  })

  test('a dry basin has no figure: it says that there is no water', () => {
    expect(waterWords(0, Number.NaN, 'us')).toBe('no water')
    expect(waterWords(Number.NaN, Number.NaN, 'us')).toBe('no water')
    expect(waterWords(20, 0.5, 'metric')).toMatch(/^20.*\sm³$/)
  })
})

test('a share is told of water that stands there today, not of a film that a wall leaves of it', () => {
  expect(shareWords(10, 20, 'us')).toMatch(/^50\s%$/)
  expect(shareWords(7.3, 1.2e-10, 'us')).toBeUndefined()
  expect(shareWords(0, 20, 'us')).toBeUndefined()
  expect(shareWords(Number.NaN, 20, 'us')).toBeUndefined()
})
