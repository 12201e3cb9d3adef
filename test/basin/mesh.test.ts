import earcut from 'earcut'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import {
  type BasinMesh,
  type BasinShape,
  measure,
  meshOf,
  type Partition,
  partition,
  transformPath,
} from '../../src/basin/index.ts'
import { applyCommand, demoSpec } from '../../src/document/index.ts'
import { patchesOf } from '../../src/features/index.ts'
import { startModeller, type Wasm } from '../support/solid-kit.ts'
import { pool } from './arbitrary.ts'
import { BEAN, box, circle, DEMO, divided, polygon, relative, shape } from './shapes.ts'

const RIM_M = 0.15
const SEED = 20_261_125

/** The pool of the first sheet, with another wall. */
function example(wall: BasinShape['wall']): BasinShape {
  const body = demoSpec.bodies[0]!
  const patches = patchesOf(body.features, body.outline)
  if (!patches.ok) throw new Error(patches.problem.what)
  const { outline, islands, floor, freeboardM } = body
  return { outline, islands, floor, wall, freeboardM, patches: patches.value }
}

const SLOPE = {
  kind: 'profile',
  axis: { from: [0, 0], to: [9, 1] },
  stations: [
    [0, 1],
    [9, 1.6],
  ],
} as const
const ELL = polygon([0, 0], [9, 0], [9, 4], [4, 4], [4, 7], [0, 7])
const TREADS = [
  [0.6, 0.3],
  [0.9, 0.6],
  [1.2, 0.9],
] as const

const POOLS: Record<string, BasinShape> = {
  'the coved example': example({ kind: 'cove', radiusM: 0.25 }),
  'the example with leaning walls': example({ kind: 'battered', run: 0.3 }),
  'a coved freeform slope': shape(BEAN, { floor: SLOPE, wall: { kind: 'cove', radiusM: 0.4 } }),
  'a coved demo with treads, whose wall is wider than its steps': { ...DEMO, wall: { kind: 'cove', radiusM: 0.7 } },
  'a battered L': shape(ELL, { floor: SLOPE, wall: { kind: 'battered', run: 0.5 } }),
  'a battered round': shape(circle(0, 0, 4), { wall: { kind: 'battered', run: 0.4 } }),
  'a coved round that is all cove': shape(circle(0, 0, 1.2), { wall: { kind: 'cove', radiusM: 1.4 } }),
  'a coved L with shelf and round steps': shape(ELL, {
    wall: { kind: 'cove', radiusM: 0.4 },
    features: [
      { kind: 'shelf', path: box(-1, 5.5, 5, 8), depthM: 0.4 },
      { kind: 'roundSteps', centre: [9, 0], treads: TREADS },
    ],
  }),
  'a coved ring about an island with a shelf across': shape(circle(0, 0, 4), {
    islands: [circle(0.5, 0.2, 1)],
    wall: { kind: 'cove', radiusM: 0.5 },
    features: [{ kind: 'shelf', path: box(-5, -1, 5, 0.5), depthM: 0.4 }],
  }),
  'a battered ring about an island with a shelf across': shape(circle(0, 0, 4), {
    islands: [circle(0.5, 0.2, 1)],
    wall: { kind: 'battered', run: 0.6 },
    features: [{ kind: 'shelf', path: box(-5, -1, 5, 0.5), depthM: 0.4 }],
  }),
  'a gentle batter whose walls meet in a ridge': shape(box(0, 0, 9, 4), {
    floor: SLOPE,
    wall: { kind: 'battered', run: 2 },
  }),
  'a hollow in a coved box': shape(box(0, 0, 8, 5), {
    wall: { kind: 'cove', radiusM: 0.3 },
    floor: { kind: 'dish', form: 'cap', centre: [4, 2.5], radiusM: 2, edgeDepthM: 1, depthM: 1.8 },
  }),
}

function mesh(p: Partition, chordM?: number): BasinMesh {
  const result = meshOf(p, { chordM })
  if (!result.ok) throw new Error(result.problem.code)
  return result.value
}

