import { rangeOf } from './demand-terms.ts'
import type { DemandTerm, Upkeep } from './upkeep-types.ts'

/**
 * The upkeep where nobody read stabiliser: every range runs from water that holds some to water without any, the terms' own
 * figures are for the first, no single amount of chlorine is named, and the floor is judged by the second, the worse.
 */
export function betweenStabilisers(none: Upkeep, some: Upkeep, someMgPerL: number): Upkeep {
  const chlorineTerms = some.chlorineTerms.map((term) => {
    const spanned = spanOf(term, none.chlorineTerms)
    return term.id === 'sun'
      ? {
          ...spanned,
          how: `${term.how} Stabiliser is unknown: the figure is for ${someMgPerL} mg/L of it, the upper end of the range for none.`,
        }
      : spanned
  })
  const { low, high } = rangeOf(chlorineTerms)
  const days = Math.min(none.pHDriftDays ?? Number.POSITIVE_INFINITY, some.pHDriftDays ?? Number.POSITIVE_INFINITY)
  const { productGPerDay: _, productGPerWeek: __, packagesPerWeek: ___, ...rest } = some
  return {
    ...rest,
    chlorineTerms,
    chlorineLowMgPerLDay: Math.max(0, low),
    chlorineHighMgPerLDay: high,
    productLowGPerDay: Math.min(none.productLowGPerDay, some.productLowGPerDay),
    productHighGPerDay: Math.max(none.productHighGPerDay, some.productHighGPerDay),
    bringsPerWeek: [],
    acidTerms: some.acidTerms.map((term) => spanOf(term, none.acidTerms)),
    ...(Number.isFinite(days) ? { pHDriftDays: days } : {}),
    acidLowGPerFortnight: Math.min(none.acidLowGPerFortnight, some.acidLowGPerFortnight),
    acidHighGPerFortnight: Math.max(none.acidHighGPerFortnight, some.acidHighGPerFortnight),
    floor: {
      ...none.floor,
      reason: `${none.floor.reason} Whether it is held is judged as if there were no stabiliser, when the sun takes most.`,
    },
    warnings: [
      `Stabiliser is unknown, so no amount of daily chlorine is named. Sunlight takes little where there is some and most where there is none: the ranges run from ${someMgPerL} mg/L of it to none. Measure stabiliser; until then go by a reading of free chlorine each day.`,
      ...some.warnings,
    ],
  }
}

function spanOf(term: DemandTerm, others: readonly DemandTerm[]): DemandTerm {
  const other = others.find(({ id }) => id === term.id) ?? term
  return { ...term, low: Math.min(term.low, other.low), high: Math.max(term.high, other.high) }
}
