import { fansOf } from './cove-fan.ts'
import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { integratePattern, mark, type Patterned, raysForEach } from './pattern-integral.ts'
import type { RadialLaw } from './radial-law.ts'
import { hollowAlong, hollowTurn } from './ray-hollow.ts'
import { stripOf } from './strip.ts'
import { type AlikePiece, addAlike, alikePiece } from './strip-alike.ts'
import { newStripRay, rayIn } from './strip-ray.ts'
import { wallWork } from './strip-rings.ts'
import { runsOf } from './strip-runs.ts'
import type { StripPiece, StripRay } from './strip-types.ts'
import { HAIR } from './tolerance.ts'
import { AREA_X, AREA_Y, newSpan, type RaySpan, SHORE, STRIP_SUMS, type WallLaw } from './wall-kind.ts'
import { wallLaw } from './walls.ts'

/** What the wall changes in the figures of a basin at a level; areas and volumes are negative where it takes. */
export interface WallChange {
  readonly volumeM3: number
  readonly areaM2: number
  readonly areaX: number
  readonly areaY: number
  readonly floorM2: number
  readonly featureM2: number
  /** Surface of the wall itself, where it counts as one. */
  readonly wallM2: number
  /** Shore on the wall's slope. */
  readonly shoreM: number
  readonly errorM3: number
}

export const NO_CHANGE: WallChange = {
  volumeM3: 0,
  areaM2: 0,
  areaX: 0,
  areaY: 0,
  floorM2: 0,
  featureM2: 0,
  wallM2: 0,
  shoreM: 0,
  errorM3: 0,
}

/** A piece with what is remembered of it. */
interface Stand {
  readonly piece: StripPiece
  /** What makes its rays alike, where they are. */
  readonly alike: AlikePiece | undefined
  readonly spans: readonly RaySpan[]
  /** Floor and ruling plane in each cell: fall along x and y of both, then both depths at the origin, −∞ on dry land. */
  readonly planes: Float64Array
  /** The hollow in each cell’s floor, where there is one. */
  readonly hollows: readonly (RadialLaw | undefined)[]
  readonly isShort: boolean
  readonly rootAt0: boolean
  readonly rootAt1: boolean
  /** Greatest depth of its cells [m]: no water above means nothing to change. */
  readonly deepestM: number
  /** From this level on all of it is under water, and what the wall takes is the same. */
  wetFromM: number
  wet: Float64Array | undefined
  wetError: number
  /** How often it was summed; from the second time on its first rays are kept, for they don't depend on the level. */
  visits: number
  readonly kept: KeptRay[]
}

interface KeptRay {
  readonly ray: StripRay
  readonly spans: readonly RaySpan[]
}

/** Rays that the rules look at first, and the most pieces whose rays are kept. */
const FIRST_RAYS = 17
const FIRST_SHORT_RAYS = 9
const MOST_KEPT = 1000
/** Share of the strip’s width, or turn about a corner [rad]. */
const SHORT = 0.02
const MANY_EDGES = 4

const known = new Memory<Partition, Stand[]>()

/** Sum of what the wall changes over all of the shore at a level [m above the datum]. */
export function wallChange(p: Partition, levelM: number): WallChange {
  const law = wallLaw(p.shape.wall)
  if (!law) return NO_CHANGE
  let stands = known.get(p)
  if (!stands) {
    const work = p.cells.map((cell) => wallWork(p, cell))
    // Where what rules lies above all that the wall can make, it changes nothing.
    const pieces = runsOf(p).filter(({ cells }) => cells.some((cell) => work[cell] !== 'none'))
    stands = pieces.map((piece) => standOf(p, law, piece))
    known.set(p, stands)
  }
  const sums = new Float64Array(STRIP_SUMS.length)
  let errorM3 = 0
  for (const stand of stands) {
    if (stand.deepestM + levelM <= 0) continue
    if (stand.wet && levelM >= stand.wetFromM) {
      for (let k = 0; k < sums.length; k++) sums[k]! += stand.wet[k]!
      errorM3 += stand.wetError
    } else errorM3 += sumStand(p, law, stand, levelM, sums)
  }
  const [volumeM3, areaM2, areaX, areaY, floorM2, featureM2, wallM2, shoreM] = sums as unknown as number[]
  return {
    volumeM3: volumeM3!,
    areaM2: areaM2!,
    areaX: areaX!,
    areaY: areaY!,
    floorM2: floorM2!,
    featureM2: featureM2!,
    wallM2: wallM2!,
    shoreM: shoreM!,
    errorM3,
  }
}

