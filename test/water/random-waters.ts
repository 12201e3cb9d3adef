import type { Result } from '../../src/base/index.ts'
import { bufferCapacityOf } from '../../src/water/buffer.ts'
import { conditionsAt } from '../../src/water/conditions.ts'
import { updateGammas } from '../../src/water/gammas.ts'
import {
  addTotals,
  CONSTANT_SETS,
  type Equilibrium,
  equilibrate,
  equilibrateAtPH,
  type Totals,
  totalsOf,
  type WaterReading,
} from '../../src/water/index.ts'
import { alkalinityOf, solve } from '../../src/water/solve.ts'
import { atCurrentPH, freeMetals, pairsPerBicarbonate } from '../../src/water/sweep.ts'
import { type Workspace, workspaceOf } from '../../src/water/workspace.ts'
import { seeded } from '../bench/bench.ts'

const CONSTANTS = CONSTANT_SETS.default

/** The same water with the salt that balances its hardness and the alkalinity its weak acids hold, where they lack. */
export function feasible(reading: WaterReading): Totals {
  let water = reading
  for (let attempt = 0; attempt < 3; attempt++) {
    const result: Result<Totals> = totalsOf(water, CONSTANTS)
    if (result.ok) return result.value
    const hardness = (water.ch_mg_per_L_as_CaCO3 ?? 0) + (water.mg_hardness_mg_per_L_as_CaCO3 ?? 0)
    if (result.problem.code === 'water-charge-does-not-close') {
      water = { ...water, salt_mg_per_L_as_NaCl: (water.salt_mg_per_L_as_NaCl ?? 0) + 1.2 * hardness }
    } else if (result.problem.code === 'water-alkalinity-too-low') {
      const held =
        4.7 * (water.borate_mg_per_L_as_B ?? 0) +
        0.45 * (water.cya_mg_per_L ?? 0) +
        0.72 * (water.fc_mg_per_L_as_Cl2 ?? 0) +
        0.1 * hardness +
        20
      water = { ...water, ta_mg_per_L_as_CaCO3: water.ta_mg_per_L_as_CaCO3 + held }
    } else throw new Error(`${result.problem.code}: ${result.problem.what}`)
  }
  throw new Error(`cannot be made feasible: ${JSON.stringify(reading)}`)
}

export function everyNumber(e: Equilibrium): number[] {
  return [
    e.pH,
    e.ionicStrength,
    e.activeChlorineMgPerL,
    e.hypochloriteMgPerL,
    e.boundChlorineMgPerL,
    e.bufferCapacity,
    e.co2MgPerL,
    e.conductanceMicroSPerCm,
    e.residual,
    ...Object.values(e.species),
    ...Object.values(e.alkalinity),
    ...Object.values(e.logGammas),
  ]
}

/** Alkalinity at a pH with activity coefficients held where they are: the workspace's own mass balances, no solver. */
export function frozenAlkalinity(w: Workspace, pH: number): number {
  w.pH = pH
  for (let pass = 0; pass < 400; pass++) {
    atCurrentPH(w)
    pairsPerBicarbonate(w)
    w.u = w.carbon / (w.ra + 1 + w.e1 + w.e2)
    freeMetals(w)
    if (w.moved === 0) break
  }
  atCurrentPH(w)
  pairsPerBicarbonate(w)
  w.u = w.carbon / (w.ra + 1 + w.e1 + w.e2)
  return alkalinityOf(w)
}

/** What is usual; the domain goes from nothing to twenty times that, pH 5 to 10, 0 to 42 °C. */
const USUAL = {
  ta_mg_per_L_as_CaCO3: 100,
  ch_mg_per_L_as_CaCO3: 300,
  mg_hardness_mg_per_L_as_CaCO3: 60,
  sulfate_mg_per_L: 100,
  cya_mg_per_L: 50,
  borate_mg_per_L_as_B: 50,
  fc_mg_per_L_as_Cl2: 4,
  salt_mg_per_L_as_NaCl: 3000,
} as const
const TIMES = 20

/** Endless random readings of the domain: each total none in one of seven, else small as often as large. */
export function randomReading(random: () => number): WaterReading & { readonly pH: number } {
  const upTo = (usual: number) => (random() < 1 / 7 ? 0 : usual * TIMES * random() ** 3)
  return {
    pH: 5 + 5 * random(),
    ta_mg_per_L_as_CaCO3: upTo(USUAL.ta_mg_per_L_as_CaCO3),
    ch_mg_per_L_as_CaCO3: upTo(USUAL.ch_mg_per_L_as_CaCO3),
    mg_hardness_mg_per_L_as_CaCO3: upTo(USUAL.mg_hardness_mg_per_L_as_CaCO3),
    sulfate_mg_per_L: upTo(USUAL.sulfate_mg_per_L),
    cya_mg_per_L: upTo(USUAL.cya_mg_per_L),
    borate_mg_per_L_as_B: upTo(USUAL.borate_mg_per_L_as_B),
    fc_mg_per_L_as_Cl2: upTo(USUAL.fc_mg_per_L_as_Cl2),
    salt_mg_per_L_as_NaCl: upTo(USUAL.salt_mg_per_L_as_NaCl),
    // whole tenths, so that constants are shared as they are in a season
    temperature_C: Math.round(420 * random()) / 10,
  }
}

/** What the proof found. */
export interface Proof {
  readonly seed: number
  readonly waters: number
  /** The first few, each with its water. */
  readonly failures: readonly string[]
  readonly failed: number
  readonly worstResidual: number
  /** Of pH → state → pH. */
  readonly worstReturn: number
  /** Relative, analytic against numeric buffer capacity. */
  readonly worstBuffer: number
  readonly mostSweeps: number
}

