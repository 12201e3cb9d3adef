import { ok, type Result } from '../base/index.ts'
import { deltaOf, type Product, productById } from '../chemicals/index.ts'
import {
  addTotals,
  alkalinityAtPH,
  type Constants,
  type Delta,
  gasTransferVelocityMPerDay,
  scaleDelta,
  sumDeltas,
  type Totals,
} from '../water/index.ts'
import { acidDrift } from './acid-drift.ts'
import type { Covered } from './covers.ts'
import type { Helper } from './helpers.ts'
import type { SolvedWater } from './solved.ts'
import type { DemandTerm, UpkeepInput } from './upkeep-types.ts'

const DAYS = 14
const MEQ_PER_EQ = 1000
/** Plausible factors on the surface's transfer, and on the air that helpers draw in. */
const SURFACE_FACTOR = { low: 0.5, high: 2 } as const
/** Under a roof neither the air's movement nor its own CO2 is known: from memory. */
const ROOF_FACTOR = { low: 1 / 3, high: 3 } as const
/** The least that make-up water errs by, either way (ours): water is splashed out and rinsed away too. */
const MAKE_UP_SHARE = 0.3
const AIR_FACTOR = { low: 0, high: 4 } as const

export interface AcidContext {
  readonly input: UpkeepInput
  /** The water at the pH that it is brought back to. */
  readonly water: SolvedWater
  readonly covered: Covered
  readonly helpers: readonly Helper[]
  readonly chlorine: { readonly product: Product; readonly gPerM3Day: number; readonly usedGPerM3Day: number }
  /** The water that replaces what evaporates, where it is known. */
  readonly fill: Totals | undefined
  readonly evaporation: { readonly value: number; readonly low: number; readonly high: number }
  /** Over the water; none under a roof. */
  readonly windMPerS: number
  readonly constants: Constants
}

export interface AcidAnswer {
  readonly terms: readonly DemandTerm[]
  readonly daysToEnd?: number | undefined
}

/**
 * Alkalinity to take out of a closed water, changed by a day, so that its pH stands where it stood [meq/L].
 * Equation: A − A(pH*), with A(pH*) the alkalinity of the changed water titrated back to pH*.
 * Symbols: A alkalinity after the change [eq/kg]; pH* the pH before it.
 * Valid for: any change of conserved totals; borate and cyanurate take their part in the titration.
 * Source: the water kernel.
 * Accuracy: exact in the model.
 */
function acidFor(water: SolvedWater, change: Delta, constants: Constants): Result<number> {
  const changed = addTotals(water.totals, change)
  const left = alkalinityAtPH(changed, water.equilibrium.pH, constants)
  return left.ok ? ok((changed.alkalinityEq - left.value) * MEQ_PER_EQ) : left
}

/** What pushes pH off, each as the alkalinity that has to come out for it [meq/L day]; the terms add up to the drift. */
export function acidTerms(context: AcidContext): Result<AcidAnswer> {
  const { input, water, chlorine, covered, helpers, constants } = context
  const used = productById('chlorine-used')
  if (!used.ok) return used
  const byProduct = sumDeltas([
    deltaOf(chlorine.product, chlorine.gPerM3Day),
    deltaOf(used.value.product, chlorine.usedGPerM3Day),
  ])
  // the chlorine held is steady: what is given is used, so no chlorine piles up
  const meanDepthM = input.volumeM3 / input.waterSurfaceM2
  const { evaporation } = context
  const share = evaporation.value / 1000 / meanDepthM
  const byMakeUp = context.fill ? scaleDelta(amountsOf(context.fill), share) : undefined

  const product = acidFor(water, byProduct, constants)
  if (!product.ok) return product
  const makeUp = byMakeUp ? acidFor(water, byMakeUp, constants) : ok(0)
  if (!makeUp.ok) return makeUp

  const open = 1 - covered.dayShare * covered.cover.gasCut
  const surface = gasTransferVelocityMPerDay(context.windMPerS, input.waterC) * open
  const air = helpers.reduce((sum, helper) => sum + helper.airMPerDay, 0) * (input.pumpHoursPerDay / 24)
  const drift = (velocityMPerDay: number) =>
    acidDrift({
      start: water.totals,
      aimPH: water.equilibrium.pH,
      band: input.targets.pH,
      perDay: sumDeltas([byProduct, byMakeUp ?? {}]),
      velocityMPerDay,
      meanDepthM,
      days: DAYS,
      constants,
    })
  const best = drift(surface + air)
  const factor = input.isIndoor ? ROOF_FACTOR : SURFACE_FACTOR
  const low = drift(factor.low * surface + AIR_FACTOR.low * air)
  const high = drift(factor.high * surface + AIR_FACTOR.high * air)
  if (!best.ok) return best
  if (!low.ok) return low
  if (!high.ok) return high
  const rest = (total: number) => total * MEQ_PER_EQ - product.value - makeUp.value
  const gas = rest(best.value.acidEqPerDay)
  const ends = [gas, rest(low.value.acidEqPerDay), rest(high.value.acidEqPerDay)]

  const terms: DemandTerm[] = [
    {
      id: 'outgassing',
      label: 'CO2 leaving the water',
      value: gas,
      low: Math.min(...ends),
      high: Math.max(...ends),
      how: `The water holds more CO2 than air would leave in it. It goes at ${(surface + air).toFixed(2)} m a day of exchange, ${Math.round(open * 100)} % of the surface's past the cover${air > 0 ? ', air drawn in by helpers included' : ''}; acid is given when pH reaches the end of its band. Jets, spillways and bathers are not counted.${input.isIndoor ? ' Under a roof no wind is counted, and the range is a factor of three either way.' : ''}`,
      source: 'Cole & Caraco 1998, Limnol. Oceanogr. 43:647; a factor of two on a small pool; helpers’ air from memory',
    },
    {
      id: 'product',
      label: `${chlorine.product.label}, once its chlorine is used`,
      value: product.value,
      ...around(product.value, 0.2),
      how: 'What the product brings, less the acid that used-up chlorine leaves behind, titrated back to the pH held.',
      source: 'stoichiometry of the product; lye and lime in it from memory',
    },
  ]
  if (byMakeUp)
    terms.push({
      id: 'make-up',
      label: 'Make-up water',
      value: makeUp.value,
      ...aroundMakeUp(makeUp.value, evaporation),
      how: `${evaporation.value.toFixed(1)} mm a day evaporate as pure water and come back as fill water with its alkalinity and CO2.`,
      source: 'Carrier in the SI form of ASHRAE, quiet-water factor after Smith et al. 1994; mass balance',
    })
  return ok({ terms, daysToEnd: best.value.daysToEnd })
}

function around(value: number, share: number): { readonly low: number; readonly high: number } {
  return { low: value - Math.abs(value) * share, high: value + Math.abs(value) * share }
}

/** As wide as evaporation is known, at least. */
function aroundMakeUp(value: number, { value: best, low, high }: AcidContext['evaporation']) {
  const below = best > 0 ? Math.max(MAKE_UP_SHARE, 1 - low / best) : MAKE_UP_SHARE
  const above = best > 0 ? Math.max(MAKE_UP_SHARE, high / best - 1) : MAKE_UP_SHARE
  const ends = [value * (1 - below), value * (1 + above)]
  return { low: Math.min(...ends), high: Math.max(...ends) }
}

function amountsOf(totals: Totals): Delta {
  const { temperatureC: _, ...amounts } = totals
  return amounts
}
