import { fail, ok, type Result } from '../base/index.ts'
import { deltaOf, type Product, productById } from '../chemicals/index.ts'
import { type Constants, evaporationMmPerDay, QUIET_WATER_FACTOR, type Totals } from '../water/index.ts'
import { acidTerms } from './acid-terms.ts'
import { type Air, airOver } from './air.ts'
import { chlorineSide } from './chlorine-side.ts'
import { rangeOf } from './demand-terms.ts'
import { type LinearKey, readingChange } from './effect.ts'
import { chlorineClash } from './floor.ts'
import { asBought, usedUpWords } from './fresh.ts'
import { contactTimesOf } from './held-floor.ts'
import { HELPER_FLOOR_NOTE, HELPERS } from './helpers.ts'
import { floorAboveCeiling } from './problems.ts'
import { REGIMES } from './regimes.ts'
import { doseToPH } from './single.ts'
import { constantsOf, type SolvedWater } from './solved.ts'
import { startWater } from './start.ts'
import { TARGET_LABELS } from './targets.ts'
import type { Holding, KnownReading } from './types.ts'
import { betweenStabilisers } from './unknown-stabiliser.ts'
import { checkUpkeep } from './upkeep-check.ts'
import type { Upkeep, UpkeepInput } from './upkeep-types.ts'

const DAYS_PER_WEEK = 7
/** Of Carrier's formula, the weather known (`src/water/evaporation.ts`). */
const EVAPORATION_ERROR = 0.15
const DAYS_PER_FORTNIGHT = 14
const BROUGHT: readonly LinearKey[] = [
  'ch_mg_per_L_as_CaCO3',
  'cya_mg_per_L',
  'salt_mg_per_L_as_NaCl',
  'ta_mg_per_L_as_CaCO3',
]

/** What water with stabiliser is taken to hold where nobody read it and no target asks for more [mg/L]. */
const LEAST_STABILISER = REGIMES.get('stabilised')?.bands.cya_mg_per_L?.aim ?? 0

/**
 * The ongoing doses of a pool on one day: chlorine by cause, acid by cause, water to make up, and the chlorine floor. Unknown
 * stabiliser is not none: every figure that hangs on it is then a range.
 */
export function upkeep(asked: UpkeepInput): Result<Upkeep> {
  const { productList, stockG = {} } = asked
  const input: UpkeepInput = { ...asked, productList: asBought({ productList, stockG }) }
  const clash = chlorineClash(input.water.cya_mg_per_L, input)
  if (clash) return fail(floorAboveCeiling(clash))
  // where no sun comes to the water it makes no odds
  if (input.water.cya_mg_per_L !== undefined || input.isIndoor) return reckoned(input, input.water)
  const someMgPerL = Math.max(LEAST_STABILISER, input.targets.cya_mg_per_L?.aim ?? 0)
  const none = reckoned(input, { ...input.water, cya_mg_per_L: 0 })
  if (!none.ok) return none
  const some = reckoned(input, { ...input.water, cya_mg_per_L: someMgPerL })
  return some.ok ? ok(betweenStabilisers(none.value, some.value, someMgPerL)) : some
}

/** How chlorine is used up and whether its floor is held; unknown stabiliser is judged as none, which is the worse. */
export function chlorineHolding(asked: UpkeepInput): Result<Holding> {
  const { productList, stockG = {} } = asked
  const input: UpkeepInput = { ...asked, productList: asBought({ productList, stockG }) }
  const checked = checkUpkeep(input)
  if (!checked.ok) return checked
  const read = { ...input.water, cya_mg_per_L: input.water.cya_mg_per_L ?? 0 }
  const side = chlorineSide(input, read, checked.value.chlorine, constantsOf(input.constants))
  if (!side.ok) return side
  const { perDay, steadyMgPerLDay } = side.value.losses
  return ok({ isHeld: side.value.floor.isHeld, perDay, steadyMgPerLDay })
}

