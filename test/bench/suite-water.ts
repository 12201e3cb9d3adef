import {
  addTotals,
  CONSTANT_SETS,
  type Constants,
  equilibrate,
  formulaDelta,
  scaleDelta,
  type Totals,
  totalsOf,
  type WaterReading,
} from '../../src/water/index.ts'
import { type BenchRow, medians, seeded } from './bench.ts'
import { peerPH } from './peers/mole-balance-newton.ts'

const COUNT = 10_000
const PEER_COUNT = 200
const PEER = 'Newton on mole balances, ml-matrix LU'

interface Water {
  readonly reading: WaterReading
  readonly totals: Totals
}

/** Ten thousand waters; random readings that no water can have at once are drawn again. */
function randomWaters(constants: Constants): Water[] {
  const random = seeded(20_261_124)
  const between = (lo: number, hi: number) => lo + (hi - lo) * random()
  const waters: Water[] = []
  while (waters.length < COUNT) {
    const reading = {
      pH: between(6.8, 8.4),
      ta_mg_per_L_as_CaCO3: between(50, 200),
      ch_mg_per_L_as_CaCO3: between(50, 500),
      mg_hardness_mg_per_L_as_CaCO3: between(5, 100),
      sulfate_mg_per_L: between(10, 200),
      cya_mg_per_L: between(0, 80),
      borate_mg_per_L_as_B: between(0, 50),
      fc_mg_per_L_as_Cl2: between(0.5, 8),
      salt_mg_per_L_as_NaCl: between(100, 4000),
      temperature_C: Math.round(between(5, 38)),
    }
    const totals = totalsOf(reading, constants)
    if (totals.ok) waters.push({ reading, totals: totals.value })
  }
  return waters
}

function all<T>(items: readonly T[], task: (item: T) => unknown): void {
  for (const item of items) task(item)
}

/** Equilibria a second on 10,000 waters, against a straightforward solver in the same run. */
export async function waterSuite(): Promise<BenchRow[]> {
  const constants = CONSTANT_SETS.oracle
  const drawn = randomWaters(constants)
  const readings = drawn.map(({ reading }) => reading)
  const waters = drawn.map(({ totals }) => totals)
  const few = waters.slice(0, PEER_COUNT)
  let worst = 0
  for (const totals of few) {
    const ours = equilibrate(totals, constants)
    if (!ours.ok) throw new Error(ours.problem.what)
    worst = Math.max(worst, Math.abs(ours.value.pH - peerPH(totals, constants)))
  }
  // The peer's plain Davies coefficients differ from ours a little; further apart, the comparison would be void.
  if (!(worst < 0.1)) throw new Error(`the peer disagrees by ${worst} pH`)
  const acid = scaleDelta(formulaDelta('HCl') ?? {}, 1e-4)
  const times = await medians({
    stateToPH: () => all(waters, (totals) => equilibrate(totals, constants)),
    phToState: () => all(readings, (reading) => totalsOf(reading, constants)),
    dose: () => all(waters, (totals) => equilibrate(addTotals(totals, acid), constants)),
    peer: () => all(few, (totals) => peerPH(totals, constants)),
    peerDose: () => all(few, (totals) => peerPH(addTotals(totals, acid), constants)),
  })
  const rate = (name: string, count: number) => (1000 * count) / (times[name] ?? Number.NaN)
  const line = (what: string, ours: number, peer: number): BenchRow => ({
    suite: 'water',
    case: `${waters.length} random pool waters`,
    what,
    oursPerS: Math.round(ours),
    peer: PEER,
    peerPerS: Math.round(peer),
    ratio: Number((ours / peer).toFixed(2)),
  })
  return [
    line('state to pH, equilibria a second', rate('stateToPH', waters.length), rate('peer', few.length)),
    line('pH to state, waters a second', rate('phToState', readings.length), rate('peer', few.length)),
    line('dose and solve, a second', rate('dose', waters.length), rate('peerDose', few.length)),
  ]
}
