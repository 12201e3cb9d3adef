import { fail, ok, type Result } from '../base/index.ts'
import { acidDensity, liquidChlorineDensity, tradePercentOf } from './densities.ts'
import { badDensity, notStrength, tooStrong, wrongBasis } from './problems.ts'
import type { Active, Product } from './types.ts'

/** What a label's percentage is a percentage of. */
export type StrengthBasis = 'percent-by-mass' | 'trade-percent' | 'available-chlorine'

export interface LabelStrength {
  /** Grams of the active substance in 100 g of product. */
  readonly activePercent: number
  readonly densityGPerML: number
  /** True where the label says a little more than pure and pure was taken. */
  readonly isRoundedUp: boolean
  readonly densityFrom: 'label' | 'table' | 'generic'
}

const LIQUID_DENSITY = [0.99, 1.6] as const
const SOLID_DENSITY = [0.3, 3] as const

/** Grams of the active substance in 100 g of a generic product. */
export function activePercentOf(product: Product, active: Active): number {
  const first = product.contains[0]
  return first ? (first.gPer100g / first.gPerMol) * active.gPerMol : 0
}

/** In which ways a label can state the strength of such a product. */
export function basesOf(like: Product): readonly StrengthBasis[] {
  if (!like.active) return []
  if (like.availableChlorine === 0) return ['percent-by-mass']
  return like.form === 'liquid'
    ? ['trade-percent', 'available-chlorine', 'percent-by-mass']
    : ['available-chlorine', 'percent-by-mass']
}

/** Share of the active substance and density behind a strength as a label states it. */
export function labelStrength(
  like: Product,
  active: Active,
  basis: StrengthBasis,
  strength: number,
  densityKgPerL: number | undefined,
): Result<LabelStrength> {
  const bases = basesOf(like)
  if (!bases.includes(basis)) return fail(wrongBasis(basis, like.label, bases))
  if (!(Number.isFinite(strength) && strength > 0)) return fail(notStrength(strength))
  const [low, high] = like.form === 'liquid' ? LIQUID_DENSITY : SOLID_DENSITY
  if (densityKgPerL !== undefined && !(densityKgPerL >= low && densityKgPerL <= high))
    return fail(badDensity(densityKgPerL, low, high))

  const chlorinePerActive = (like.availableChlorine * 100) / activePercentOf(like, active)
  const density = densityKgPerL ?? usualDensity(like, basis, strength, chlorinePerActive)
  /** Percent of the active substance for one percent of the label. */
  const factor = basis === 'percent-by-mass' ? 1 : 1 / chlorinePerActive / (basis === 'trade-percent' ? density : 1)
  const most = active.mostPercent / factor
  // labels print whole percents, so a pure product of 55.4 % is sold as 56 %
  if (strength > Math.ceil(most - 1e-9)) {
    const unit = { 'percent-by-mass': '%', 'trade-percent': 'trade %', 'available-chlorine': '% available chlorine' }
    return fail(tooStrong(strength, most, unit[basis], active.substance, active.moreMeans))
  }
  return ok({
    activePercent: Math.min(strength * factor, active.mostPercent),
    densityGPerML: density,
    isRoundedUp: strength > most,
    densityFrom: densityKgPerL !== undefined ? 'label' : like.form === 'liquid' ? 'table' : 'generic',
  })
}

function usualDensity(like: Product, basis: StrengthBasis, strength: number, chlorinePerActive: number): number {
  if (like.form !== 'liquid') return like.densityGPerML
  if (like.groups.includes('acid')) return acidDensity(strength)
  if (basis === 'trade-percent') return liquidChlorineDensity(strength)
  return liquidChlorineDensity(tradePercentOf(basis === 'percent-by-mass' ? strength * chlorinePerActive : strength))
}
