import { describe, expect, test } from 'vitest'
import { isOverBasin, type Probe, probeWords } from '../../../src/ui/solid/probe.ts'
import type { UnitSystem } from '../../../src/units/index.ts'

const FT = 0.3048
const floor: Probe = { x: 0, y: 0, z: -(5 + 7 / 12) * FT, part: 'floor', featureName: undefined }
/** The units' thin and fixed spaces are the printer's business, not this test's. */
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ')

const words = (probe: Probe, levelM: number, system: UnitSystem, referenceM = 0) =>
  probeWords(probe, { levelM, referenceM, system })

describe('what is said of a place on the shell', () => {
  test('depth and part, in either system', () => {
    expect(plain(words(floor, 0, 'us'))).toBe('5 ft 7 in · floor')
    expect(plain(words(floor, 0, 'metric'))).toBe('1.70 m · floor')
  })

  test('depths are said from what they are measured from', () => {
    expect(plain(words(floor, 0, 'us', 0.5 * FT))).toBe('6 ft 1 in · floor')
  })

  test('a feature goes by its own name, a wall by its own', () => {
    const shelf: Probe = { ...floor, part: 'feature', featureName: 'shelf' }
    expect(plain(words(shelf, 0, 'us'))).toBe('5 ft 7 in · shelf')
    expect(plain(words({ ...floor, part: 'riser' }, 0, 'us'))).toBe('5 ft 7 in · riser')
  })

  test('with another level it says how much water stands there, or that it is dry', () => {
    expect(plain(words(floor, -2 * FT, 'us'))).toBe('5 ft 7 in · floor · 3 ft 7 in of water')
    expect(plain(words(floor, -6 * FT, 'us'))).toBe('5 ft 7 in · floor · dry')
  })

  test('above the waterline it never shows a depth with a minus sign', () => {
    const rim: Probe = { ...floor, z: 0.5 * FT, part: 'rim' }
    expect(plain(words(rim, 0, 'us', 0.5 * FT))).toMatch(/^0/)
    expect(plain(words(rim, 0, 'us'))).toBe('6 in above zero depth · wall above the water')
    expect(plain(words({ ...floor, z: 1e-9 }, 0, 'us'))).not.toMatch(/[-−]/)
  })

  test('over the basin means inside the outline and outside its islands', () => {
    const rings = [
      [0, 0, 4, 0, 4, 4, 0, 4],
      [1, 1, 2, 1, 2, 2, 1, 2],
    ]
    expect(isOverBasin(rings, 3, 3)).toBe(true)
    expect(isOverBasin(rings, 1.5, 1.5)).toBe(false)
    expect(isOverBasin(rings, 5, 3)).toBe(false)
    expect(isOverBasin([], 0, 0)).toBe(false)
  })
})
