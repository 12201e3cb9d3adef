import { Memory } from './memory.ts'
import type { Cell, Partition } from './partition-types.ts'
import { integratePattern, mark, type Patterned, raysForEach } from './pattern-integral.ts'
import { hollowTurn } from './ray-hollow.ts'
import { addAlike } from './strip-alike.ts'
import { isNarrow } from './strip-broad.ts'
import { wallWork } from './strip-rings.ts'
import { runsOf } from './strip-runs.ts'
import { layRay, type Stand, standOf } from './strip-stand.ts'
import type { StripRay } from './strip-types.ts'
import { watchAnew, watchRay, wetFrom } from './strip-wet.ts'
import { AREA_X, AREA_Y, type RaySpan, SHORE, STRIP_SUMS, type WallLaw } from './wall-kind.ts'
import { wallReach } from './wall-width.ts'
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

/** Rays that the rules look at first, and the most pieces whose rays are kept. */
const FIRST_RAYS = 17
const FIRST_SHORT_RAYS = 9
const MOST_KEPT = 1000
const known = new Memory<Partition, Stand[]>()
/** Changes at the levels asked for last: a figure and its check ask for the same. */
const latest = new Memory<Partition, Map<number, WallChange>>()
const MOST_LEVELS = 8

/** Sum of what the wall changes over all of the shore at a level [m above the datum]. */
export function wallChange(p: Partition, levelM: number): WallChange {
  const law = wallLaw(p.shape.wall)
  if (!law) return NO_CHANGE
  const levels = latest.get(p) ?? new Map<number, WallChange>()
  let change = levels.get(levelM)
  if (!change) {
    if (levels.size === 0) latest.set(p, levels)
    else if (levels.size === MOST_LEVELS) levels.clear()
    change = changeAt(p, law, levelM)
    levels.set(levelM, change)
  }
  return change
}

/** Levels at which what the wall changes is known [m above the datum]. */
export function levelsKnown(p: Partition): readonly number[] {
  return [...(latest.get(p)?.keys() ?? [])]
}

function changeAt(p: Partition, law: WallLaw, levelM: number): WallChange {
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

function sumStand(p: Partition, law: WallLaw, stand: Stand, levelM: number, sums: Float64Array): number {
  const { alike } = stand
  if (alike && levelM >= alike.wetFromM) {
    stand.wet = new Float64Array(sums.length)
    stand.wetFromM = alike.wetFromM
    addAlike(p, law, alike, levelM, stand.wet)
    for (let k = 0; k < sums.length; k++) sums[k]! += stand.wet[k]!
    return 0
  }
  watchAnew()
  const watches = !stand.wet
  const keeps = ++stand.visits > 1 && runsOf(p).length <= MOST_KEPT
  const firstRays = stand.isShort ? FIRST_SHORT_RAYS : FIRST_RAYS
  let call = 0
  const f: Patterned = {
    addAt: (t, out) => {
      let { spans } = stand
      let ray: StripRay
      const kept = call < firstRays ? stand.kept[call] : undefined
      if (kept) {
        ray = kept.ray
        spans = kept.spans
      } else {
        ray = layRay(p, stand, t)
        if (keeps && call < firstRays)
          stand.kept.push({ ray: { ...ray, at: [] }, spans: spans.map((span) => ({ ...span })) })
      }
      call++
      if (watches) watchRay(p, law, stand, spans)
      return addSpans(p, law, ray, spans, levelM, out)
    },
    nameAt: (t) => {
      const ray = layRay(p, stand, t)
      return addSpans(p, law, ray, stand.spans, levelM, undefined)
    },
    eventsAt: (t, out) => {
      layRay(p, stand, t)
      let count = 0
      for (const span of stand.spans) {
        if (count + 32 > out.length) break
        if (span.k0 === -Infinity) continue
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
    // Where the floor's own shore passes, rays between two others may be the only wet ones, or the only dry ones.
    mayDip: stand.piece.cells.some((cell) => isInDoubt(p.cells[cell], levelM)),
    scales: scalesOf(wallReach(p)),
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

/** True where the depth that a cell would have without the wall is both above and below the water. */
function isInDoubt(cell: Cell | undefined, levelM: number): boolean {
  return cell !== undefined && cell.minDepthM + levelM < 0 && cell.maxDepthM + levelM > 0
}

/** Adds what the wall changes along the ray just laid, and returns the number of its pattern. */
function addSpans(
  p: Partition,
  law: WallLaw,
  ray: StripRay,
  spans: readonly RaySpan[],
  levelM: number,
  out: Float64Array | undefined,
): number {
  let name = 0
  for (let i = 0; i < spans.length; i++) {
    const span = spans[i]!
    if (span.k0 === -Infinity) continue
    const pattern = law.addSpan(ray, span, levelM, out)
    // Whether a ray crosses two edges in one place, or just not, is rounding.
    if (span.to - span.from > p.grainM) name = mark(name, pattern)
  }
  return name
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
