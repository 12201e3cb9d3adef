import { fansOf } from './cove-fan.ts'
import { hollowStep } from './hollow-mesh.ts'
import { norm } from './norm.ts'
import type { Partition } from './partition-types.ts'
import { chordStops } from './strip-chords.ts'
import { lateral, levelBetween } from './strip-knots.ts'
import { newStripRay, rayIn } from './strip-ray.ts'
import { addPlaces, isBare, type RayPlaces, ringsOf, type WallWork, wallWork } from './strip-rings.ts'
import { isStraight, sameCreases } from './strip-stray.ts'
import type { Strip, StripPiece } from './strip-types.ts'
import { HAIR, WALL_MERGE_GRAINS } from './tolerance.ts'
import type { WallLaw } from './wall-kind.ts'

/** One ray of a piece as the mesh uses it. */
export interface Sample {
  readonly t: number
  readonly x: number
  readonly y: number
  readonly nx: number
  readonly ny: number
  /** Where the ray enters each of the piece's cells and where it ends, ascending from 0 [m]. */
  readonly at: readonly number[]
  /** Rings and creases between those. */
  readonly places: RayPlaces
}

/** A piece of the strip with the rays that the mesh follows it by, t ascending. */
export interface SampledPiece {
  readonly piece: StripPiece
  readonly samples: Sample[]
}

/** What sampling needs to know throughout. */
export interface Sampling {
  readonly p: Partition
  readonly law: WallLaw
  readonly chordM: number
  /** Places nearer than this are one [m]. */
  readonly mergeM: number
  readonly rings: readonly number[]
  readonly work: readonly WallWork[]
  /** Area between rays so near that a crease which comes or goes there isn't followed [m²]. */
  leftM2: number
}

const ray = newStripRay()
const DEEPEST = 12

/** Everything that the rays of a strip are sampled by. */
export function newSampling(p: Partition, law: WallLaw, chordM: number): Sampling {
  return {
    p,
    law,
    chordM,
    mergeM: WALL_MERGE_GRAINS * p.grainM,
    rings: ringsOf(p, chordM),
    work: p.cells.map((cell) => wallWork(p, cell)),
    leftM2: 0,
  }
}

/** The pieces of a strip, each followed by rays dense enough for the chords. */
export function samplePieces(s: Sampling, strip: Strip): SampledPiece[] {
  return strip.pieces
    .filter(({ t0, t1, cells }) => t1 > t0 && cells.every((cell) => cell >= 0))
    .map((piece) => ({ piece, samples: samplesOf(s, strip, piece) }))
    .filter(({ samples }) => samples.length > 2 || !isSameRay(s.mergeM, samples[0]!, samples[1]!))
}

function samplesOf(s: Sampling, strip: Strip, piece: StripPiece): Sample[] {
  const { edges, by, cells } = piece
  const stops = stopsOf(s, strip, piece)
  if (isBare(s.work, cells)) return stops.map((t) => sampleAt(s, piece, t))
  if (edges.length === 0 && by === -1 && s.work[cells[0]!] === 'plain') return alike(s, piece, stops)
  let samples = stops.map((t) => sampleAt(s, piece, t))
  if (s.rings.length > 0 && by !== -1) samples = withLevels(s, piece, samples)
  const refined = [samples[0]!]
  for (let i = 1; i < samples.length; i++) refine(s, piece, samples[i - 1]!, samples[i]!, refined, DEEPEST)
  return refined
}

/** Where all rays have the same places, they share the lists of these. */
function alike(s: Sampling, piece: StripPiece, stops: readonly number[]): Sample[] {
  const { t0 } = piece
  const { at, places } = sampleAt(s, piece, t0)
  return stops.map((t) => {
    layAt(s.p, piece, t)
    return { t, x: ray.x, y: ray.y, nx: ray.nx, ny: ray.ny, at, places }
  })
}

/** Places along a piece that its shore asks for, the strip's far side where that is longer, and a hollow below. */
function stopsOf(s: Sampling, strip: Strip, piece: StripPiece): readonly number[] {
  const { p, chordM } = s
  const { fan, t0, t1, cells } = piece
  const { widthM } = strip
  const even = (from: number, to: number, count: number): number[] =>
    Array.from({ length: count + 1 }, (_, i) => (i === count ? to : from + ((to - from) * i) / count))
  const step = 2 * Math.acos(Math.max(0, 1 - chordM / widthM))
  const shore = fan.shore < 0 ? undefined : fansOf(p).shores[fan.shore]!
  const stops = shore
    ? chordStops(shore, t0, t1, chordM, widthM)
    : even(t0, t1, Math.max(1, Math.ceil((t1 - t0) / step)))
  let hollowM = Infinity
  for (const cell of cells) {
    const { law } = p.cells[cell]!
    if (law) hollowM = Math.min(hollowM, hollowStep(law, chordM))
  }
  if (hollowM === Infinity) return stops
  const edge = shore && p.edges[shore.edge]!
  const speedM = edge ? edge.length / (edge.t1 - edge.t0) : widthM
  const dense = [stops[0]!]
  for (let i = 1; i < stops.length; i++) {
    const from = stops[i - 1]!
    const to = stops[i]!
    dense.push(...even(from, to, Math.max(1, Math.ceil(((to - from) * speedM) / hollowM))).slice(1))
  }
  return dense
}

/** Leaves the ray of a piece at t in `ray`. */
function layAt(p: Partition, piece: StripPiece, t: number): void {
  rayIn(p, piece, t, ray)
  if (Math.abs(ray.nx) + Math.abs(ray.ny) > 0.5) return
  // No direction where a handle lies on its point: take it a hair inside.
  const { x, y } = ray
  rayIn(p, piece, t + (t < (piece.t0 + piece.t1) / 2 ? HAIR : -HAIR) * (piece.t1 - piece.t0), ray)
  ray.x = x
  ray.y = y
}

