import { describe, expect, test } from 'vitest'
import { type Upkeep, upkeep } from '../../src/plan/index.ts'
import { good } from '../water/golden.ts'
import { OPEN_POOL } from './upkeep-cases.ts'

const bare = { ...OPEN_POOL, coverKind: 'none', coverHoursPerDay: 0, helpers: [] } as const
const under = (more: object = {}): Upkeep => good(upkeep({ ...bare, isIndoor: true, ...more }))
const gas = (of: Upkeep) => of.acidTerms.find(({ id }) => id === 'outgassing')!

describe('under a roof', () => {
  test('neither wind nor the weather outside moves evaporation or acid', () => {
    const calm = under({ windMPerS: 0, airC: 5, humidityPercent: 90 })
    const storm = under({ windMPerS: 9, airC: 35, humidityPercent: 20 })
    expect(storm.evaporationMmPerDay).toBe(calm.evaporationMmPerDay)
    expect(gas(storm).value).toBe(gas(calm).value)
    // a heated hall: some 2 to 4 mm a day from still water at 26 to 30 °C (from memory)
    expect(calm.evaporationMmPerDay).toBeGreaterThan(1)
    expect(calm.evaporationMmPerDay).toBeLessThan(5)
  })

  test('what is assumed is said, with how sure it is, and the ranges are wider than outdoors', () => {
    const roofed = under()
    const open = good(upkeep(bare))
    expect(roofed.warnings.join(' ')).toContain('common practice, no source')
    const width = (of: Upkeep) => (of.evaporationHighMmPerDay - of.evaporationLowMmPerDay) / of.evaporationMmPerDay
    expect(width(open)).toBeCloseTo(0.3, 6)
    expect(width(roofed)).toBeGreaterThan(0.6)
    expect(roofed.evaporationLowMmPerDay).toBeLessThan(roofed.evaporationMmPerDay)
    expect(gas(roofed).how).toContain('a factor of three')
    expect(open.warnings.join(' ')).not.toContain('roof')
  })
})
