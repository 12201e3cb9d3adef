import { fansOf } from './cove-fan.ts'
import type { Partition } from './partition-types.ts'
import type { RadialLaw } from './radial-law.ts'
import { hollowAlong } from './ray-hollow.ts'
import { stripOf } from './strip.ts'
import { type AlikePiece, alikePiece } from './strip-alike.ts'
import { newStripRay, rayIn } from './strip-ray.ts'
import type { StripPiece, StripRay } from './strip-types.ts'
import { HAIR } from './tolerance.ts'
import { newSpan, type RaySpan, type WallLaw } from './wall-kind.ts'

/** A piece with what is remembered of it. */
export interface Stand {
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

export interface KeptRay {
  readonly ray: StripRay
  readonly spans: readonly RaySpan[]
}

/** Share of the strip’s width, or turn about a corner [rad]. */
const SHORT = 0.02
const MANY_EDGES = 4

/** A piece made ready to be summed at any level. */
export function standOf(p: Partition, law: WallLaw, piece: StripPiece): Stand {
  const alike = alikePiece(p, law, piece)
  const planes = new Float64Array(PLANES * piece.cells.length)
  let deepestM = -Infinity
  const spans = piece.cells.map((index, i): RaySpan => {
    const cell = p.cells[index]
    const floor = cell ? p.floor.pieces[cell.strip]!.plane : NOWHERE
    const ruling = cell ? cell.plane : NOWHERE
    const { dx, dy } = ruling
    const first = PLANES * i
    planes[first] = floor.dx
    planes[first + 1] = floor.dy
    planes[first + 2] = dx
    planes[first + 3] = dy
    planes[first + 4] = floor.atOrigin
    planes[first + 5] = ruling.atOrigin
    if (cell) deepestM = Math.max(deepestM, cell.maxDepthM)
    const span = newSpan(cell?.part === 'feature')
    span.f0 = floor.atOrigin
    span.k0 = ruling.atOrigin
    return span
  })
  const { t0, t1 } = piece
  const touches = (t: number): boolean => {
    rayIn(p, piece, t, probe)
    const near = 4 * HAIR * stripOf(p).widthM
    return probe.end < near || probe.at.some((n) => n < near)
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
const probe = newStripRay()

/** Lays the ray at t and its stretches over the cells of its piece; both are written over by the next. */
export function layRay(p: Partition, { piece, spans, planes, hollows }: Stand, t: number): StripRay {
  const count = piece.edges.length
  while (rays.length <= count) rays.push(newStripRay())
  const ray = rays[count]!
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
  return ray
}

/** True where few points are worth a trial: little of the shore against the strip’s width, and rays over many cells. */
function isShort(p: Partition, { fan, t0, t1, edges, isRun }: StripPiece): boolean {
  if (!isRun && edges.length < MANY_EDGES) return false
  if (fan.shore < 0) return t1 - t0 < SHORT
  const lengthM = p.edges[fansOf(p).shores[fan.shore]!.edge]!.length
  return lengthM * (t1 - t0) < SHORT * stripOf(p).widthM * (fan.t1 - fan.t0)
}
