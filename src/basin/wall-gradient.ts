import { fansOf } from './cove-fan.ts'
import { gaussRule } from './gauss.ts'
import { addHollowGradient } from './hollow-gradient.ts'
import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { integratePattern, mark, type Patterned, raysForEach } from './pattern-integral.ts'
import { hollowTurn } from './ray-hollow.ts'
import { addForce, SLOTS, shoreCurvesOf } from './shore-moves.ts'
import { newStripRay, rayIn } from './strip-ray.ts'
import { runsOf } from './strip-runs.ts'
import { laySpan } from './strip-span.ts'
import type { StripPiece } from './strip-types.ts'
import type { VolumeGradient } from './volume-gradient.ts'
import { addBatteredSpan } from './wall-gradient-battered.ts'
import { addCoveSpan } from './wall-gradient-cove.ts'
import {
  BY_WALL,
  FLOOR_MOMENTS,
  HOLLOW_MOMENTS,
  LEAN,
  LEVEL,
  PATCH_MOMENTS,
  SPAN_SUMS,
  UNSCALED,
} from './wall-gradient-span.ts'
import { newSpan, type WallLaw } from './wall-kind.ts'
import { wallReach } from './wall-width.ts'

/** Two rays to a piece: exact on straight walls over planes that are wet, where what a ray adds is a cubic in t at most. */
const GAUSS_ROUGH = gaussRule(2)
const ray = newStripRay()
const span = newSpan()
const inner = new Float64Array(SPAN_SUMS)

/** Places of a piece's sums: the curve's numbers, then wall, level, unscaled, the hollow's five, then six moments for each cell. */
const WALL_AT = SLOTS
const LEVEL_AT = SLOTS + 1
const UNSCALED_AT = SLOTS + 2
const HOLLOW_AT = SLOTS + 3
const CELLS_AT = SLOTS + 8
const PER_CELL = 6

/** Adds what the wall changes of the derivatives, by rays across the strip along the shores (see volume-gradient.ts). */
export function addWallGradient(p: Partition, law: WallLaw, levelM: number, roughly: boolean, g: VolumeGradient): void {
  const reachM = wallReach(p)
  const pieces = runsOf(p)
  const homes = homesOf(p, pieces)
  const mostRays = raysForEach(pieces.length)
  for (let n = 0; n < pieces.length; n++) {
    const piece = pieces[n]!
    const home = homes[n]!
    const count = CELLS_AT + PER_CELL * piece.cells.length
    const sums = buffer(0, count)
    if (roughly) gauss(p, law, piece, home, levelM, sums)
    else {
      const f: Patterned = {
        addAt: (t, out) => addRay(p, law, piece, home, levelM, t, out),
        eventsAt: (t, out) => eventsOf(p, law, piece, levelM, t, out),
        scales: scalesOf(reachM, p.extentM, count),
        mostRays,
      }
      integratePattern(f, piece.t0, piece.t1, true, true, sums)
    }
    if (home.slots >= 0) for (let k = 0; k < SLOTS; k++) g.slots[home.slots + k]! += sums[k]!
    g.wall += sums[WALL_AT]!
    g.level += sums[LEVEL_AT]!
    g.unscaled += sums[UNSCALED_AT]!
    if (g.dish) {
      g.dish.depth += sums[HOLLOW_AT]!
      g.dish.edgeDepth += sums[HOLLOW_AT + 1]!
      g.dish.radius += sums[HOLLOW_AT + 2]!
      g.dish.x += sums[HOLLOW_AT + 3]!
      g.dish.y += sums[HOLLOW_AT + 4]!
    }
    for (let i = 0; i < piece.cells.length; i++) {
      const cell = p.cells[piece.cells[i]!]
      if (!cell) continue
      for (let k = 0; k < 3; k++) {
        g.floor[3 * cell.strip + k]! += sums[CELLS_AT + PER_CELL * i + k]!
        if (cell.patch >= 0) g.patches[3 * cell.patch + k]! += sums[CELLS_AT + PER_CELL * i + 3 + k]!
      }
    }
  }
}

const buffers: Float64Array[] = []

/** Zeros to sum into, used again at the next piece: sums are made for every move of a hand. */
function buffer(which: number, count: number): Float64Array {
  let whole = buffers[which]
  if (!whole || whole.length < count) {
    whole = new Float64Array(2 * count)
    buffers[which] = whole
  }
  return whole.subarray(0, count).fill(0)
}

/** The shore curve whose numbers move the feet of a piece's rays; at a corner the place on it. */
interface Home {
  readonly slots: number
  readonly shore: number
  /** Where the foot is on that curve, or nothing where it is the ray's own t. */
  readonly t: number | undefined
}

const known = new Memory<Partition, readonly Home[]>()

function homesOf(p: Partition, pieces: readonly StripPiece[]): readonly Home[] {
  let homes = known.get(p)
  if (!homes) {
    homes = pieces.map((piece) => homeOf(p, piece))
    known.set(p, homes)
  }
  return homes
}