/** The upkeep of a water; `read` stands for it where what was read leaves stabiliser open. */
function reckoned(input: UpkeepInput, read: KnownReading): Result<Upkeep> {
  const checked = checkUpkeep(input)
  if (!checked.ok) return checked
  const constants = constantsOf(input.constants)
  const { chlorine, acid } = checked.value
  const side = chlorineSide(input, read, chlorine, constants)
  if (!side.ok) return side
  const { held, residual, covered, helpers, terms: chlorineTerms, floor } = side.value
  const { water } = held
  const demand = rangeOf(chlorineTerms)
  const gPerM3Day = demand.value / chlorine.availableChlorine
  const productG = (mgPerL: number) => (Math.max(0, mgPerL) / chlorine.availableChlorine) * input.volumeM3
  const productGPerDay = gPerM3Day * input.volumeM3

  const air = airOver(input)
  const evaporated = (over: Air): number => {
    const { waterC } = input
    const { airC, humidityPercent, windMPerS } = over
    const relativeHumidity = humidityPercent / 100
    const open = evaporationMmPerDay({ waterC, airC, relativeHumidity, windMPerS, activityFactor: QUIET_WATER_FACTOR })
    return Math.max(0, open) * (1 - covered.dayShare * covered.cover.evaporationCut)
  }
  const evaporation = {
    value: evaporated(air.best),
    low: evaporated(air.least ?? air.best) * (1 - EVAPORATION_ERROR),
    high: evaporated(air.most ?? air.best) * (1 + EVAPORATION_ERROR),
  }
  const fill = fillTotals(input, constants)
  if (!fill.ok) return fill
  const acidBy = acidTerms({
    input,
    water,
    covered,
    helpers,
    chlorine: { product: chlorine, gPerM3Day, usedGPerM3Day: demand.value },
    fill: fill.value,
    evaporation,
    windMPerS: air.best.windMPerS,
    constants,
  })
  if (!acidBy.ok) return acidBy
  const acidDemand = rangeOf(acidBy.value.terms)
  const acidG = (meqPerLDay: number) => acidGrams(meqPerLDay * DAYS_PER_FORTNIGHT, acid, water, input, constants)

  const unknownHelpers = input.helpers.filter((id) => !HELPERS.get(id))
  const warnings = [
    ...(air.words === undefined ? [] : [air.words]),
    ...held.assumptions,
    ...unknownHelpers.map((id) => `"${id}" is not a helping device that is known here; it counts for nothing.`),
    ...(fill.value ? [] : ['The fill water is unknown; what make-up water does to pH is left out.']),
    ...usedUpWords(chlorine, input.stockG ?? {}),
    ...swingWarning(chlorineTerms, residual, chlorine),
    ...(acidDemand.value < 0 ? ['pH tends down here, not up: no acid is due, and alkalinity wants watching.'] : []),
  ]
  return ok({
    chlorineTerms,
    chlorineMgPerLDay: demand.value,
    chlorineLowMgPerLDay: Math.max(0, demand.low),
    chlorineHighMgPerLDay: demand.high,
    productGPerDay,
    productLowGPerDay: productG(demand.low),
    productHighGPerDay: productG(demand.high),
    productGPerWeek: productGPerDay * DAYS_PER_WEEK,
    packagesPerWeek: pieces(chlorine, productGPerDay * DAYS_PER_WEEK),
    bringsPerWeek: broughtPerWeek(chlorine, gPerM3Day, demand.value),
    acidTerms: acidBy.value.terms,
    pHDriftDays: acidBy.value.daysToEnd,
    acidGPerFortnight: acidG(acidDemand.value),
    acidLowGPerFortnight: acidG(acidDemand.low),
    acidHighGPerFortnight: acidG(acidDemand.high),
    evaporationMmPerDay: evaporation.value,
    evaporationLowMmPerDay: evaporation.low,
    evaporationHighMmPerDay: evaporation.high,
    evaporationM3PerWeek: (evaporation.value / 1000) * input.waterSurfaceM2 * DAYS_PER_WEEK,
    floor,
    contactTimes: contactTimesOf(input),
    helperNotes: helpers.length > 0 ? [...helpers.map((helper) => helper.note), HELPER_FLOOR_NOTE] : [],
    warnings,
  })
}

/** Totals of the make-up water; undefined where its pH or alkalinity is unknown. */
function fillTotals(input: UpkeepInput, constants: Constants): Result<Totals | undefined> {
  const { fill } = input
  if (fill?.pH === undefined || fill.ta_mg_per_L_as_CaCO3 === undefined) return ok(undefined)
  const started = startWater({ ...fill, pH: fill.pH, ta_mg_per_L_as_CaCO3: fill.ta_mg_per_L_as_CaCO3 }, constants)
  return started.ok ? ok(started.value.water.totals) : started
}

/** Grams of the acid product for so much alkalinity out of the whole pool; none where it is below zero [g]. */
function acidGrams(
  meqPerL: number,
  acid: Product,
  water: SolvedWater,
  input: UpkeepInput,
  constants: Constants,
): number {
  if (!(meqPerL > 0)) return 0
  const perGram = -(deltaOf(acid, 1).alkalinityEq ?? 0)
  if (perGram > 0) return (meqPerL / 1000 / perGram) * input.volumeM3
  // CO2 takes no alkalinity out: dose it until pH is back from where the same alkalinity would have put it
  const raised = { ...water.totals, alkalinityEq: water.totals.alkalinityEq + meqPerL / 1000 }
  const sodium = { ...raised, sodiumMol: raised.sodiumMol + meqPerL / 1000 }
  return (doseToPH(sodium, deltaOf(acid, 1), water.equilibrium.pH, constants) ?? 0) * input.volumeM3
}

function pieces(product: Product, gPerWeek: number): Upkeep['packagesPerWeek'] {
  if (product.pieceG === undefined) return undefined
  return { label: `${product.pieceG} g tablet`, count: gPerWeek / product.pieceG }
}

/** What a week of the product leaves in the water once its chlorine is used [mg/L]; what it doesn't touch is left out. */
function broughtPerWeek(product: Product, gPerM3Day: number, usedGPerM3Day: number): Upkeep['bringsPerWeek'] {
  const used = productById('chlorine-used')
  const given = deltaOf(product, gPerM3Day * DAYS_PER_WEEK)
  const spent = used.ok ? deltaOf(used.value.product, usedGPerM3Day * DAYS_PER_WEEK) : {}
  return BROUGHT.flatMap((key) => {
    const mgPerL = readingChange(given, key) + readingChange(spent, key)
    return Math.abs(mgPerL) > 1e-3 ? [{ key, label: TARGET_LABELS[key], mgPerL }] : []
  })
}

/** Says so where a dose a day cannot hold a residual, because the sun takes it within hours. */
function swingWarning(terms: Upkeep['chlorineTerms'], residual: number, product: Product): string[] {
  const sun = terms.find((term) => term.id === 'sun')?.value ?? 0
  const perDay = sun / residual
  if (perDay < 1 || product.form === 'tablet') return []
  return [
    `The sun takes the residual ${perDay.toFixed(1)} times over in a day: one dose a day will not hold it. Feed steadily, cover in daylight, or use stabiliser.`,
  ]
}
