import { cpuUsage } from 'node:process'
import {
  bandsOf,
  contoursOf,
  depthAt,
  derivativesOf,
  levelBreaks,
  levelForVolume,
  type Measures,
  measure,
  meshOf,
  type Partition,
  sectionOf,
  uncertaintyOf,
  volumeAtLevel,
} from '../../src/basin/index.ts'
import { deriveBody } from '../../src/derive/index.ts'
import { type Body, validateSpec } from '../../src/document/index.ts'
import { FEATURES } from '../../src/features/index.ts'
import { ORDINARY, type RawBody, type RawDocument } from './documents.ts'

/**
 * No answer may keep a person waiting longer than this [ms]: the figures of a body, its mesh, a level for a volume … A person on a
 * quiet machine waits no longer than the clock says here, nor than the processor's time (clearing up and compiling, on threads of
 * their own, count in that). Beside other work both grow, as they do while code is not yet compiled: a document that takes as
 * long is examined again, answer by answer, and fails where one is as slow twice. Documents that are as long together are counted.
 */
export const HANG_MS = 2000

/** A slope that no floor has but where two stations are all but one. */
const CLIFF = 1e4

/** Thrown of a document an answer to which was slow twice. */
export class Slow extends Error {}

/** How a document came out: labels to count, so that a run shows what it reached. */
export type Outcome = readonly string[]

/**
 * Takes a document through validation, division, figures and pictures. Throws where a promise is broken: a throw inside,
 * a number that is none, a negative or falling volume, an endless bound, or too long a time twice.
 */
export function examine(document: RawDocument): Outcome {
  // The processor's time is dear to ask for: only where the clock is no witness that every answer came in time.
  const start = performance.now()
  const labels = examineOnce(document)
  const tookMs = performance.now() - start
  if (tookMs > HANG_MS / 8)
    for (const { floor, wall } of document.bodies)
      labels.push(`slower than ${HANG_MS / 8} ms together: ${kindOf(floor)} under ${kindOf(wall)}`)
  if (tookMs <= HANG_MS) return labels
  const slow = [slowestOf(document), slowestOf(document)]
  if (slow.every((answer) => answer.tookMs > HANG_MS))
    throw new Slow(slow.map(({ what, tookMs }) => `${what} took ${Math.round(tookMs)} ms`).join(', and once more '))
  return [...labels, `slower than ${HANG_MS} ms together`]
}

interface Answer {
  readonly what: string
  readonly tookMs: number
}

/** The slowest answer so far, where answers are timed. */
let slowest: Answer | undefined

/** What a question is answered with. */
function asked<T>(what: string, answer: () => T): T {
  if (!slowest) return answer()
  const start = performance.now()
  const startCpu = cpuUsage()
  const value = answer()
  const tookMs = Math.min(performance.now() - start, cpuUsage(startCpu).user / 1000)
  if (tookMs > slowest.tookMs) slowest = { what, tookMs }
  return value
}

function slowestOf(document: RawDocument): Answer {
  slowest = { what: '', tookMs: 0 }
  try {
    // A copy, so that nothing is remembered of it.
    examineOnce(structuredClone(document))
    return slowest
  } finally {
    slowest = undefined
  }
}

function examineOnce(document: RawDocument): string[] {
  const labels: string[] = []
  const valid = asked('validation', () => validateSpec(document))
  labels.push(`document: ${valid.ok ? 'valid' : `problem ${valid.problem[0]?.code}`}`)
  // The kernel may not lean on the validation: it gets every document, as it stands.
  document.bodies.forEach((raw, i) => {
    const body = valid.ok ? valid.value.bodies[i]! : wholeBody(raw)
    labels.push(...examineBody(body, document['name']))
  })
  return labels
}

const kindOf = (part: unknown): string => String((part as { readonly kind?: unknown } | undefined)?.kind)

function wholeBody(raw: RawBody): Body {
  return { name: '', system: 'pool', tolerance: { planM: 0.02, depthM: 0.02 }, ...raw } as unknown as Body
}