const RESIDUAL_LIMIT = 1e-11
const RETURN_LIMIT = 1e-8
const BUFFER_LIMIT = 1e-5
const BUFFER_STEP = 1e-4
/** A change that the monotone checks make: this share of a total, and a little. */
const NUDGE = 0.01
const LEAST_NUDGE = 1e-6
const KEPT_FAILURES = 5
/** Less than this the solver takes for none [mol/kg]: a tenth of a nanogram in a litre. */
const LEAST_CHLORINE = 1e-14

/** Solves random waters and checks each; what fails is counted, never skipped. */
export function prove(seed: number, waters: number): Proof {
  const random = seeded(seed)
  const failures: string[] = []
  let failed = 0
  let worstResidual = 0
  let worstReturn = 0
  let worstBuffer = 0
  let mostSweeps = 0
  for (let i = 0; i < waters; i++) {
    const reading = randomReading(random)
    const wrong: string[] = []
    const check = (holds: boolean, what: string) => {
      if (!holds) wrong.push(what)
    }
    try {
      const totals = feasible(reading)
      const e = value(equilibrate(totals, CONSTANTS))
      check(everyNumber(e).every(Number.isFinite), 'finite')
      check(
        Object.values(e.species).every((mol) => mol >= 0),
        'no species below zero',
      )
      check(e.residual < RESIDUAL_LIMIT, `residual ${e.residual}`)
      check(Math.abs(e.pH - reading.pH) < RETURN_LIMIT, `pH comes back as ${e.pH}`)
      check(e.bufferCapacity > 0, 'buffer capacity above zero')
      worstResidual = Math.max(worstResidual, e.residual)
      worstReturn = Math.max(worstReturn, Math.abs(e.pH - reading.pH))
      mostSweeps = Math.max(mostSweeps, e.iterations)
      const buffer = bufferDeviation(totals)
      check(buffer < BUFFER_LIMIT, `buffer capacity is out by ${buffer}`)
      worstBuffer = Math.max(worstBuffer, buffer)
      for (const what of notMonotone(totals, e)) wrong.push(what)
    } catch (error) {
      wrong.push(error instanceof Error ? error.message : String(error))
    }
    if (wrong.length === 0) continue
    failed++
    if (failures.length < KEPT_FAILURES) failures.push(`water ${i}: ${wrong.join(', ')}: ${JSON.stringify(reading)}`)
  }
  return { seed, waters, failures, failed, worstResidual, worstReturn, worstBuffer, mostSweeps }
}

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.problem.code}: ${result.problem.what}`)
  return result.value
}

/** How far the analytic buffer capacity is from the numeric one, relative, beyond what rounding of the difference leaves. */
function bufferDeviation(totals: Totals): number {
  const w = workspaceOf(totals, conditionsAt(CONSTANTS, totals.temperatureC))
  if (!solve(w, { kind: 'closed' }).converged) return Number.POSITIVE_INFINITY
  updateGammas(w)
  const here = w.pH
  frozenAlkalinity(w, here)
  const analytic = bufferCapacityOf(w)
  const above = frozenAlkalinity(w, here + BUFFER_STEP)
  const numeric = (above - frozenAlkalinity(w, here - BUFFER_STEP)) / (2 * BUFFER_STEP)
  const rounding = (1e-15 * (Math.abs(w.alkalinity) + w.slopeOther + 1e-6)) / BUFFER_STEP
  return Math.max(0, Math.abs(numeric - analytic) - rounding) / analytic
}

/** Which of the directions that theory fixes does not hold here. */
function notMonotone(totals: Totals, e: Equilibrium): string[] {
  const wrong: string[] = []
  const eq = NUDGE * Math.abs(totals.alkalinityEq) + LEAST_NUDGE
  const base = value(equilibrate(addTotals(totals, { alkalinityEq: eq, sodiumMol: eq }), CONSTANTS))
  if (!(base.pH > e.pH)) wrong.push('pH does not rise with alkalinity')
  if (Number.isFinite(e.calciteSI) && !(base.calciteSI > e.calciteSI)) wrong.push('the index does not rise with pH')
  const gas = value(equilibrate(addTotals(totals, { carbonMol: NUDGE * totals.carbonMol + LEAST_NUDGE }), CONSTANTS))
  if (!(gas.pH < e.pH)) wrong.push('pH does not fall with CO2')
  if (!(gas.log10PCO2Atm > e.log10PCO2Atm)) wrong.push('the CO2 pressure does not rise with CO2')
  if (totals.chlorineMol > LEAST_CHLORINE) {
    const more = { ...totals, chlorineMol: totals.chlorineMol * (1 + NUDGE) }
    const richer = equilibrateAtPH(more, e.pH, CONSTANTS)
    if (richer.ok && !(richer.value.equilibrium.activeChlorineMgPerL > e.activeChlorineMgPerL))
      wrong.push('active chlorine does not rise with free chlorine')
    const bound = equilibrateAtPH(
      { ...totals, cyanurateMol: totals.cyanurateMol * (1 + NUDGE) + LEAST_NUDGE },
      e.pH,
      CONSTANTS,
    )
    if (bound.ok && !(bound.value.equilibrium.activeChlorineMgPerL < e.activeChlorineMgPerL))
      wrong.push('active chlorine does not fall with stabiliser')
  }
  return wrong
}
