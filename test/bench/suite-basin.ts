import type { BasinShape, Partition, Path, Point } from '../../src/basin/index.ts'
import { type Fineness, startModeller, type Wasm } from '../support/solid-kit.ts'
import { solidWaterM3 } from '../support/solid-modeller.ts'
import { type BenchRow, medians, seeded } from './bench.ts'
import { shippedKernel } from './shipped.ts'

const { demoSpec, depthAt, measure, meshOf, partition, patchesOf, smoothThrough } = await shippedKernel()

const PEER = 'manifold-3d'
/** The peer is meshed until it agrees this well (relative); then both are timed. */
const EQUAL_ACCURACY = 1e-5
/** Where the peer doesn't get there in this time, it is timed as fine as it got [ms]. */
const PEER_PATIENCE_MS = 8_000

interface BenchCase {
  readonly name: string
  readonly shape: BasinShape
}

/**
 * Times of our kernel against the solid modeller on the same solids, coves included, at equal accuracy. The kernel goes first:
 * a page that measures has no modeller's memory beside it.
 */
export async function basinSuite(): Promise<BenchRow[]> {
  const benches = cases()
  const ours: Record<string, number>[] = []
  for (const { shape } of benches) ours.push(await timesOf(shape))
  const wasm = await startModeller()
  const rows: BenchRow[] = []
  for (const [i, bench] of benches.entries()) rows.push(...(await benchCase(wasm, bench, ours[i]!)))
  return rows
}

function timesOf(shape: BasinShape): Promise<Record<string, number>> {
  const parts = divided(shape)
  return medians({
    figures: () => measure(divided(shape), 0),
    both: () => {
      const p = divided(shape)
      return [measure(p, 0), meshOf(p)]
    },
    level: levels(parts),
    point: points(parts),
  })
}

interface Rival {
  readonly fineness: Fineness
  readonly off: number
  readonly tookMs: number
}

/** The coarsest solid that agrees: chords and slices made finer together, as their errors fall together. */
function rivalOf(wasm: Wasm, shape: BasinShape): Rival {
  const exact = measure(divided(shape), 0).volumeM3
  const isUpright = shape.wall.kind === 'vertical'
  let fineness: Fineness = { chordM: 4e-3, slices: isUpright ? 1 : 8 }
  for (;;) {
    const start = performance.now()
    const off = Math.abs(solidWaterM3(wasm, shape, fineness) / exact - 1)
    const tookMs = performance.now() - start
    if (off <= EQUAL_ACCURACY || tookMs > PEER_PATIENCE_MS) return { fineness, off, tookMs }
    fineness = { chordM: fineness.chordM / 2, slices: isUpright ? 1 : Math.ceil(fineness.slices * Math.SQRT2) }
  }
}

async function benchCase(
  wasm: Wasm,
  { name, shape }: BenchCase,
  ours: Readonly<Record<string, number>>,
): Promise<BenchRow[]> {
  const rival = rivalOf(wasm, shape)
  // A solid of many slices takes seconds: a few of them are enough.
  const peerMs = rival.tookMs > 400 ? medianOf(3, () => solidWaterM3(wasm, shape, rival.fineness)) : undefined
  const timed =
    peerMs ?? (await medians({ peer: () => solidWaterM3(wasm, shape, rival.fineness) }))['peer'] ?? Number.NaN
  const peer = `${PEER}, the same solid's volume, off by ${rival.off.toExponential(1)}`
  const row = (what: string, key: string, count = 1): BenchRow => {
    const oursMs = (ours[key] ?? Number.NaN) / count
    return { suite: 'basin', case: name, what, oursMs, peer, peerMs: timed, ratio: Number((timed / oursMs).toFixed(2)) }
  }
  return [
    row('all figures', 'figures'),
    row('all figures and display mesh', 'both'),
    row('all figures at another level, partition kept', 'level'),
    row('depth, slope and part at a point', 'point', POINTS),
  ]
}

