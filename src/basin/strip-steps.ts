import { cellDepth, floorDepth } from './cell-depth.ts'
import { evaluate, newJet } from './curve.ts'
import { Memory } from './memory.ts'
import { norm } from './norm.ts'
import type { Cell, Edge, Partition } from './partition-types.ts'
import { integratePattern, mark, type Patterned, raysForEach } from './pattern-integral.ts'
import { type ShoreRun, shoreRuns } from './shore-runs.ts'
import { shoresOf } from './shores.ts'
import { type Foot, footOn } from './span.ts'
import { stripOf } from './strip.ts'
import { wallWork } from './strip-rings.ts'
import { newSpan, type RaySpan, type WallLaw } from './wall-kind.ts'
import { wallReach } from './wall-width.ts'
import { wallLaw } from './walls.ts'
import type { WetEdge } from './wet-edge.ts'

/** A stretch of an edge in the strip with what is remembered of it. */
interface StepRun extends ShoreRun {
  /** From this level on water stands on both sides all along, and what the wall changes is the same. */
  wetFromM: number
  wet: Float64Array | undefined
  /** Where on the shore the last foot was, for the next is not far. */
  footT: number | undefined
}

interface Step {
  readonly edge: Edge
  readonly runs: readonly StepRun[]
  readonly left: Side
  readonly right: Side
  readonly deepestM: number
}

/** One side of a step: its cell, and the place on it that is looked at. */
interface Side {
  readonly cell: Cell
  readonly span: RaySpan
  bareM: number
  depthM: number
}

const known = new Memory<Partition, readonly Step[]>()
const knownRuns = new Memory<Partition, ReadonlyMap<Edge, readonly ShoreRun[]>>()

/** What the wall changes in faces of features [m²] and in shore [m] along all steps in its strip, added to what is without it. */
export function stepChange(p: Partition, levelM: number): WetEdge {
  const law = wallLaw(p.shape.wall)
  const out = { faceM2: 0, shoreM: 0 }
  if (!law) return out
  const sums = new Float64Array(2)
  const steps = stepsOf(p)
  const mostRays = raysForEach(steps.reduce((count, { runs }) => count + runs.length, 0))
  for (const step of steps) {
    if (step.deepestM + levelM <= 0) continue
    for (const run of step.runs) {
      if (run.wet && levelM >= run.wetFromM) {
        sums[0]! += run.wet[0]!
        sums[1]! += run.wet[1]!
      } else sumRun(p, law, step, run, levelM, mostRays, sums)
    }
  }
  out.faceM2 = sums[0]!
  out.shoreM = sums[1]!
  return out
}

/** The stretches of each edge with a step that the wall changes, by the edge. Remembered for each partition. */
export function runsOfSteps(p: Partition): ReadonlyMap<Edge, readonly ShoreRun[]> {
  let runs = knownRuns.get(p)
  if (!runs) {
    runs = new Map(stepsOf(p).map((step) => [step.edge, step.runs]))
    knownRuns.set(p, runs)
  }
  return runs
}

function stepsOf(p: Partition): readonly Step[] {
  let steps = known.get(p)
  if (!steps) {
    steps = findSteps(p)
    known.set(p, steps)
  }
  return steps
}

function findSteps(p: Partition): Step[] {
  const steps: Step[] = []
  const { widthM } = stripOf(p)
  for (const edge of p.edges) {
    if (edge.left < 0 || edge.right < 0) continue
    const left = p.cells[edge.left]!
    const right = p.cells[edge.right]!
    // Floor goes on without a step, and so does one seat in several pieces.
    if (left.plane === right.plane || (left.patch < 0 && right.patch < 0)) continue
    // Nor does the wall change a step whose sides both lie above all that it can make.
    if (wallWork(p, left) === 'none' && wallWork(p, right) === 'none') continue
    const runs = shoreRuns(p, edge.curve, edge.t0, edge.t1, widthM)
    if (runs.length === 0) continue
    steps.push({
      edge,
      runs: runs.map((run) => ({ ...run, wetFromM: Infinity, wet: undefined, footT: undefined })),
      left: sideOf(p, edge.left),
      right: sideOf(p, edge.right),
      deepestM: Math.max(left.maxDepthM, right.maxDepthM),
    })
  }
  return steps
}

