import { cellDepth, floorDepth } from './cell-depth.ts'
import { type ArcCurve, arcCurve, evaluate, newJet } from './curve.ts'
import { cellAt } from './depth-at.ts'
import type { Cell, Partition } from './partition-types.ts'
import { integratePattern, mark, type Patterned } from './pattern-integral.ts'
import { type RadialLaw, radiusAtDepth } from './radial-law.ts'
import { nearestAlong, radiusZeros } from './radius-along.ts'
import { type Shore, stepOff } from './shores.ts'
import { newSpan, type WallLaw } from './wall-kind.ts'
import type { WetEdge } from './wet-edge.ts'

const jet = newJet()
const signs = new Float64Array(8)

/** Water right at a place of a shore [m], where a wall stands on a hollow or a feature over one. */
function wetFoot(
  p: Partition,
  law: WallLaw,
  cell: Cell,
  side: number,
  levelM: number,
  out: { stands: boolean },
): number {
  const f = snapped(p, floorDepth(p, cell, jet.x, jet.y))
  const k = snapped(p, cellDepth(cell, jet.x, jet.y))
  const foot = law.allowedM(f, 0)
  const isFeature = cell.patch >= 0 && k < foot
  const wet = (isFeature ? k : foot) + levelM
  // Water that just reaches the foot has its shore there, if there is water off the shore: where the hollow comes up to the
  // level right there, a hair off it tells.
  let floorM = f
  let ruling = k
  if (ruling + levelM === 0) {
    stepOff(jet, side, p.extentM)
    floorM = floorDepth(p, cell, jet.x, jet.y)
    ruling = cellDepth(cell, jet.x, jet.y)
  }
  out.stands = ruling + levelM > 0 && wet >= (isFeature ? Number.MIN_VALUE : -law.footSlackM(floorM))
  return wet
}

/** A bowl may come up to the datum right at its shore: what rounding makes of that is nothing. */
function snapped({ grainM }: Partition, depthM: number): number {
  return Math.abs(depthM) < grainM ? 0 : depthM
}

/** Integrates numbers along a stretch of shore over a hollow that `addAt` weighs by the water at the foot. */
function along(
  p: Partition,
  law: WallLaw,
  shore: Shore,
  levelM: number,
  scales: Float64Array,
  addAt: (t: number, wet: number, out: Float64Array) => void,
): Float64Array {
  const cell = p.cells[shore.cell]!
  const isFeature = cell.patch >= 0
  const span = newSpan(isFeature)
  const look = (t: number, out: Float64Array): number => {
    evaluate(shore.curve, t, jet)
    span.f0 = snapped(p, floorDepth(p, cell, jet.x, jet.y))
    span.k0 = snapped(p, cellDepth(cell, jet.x, jet.y))
    const count = law.eventsAt(span, 0, levelM, out, 0)
    for (let i = 0; i < count; i++) out[i] = snapped(p, out[i]!)
    return count
  }
  const stand = { stands: false }
  const f: Patterned = {
    addAt: (t, out) => {
      const count = look(t, signs)
      let name = 0
      for (let i = 0; i < count; i++) name = mark(name, signs[i]! > 0 ? 1 : 0)
      const wet = wetFoot(p, law, cell, shore.side, levelM, stand)
      if (stand.stands) addAt(t, Math.max(0, wet), out)
      return mark(name, stand.stands ? 1 : 0)
    },
    eventsAt: look,
    scales,
  }
  const sums = new Float64Array(scales.length)
  const { floor } = p
  const { x, y } = floor.pieces[cell.strip]!.law!
  // A cone has a kink where the shore comes nearest to its centre.
  const near = nearestAlong(shore.curve, shore.t0, shore.t1, x, y)
  const stops = near === undefined ? [shore.t0, shore.t1] : [shore.t0, near, shore.t1]
  for (let i = 1; i < stops.length; i++) integratePattern(f, stops[i - 1]!, stops[i]!, false, false, sums)
  return sums
}

/** Upright face [m²] and shore [m] at a stretch of shore over a hollow. */
export function alongHollowShore(p: Partition, law: WallLaw, shore: Shore, levelM: number): WetEdge {
  const scales = Float64Array.of(p.extentM * p.extentM * 1e-2, p.extentM)
  const sums = along(p, law, shore, levelM, scales, (_, wet, out) => {
    const speed = Math.hypot(jet.dx, jet.dy)
    out[0]! += wet * speed
    out[1]! += speed
  })
  return { faceM2: sums[0]!, shoreM: sums[1]! }
}

/** ∫ of what `addAt` makes of the water at the foot of a stretch of shore over a hollow, into so many sums. */
export function integrateHollowFoot(
  p: Partition,
  law: WallLaw,
  shore: Shore,
  levelM: number,
  count: number,
  addAt: (t: number, dx: number, dy: number, wet: number, out: Float64Array) => void,
): Float64Array {
  const scales = new Float64Array(count).fill(p.extentM * p.extentM * 1e-2)
  return along(p, law, shore, levelM, scales, (t, wet, out) => addAt(t, jet.dx, jet.dy, wet, out))
}

/** The shore that lies on a hollow's own floor at a level, as arcs of at most a quarter turn within a cell. */
export function hollowShore(p: Partition, cell: Cell, law: RadialLaw, index: number, levelM: number): ArcCurve[] {
  const radiusM = radiusAtDepth(law, -levelM)
  if (!(radiusM > 4 * p.grainM)) return []
  const quarter = Math.PI / 2
  const angles = [-2 * quarter, -quarter, 0, quarter, 2 * quarter]
  for (const loop of cell.loops)
    for (const half of loop) {
      const { curve, t0, t1 } = p.edges[half >> 1]!
      for (const t of radiusZeros(curve, t0, t1, law.x, law.y, radiusM)) {
        evaluate(curve, t, jet)
        angles.push(Math.atan2(jet.y - law.y, jet.x - law.x))
      }
    }
  angles.sort((a, b) => a - b)
  const arcs: ArcCurve[] = []
  for (let i = 1; i < angles.length; i++) {
    const a = angles[i - 1]!
    const b = angles[i]!
    if (radiusM * (b - a) <= 2 * p.grainM) continue
    const at = (angle: number): [number, number] => [
      law.x + radiusM * Math.cos(angle),
      law.y + radiusM * Math.sin(angle),
    ]
    if (cellAt(p, ...at((a + b) / 2)) !== index) continue
    const arc = arcCurve(...at(a), ...at(b), Math.tan((b - a) / 4))
    if (arc.kind === 'arc') arcs.push(arc)
  }
  return arcs
}
