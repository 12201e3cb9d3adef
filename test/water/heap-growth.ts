import { conditionsAt } from '../../src/water/conditions.ts'
import { CONSTANT_SETS, totalsOf } from '../../src/water/index.ts'
import { solve } from '../../src/water/solve.ts'
import { workspaceOf } from '../../src/water/workspace.ts'
import { TYPICAL_POOL } from './typical-pool.ts'

/** Run with --expose-gc: prints what each further sweep of a solve takes from the heap [bytes], round by round, as JSON. */

/** Few enough that even an array a sweep fits in the young generation: no collection hides it. */
const SOLVES = 1000
const ROUNDS = 300

const { gc } = globalThis
if (!gc) throw new Error('run with --expose-gc')
const constants = CONSTANT_SETS.default
const totals = totalsOf(TYPICAL_POOL, constants)
if (!totals.ok) throw new Error(totals.problem.what)
const w = workspaceOf(totals.value, conditionsAt(constants, 28))
const hold = { kind: 'closed' } as const

const TRUE_PH = 7.5
const FAR_PH = 4

/** Solves one workspace again and again from a start; what each solve took from the heap [bytes] and its sweeps. */
function solveMany(startPH: number): { readonly bytes: number; readonly sweeps: number } {
  gc?.()
  const before = process.memoryUsage().heapUsed
  let sweeps = 0
  for (let i = 0; i < SOLVES; i++) {
    w.pH = startPH
    sweeps += solve(w, hold).iterations
  }
  return { bytes: (process.memoryUsage().heapUsed - before) / SOLVES, sweeps: sweeps / SOLVES }
}

// what a solve takes once (its answer) is the same near and far, so the difference is the loop's alone
const grown: number[] = []
for (let round = 0; round < ROUNDS; round++) {
  const near = solveMany(TRUE_PH)
  const far = solveMany(FAR_PH)
  if (!(far.sweeps > near.sweeps + 3)) throw new Error(`${far.sweeps} sweeps from afar, ${near.sweeps} from nearby`)
  grown.push((far.bytes - near.bytes) / (far.sweeps - near.sweeps))
}
process.stdout.write(JSON.stringify(grown))