function examineBody(body: Body, name: unknown): string[] {
  const labels = [`floor: ${body.floor.kind}`, `wall: ${body.wall.kind}`]
  for (const { kind } of body.features) labels.push(`feature: ${kind}`)
  if (body.islands.length > 0) labels.push('with islands')
  // Only a validated document has none but known kinds.
  if (body.features.some(({ kind }) => !FEATURES.get(kind))) return [...labels, 'basin: feature of an unknown kind']
  const derived = asked('figures', () => deriveBody(body))
  if (!derived.partition.ok) return [...labels, `basin: ${derived.partition.problem.code}`]
  const parts = derived.partition.value
  const figures = derived.measures
  labels.push(`basin: ${figures.ok ? 'measured' : figures.problem.code}`)
  if (!figures.ok && figures.problem.code === 'arithmetic') throw new Error('a figure is no number')
  if (figures.ok) {
    labels.push(`measured ${body.floor.kind} under ${body.wall.kind}`)
    const under = `${body.floor.kind} under ${body.wall.kind}`
    const beside = body.islands.length > 0 ? ' beside islands' : ''
    labels.push(`measured ${under}${beside || ' without islands'}`)
    for (const kind of new Set(body.features.map((each) => each.kind)))
      labels.push(
        `measured with ${kind}`,
        `measured ${under} with ${kind}`,
        `measured ${under} with ${kind}${beside || ' without islands'}`,
      )
    expectSound(figures.value, parts)
    if (!Number.isFinite(derived.sigmaM3)) throw new Error('sigma is no number')
  }
  // Beyond a million kilometres the figures are refused, and volumes would overflow.
  const levelM = Math.abs(body.levelM) <= 1e9 ? body.levelM : 0
  expectRising(parts, levelM)
  const hash = hashOf(body)
  const isOrdinary = name === ORDINARY
  if (hash % 16 === 0) labels.push(...examinePictures(parts, isOrdinary))
  if (hash % 16 === 1 && figures.ok) labels.push(...examineAnswers(parts, figures.value))
  return labels
}

function expectSound(m: Measures, parts: Partition): void {
  const bad = badNumber(m, '')
  if (bad !== undefined) throw new Error(`${bad} is no number`)
  for (const [name, value] of Object.entries({
    volumeM3: m.volumeM3,
    waterSurfaceM2: m.waterSurfaceM2,
    perimeterM: m.perimeterM,
    maxDepthM: m.maxDepthM,
    errorBoundM3: m.errorBoundM3,
    sigmaM3: m.sigmaM3,
    ...m.wetted,
  }))
    if (!(value >= 0)) throw new Error(`${name} is negative: ${value}`)
  if (m.volumeM3 > m.waterSurfaceM2 * m.maxDepthM * (1 + 1e-6) + m.errorBoundM3 + roundingOf(parts))
    throw new Error(`more water than surface times depth: ${m.volumeM3} > ${m.waterSurfaceM2} · ${m.maxDepthM}`)
}

/** Volume never falls as the level rises, and grows by no less than the lower surface and no more than the upper one. */
function expectRising(parts: Partition, levelM: number): void {
  const levels = [levelM - 1, levelM - 0.25, levelM, levelM + 0.2]
  const top = asked('figures at a level', () => measure(parts, levels[3]!))
  const at = levels.map((level, i) => (i === 3 ? top : asked('volume at a level', () => volumeAtLevel(parts, level))))
  const slack = 4 * top.errorBoundM3 + 1e-12 * top.volumeM3 + roundingOf(parts)
  at.forEach(({ volumeM3, waterSurfaceM2 }, i) => {
    if (!(volumeM3 >= 0 && waterSurfaceM2 >= 0 && Number.isFinite(volumeM3 + waterSurfaceM2)))
      throw new Error(`at ${levels[i]}: volume ${volumeM3}, surface ${waterSurfaceM2}`)
    if (i === 0) return
    const before = at[i - 1]!
    const rise = levels[i]! - levels[i - 1]!
    const grown = volumeM3 - before.volumeM3
    if (grown < -slack) throw new Error(`volume falls from ${before.volumeM3} to ${volumeM3} at ${levels[i]}`)
    const span = `between ${levels[i - 1]} and ${levels[i]}`
    if (grown < before.waterSurfaceM2 * rise * (1 - 1e-6) - slack)
      throw new Error(
        `volume grows by ${grown}, less than the lower surface's ${before.waterSurfaceM2 * rise}, ${span}`,
      )
    if (grown > waterSurfaceM2 * rise * (1 + 1e-6) + slack)
      throw new Error(`volume grows by ${grown}, more than the upper surface's ${waterSurfaceM2 * rise}, ${span}`)
  })
}

/**
 * What rounding may leave of a volume [m³]. What a wall takes is integrated to about 1e-9 of the strip that it takes it from, which
 * may be all of the water; a pool of a millimetre at map coordinates has its shore to a grain, some 1e-5 of it.
 */
