import {
  type BasinShape,
  measure,
  meshOf,
  type Partition,
  type Path,
  type Point,
  partition,
  smoothThrough,
} from '../../src/basin/index.ts'
import { demoSpec } from '../../src/document/index.ts'
import { patchesOf } from '../../src/features/index.ts'
import { solidWaterM3, startModeller, type Wasm } from '../support/solid-modeller.ts'
import { type BenchRow, medians, seeded } from './bench.ts'

const PEER = 'manifold-3d'
/** The peer is meshed until it agrees this well (relative); then both are timed. */
const EQUAL_ACCURACY = 1e-5

interface BenchCase {
  readonly name: string
  readonly shape: BasinShape
  /** The shape that the peer can build: the same without the cove, which it has no primitive for. */
  readonly upright: BasinShape
}

/** Times of our whole measure against the solid modeller on the same shapes, at equal accuracy. */
export async function basinSuite(): Promise<BenchRow[]> {
  const wasm = await startModeller()
  const rows: BenchRow[] = []
  for (const bench of cases()) rows.push(...(await benchCase(wasm, bench)))
  return rows
}

async function benchCase(wasm: Wasm, { name, shape, upright }: BenchCase): Promise<BenchRow[]> {
  const exact = measure(divided(upright), 0).volumeM3
  let chordM = 0.02
  while (Math.abs(solidWaterM3(wasm, upright, chordM) / exact - 1) > EQUAL_ACCURACY && chordM > 1e-7) chordM /= 2
  const coved = shape.wall.kind === 'cove'
  const times = await medians({
    upright: () => measure(divided(upright), 0),
    whole: () => measure(divided(shape), 0),
    level: levels(divided(shape)),
    mesh: () => meshOf(divided(shape)),
    peer: () => solidWaterM3(wasm, upright, chordM),
  })
  const row = (what: string, ours: string): BenchRow => ({
    suite: 'basin',
    case: name,
    what,
    oursMs: times[ours] ?? Number.NaN,
    peer: `${PEER}, volume only, ${EQUAL_ACCURACY}`,
    peerMs: times['peer'] ?? Number.NaN,
    ratio: Number(((times['peer'] ?? Number.NaN) / (times[ours] ?? Number.NaN)).toFixed(2)),
  })
  return [
    row('all figures, upright walls (as the peer)', 'upright'),
    ...(coved ? [row('all figures with the cove', 'whole')] : []),
    row('all figures at another level, partition kept', 'level'),
    row('partition and display mesh', 'mesh'),
  ]
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
  const { outline, islands, floor, wall, freeboardM } = body
  const example: BasinShape = { outline, islands, floor, wall, freeboardM, patches: patches.value }
  const freeform: BasinShape = {
    ...example,
    outline: blob(60, 7, 0.6),
    patches: shelves(),
    wall: { kind: 'cove', radiusM: 0.2 },
  }
  const large: BasinShape = { ...example, outline: ring(5000), patches: [], wall: { kind: 'vertical' } }
  return [
    { name: 'example pool', shape: example, upright: { ...example, wall: { kind: 'vertical' } } },
    { name: 'freeform of 60 nodes, 8 features', shape: freeform, upright: { ...freeform, wall: { kind: 'vertical' } } },
    { name: 'outline of 5,000 lines', shape: large, upright: large },
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
  const patches = patchesOf(Array.from({ length: 8 }, (_, i) => shelf(i)), ring(60))
  if (!patches.ok) throw new Error(patches.problem.what)
  return patches.value
}