function homeOf(p: Partition, { fan }: StripPiece): Home {
  const { shores } = fansOf(p)
  const shore = fan.shore >= 0 ? fan.shore : fan.neighbours[0]!
  const { curve, side, t0, t1 } = shores[shore]!
  const number = shoreCurvesOf(p).of.get(curve)
  // The corner is where the first of its two stretches ends, seen with the water on the left.
  return {
    shore,
    slots: number === undefined ? -1 : SLOTS * number,
    t: fan.shore >= 0 ? undefined : side > 0 ? t1 : t0,
  }
}

/** What can't change sign along the shore without changing the pattern of dry and wet. */
function eventsOf(p: Partition, law: WallLaw, piece: StripPiece, levelM: number, t: number, out: Float64Array): number {
  rayIn(p, piece, t, ray)
  let count = 0
  for (let i = 0; i < piece.cells.length && count + 32 <= out.length; i++) {
    if (!laySpan(p, piece, ray, i, span)) continue
    for (const n of [span.from, span.to, law.deepestAt(span)]) count += law.eventsAt(span, n, levelM, out, count)
    if (!span.hollow) continue
    const turn = hollowTurn(span.hollow, span.from, span.to)
    if (turn === undefined) continue
    count += law.eventsAt(span, turn, levelM, out, count)
    out[count++] = span.hollow.across
  }
  return count
}

/** Adds the integrands at t; returns a number for the pattern of dry and wet along the ray. */
function addRay(
  p: Partition,
  law: WallLaw,
  piece: StripPiece,
  home: Home,
  levelM: number,
  t: number,
  out: Float64Array,
): number {
  rayIn(p, piece, t, ray)
  const { wall } = p.shape
  let name = 0
  let lean = 0
  for (let i = 0; i < piece.cells.length; i++) {
    if (!laySpan(p, piece, ray, i, span) || !(span.to > span.from)) continue
    inner.fill(0)
    const pattern = span.hollow
      ? addHollowGradient(law, ray, span, levelM, inner)
      : wall.kind === 'cove'
        ? addCoveSpan(wall.radiusM, ray, span, levelM, inner)
        : addBatteredSpan(wall.kind === 'battered' ? wall.run : 0, ray, span, levelM, inner)
    name = mark(name, pattern)
    lean += inner[LEAN]!
    out[WALL_AT]! += inner[BY_WALL]!
    out[LEVEL_AT]! += inner[LEVEL]!
    out[UNSCALED_AT]! += inner[UNSCALED]!
    if (span.hollow) {
      for (let k = 0; k < 3; k++) out[HOLLOW_AT + k]! += inner[HOLLOW_MOMENTS + k]!
      const along = inner[HOLLOW_MOMENTS + 3]!
      const across = inner[HOLLOW_MOMENTS + 4]!
      out[HOLLOW_AT + 3]! += along * ray.nx + across * ray.ny
      out[HOLLOW_AT + 4]! += along * ray.ny - across * ray.nx
    }
    const at = CELLS_AT + PER_CELL * i
    addMoments(inner, FLOOR_MOMENTS, out, at)
    addMoments(inner, PATCH_MOMENTS, out, at + 3)
  }
  if (lean === 0 || home.slots < 0) return name
  // The foot's outward move makes every distance along its ray grow by as much.
  const { curve } = fansOf(p).shores[home.shore]!
  addForce(curve, home.t ?? t, -lean * ray.nx, -lean * ray.ny, out, 0)
  return name
}

/** Area and its lever along the ray as area and moments in plan. */
function addMoments(sums: Float64Array, from: number, out: Float64Array, at: number): void {
  const area = sums[from]!
  const lever = sums[from + 1]!
  out[at]! += area
  out[at + 1]! += area * ray.x + lever * ray.nx
  out[at + 2]! += area * ray.y + lever * ray.ny
}

function gauss(p: Partition, law: WallLaw, piece: StripPiece, home: Home, levelM: number, sums: Float64Array): void {
  const point = buffer(1, sums.length)
  const { t0, t1 } = piece
  for (let i = 0; i < GAUSS_ROUGH.at.length; i++) {
    addRay(p, law, piece, home, levelM, t0 + (t1 - t0) * GAUSS_ROUGH.at[i]!, point.fill(0))
    const weight = GAUSS_ROUGH.weight[i]! * (t1 - t0)
    for (let k = 0; k < sums.length; k++) sums[k]! += weight * point[k]!
  }
}

/** Sizes below which differences don't count: areas of the strip's width, and volumes. */
function scalesOf(widthM: number, extentM: number, count: number): Float64Array {
  const scales = new Float64Array(count).fill(widthM ** 2)
  scales[UNSCALED_AT] = widthM ** 3
  for (let k = CELLS_AT; k < count; k++) if ((k - CELLS_AT) % 3 > 0) scales[k] = widthM ** 2 * extentM
  return scales
}
