import { fail, ok, type Result, under } from '../base/index.ts'
import { type Product, productById } from '../chemicals/index.ts'
import { badNumber, bandUpsideDown, unknownRegime, wrongProduct } from './problems.ts'
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

function isBand(key: TargetKey, band: Band): boolean {
  const { low, aim, high } = band
  if (![low, aim, high].every((value) => Number.isFinite(value) && value >= 0)) return false
  return low <= aim && aim <= high && (key !== 'pH' || (low >= 6.5 && high <= 8.5))
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
    if (band && !isBand(key, band)) return fail(bandUpsideDown(key))
  }
  return productsFor(input)
}