/** Water up to the rim by prisms over each triangle: no tetrahedra as in the program's own check. */
function capacity(m: BasinMesh): number {
  let sum = 0
  const p = m.positions
  for (let i = 0; i < m.indices.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * m.indices[i + k]!) as [number, number, number]
    const area = ((p[b]! - p[a]!) * (p[c + 1]! - p[a + 1]!) - (p[b + 1]! - p[a + 1]!) * (p[c]! - p[a]!)) / 2
    sum += area * (RIM_M - (p[a + 2]! + p[b + 2]! + p[c + 2]!) / 3)
  }
  return sum
}

/** The same, exact: above every point of these floors there is water at the rim. */
function exactCapacity(p: Partition): number {
  return measure(p, RIM_M).volumeM3
}

/** How many sides below the rim aren't passed as often one way as the other, by the places of their ends. */
function leaks(m: BasinMesh): number {
  const at = (i: number): string => `${m.positions[3 * i]},${m.positions[3 * i + 1]},${m.positions[3 * i + 2]}`
  const net = new Map<string, number>()
  for (let i = 0; i < m.indices.length; i++) {
    const a = m.indices[i]!
    const b = m.indices[i % 3 === 2 ? i - 2 : i + 1]!
    if ([a, b].every((v) => Math.abs(m.positions[3 * v + 2]! - RIM_M) < 1e-6)) continue
    const [u, v] = [at(a), at(b)]
    if (u === v) continue
    const key = u < v ? `${u}|${v}` : `${v}|${u}`
    net.set(key, (net.get(key) ?? 0) + (u < v ? 1 : -1))
  }
  return [...net.values()].filter((n) => n !== 0).length
}

describe('the mesh of a coved pool', () => {
  it('is there wherever a point of the outline is dragged, with the cove in it', () => {
    const body = demoSpec.bodies[0]!
    const nodes = [body.outline.start, ...body.outline.segments.map(({ to }) => to)]
    const patches = patchesOf(body.features, body.outline)
    if (!patches.ok) throw new Error(patches.problem.what)
    for (let node = 0; node < 8; node++) {
      for (let step = 1; step <= 6; step++) {
        const [x, y] = nodes[node]!
        const to = [x + 0.07 * step * Math.cos(2.1 * step), y + 0.07 * step * Math.sin(2.1 * step)] as const
        const moved = applyCommand(demoSpec, {
          id: 'movePoint',
          args: { bodyId: body.id, ring: { of: 'outline' }, node, to },
        })
        if (!moved.ok) throw new Error(moved.problem.what)
        const { outline, islands, floor, wall, freeboardM } = moved.value.bodies[0]!
        const parts = partition({ outline, islands, floor, wall, freeboardM, patches: patches.value })
        if (!parts.ok) throw new Error(parts.problem.what)
        const result = meshOf(parts.value)
        expect(result.ok ? 'a mesh' : result.problem.code, `point ${node}, step ${step}`).toBe('a mesh')
        if (result.ok) expect(result.value.indices.length / 3).toBeGreaterThan(1000)
      }
    }
  })

  it('has the exact volume of the example within 0.08 % as it is shown', () => {
    const p = divided(POOLS['the coved example']!)
    expect(relative(capacity(mesh(p)), exactCapacity(p))).toBeLessThan(8e-4)
  })
})

describe('the mesh of a pool at map coordinates', () => {
  it('is as large as it is at home, but for the last of its 32 bits', () => {
    const [east, north] = [512_000, 5_240_000]
    const far = transformPath(BEAN, { a: 1, b: 0, c: 0, d: 1, e: east, f: north })
    for (const wall of [{ kind: 'vertical' }, { kind: 'cove', radiusM: 0.4 }] as const) {
      const here = mesh(divided(shape(BEAN, { wall })))
      const there = mesh(divided(shape(far, { wall })))
      expect(relative(capacity(there), capacity(here))).toBeLessThan(1e-6)
      const widest = (m: BasinMesh): number => Math.max(...m.positions, ...m.rings.flatMap((ring) => [...ring]))
      expect(Math.abs(widest(there) - widest(here))).toBeLessThan(2e-6)
      expect(there.origin[0] - here.origin[0]).toBeCloseTo(east, 8)
      expect(there.origin[1] - here.origin[1]).toBeCloseTo(north, 8)
    }
  })
})