function roundingOf(parts: Partition): number {
  const { extentM, grainM } = parts
  return 1e-9 * extentM ** 2 * (1 + extentM) + grainM * extentM + grainM * cliffOf(parts) * extentM ** 2
}

/** A floor that falls by metres within a hair has its depths to its slope times the grain only: that slope, none below a cliff's. */
function cliffOf({ cells }: Partition): number {
  const steepest = cells.reduce((most, { plane }) => Math.max(most, Math.hypot(plane.dx, plane.dy)), 0)
  return steepest > CLIFF ? steepest : 0
}

function examinePictures(parts: Partition, isOrdinary: boolean): string[] {
  const mesh = asked('mesh', () => meshOf(parts))
  const depths = [0, 0.5, 1, 1.5, 2]
  const { originX, originY, extentM } = parts
  const line = { from: [originX - extentM, originY] as const, to: [originX + extentM, originY + extentM / 3] as const }
  for (const [name, value] of Object.entries({
    contours: asked('contours', () => contoursOf(parts, depths)),
    bands: asked('bands', () => bandsOf(parts, depths)),
    section: asked('section', () => sectionOf(parts, line)),
    // A place may lie on the very shore, where a wall is upright and its slope endless.
    depth: depthOf(parts, originX, originY),
    positions: mesh.ok ? mesh.value.positions : [],
    normals: mesh.ok ? mesh.value.normals : [],
  })) {
    const bad = badNumber(value, name)
    if (bad !== undefined) throw new Error(`${bad} is no number`)
  }
  const made = `mesh: ${mesh.ok ? 'made' : mesh.problem.code}`
  return isOrdinary ? [made, `ordinary ${made}`] : [made]
}

function depthOf(parts: Partition, x: number, y: number): unknown {
  const sample = depthAt(parts, x, y)
  return sample && sample.slope === Number.POSITIVE_INFINITY ? { ...sample, slope: 0 } : (sample ?? 0)
}

/** What a body is asked beside its figures: derivatives, what makes it unsure, breaks of its level curve, levels for volumes. */
function examineAnswers(parts: Partition, { levelM, volumeM3, errorBoundM3 }: Measures): string[] {
  const breaks = asked('breaks', () => levelBreaks(parts))
  const unsure = asked('uncertainty', () => uncertaintyOf(parts, levelM))
  const bad = badNumber({ derivatives: asked('derivatives', () => derivativesOf(parts, levelM)), breaks, unsure }, '')
  if (bad !== undefined) throw new Error(`${bad} is no number`)
  if (breaks.some((level, i) => i > 0 && !(level > breaks[i - 1]!)))
    throw new Error('the breaks of the level curve fall')
  if ([unsure, ...unsure.contributions, ...unsure.largest].some(({ sigmaM3 }) => !(sigmaM3 >= 0)))
    throw new Error('a standard deviation is negative')
  for (const share of [1, 0.5, 0.01]) {
    const level = asked('level for a volume', () => levelForVolume(parts, share * volumeM3))
    if (!level.ok) throw new Error(`no level for ${share} of the volume: ${level.problem.code}`)
    const back = volumeAtLevel(parts, level.value).volumeM3
    const slack = 1e-8 * volumeM3 + 4 * errorBoundM3
    if (!(Math.abs(back - share * volumeM3) <= slack))
      throw new Error(`the level for ${share * volumeM3} holds ${back}`)
  }
  return ['asked for derivatives, breaks and levels']
}

/** The place of the first number that is NaN or endless. */
function badNumber(value: unknown, where: string): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : where
  if (typeof value !== 'object' || value === null) return undefined
  // A picture has millions: no pairs of name and value, which would take longer than the picture.
  if (Array.isArray(value) || value instanceof Float32Array || value instanceof Float64Array) {
    for (let i = 0; i < value.length; i++) {
      const bad = badNumber(value[i], '')
      if (bad !== undefined) return `${where}.${i}${bad}`
    }
    return undefined
  }
  for (const [key, item] of Object.entries(value)) {
    const bad = badNumber(item, `${where}.${key}`)
    if (bad !== undefined) return bad
  }
  return undefined
}

/** A number that depends on the plan alone: picks the bodies whose pictures are drawn or that are asked more. */
function hashOf(body: Body): number {
  const text = JSON.stringify([body.outline, body.features])
  let hash = 0
  for (let i = 0; i < text.length; i++) hash = (Math.imul(hash, 31) + text.charCodeAt(i)) >>> 0
  // The texts end alike: without this the last bits would hardly differ.
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b)
  return (hash ^ (hash >>> 13)) >>> 0
}
