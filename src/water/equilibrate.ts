import { fail, ok, type Result } from '../base/index.ts'
import { checkedTotals } from './checks.ts'
import { conditionsAt } from './conditions.ts'
import { equilibriumOf } from './equilibrium.ts'
import { MG_CACO3_PER_EQ } from './masses.ts'
import { type AlkalinityShare, alkalinityTooLow, notConverged, phOutOfRange, readingOutOfRange } from './problems.ts'
import { type Hold, solve } from './solve.ts'
import type { Constants, Equilibrium, Totals } from './types.ts'
import { type Workspace, workspaceOf } from './workspace.ts'

export interface Solution {
  readonly totals: Totals
  readonly equilibrium: Equilibrium
}

const CLOSED: Hold = { kind: 'closed' }

/** Conserved totals → pH and all species; nothing is exchanged with air. `near` is a solved water to start from. */
export function equilibrate(totals: Totals, constants: Constants, near?: Equilibrium): Result<Equilibrium> {
  const solved = settled(totals, constants, CLOSED, near)
  return solved.ok ? ok(equilibriumOf(solved.value.w, solved.value.iterations)) : solved
}

/** The water once its CO2 is in balance with air of that pressure; alkalinity stays. */
export function equilibrateOpen(
  totals: Totals,
  log10PCO2Atm: number,
  constants: Constants,
  near?: Equilibrium,
): Result<Solution> {
  if (!(log10PCO2Atm >= -12 && log10PCO2Atm <= 1)) {
    return fail(readingOutOfRange('log10_pCO2_atm', log10PCO2Atm, -12, 1, ''))
  }
  return withCarbon(totals, settled(totals, constants, { kind: 'open', pco2Atm: 10 ** log10PCO2Atm }, near))
}

/** The water with CO2 put in or taken out, at constant alkalinity, until it has this pH. No root is sought. */
export function equilibrateAtPH(totals: Totals, pH: number, constants: Constants): Result<Solution> {
  if (!(pH >= 0 && pH <= 14)) return fail(readingOutOfRange('pH', pH, 0, 14, ''))
  const solved = settled(totals, constants, { kind: 'atPH', pH })
  if (solved.ok && solved.value.w.u < 0) return fail(tooLow(solved.value.w))
  return withCarbon(totals, solved)
}

/** Alkalinity left when the closed water is brought to this pH with hydrochloric acid or sodium hydroxide [eq/kg]. */
export function alkalinityAtPH(totals: Totals, pH: number, constants: Constants): Result<number> {
  let alkalinity = totals.alkalinityEq
  // the titrant's own ions change ionic strength a little: three rounds settle it below 1e-9
  for (let round = 0; round < 3; round++) {
    const added = totals.alkalinityEq - alkalinity
    const titrated: Totals = {
      ...totals,
      chlorideMol: totals.chlorideMol + Math.max(0, added),
      sodiumMol: totals.sodiumMol + Math.max(0, -added),
    }
    const solved = settled(titrated, constants, { kind: 'titrated', pH })
    if (!solved.ok) return solved
    alkalinity = solved.value.w.alkalinity
  }
  return ok(alkalinity)
}

interface Settled {
  readonly w: Workspace
  readonly iterations: number
}

function settled(totals: Totals, constants: Constants, hold: Hold, near?: Equilibrium): Result<Settled> {
  const checked = checkedTotals(totals)
  if (!checked.ok) return checked
  const w = workspaceOf(totals, conditionsAt(constants, totals.temperatureC))
  if (near) startFrom(w, near)
  const { iterations, converged, outOfRange } = solve(w, hold)
  if (outOfRange) return fail(phOutOfRange(outOfRange))
  if (!converged) return fail(notConverged(equilibriumOf(w, iterations).residual))
  return ok({ w, iterations })
}

function startFrom(w: Workspace, near: Equilibrium): void {
  w.pH = near.pH
  w.ionic = near.ionicStrength
  if (near.species.hocl > 0) w.x = near.species.hocl
}

function withCarbon(totals: Totals, solved: Result<Settled>): Result<Solution> {
  if (!solved.ok) return solved
  const { w, iterations } = solved.value
  return ok({ totals: { ...totals, carbonMol: w.carbon }, equilibrium: equilibriumOf(w, iterations) })
}

function tooLow(w: Workspace) {
  const share = (path: string, name: string, eq: number): AlkalinityShare => ({
    path,
    name,
    mgPerLAsCaCO3: eq * MG_CACO3_PER_EQ,
  })
  return alkalinityTooLow(w.pH, w.alkalinity * MG_CACO3_PER_EQ, [
    share('cya_mg_per_L', 'stabiliser', w.cyAlk),
    share('borate_mg_per_L_as_B', 'borate', w.borate),
    share('fc_mg_per_L_as_Cl2', 'hypochlorite', w.oclAlk),
    share('', 'hydroxide', w.hydroxide),
  ])
}
