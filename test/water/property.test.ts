import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Result } from '../../src/base/index.ts'
import { bufferCapacityOf } from '../../src/water/buffer.ts'
import { conditionsAt } from '../../src/water/conditions.ts'
import { updateGammas } from '../../src/water/gammas.ts'
import {
  alkalinityAtPH,
  CONSTANT_SETS,
  type Equilibrium,
  equilibrate,
  equilibrateOpen,
  type Totals,
  totalsOf,
  type WaterReading,
} from '../../src/water/index.ts'
import { alkalinityOf, solve } from '../../src/water/solve.ts'
import { atCurrentPH, freeMetals, pairsPerBicarbonate } from '../../src/water/sweep.ts'
import { type Workspace, workspaceOf } from '../../src/water/workspace.ts'
import { good } from './golden.ts'

const SEED = 20261124
const RUNS = 10_000
const CONSTANTS = CONSTANT_SETS.default

/** Nothing at all in one water of seven, else up to 20 times the usual, small amounts as often as large. */
const upTo20Times = (usual: number) =>
  fc.oneof(
    { weight: 1, arbitrary: fc.constant(0) },
    { weight: 6, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }).map((x) => usual * 20 * x ** 3) },
  )

const readings: fc.Arbitrary<Required<{ [key in keyof WaterReading]: number }>> = fc.record({
  pH: fc.double({ min: 5, max: 10, noNaN: true }),
  ta_mg_per_L_as_CaCO3: upTo20Times(100),
  ch_mg_per_L_as_CaCO3: upTo20Times(300),
  mg_hardness_mg_per_L_as_CaCO3: upTo20Times(60),
  sulfate_mg_per_L: upTo20Times(100),
  cya_mg_per_L: upTo20Times(50),
  borate_mg_per_L_as_B: upTo20Times(50),
  fc_mg_per_L_as_Cl2: upTo20Times(4),
  salt_mg_per_L_as_NaCl: upTo20Times(3000),
  temperature_C: fc.double({ min: 0, max: 42, noNaN: true }),
})

/** The same water with the salt that balances its hardness and the alkalinity its weak acids hold, where they lack. */
function feasible(reading: WaterReading): Totals {
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

function everyNumber(e: Equilibrium): number[] {
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
function frozenAlkalinity(w: Workspace, pH: number): number {
  w.pH = pH
  for (let pass = 0; pass < 400; pass++) {
    atCurrentPH(w)
    pairsPerBicarbonate(w)
    w.u = w.carbon / (w.ra + 1 + w.e1 + w.e2)
    if (freeMetals(w) === 0) break
  }
  atCurrentPH(w)
  pairsPerBicarbonate(w)
  w.u = w.carbon / (w.ra + 1 + w.e1 + w.e2)
  return alkalinityOf(w)
}

describe(`${RUNS} random waters: pH 5–10, 0–42 °C, totals up to 20 times the usual (seed ${SEED})`, () => {
  test('each is solved: finite, not negative, residual at rounding, pH → state → pH returns', () => {
    let solved = 0
    fc.assert(
      fc.property(readings, (reading) => {
        const totals = feasible(reading)
        const e = good(equilibrate(totals, CONSTANTS))
        expect(everyNumber(e).every(Number.isFinite)).toBe(true)
        expect(Object.values(e.species).every((molPerKg) => molPerKg >= 0)).toBe(true)
        expect(e.residual).toBeLessThan(1e-11)
        expect(Math.abs(e.pH - reading.pH)).toBeLessThan(1e-8)
        expect(e.bufferCapacity).toBeGreaterThan(0)
        solved++
      }),
      { seed: SEED, numRuns: RUNS },
    )
    expect(solved).toBe(RUNS)
  })

  test('a start from another water’s solution changes nothing that matters', () => {
    let last: Equilibrium | undefined
    fc.assert(
      fc.property(readings, (reading) => {
        const totals = feasible(reading)
        const fresh = good(equilibrate(totals, CONSTANTS))
        const warm = good(equilibrate(totals, CONSTANTS, last))
        expect(Math.abs(warm.pH - fresh.pH)).toBeLessThan(1e-8)
        expect(warm.residual).toBeLessThan(1e-11)
        last = fresh
      }),
      { seed: SEED, numRuns: RUNS / 5 },
    )
  })

  test('alkalinity rises strictly with pH, so a water has one pH', () => {
    fc.assert(
      fc.property(readings, (reading) => {
        const totals = feasible(reading)
        let before = Number.NEGATIVE_INFINITY
        for (let pH = 4; pH <= 11; pH += 0.5) {
          const alkalinity = good(alkalinityAtPH(totals, pH, CONSTANTS))
          expect(alkalinity).toBeGreaterThan(before)
          before = alkalinity
        }
      }),
      { seed: SEED, numRuns: 400 },
    )
  })

  test('the analytic buffer capacity is the numeric derivative of alkalinity at constant ionic strength', () => {
    const delta = 1e-4
    fc.assert(
      fc.property(readings, (reading) => {
        const totals = feasible(reading)
        const w = workspaceOf(totals, conditionsAt(CONSTANTS, totals.temperatureC))
        expect(solve(w, { kind: 'closed' }).converged).toBe(true)
        updateGammas(w)
        const here = w.pH
        frozenAlkalinity(w, here)
        const analytic = bufferCapacityOf(w)
        const above = frozenAlkalinity(w, here + delta)
        const numeric = (above - frozenAlkalinity(w, here - delta)) / (2 * delta)
        const rounding = (1e-15 * (Math.abs(w.alkalinity) + w.slopeOther + 1e-6)) / delta
        expect(Math.abs(numeric - analytic)).toBeLessThan(1e-5 * analytic + rounding)
      }),
      { seed: SEED, numRuns: RUNS / 5 },
    )
  })

  test('in balance with air, more CO2 means lower pH, and the air’s CO2 is what the water answers', () => {
    fc.assert(
      fc.property(readings, fc.double({ min: -4.5, max: -1, noNaN: true }), (reading, log10PCO2) => {
        const totals = feasible(reading)
        const less = good(equilibrateOpen(totals, log10PCO2, CONSTANTS))
        const more = good(equilibrateOpen(totals, log10PCO2 + 0.3, CONSTANTS))
        expect(more.equilibrium.pH).toBeLessThan(less.equilibrium.pH)
        expect(less.equilibrium.log10PCO2Atm).toBeCloseTo(log10PCO2, 8)
        const closed = good(equilibrate(less.totals, CONSTANTS))
        expect(Math.abs(closed.pH - less.equilibrium.pH)).toBeLessThan(1e-8)
      }),
      { seed: SEED, numRuns: RUNS / 5 },
    )
  })
})
