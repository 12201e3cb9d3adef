import type { Product } from '../chemicals/index.ts'
import { deltaOf } from '../chemicals/index.ts'
import {
  addTotals,
  type Constants,
  type Delta,
  equilibrate,
  equilibrateAtPH,
  MG_CACO3_PER_EQ,
  scaleDelta,
  type Totals,
} from '../water/index.ts'
import { AERATION, pairTo } from './pair.ts'
import { doseToPH } from './single.ts'
import { isInside } from './targets.ts'
import type { Band, Targets } from './types.ts'

export interface BalanceProducts {
  readonly acid: Product
  readonly alkalinity: Product
  readonly base: Product
}

/** What brings pH and alkalinity into their bands; CO2 to lose by aeration in mol/kg. */
export interface Balance {
  readonly acidGPerM3: number
  readonly alkalinityGPerM3: number
  readonly baseGPerM3: number
  readonly aerationMol: number
}

export interface BalanceBands {
  readonly pH: Band | undefined
  readonly alkalinity: Band | undefined
  /** Calcite SI below which the water is lifted to the aim of pH, as far as alkalinity allows; absent where it may be. */
  readonly hungrySI?: number | undefined
}

/** So high that no water is above it [mg/L as CaCO3]. */
const NO_UPPER_END = 10_000
/** pH so close to its aim is not worth a line. */
const NEAR_PH = 0.05

/** What a balance has to reach; alkalinity above its band counts as inside where it is to be left. */
export function balanceBands({ pH, ta_mg_per_L_as_CaCO3: alkalinity }: Targets): BalanceBands {
  return { pH, alkalinity: alkalinity?.isHighLeft ? { ...alkalinity, high: NO_UPPER_END } : alkalinity }
}

const NOTHING: Balance = { acidGPerM3: 0, alkalinityGPerM3: 0, baseGPerM3: 0, aerationMol: 0 }
/** Outgassing stops at the air's own CO2; a balance never asks for more [mol/kg]. */
const LEAST_CARBON = 1e-6

/** Up to the aim; down only to between aim and upper end, since every bit down costs acid and days [mg/L]. */
function wantedAlkalinity(band: Band | undefined, now: number): number | undefined {
  if (!band) return undefined
  return now > band.high ? 0.5 * (band.aim + band.high) : band.aim
}

/** The change of totals of a whole balance. */
export function balanceDelta(balance: Balance, products: BalanceProducts): readonly Delta[] {
  return [
    deltaOf(products.acid, balance.acidGPerM3),
    deltaOf(products.alkalinity, balance.alkalinityGPerM3),
    deltaOf(products.base, balance.baseGPerM3),
    scaleDelta(AERATION, balance.aerationMol),
  ]
}

/**
 * The least that brings pH and alkalinity into their bands: nothing, else one product, else two. Alkalinity that is too
 * high, or a low pH whose cause is dissolved CO2, is met by aeration. Undefined where none of these reach both bands.
 */
