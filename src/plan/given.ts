import { fail, ok, type Result, under } from '../base/index.ts'
import { deltaOf, type Product, productById } from '../chemicals/index.ts'
import { addTotals, type Constants } from '../water/index.ts'
import { badNumber } from './problems.ts'
import { type SolvedWater, solvedWater } from './solved.ts'
import type { GivenDose } from './types.ts'

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
): Result<readonly GivenStep[]> {
  const steps: GivenStep[] = []
  let water = start
  for (const [index, dose] of given.entries()) {
    const path = `given[${index}]`
    const found = productById(dose.product)
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
