import { fail, ok, type Result, under } from '../base/index.ts'
import { deltaOf, type Product, type ProductList, productById } from '../chemicals/index.ts'
import { addTotals, type Constants } from '../water/index.ts'
import type { Poured } from './assemble.ts'
import { badNumber } from './problems.ts'
import { type SolvedWater, solvedWater } from './solved.ts'
import type { GivenDose } from './types.ts'

export const MS_PER_HOUR = 3_600_000

export interface GivenStep {
  readonly dose: GivenDose
  readonly product: Product
  readonly before: SolvedWater
  readonly after: SolvedWater
}

/** The water after each dose that was really given, from the readings on. */
export function afterGiven(
  start: SolvedWater,
  given: readonly GivenDose[],
  volumeM3: number,
  constants: Constants,
  products: ProductList | undefined,
): Result<readonly GivenStep[]> {
  const steps: GivenStep[] = []
  let water = start
  for (const [index, dose] of given.entries()) {
    const path = `given[${index}]`
    const found = productById(dose.product, products)
    if (!found.ok) return fail(under(path, found.problem))
    if (!Number.isFinite(dose.amountG) || dose.amountG < 0)
      return fail(badNumber(`${path}.amountG`, dose.amountG, 'zero or more'))
    const { product } = found.value
    const after = solvedWater(addTotals(water.totals, deltaOf(product, dose.amountG / volumeM3)), constants)
    if (!after.ok) return fail(under(path, after.problem))
    steps.push({ dose, product, before: water, after: after.value })
    water = after.value
  }
  return ok(steps)
}

/** Every given dose with its hour from `originMs`: what goes in next is kept apart from each. */
export function pouredBefore(
  given: readonly GivenDose[],
  originMs: number,
  products: ProductList | undefined,
): readonly Poured[] {
  return given.flatMap((dose) => {
    const found = productById(dose.product, products)
    // one that was given since the readings has failed the plan by now; of an older one nothing is known against it
    return found.ok ? [{ product: found.value.product, atHours: (dose.atMs - originMs) / MS_PER_HOUR }] : []
  })
}