/** The ray of a piece at t with its crossings, rings and creases. */
export function sampleAt(s: Sampling, piece: StripPiece, t: number): Sample {
  const { p, law, rings, work } = s
  layAt(p, piece, t)
  if (isBare(s.work, piece.cells))
    return { t, x: ray.x, y: ray.y, nx: ray.nx, ny: ray.ny, at: [0], places: { n: [], code: [] } }
  const end = Math.max(ray.end, 0)
  let last = 0
  const crossings = t === piece.t0 || t === piece.t1 ? limitsOf(s, piece, t, end) : ray.at
  const at = new Array<number>(crossings.length + 2)
  at[0] = 0
  for (let i = 0; i < crossings.length; i++) {
    const n = crossings[i]!
    if (n >= last) last = Math.min(n, end)
    at[i + 1] = last
  }
  at[crossings.length + 1] = end
  const places: RayPlaces = { n: [], code: [] }
  for (let i = 0; i < piece.cells.length; i++) {
    const index = piece.cells[i]!
    addPlaces(p, law, rings, p.cells[index]!, work[index]!, ray.x, ray.y, ray.nx, ray.ny, at[i]!, at[i + 1]!, places)
  }
  return { t, x: ray.x, y: ray.y, nx: ray.nx, ny: ray.ny, at, places }
}

const inside = newStripRay()

/**
 * Where a piece's first or last ray crosses its edges. There an edge may end or touch the ray, so that the ray seems to
 * miss it: what the ray a hair inside meets tells where to look.
 */
function limitsOf({ p, mergeM }: Sampling, piece: StripPiece, t: number, end: number): number[] {
  const crossings = [...ray.at]
  if (piece.edges.every((e) => p.edges[e]!.curve.kind === 'line')) return crossings
  rayIn(p, piece, t + (t === piece.t0 ? HAIR : -HAIR) * (piece.t1 - piece.t0), inside)
  // A touch opens by the square root of the hair.
  const near = 4 * Math.sqrt(HAIR) * end
  for (let j = 0; j < crossings.length; j++) {
    const e = piece.edges[j]!
    const n = inside.at[j]!
    const next = inside.at[j + 1]
    if (piece.edges[j + 1] === e && next! - n < near) {
      // Both crossings of one edge come together where the ray touches it.
      crossings[j] = (n + next!) / 2
      crossings[++j] = (n + next!) / 2
      continue
    }
    if (Math.abs(crossings[j]! - n) < near) continue
    crossings[j] = n
    for (const node of [p.edges[e]!.from, p.edges[e]!.to]) {
      const dx = p.nodeX[node]! - ray.x
      const dy = p.nodeY[node]! - ray.y
      const along = dx * ray.nx + dy * ray.ny
      const off = Math.abs(dx * ray.ny - dy * ray.nx)
      if (off <= mergeM && Math.abs(along - n) < near) crossings[j] = Math.max(0, along)
    }
  }
  return crossings
}

/** Samples where the cut locus lies at the very distance of a ring, so that rings go on around its bend. */
function withLevels(s: Sampling, piece: StripPiece, samples: readonly Sample[]): Sample[] {
  const all = [...samples]
  const column = samples[0]!.at.length - 1
  for (let i = 1; i < samples.length; i++) {
    const a = samples[i - 1]!
    const b = samples[i]!
    if (lateral(a, b) < 8 * s.chordM) continue
    for (const level of s.rings) {
      if (a.at[column]! < level === b.at[column]! < level || a.at[column] === level || b.at[column] === level) continue
      all.push(sampleAt(s, piece, levelBetween(s, piece, a, b, column, level)))
    }
  }
  all.sort((a, b) => a.t - b.t)
  const last = all[all.length - 1]!
  const kept = [all[0]!]
  for (const sample of all)
    if (!isSameRay(s.mergeM, kept[kept.length - 1]!, sample) && !isSameRay(s.mergeM, sample, last)) kept.push(sample)
  kept.push(last)
  return kept
}

/** True where two rays are too near each other to be told apart once vertices are merged. */
export function isSameRay(mergeM: number, a: Sample, b: Sample): boolean {
  return spread(a, b) <= 4 * mergeM
}

/** How far apart two rays are at most [m]. */
function spread(a: Sample, b: Sample): number {
  const ea = a.at[a.at.length - 1]!
  const eb = b.at[b.at.length - 1]!
  return Math.max(
    norm(b.x - a.x, b.y - a.y),
    norm(b.x + eb * b.nx - a.x - ea * a.nx, b.y + eb * b.ny - a.y - ea * a.ny),
  )
}

/** Adds samples up to b, with more between where something strays from its chord or a crease comes or goes. */
function refine(s: Sampling, piece: StripPiece, a: Sample, b: Sample, out: Sample[], depth: number): void {
  const t = (a.t + b.t) / 2
  if (depth > 0 && t > a.t && t < b.t && lateral(a, b) > 2 * s.chordM) {
    const middle = sampleAt(s, piece, t)
    if (!isStraight(a, middle, b, s.chordM)) {
      refine(s, piece, a, middle, out, depth - 1)
      refine(s, piece, middle, b, out, depth - 1)
      return
    }
  }
  // Two slopes differ from one that has both ends in common by a quarter of what they lean over at most.
  else if (!sameCreases(a, b))
    s.leftM2 += (lateral(a, b) * Math.max(a.at[a.at.length - 1]!, b.at[b.at.length - 1]!)) / 4
  out.push(b)
}
