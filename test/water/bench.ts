import {
  addTotals,
  CONSTANT_SETS,
  equilibrate,
  type Totals,
  totalsOf,
  type WaterReading,
} from '../../src/water/index.ts'
import { good } from './golden.ts'
import { TYPICAL_POOL } from './typical-pool.ts'

/** Small, typical and worst: a soft fill water, a stabilised pool with borate, and a brine 20 times as strong. */
const WATERS: Readonly<Record<string, WaterReading>> = {
  'fill water': {
    pH: 7.2,
    ta_mg_per_L_as_CaCO3: 40,
    ch_mg_per_L_as_CaCO3: 50,
    sulfate_mg_per_L: 12,
    salt_mg_per_L_as_NaCl: 25,
    temperature_C: 12,
  },
  'pool with stabiliser and borate': TYPICAL_POOL,
  brine: {
    pH: 9.5,
    ta_mg_per_L_as_CaCO3: 1900,
    ch_mg_per_L_as_CaCO3: 3000,
    mg_hardness_mg_per_L_as_CaCO3: 1000,
    sulfate_mg_per_L: 1800,
    cya_mg_per_L: 300,
    borate_mg_per_L_as_B: 200,
    fc_mg_per_L_as_Cl2: 80,
    salt_mg_per_L_as_NaCl: 40000,
    temperature_C: 40,
  },
}

const CONSTANTS = CONSTANT_SETS.default
const STATES = 100
const ROUNDS = 200

/** Another hundred waters of that kind: acid or base by up to 2 % of alkalinity. */
function around(totals: Totals): Totals[] {
  return Array.from({ length: STATES }, (_, i) => {
    const eq = ((i - STATES / 2) / STATES) * 0.04 * totals.alkalinityEq
    return addTotals(totals, { alkalinityEq: eq, chlorideMol: Math.max(0, -eq), sodiumMol: Math.max(0, eq) })
  })
}

/** Equilibria a second, warm: every state solved from scratch, all its outputs built. */
export function benchWater(now: () => number): string[] {
  const lines: string[] = []
  for (const [name, reading] of Object.entries(WATERS)) {
    const states = around(good(totalsOf(reading, CONSTANTS)))
    const run = (rounds: number) => {
      let sum = 0
      for (let round = 0; round < rounds; round++) {
        for (const state of states) sum += good(equilibrate(state, CONSTANTS)).pH
      }
      return sum
    }
    run(30)
    const start = now()
    run(ROUNDS)
    const seconds = (now() - start) / 1000
    lines.push(`${name}: ${Math.round((ROUNDS * STATES) / seconds)} equilibria/s`)
  }
  return lines
}

if (process.argv[1]?.endsWith('test/water/bench.ts')) {
  process.stdout.write(`${benchWater(() => performance.now()).join('\n')}\n`)
}