function medianOf(times: number, task: () => unknown): number {
  const took = Array.from({ length: times }, () => {
    const start = performance.now()
    task()
    return performance.now() - start
  })
  return took.sort((a, b) => a - b)[times >> 1] ?? Number.NaN
}

const POINTS = 1000

function points(p: Partition): () => unknown {
  const random = seeded(11)
  const places = Array.from({ length: POINTS }, () => [
    p.originX + (random() - 0.5) * 0.7 * p.extentM,
    p.originY + (random() - 0.5) * 0.5 * p.extentM,
  ])
  return () => places.map(([x, y]) => depthAt(p, x ?? 0, y ?? 0))
}

function levels(p: Partition): () => unknown {
  let step = 0
  return () => measure(p, -0.01 * (step++ % 20))
}

function divided(shape: BasinShape): Partition {
  const result = partition(shape)
  if (!result.ok) throw new Error(result.problem.what)
  return result.value
}

function cases(): readonly BenchCase[] {
  const body = demoSpec.bodies[0]
  if (!body) throw new Error('the example has a body')
  const patches = patchesOf(body.features, body.outline)
  if (!patches.ok) throw new Error(patches.problem.what)
  // With its tolerance: how sure the volume is belongs to the figures.
  const { outline, islands, floor, wall, freeboardM, tolerance } = body
  const example: BasinShape = { outline, islands, floor, wall, freeboardM, tolerance, patches: patches.value }
  const freeform: BasinShape = {
    ...example,
    outline: blob(60, 7, 0.6),
    patches: shelves(),
    wall: { kind: 'cove', radiusM: 0.2 },
  }
  const large: BasinShape = { ...example, outline: ring(5000), patches: [], wall: { kind: 'vertical' } }
  return [
    { name: 'example pool', shape: example },
    { name: 'freeform of 60 nodes with cove, 8 features', shape: freeform },
    { name: 'outline of 5,000 lines', shape: large },
  ]
}

/** Points on a wobbly circle about the example's middle. */
function wobbly(count: number, radiusM: number, wobble: number): Point[] {
  const random = seeded(7)
  const waves = Array.from({ length: 5 }, (_, k) => ({
    k: k + 2,
    a: (wobble * random()) / (k + 1),
    at: 6.28 * random(),
  }))
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count
    const r = radiusM + waves.reduce((sum, { k, a, at }) => sum + a * Math.cos(k * angle + at), 0)
    return [5.5 + r * Math.cos(angle), 2.8 + r * Math.sin(angle)] as const
  })
}

function blob(count: number, radiusM: number, wobble: number): Path {
  const points = wobbly(count, radiusM, wobble)
  const first = points[0]
  if (!first) throw new Error('there are points')
  return { start: first, segments: smoothThrough(points, true) }
}

function ring(count: number): Path {
  const [first, ...rest] = wobbly(count, 7, 0.6)
  if (!first) throw new Error('there are points')
  return { start: first, segments: [...rest, first].map((to) => ({ to })) }
}

function shelves(): BasinShape['patches'] {
  const shelf = (i: number) => {
    const angle = (2 * Math.PI * i) / 8
    const [x, y] = [5.5 + 6 * Math.cos(angle), 2.8 + 6 * Math.sin(angle)]
    const corner = (dx: number, dy: number) => ({ to: [x + dx, y + dy] as const })
    return {
      kind: 'shelf' as const,
      path: { start: [x - 1, y - 1] as const, segments: [corner(1, -1), corner(1, 1), corner(-1, 1), corner(-1, -1)] },
      depthM: 0.3 + 0.05 * i,
    }
  }
  const patches = patchesOf(
    Array.from({ length: 8 }, (_, i) => shelf(i)),
    ring(60),
  )
  if (!patches.ok) throw new Error(patches.problem.what)
  return patches.value
}