describe.each(Object.entries(POOLS))('%s', (_, s) => {
  const p = divided(s)

  it('has a mesh without leaks whose volume converges with the height of its chords', () => {
    // The square of the sides' length, so the first power of the height of their chords: sixteen times in the long run.
    const [coarse, fine] = [0.016, 0.001].map((chordM) => {
      const m = mesh(p, chordM)
      expect(leaks(m)).toBe(0)
      return relative(capacity(m), exactCapacity(p))
    }) as [number, number]
    expect(coarse).toBeLessThan(0.035)
    // What is exact from the start can only jitter.
    expect(fine).toBeLessThan(Math.max(coarse / 5, 1e-6))
  })
})

describe('an independent solid modeller', () => {
  let wasm: Wasm

  beforeAll(async () => {
    wasm = await startModeller()
  })

  // Source: manifold-3d 3.5.4, which refuses whatever isn't the closed surface of a solid.
  it.each(Object.entries(POOLS))('takes %s, closed by a lid, for a solid of the same volume', (_, s) => {
    const p = divided(s)
    const m = mesh(p)
    const solid = new wasm.Manifold(closed(wasm, m))
    expect(solid.status()).toBe('NoError')
    expect(relative(solid.volume(), capacity(m))).toBeLessThan(1e-5)
    expect(relative(solid.volume(), exactCapacity(p))).toBeLessThan(2e-3)
  })
})

/** Shell and lid as one surface that faces outward, points at one place merged. */
function closed(wasm: Wasm, m: BasinMesh): InstanceType<Wasm['Mesh']> {
  const places = new Map<string, number>()
  const points: number[] = []
  const put = (x: number, y: number, z: number): number => {
    const key = `${Math.fround(x)},${Math.fround(y)},${Math.fround(z)}`
    let point = places.get(key)
    if (point === undefined) {
      point = points.length / 3
      places.set(key, point)
      points.push(x, y, z)
    }
    return point
  }
  const triangles: number[] = []
  const face = (a: number, b: number, c: number): void => {
    if (a !== b && b !== c && c !== a) triangles.push(a, b, c)
  }
  const at = (i: number): number => put(m.positions[3 * i]!, m.positions[3 * i + 1]!, m.positions[3 * i + 2]!)
  for (let i = 0; i < m.indices.length; i += 3) face(at(m.indices[i]!), at(m.indices[i + 2]!), at(m.indices[i + 1]!))
  const flat = m.rings.flatMap((ring) => [...ring])
  const holes = m.rings.slice(1).map((_, k) => m.rings.slice(0, k + 1).reduce((n, ring) => n + ring.length / 2, 0))
  const lid = earcut(flat, holes)
  const turn = (i: number): number => {
    const [a, b, c] = [2 * lid[i]!, 2 * lid[i + 1]!, 2 * lid[i + 2]!]
    return (flat[b]! - flat[a]!) * (flat[c + 1]! - flat[a + 1]!) - (flat[b + 1]! - flat[a + 1]!) * (flat[c]! - flat[a]!)
  }
  for (let i = 0; i < lid.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => put(flat[2 * lid[i + k]!]!, flat[2 * lid[i + k]! + 1]!, RIM_M)) as [
      number,
      number,
      number,
    ]
    if (turn(i) > 0) face(a, b, c)
    else face(a, c, b)
  }
  return new wasm.Mesh({ numProp: 3, vertProperties: Float32Array.from(points), triVerts: Uint32Array.from(triangles) })
}

describe('random shapes', () => {
  const wall = fc.oneof(
    fc.double({ min: 0.05, max: 0.8, noNaN: true }).map((radiusM) => ({ kind: 'cove' as const, radiusM })),
    fc.double({ min: 0.02, max: 1, noNaN: true }).map((run) => ({ kind: 'battered' as const, run })),
  )

  it('with coves and leaning walls give a mesh without leaks', () => {
    let sound = 0
    fc.assert(
      fc.property(pool, wall, (s, w) => {
        const result = partition({ ...s, wall: w })
        if (!result.ok) return
        sound++
        const m = meshOf(result.value, { chordM: 0.02 })
        if (!m.ok) throw new Error(m.problem.code)
        expect(leaks(m.value)).toBe(0)
      }),
      { seed: SEED, numRuns: 340 },
    )
    expect(sound).toBeGreaterThan(150)
  }, 120_000)
})