function standOf(p: Partition, law: WallLaw, piece: StripPiece): Stand {
  const alike = alikePiece(p, law, piece)
  const planes = new Float64Array(PLANES * piece.cells.length)
  let deepestM = -Infinity
  const spans = piece.cells.map((index, i): RaySpan => {
    const cell = p.cells[index]
    const floor = cell ? p.floor.pieces[cell.strip]!.plane : NOWHERE
    const ruling = cell ? cell.plane : NOWHERE
    const { dx, dy } = ruling
    planes.set([floor.dx, floor.dy, dx, dy, floor.atOrigin, ruling.atOrigin], PLANES * i)
    if (cell) deepestM = Math.max(deepestM, cell.maxDepthM)
    const span = newSpan(cell?.part === 'feature')
    span.f0 = floor.atOrigin
    span.k0 = ruling.atOrigin
    return span
  })
  const { t0, t1 } = piece
  const touches = (t: number): boolean => {
    rayIn(p, piece, t, ray)
    const near = 4 * HAIR * stripOf(p).widthM
    return ray.end < near || ray.at.some((n) => n < near)
  }
  const inset = HAIR * (t1 - t0)
  return {
    piece,
    alike,
    spans,
    planes,
    hollows: piece.cells.map((index) => p.floor.pieces[p.cells[index]?.strip ?? -1]?.law),
    isShort: isShort(p, piece),
    // Where an edge begins, ends or touches a ray, its distance along the rays may have a root.
    rootAt0: piece.edges.length > 0 || (!alike && law.isSteepAtShore && touches(t0 + inset)),
    rootAt1: piece.edges.length > 0 || (!alike && law.isSteepAtShore && touches(t1 - inset)),
    deepestM,
    wetFromM: Infinity,
    wet: undefined,
    wetError: 0,
    visits: 0,
    kept: [],
  }
}

const NOWHERE = { atOrigin: -Infinity, dx: 0, dy: 0 }
const PLANES = 6
/** One ray for each number of crossings, so that none has to be lengthened or cut. */
const rays: StripRay[] = []
let ray = newStripRay()

/** Lays a ray's stretches over the cells of its piece. */
function layRay(p: Partition, { piece, spans, planes, hollows }: Stand, t: number): void {
  const count = piece.edges.length
  while (rays.length <= count) rays.push(newStripRay())
  ray = rays[count]!
  rayIn(p, piece, t, ray)
  const { x, y, nx, ny, at, end } = ray
  for (let i = 0; i < spans.length; i++) {
    const span = spans[i]!
    const first = PLANES * i
    const k0 = planes[first + 5]!
    if (k0 === -Infinity) continue
    span.from = i === 0 ? 0 : at[i - 1]!
    span.to = i === spans.length - 1 ? end : at[i]!
    const law = hollows[i]
    if (law) span.hollow = hollowAlong(law, ray)
    const kx = planes[first + 2]!
    const ky = planes[first + 3]!
    span.k0 = k0 + kx * x + ky * y
    span.k1 = kx * nx + ky * ny
    span.kAcross = ky * nx - kx * ny
    if (span.isFeature) {
      const fx = planes[first]!
      const fy = planes[first + 1]!
      span.f0 = planes[first + 4]! + fx * x + fy * y
      span.f1 = fx * nx + fy * ny
      span.fAcross = fy * nx - fx * ny
    } else {
      span.f0 = span.k0
      span.f1 = span.k1
      span.fAcross = span.kAcross
    }
  }
}

/** Least depth under the rays that were looked at, and the greatest of their least: how far it may be off between them. */
let least = Infinity
let most = -Infinity
/** The same for how near to the shore they begin. */
let nearest = Infinity
let furthest = -Infinity

function watchDepths(p: Partition, law: WallLaw, { piece }: Stand, spans: readonly RaySpan[]): void {
  let here = Infinity
  let from = Infinity
  for (let i = 0; i < spans.length; i++) {
    const span = spans[i]!
    if (span.k0 === -Infinity) continue
    from = Math.min(from, span.from)
    // Over a hollow depths are far from linear: what its cell has at least, at the shore.
    if (span.hollow) {
      const least = p.cells[piece.cells[i]!]!.minDepthM
      here = Math.min(here, law.meetsDatumAtShore ? least : law.allowedM(least, 0))
    }
    for (let k = 0; k < 2 && !span.hollow; k++) {
      const n = k === 0 ? span.from : span.to
      const ruling = span.k0 + span.k1 * n
      // A wall that comes up to the datum is under water with it, wherever what rules is.
      if (law.meetsDatumAtShore) here = Math.min(here, ruling)
      else {
        const allowed = law.allowedM(span.f0 + span.f1 * n, n)
        here = Math.min(here, span.isFeature ? Math.min(ruling, allowed) : allowed)
      }
    }
  }
  least = Math.min(least, here)
  most = Math.max(most, here)
  nearest = Math.min(nearest, from)
  furthest = Math.max(furthest, from)
}

/** From this level on all that the rays looked at pass is under water [m above the datum]. */
function wetFrom(p: Partition, law: WallLaw): number {
  // Between the rays depths are nearly linear: a twentieth of their spread is more than they can be off.
  const ruling = -least + (most - least) / 20 + p.grainM
  const from = nearest - (furthest - nearest) / 20 - p.grainM
  return Math.max(ruling, -law.allowedM(Infinity, Math.max(0, from)))
}

