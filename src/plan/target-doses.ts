import { fail, ok, type Result, under } from '../base/index.ts'
import { doseDelta, type Product, type ProductList, productById } from '../chemicals/index.ts'
import { addTotals, type Constants, type Delta, totalsOf, type WaterReading } from '../water/index.ts'
import { saltChange } from './effect.ts'
import { badNumber, targetUnreachable } from './problems.ts'
import { type SolvedWater, solvedWater } from './solved.ts'
import { quietAmounts, type SideMoves, sideMoves } from './target-sides.ts'
import { type AmountScore, dosesSum, type ExactTarget } from './target-solve.ts'
import { whyUnreachable } from './target-why.ts'

interface TargetDose {
  readonly product: string
  readonly gPerM3?: number | undefined
  readonly mLPerM3?: number | undefined
}

export interface TargetAnswer {
  readonly doses: readonly TargetDose[]
  readonly after: SolvedWater
  /** What has no target and can't be left alone on the way there; absent where all of it can. */
  readonly moves?: SideMoves | undefined
}

/** A product by the name it was asked for, with what one unit of its basis changes [mol/kg per g/m³ or mL/m³]. */
interface Means {
  readonly name: string
  readonly basis: 'g' | 'mL'
  readonly perUnit: Delta
  /** Price of one unit; absent where nobody gave one. */
  readonly price?: number | undefined
}

/** What to choose by where several sets of products reach the target. */
export type TargetObjective =
  | { readonly kind: 'fewest-products' }
  | { readonly kind: 'least-salt' }
  /** Price of a gram by product; what is in stock costs nothing, a product without a price comes last. */
  | { readonly kind: 'cheapest'; readonly perGram: { readonly [productId: string]: number | undefined } }

interface TargetOptions {
  readonly objective?: TargetObjective | undefined
  readonly products?: ProductList | undefined
}

/** A product without a price is never the cheap way while another one has a price. */
const UNPRICED = 1e6

/**
 * The doses that bring a closed water exactly to a target with these products, none below zero: fewest products, earlier
 * ones preferred, unless another objective is given. All the ways that use no more products than the target has rows are
 * looked at, which is where the least of each objective lies. Chlorine, stabiliser, borate and calcium that have no target
 * stay where they are; only where that can't be do they move, as little as can be, and the answer says so.
 */
export function targetDoses(
  start: WaterReading,
  target: ExactTarget,
  productIds: readonly string[],
  constants: Constants,
  options: TargetOptions = {},
): Result<TargetAnswer> {
  const totals = totalsOf(start, constants)
  if (!totals.ok) return fail(under('start', totals.problem))
  for (const [key, value] of Object.entries(target))
    if (value !== undefined && !(Number.isFinite(value) && value >= 0))
      return fail(badNumber(`target.${key}`, value, 'zero or more'))
  const means: Means[] = []
  for (const [index, name] of productIds.entries()) {
    const found = productById(name, options.products)
    if (!found.ok) return fail(under(`products[${index}]`, { ...found.problem, path: '' }))
    const { basis, product } = found.value
    const perUnit = doseDelta(name, basis === 'mL' ? { mLPerM3: 1 } : { gPerM3: 1 }, options.products)
    if (!perUnit.ok) return fail(under(`products[${index}]`, perUnit.problem))
    means.push({ name, basis, perUnit: perUnit.value, price: priceOf(product, basis, options.objective) })
  }
  const deltas = means.map((mean) => mean.perUnit)
  const amounts = quietAmounts(totals.value, target, deltas, constants, scoreBy(options.objective, means))
  if (!amounts) return fail(targetUnreachable(whyUnreachable(totals.value, target, deltas, constants)))
  const sum = dosesSum(deltas, amounts)
  const after = solvedWater(addTotals(totals.value, sum), constants)
  if (!after.ok) return after
  const doses = means.flatMap((mean, index): TargetDose[] => {
    const amount = amounts[index] ?? 0
    if (amount <= 0) return []
    return [mean.basis === 'mL' ? { product: mean.name, mLPerM3: amount } : { product: mean.name, gPerM3: amount }]
  })
  const moves = sideMoves(totals.value, target, sum)
  return ok({ doses, after: after.value, ...(moves ? { moves } : {}) })
}

function priceOf(product: Product, basis: 'g' | 'mL', objective: TargetObjective | undefined): number | undefined {
  if (objective?.kind !== 'cheapest') return undefined
  const perGram = objective.perGram[product.id]
  if (perGram === undefined) return undefined
  return product.form === 'liquid' && basis === 'mL' ? perGram * product.densityGPerML : perGram
}

/** What a set of amounts is worth by an objective; undefined where the fewest products are wanted. */
function scoreBy(objective: TargetObjective | undefined, means: readonly Means[]): AmountScore | undefined {
  if (objective === undefined || objective.kind === 'fewest-products') return undefined
  const sum = (amounts: readonly number[], each: (mean: Means) => number) =>
    means.reduce((total, mean, index) => total + (amounts[index] ?? 0) * each(mean), 0)
  if (objective.kind === 'cheapest') return (amounts) => sum(amounts, (mean) => mean.price ?? UNPRICED)
  return (amounts) => sum(amounts, ({ perUnit }) => saltChange(perUnit))
}
