import { fail, ok, type Result, under } from '../base/index.ts'
import { type Product, productById } from '../chemicals/index.ts'
import { badNumber, wrongProduct } from './problems.ts'
import type { UpkeepInput } from './upkeep-types.ts'

const RANGES: readonly (readonly [key: keyof UpkeepInput, low: number, high: number, need: string])[] = [
  ['volumeM3', 1e-3, 1e6, 'between 0.001 and 1,000,000 m³'],
  ['waterSurfaceM2', 1e-3, 1e6, 'between 0.001 and 1,000,000 m²'],
  ['meanDepthM', 1e-2, 100, 'between 0.01 and 100 m'],
  ['latitudeDeg', -90, 90, 'between −90 and 90'],
  ['elevationM', -500, 6000, 'between −500 and 6000'],
  ['dayOfYear', 1, 366, 'a day of the year, 1 to 366'],
  ['airC', -40, 60, 'between −40 and 60 °C'],
  ['waterC', 0, 45, 'between 0 and 45 °C'],
  ['humidityPercent', 0, 100, 'between 0 and 100'],
  ['windMPerS', 0, 40, 'between 0 and 40 m/s'],
  ['sunshine', 0, 1, 'between 0 and 1'],
  ['bathersPerDay', 0, 1e5, 'between 0 and 100,000'],
  ['bathingHours', 0, 24, 'between 0 and 24'],
  ['coverHoursPerDay', 0, 24, 'between 0 and 24'],
  ['pumpHoursPerDay', 0, 24, 'between 0 and 24'],
]

export interface UpkeepProducts {
  readonly chlorine: Product
  readonly acid: Product
}

/** The numbers in their ranges, and the two products doing what they are for. */
export function checkUpkeep(input: UpkeepInput): Result<UpkeepProducts> {
  for (const [key, low, high, need] of RANGES) {
    const value = input[key] as number
    if (!(value >= low && value <= high)) return fail(badNumber(key, value, need))
  }
  const { feed } = input
  if (feed && !(feed.gPerDose >= 0 && Number.isFinite(feed.gPerDose)))
    return fail(badNumber('feed.gPerDose', feed.gPerDose, 'zero or more'))
  if (feed && !(feed.dosesPerWeek >= 0 && feed.dosesPerWeek <= 1e4))
    return fail(badNumber('feed.dosesPerWeek', feed.dosesPerWeek, 'between 0 and 10,000'))
  const chlorine = productById(input.chlorineProductId, input.productList)
  if (!chlorine.ok) return fail(under('chlorineProductId', { ...chlorine.problem, path: '' }))
  const acid = productById(input.acidProductId, input.productList)
  if (!acid.ok) return fail(under('acidProductId', { ...acid.problem, path: '' }))
  if (!chlorine.value.product.uses.includes('chlorine'))
    return fail(wrongProduct('chlorineProductId', chlorine.value.product.label, 'the daily chlorine'))
  if (!acid.value.product.uses.includes('acid'))
    return fail(wrongProduct('acidProductId', acid.value.product.label, 'lowering pH'))
  return ok({ chlorine: chlorine.value.product, acid: acid.value.product })
}
