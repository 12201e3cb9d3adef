import { fail, ok, type Problem, type Result, under } from '../base/index.ts'
import { type Product, productById } from '../chemicals/index.ts'
import { badNumber, bandNotNumbers, bandOutOfRange, bandUpsideDown, unknownRegime, wrongProduct } from './problems.ts'
import { USE_OF } from './purposes.ts'
import { REGIMES } from './regimes.ts'
import { TARGET_KEYS } from './targets.ts'
import type { Band, OpeningInput, Purpose, TargetKey } from './types.ts'

export type PurposeProducts = { readonly [P in Purpose]: Product }

const PURPOSE_TEXT: { readonly [P in Purpose]: string } = {
  acid: 'lowering pH',
  alkalinity: 'raising alkalinity',
  base: 'raising pH',
  openingChlorine: 'the first chlorine',
  dailyChlorine: 'the daily chlorine',
  calcium: 'raising calcium hardness',
  borate: 'raising borate',
  stabiliser: 'raising stabiliser',
  salt: 'raising salt',
}

/** Outside these a pH band is a slip: eyes and metal suffer below, chlorine hardly works above (common practice, no source). */
const PH_LOWEST = 6.5
const PH_HIGHEST = 8.5

function bandProblem(key: TargetKey, band: Band): Problem | undefined {
  const { low, aim, high } = band
  if (![low, aim, high].every((value) => Number.isFinite(value) && value >= 0)) return bandNotNumbers(key)
  if (!(low <= aim && aim <= high)) return bandUpsideDown(key)
  if (key === 'pH' && !(low >= PH_LOWEST && high <= PH_HIGHEST)) return bandOutOfRange(key, band, PH_LOWEST, PH_HIGHEST)
  return undefined
}

/** The product of every purpose: the owner's, else the regime's; a Problem where one doesn't do its job. */
function productsFor({ products: chosen, regimeId, productList }: OpeningInput): Result<PurposeProducts> {
  const regime = REGIMES.get(regimeId)
  if (!regime)
    return fail(
      unknownRegime(
        regimeId,
        REGIMES.rows.map((row) => row.id),
      ),
    )
  const products: Partial<Record<Purpose, Product>> = {}
  for (const purpose of Object.keys(USE_OF) as Purpose[]) {
    const path = `products.${purpose}`
    const found = productById(chosen[purpose] ?? regime.products[purpose], productList)
    if (!found.ok) return fail(under(path, { ...found.problem, path: '' }))
    const { product } = found.value
    if (!product.uses.includes(USE_OF[purpose])) return fail(wrongProduct(path, product.label, PURPOSE_TEXT[purpose]))
    products[purpose] = product
  }
  return ok(products as Record<Purpose, Product>)
}

/** The numbers and bands that everything else relies on. */
export function checkOpening(input: OpeningInput): Result<PurposeProducts> {
  if (!(input.volumeM3 > 0) || !Number.isFinite(input.volumeM3))
    return fail(badNumber('volumeM3', input.volumeM3, 'above zero'))
  if (!(input.volumeSigmaM3 >= 0) || !Number.isFinite(input.volumeSigmaM3))
    return fail(badNumber('volumeSigmaM3', input.volumeSigmaM3, 'zero or more'))
  if (input.turnoverHours !== undefined && !(input.turnoverHours > 0 && Number.isFinite(input.turnoverHours)))
    return fail(badNumber('turnoverHours', input.turnoverHours, 'above zero'))
  for (const key of TARGET_KEYS) {
    const band = input.targets[key]
    const problem = band && bandProblem(key, band)
    if (problem) return fail(problem)
  }
  return productsFor(input)
}