export function balanceTo(
  totals: Totals,
  bands: BalanceBands,
  products: BalanceProducts,
  constants: Constants,
): Balance | undefined {
  const lands = (balance: Balance): boolean => {
    const after = balanceDelta(balance, products).reduce(addTotals, totals)
    if (after.carbonMol < LEAST_CARBON && balance.aerationMol > 0) return false
    const solved = equilibrate(after, constants)
    if (!solved.ok) return false
    const alkalinity = after.alkalinityEq * MG_CACO3_PER_EQ
    return (
      (!bands.pH || isInside(solved.value.pH, bands.pH)) &&
      (!bands.alkalinity || isInside(alkalinity, bands.alkalinity))
    )
  }
  const perGram = {
    acid: deltaOf(products.acid, 1),
    alkalinity: deltaOf(products.alkalinity, 1),
    base: deltaOf(products.base, 1),
  }
  const now = totals.alkalinityEq * MG_CACO3_PER_EQ
  const toAlkalinity = (delta: Delta): number | undefined => {
    if (!bands.alkalinity) return undefined
    const amount =
      ((wantedAlkalinity(bands.alkalinity, now) ?? now) - now) / MG_CACO3_PER_EQ / (delta.alkalinityEq ?? 0)
    return Number.isFinite(amount) && amount > 0 ? amount : undefined
  }
  const toPH = (delta: Delta): number | undefined =>
    bands.pH ? doseToPH(totals, delta, bands.pH.aim, constants) : undefined
  const aeration = (): number | undefined => {
    const open = bands.pH ? equilibrateAtPH(totals, bands.pH.aim, constants) : undefined
    if (!open?.ok) return undefined
    const lost = totals.carbonMol - open.value.totals.carbonMol
    return lost > 0 ? lost : undefined
  }
  const pair = (first: Delta, second: Delta): readonly [number, number] | undefined => {
    const aims = {
      pH: bands.pH?.aim ?? 7.5,
      alkalinityEq: (wantedAlkalinity(bands.alkalinity, now) ?? now) / MG_CACO3_PER_EQ,
    }
    return pairTo(totals, aims, first, second, constants)
  }
  const one = (amount: number | undefined, key: keyof Balance): Balance | undefined =>
    amount === undefined ? undefined : { ...NOTHING, [key]: amount }
  const two = (amounts: readonly [number, number] | undefined, first: keyof Balance, second: keyof Balance) =>
    amounts && { ...NOTHING, [first]: amounts[0], [second]: amounts[1] }

  const candidates: readonly (() => Balance | undefined)[] = [
    () => NOTHING,
    () => one(toAlkalinity(perGram.alkalinity), 'alkalinityGPerM3'),
    () => one(toAlkalinity(perGram.base), 'baseGPerM3'),
    () => one(toPH(perGram.acid), 'acidGPerM3'),
    () => one(toAlkalinity(perGram.acid), 'acidGPerM3'),
    () => one(toPH(perGram.base), 'baseGPerM3'),
    () => one(aeration(), 'aerationMol'),
    () => two(pair(perGram.alkalinity, perGram.acid), 'alkalinityGPerM3', 'acidGPerM3'),
    () => two(pair(perGram.alkalinity, perGram.base), 'alkalinityGPerM3', 'baseGPerM3'),
    () => two(pair(perGram.alkalinity, AERATION), 'alkalinityGPerM3', 'aerationMol'),
    () => two(pair(perGram.acid, AERATION), 'acidGPerM3', 'aerationMol'),
  ]
  for (const candidate of candidates) {
    const balance = candidate()
    if (balance && lands(balance)) return fed(totals, balance, bands, products, constants)
  }
  return undefined
}

/** With base up to the aim of pH, where the water would end hungry and no acid was needed to get there. */
function fed(
  totals: Totals,
  balance: Balance,
  { pH, alkalinity, hungrySI }: BalanceBands,
  products: BalanceProducts,
  constants: Constants,
): Balance {
  if (hungrySI === undefined || !pH || balance.acidGPerM3 > 0) return balance
  const there = balanceDelta(balance, products).reduce(addTotals, totals)
  const solved = equilibrate(there, constants)
  if (!solved.ok || solved.value.calciteSI >= hungrySI || solved.value.pH > pH.aim - NEAR_PH) return balance
  const perGram = deltaOf(products.base, 1)
  const wanted = doseToPH(there, perGram, pH.aim, constants) ?? 0
  const room = (alkalinity?.high ?? NO_UPPER_END) / MG_CACO3_PER_EQ - there.alkalinityEq
  const baseGPerM3 = Math.max(0, Math.min(wanted, room / (perGram.alkalinityEq ?? Number.POSITIVE_INFINITY)))
  return { ...balance, baseGPerM3: balance.baseGPerM3 + baseGPerM3 }
}
