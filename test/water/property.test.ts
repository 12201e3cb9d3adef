import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bufferCapacityOf } from '../../src/water/buffer.ts'
import { conditionsAt } from '../../src/water/conditions.ts'
import { updateGammas } from '../../src/water/gammas.ts'
import {
  alkalinityAtPH,
  CONSTANT_SETS,
  type Equilibrium,
  equilibrate,
  equilibrateOpen,
  type WaterReading,
} from '../../src/water/index.ts'
import { solve } from '../../src/water/solve.ts'
import { workspaceOf } from '../../src/water/workspace.ts'
import { good } from './golden.ts'
import { everyNumber, feasible, frozenAlkalinity } from './random-waters.ts'

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
