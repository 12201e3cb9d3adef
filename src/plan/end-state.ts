import { deltaOf } from '../chemicals/index.ts'
import { addTotals, type Constants, MG_CACO3_PER_EQ } from '../water/index.ts'
import { movesBesides, productSets, worthOf } from './alternatives.ts'
import {
  type Balance,
  type BalanceBands,
  type BalanceProducts,
  balanceBands,
  balanceDelta,
  balanceTo,
} from './balance.ts'
import type { PurposeProducts } from './check-input.ts'
import { feeds, HUNGRY_SI } from './hungry.ts'
import { wholePackages } from './packages.ts'
import { type SolvedWater, solvedWater } from './solved.ts'
import type { KnownReading, OpeningInput } from './types.ts'
import { fixedWants, type Wants } from './wants.ts'

export interface EndState {
  readonly fixed: Wants
  /** Undefined where pH and alkalinity cannot both be reached. */
  readonly balance: Balance | undefined
  readonly water: SolvedWater | undefined
  /** What the last corrections work to. */
  readonly bands: BalanceBands
  /** What the amounts are of: the owner's and the regime's products, or what was chosen instead of them. */
  readonly products: PurposeProducts
  /** Why other products than those asked for, where there are any. */
  readonly swappedFor?: 'reach' | 'objective' | undefined
}

/**
 * Solves where the water has to end, all doses together; their order comes later. The chosen products unless these cannot
 * reach the bands, or another objective than fewest products is given: then the best of all that the list offers.
 */
export function endState(
  start: SolvedWater,
  known: KnownReading,
  input: OpeningInput,
  products: PurposeProducts,
  constants: Constants,
): EndState {
  const chosen = endWith(start, known, input, products, constants)
  const objective = input.objective ?? 'fewest-products'
  if (chosen.balance && objective === 'fewest-products') return chosen
  let best = chosen
  let worth = worthOf(chosen, input)
  let isQuiet = movesBesides(chosen.products, chosen.balance, input).length === 0
  for (const set of productSets(products, input)) {
    const end = endWith(start, known, input, set, constants)
    if (!end.balance) continue
    const its = worthOf(end, input)
    // what nobody asked for stays where it is as long as any way leaves it there
    const isStill = movesBesides(set, end.balance, input).length === 0
    const isWorthLess = its >= worth - 1e-9 * Math.abs(worth)
    if (best.balance && (isStill === isQuiet ? isWorthLess : isQuiet)) continue
    best = { ...end, swappedFor: chosen.balance ? 'objective' : 'reach' }
    worth = its
    isQuiet = isStill
  }
  return isQuiet || best === chosen ? best : withMovesSaid(best, input)
}

/** A way that moves what has no target says so. */
function withMovesSaid(end: EndState, input: OpeningInput): EndState {
  const said = movesBesides(end.products, end.balance, input).map(
    ({ product, label, mgPerL }) =>
      `${product.label} moves ${label.toLowerCase()} by ${mgPerL.toPrecision(2)} mg/L, which has no target: no other product reaches the bands here.`,
  )
  return { ...end, fixed: { ...end.fixed, warnings: [...end.fixed.warnings, ...said] } }
}

function endWith(
  start: SolvedWater,
  known: KnownReading,
  input: OpeningInput,
  products: PurposeProducts,
  constants: Constants,
): EndState {
  const isWhole = input.dosing === 'whole-packages'
  const system = isWhole ? (input.packageSystem ?? 'metric') : undefined
  const fixed = fixedWants(start.totals, known, input.targets, products, input.volumeM3, system)
  const bands = balanceBands(input.targets)
  const exact = balanceTo(fixed.totals, bands, products, constants)
  const whole = exact && isWhole ? withWholePackages(exact, fixed, bands, products, input, constants) : undefined
  const balance = whole ?? exact
  const after = (all: Balance): SolvedWater | undefined => {
    const water = solvedWater(balanceDelta(all, products).reduce(addTotals, fixed.totals), constants)
    return water.ok ? water.value : undefined
  }
  const water = balance && after(balance)
  const purposes = fixed.wants.map(({ purpose }) => purpose)
  if (!water || !feeds(start, balance, purposes, input)) return { fixed, balance, water, products, bands }
  // what feeds it comes last, when everything that pulls pH down is in
  const feeding: BalanceBands = { ...bands, hungrySI: HUNGRY_SI }
  const more = balanceTo(water.totals, feeding, products, constants)
  const fed = more && solvedWater(balanceDelta(more, products).reduce(addTotals, water.totals), constants)
  return { fixed, balance, water: fed?.ok ? fed.value : water, products, bands: feeding }
}

/** The balance with alkalinity in whole packages, where that too ends inside both bands. */
function withWholePackages(
  balance: Balance,
  fixed: Wants,
  bands: BalanceBands,
  products: BalanceProducts,
  input: OpeningInput,
  constants: Constants,
): Balance | undefined {
  const band = bands.alkalinity
  if (!band || balance.alkalinityGPerM3 <= 0) return undefined
  const perGram = (deltaOf(products.alkalinity, 1).alkalinityEq ?? 0) * MG_CACO3_PER_EQ
  const wanted = balance.alkalinityGPerM3
  const room = { low: band.low - band.aim, high: band.high - band.aim }
  const whole = wholePackages(
    products.alkalinity,
    wanted * input.volumeM3,
    (wanted + room.low / perGram) * input.volumeM3,
    (wanted + room.high / perGram) * input.volumeM3,
    input.packageSystem ?? 'metric',
  )
  if (!whole) return undefined
  const gPerM3 = (whole.count * whole.massG) / input.volumeM3
  const dosed = addTotals(fixed.totals, deltaOf(products.alkalinity, gPerM3))
  const rest = balanceTo(dosed, bands, products, constants)
  if (!rest || rest.alkalinityGPerM3 > 0 || rest.aerationMol > 0) return undefined
  return { ...rest, alkalinityGPerM3: gPerM3 }
}