function sumStand(p: Partition, law: WallLaw, stand: Stand, levelM: number, sums: Float64Array): number {
  const { alike } = stand
  if (alike && levelM >= alike.wetFromM) {
    stand.wet = new Float64Array(sums.length)
    stand.wetFromM = alike.wetFromM
    addAlike(p, law, alike, levelM, stand.wet)
    for (let k = 0; k < sums.length; k++) sums[k]! += stand.wet[k]!
    return 0
  }
  least = Infinity
  most = -Infinity
  nearest = Infinity
  furthest = -Infinity
  const watches = !stand.wet
  const keeps = ++stand.visits > 1 && runsOf(p).length <= MOST_KEPT
  const firstRays = stand.isShort ? FIRST_SHORT_RAYS : FIRST_RAYS
  let call = 0
  const f: Patterned = {
    addAt: (t, out) => {
      let { spans } = stand
      const kept = call < firstRays ? stand.kept[call] : undefined
      if (kept) {
        ray = kept.ray
        spans = kept.spans
      } else {
        layRay(p, stand, t)
        if (keeps && call < firstRays)
          stand.kept.push({ ray: { ...ray, at: [] }, spans: spans.map((span) => ({ ...span })) })
      }
      call++
      if (watches) watchDepths(p, law, stand, spans)
      return addSpans(p, law, spans, levelM, out)
    },
    nameAt: (t) => {
      layRay(p, stand, t)
      return addSpans(p, law, stand.spans, levelM, undefined)
    },
    eventsAt: (t, out) => {
      layRay(p, stand, t)
      let count = 0
      for (const span of stand.spans) {
        if (count + 32 > out.length) break
        count += law.eventsAt(span, span.from, levelM, out, count)
        count += law.eventsAt(span, span.to, levelM, out, count)
        count += law.eventsAt(span, law.deepestAt(span), levelM, out, count)
        if (!span.hollow) continue
        const turn = hollowTurn(span.hollow, span.from, span.to)
        if (turn === undefined) continue
        count += law.eventsAt(span, turn, levelM, out, count)
        out[count++] = span.hollow.across
      }
      return count
    },
    scales: scalesOf(stripOf(p).widthM),
    isShort: stand.isShort,
    // A piece so narrow, at a joint that is all but smooth, is mostly rounding: one look is enough.
    mostRays: isNarrow(stand.piece) ? 0 : raysForEach(runsOf(p).length),
  }
  const own = new Float64Array(sums.length)
  const { piece, rootAt0, rootAt1 } = stand
  const error = integratePattern(f, piece.t0, piece.t1, rootAt0, rootAt1, own)
  for (let k = 0; k < sums.length; k++) sums[k]! += own[k]!
  const wetFromM = wetFrom(p, law)
  if (watches && levelM >= wetFromM) {
    stand.wetFromM = wetFromM
    stand.wet = own
    stand.wetError = error
  }
  return error
}

/** Adds what the wall changes along the ray just laid, and returns the number of its pattern. */
function addSpans(
  p: Partition,
  law: WallLaw,
  spans: readonly RaySpan[],
  levelM: number,
  out: Float64Array | undefined,
): number {
  let name = 0
  for (let i = 0; i < spans.length; i++) {
    const span = spans[i]!
    const pattern = law.addSpan(ray, span, levelM, out)
    // Whether a ray crosses two edges in one place, or just not, is rounding.
    if (span.to - span.from > p.grainM) name = mark(name, pattern)
  }
  return name
}

/** True where few points are worth a trial: little of the shore against the strip’s width, and rays over many cells. */
function isShort(p: Partition, { fan, t0, t1, edges, isRun }: StripPiece): boolean {
  if (!isRun && edges.length < MANY_EDGES) return false
  if (fan.shore < 0) return t1 - t0 < SHORT
  const lengthM = p.edges[fansOf(p).shores[fan.shore]!.edge]!.length
  return lengthM * (t1 - t0) < SHORT * stripOf(p).widthM * (fan.t1 - fan.t0)
}

function isNarrow({ fan, t0, t1 }: StripPiece): boolean {
  return t1 - t0 < HAIR * (fan.t1 - fan.t0)
}

const scales = new Float64Array(STRIP_SUMS.length)

function scalesOf(widthM: number): Float64Array {
  if (scales[SHORE] === widthM) return scales
  for (let k = 0; k < scales.length; k++)
    scales[k] = widthM ** (STRIP_SUMS[k] === 'volume' ? 3 : STRIP_SUMS[k] === 'shore' ? 1 : 2)
  scales[AREA_X] = widthM ** 3
  scales[AREA_Y] = widthM ** 3
  return scales
}
