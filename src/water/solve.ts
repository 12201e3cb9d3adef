import { updateGammas } from './gammas.ts'
import { atCurrentPH, freeMetals, pairsPerBicarbonate, sumIons } from './sweep.ts'
import type { Workspace } from './workspace.ts'

/** What is held: pH is solved in the first two; carbon follows in `atPH`, alkalinity in `titrated`. */
export type Hold =
  | { readonly kind: 'closed' }
  | { readonly kind: 'open'; readonly pco2Atm: number }
  | { readonly kind: 'atPH'; readonly pH: number }
  | { readonly kind: 'titrated'; readonly pH: number }

export interface Solved {
  readonly iterations: number
  /** False where the last sweep still moved something by more than 1e-10. */
  readonly converged: boolean
  readonly outOfRange: 'acid' | 'base' | null
}

const TIGHT = 2e-13
const GOOD_ENOUGH = 1e-10
const MOST_SWEEPS = 200
const CALM_SWEEPS = 40
const LOWEST_PH = 0
const HIGHEST_PH = 14
const LARGEST_STEP = 1

/**
 * Solves the workspace in place: pH and all species such that every held total balances.
 * Equation: F(pH) = A_calculated(pH) − A = 0, Newton on F with slope ln 10 × buffer capacity inside a bracket, while
 *   ionic strength and ion pairs are brought up to date in the same sweep. Where pH is held there is no root to find.
 * Symbols: A alkalinity [eq/kg].
 * Valid for: pH 0 to 14. F strictly increases in pH for every water, because its slope is a sum of variances.
 * Source: MODEL.md, "Algorithm"; safeguarded Newton after Press et al., Numerical Recipes, rtsafe (from memory).
 * Accuracy: relative change below 2e-13 in the last sweep; about 8 sweeps, 12 in strong brine.
 */
export function solve(w: Workspace, hold: Hold): Solved {
  const finding = hold.kind === 'closed' || hold.kind === 'open'
  if (!finding) w.pH = hold.pH
  let lo = LOWEST_PH
  let hi = HIGHEST_PH
  let change = Number.POSITIVE_INFINITY
  let sweep = 0
  for (; sweep < MOST_SWEEPS && change > TIGHT; sweep++) {
    if (Math.abs(w.ionic - w.gammaIonic) > 1e-15 * w.ionic) updateGammas(w)
    atCurrentPH(w)
    pairsPerBicarbonate(w)
    setBicarbonate(w, hold)
    freeMetals(w)
    sumIons(w)
    const ionic = w.ionicNow
    change = Math.max(w.moved, Math.abs(ionic - w.ionic) / ionic)
    // past the usual number of sweeps something oscillates: go half way
    w.ionic = sweep < CALM_SWEEPS ? ionic : 0.5 * (w.ionic + ionic)
    if (!finding) continue

    pairsPerBicarbonate(w)
    setBicarbonate(w, hold)
    compareAlkalinity(w, hold)
    const f = w.excess
    if (f > 0) hi = Math.min(hi, w.pH)
    else lo = Math.max(lo, w.pH)
    const newton = Math.abs(f) <= 2e-16 * (Math.abs(w.alkalinity) + w.slopeOther) ? 0 : -f / (Math.LN10 * w.slope)
    change = Math.max(change, Math.abs(newton))
    if (hi - lo < 1e-9 && change > TIGHT) {
      // the bracket closed while ionic strength was still moving: open it again
      lo = Math.max(LOWEST_PH, w.pH - LARGEST_STEP)
      hi = Math.min(HIGHEST_PH, w.pH + LARGEST_STEP)
    }
    const step = Math.max(-LARGEST_STEP, Math.min(LARGEST_STEP, newton))
    let next = w.pH + step
    if (next >= HIGHEST_PH && f < 0) return { iterations: sweep + 1, converged: false, outOfRange: 'base' }
    if (next <= LOWEST_PH && f > 0) return { iterations: sweep + 1, converged: false, outOfRange: 'acid' }
    // a step too small to matter may leave a bracket that is older than the ionic strength
    if (!(next >= lo && next <= hi) && Math.abs(step) > 1e-9) next = 0.5 * (lo + hi)
    w.pH = next
  }
  // Far outside every water (tonnes of a salt in a cubic metre) the activity formula itself runs away.
  if (!Number.isFinite(w.pH) || !Number.isFinite(w.ionic))
    return { iterations: sweep, converged: false, outOfRange: null }
  settle(w, hold)
  return { iterations: sweep, converged: change <= GOOD_ENOUGH, outOfRange: null }
}

/** One last pass at the final pH, and the total that was not held. */
function settle(w: Workspace, hold: Hold): void {
  atCurrentPH(w)
  pairsPerBicarbonate(w)
  setBicarbonate(w, hold)
  const carbon = w.u * (w.ra + 1 + w.e1 + w.e2)
  if (hold.kind === 'open' || hold.kind === 'atPH') w.carbon = carbon
  if (hold.kind === 'titrated') w.alkalinity = alkalinityOf(w)
}

/** Writes free bicarbonate [mol/kg] from what is held. */
function setBicarbonate(w: Workspace, hold: Hold): void {
  if (hold.kind === 'open') w.u = (w.conditions.k.carbonDioxideGas * hold.pco2Atm) / (w.gCO2 * w.ra)
  else if (hold.kind === 'atPH') w.u = (w.alkalinity - otherAlkalinity(w)) / (1 + w.e1 + 2 * w.e2)
  else w.u = w.carbon / (w.ra + 1 + w.e1 + w.e2)
}

/** Alkalinity that isn't carbonate [eq/kg]. */
function otherAlkalinity(w: Workspace): number {
  return w.borate + w.cyAlk + w.oclAlk + w.hydroxide
}

/** Alkalinity of everything in the workspace [eq/kg]. */
export function alkalinityOf(w: Workspace): number {
  return w.u * (1 + w.e1 + 2 * w.e2) + otherAlkalinity(w)
}

/** Writes alkalinity less what is held [eq/kg], and dA / d ln(1/h) with ion pairs and ionic strength frozen: what Newton needs. */
function compareAlkalinity(w: Workspace, hold: Hold): void {
  w.excess = alkalinityOf(w) - w.alkalinity
  const first = 1 + w.e1 + 2 * w.e2
  const second = 1 + w.e1 + 4 * w.e2
  // open: the bicarbonate itself grows with 1/h, so nothing is subtracted
  const carbonate = hold.kind === 'open' ? w.u * second : w.u * (second - (first * first) / (w.ra + 1 + w.e1 + w.e2))
  w.slope = carbonate + w.slopeOther
}