function sideOf(p: Partition, index: number): Side {
  const cell = p.cells[index]!
  return {
    cell,
    span: newSpan(cell.patch >= 0),
    bareM: 0,
    depthM: 0,
  }
}

const jet = newJet()
const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }
const MOST_EVENTS = 24
const signs = new Float64Array(MOST_EVENTS)

/** Depths on both sides at t of the edge, and every number whose sign tells patterns apart; returns how many. */
function look(
  p: Partition,
  law: WallLaw,
  { edge, left, right }: Step,
  run: StepRun,
  t: number,
  levelM: number,
  out: Float64Array,
): number {
  evaluate(edge.curve, t, jet)
  const shore = shoresOf(p)[run.by]!
  const n = footOn(shore.curve, shore.t0, shore.t1, jet.x, jet.y, foot, run.footT).distance
  run.footT = foot.t
  let count = 0
  for (const side of [left, right]) {
    const { span } = side
    span.f0 = floorDepth(p, side.cell, jet.x, jet.y)
    span.k0 = cellDepth(side.cell, jet.x, jet.y)
    side.bareM = span.k0
    side.depthM = Math.min(span.k0, law.allowedM(span.f0, n))
    count += law.eventsAt(span, n, levelM, out, count)
    out[count++] = side.bareM + levelM
    out[count++] = side.depthM + levelM
  }
  // Two depths that rounding alone tells apart are one.
  const apart = left.depthM - right.depthM
  out[count++] = Math.abs(apart) < p.grainM ? 0 : apart
  const bareApart = left.bareM - right.bareM
  out[count++] = Math.abs(bareApart) < p.grainM ? 0 : bareApart
  return count
}

function sumRun(
  p: Partition,
  law: WallLaw,
  step: Step,
  run: StepRun,
  levelM: number,
  mostRays: number,
  sums: Float64Array,
): void {
  const { left, right } = step
  let least = Infinity
  let most = -Infinity
  const f: Patterned = {
    addAt: (t, out) => {
      const count = look(p, law, step, run, t, levelM, signs)
      let name = 0
      for (let i = 0; i < count; i++) name = mark(name, signs[i]! > 0 ? 1 : 0)
      // A wall that comes up to the datum is under water with it, wherever what rules is.
      const here = law.meetsDatumAtShore ? Math.min(left.bareM, right.bareM) : Math.min(left.depthM, right.depthM)
      least = Math.min(least, here)
      most = Math.max(most, here)
      const speed = norm(jet.dx, jet.dy)
      const over = (m: number): number => Math.max(0, m + levelM)
      out[0]! +=
        speed * (Math.abs(over(left.depthM) - over(right.depthM)) - Math.abs(over(left.bareM) - over(right.bareM)))
      out[1]! += speed * (isShore(left.depthM, right.depthM, levelM) - isShore(left.bareM, right.bareM, levelM))
      return name
    },
    eventsAt: (t, out) => look(p, law, step, run, t, levelM, out),
    // Distances from the shore rise and fall along an edge that bends.
    mayDip: step.edge.curve.kind !== 'line' || shoresOf(p)[run.by]!.curve.kind !== 'line',
    scales: scalesOf(wallReach(p)),
    mostRays,
  }
  const own = new Float64Array(2)
  // A cove is upright at the shore: a root where the edge meets it, or leaves its strip.
  integratePattern(f, run.t0, run.t1, law.isSteepAtShore, law.isSteepAtShore, own)
  sums[0]! += own[0]!
  sums[1]! += own[1]!
  const wetFromM = Math.max(-least + (most - least) / 20 + p.grainM, law.meetsDatumAtShore ? 0 : -Infinity)
  if (!run.wet && levelM >= wetFromM) {
    run.wetFromM = wetFromM
    run.wet = own
  }
}

function isShore(a: number, b: number, levelM: number): number {
  return a + levelM > 0 === b + levelM > 0 ? 0 : 1
}

const scales = new Float64Array(2)

function scalesOf(widthM: number): Float64Array {
  // A tenth of the care that volumes need.
  scales[0] = 10 * widthM * widthM
  scales[1] = widthM
  return scales
}
