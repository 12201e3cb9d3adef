import { describe, expect, it } from 'vitest'
import {
  areaOf,
  type BasinMesh,
  bandsOf,
  contoursOf,
  depthAt,
  measure,
  meshOf,
  PARTS,
  type Partition,
  sectionOf,
} from '../../src/basin/index.ts'
import { BEAN, box, circle, DEMO, divided, polygon, relative, shape } from './shapes.ts'

const SLOPE = {
  kind: 'profile',
  axis: { from: [0, 0], to: [9, 1] },
  stations: [
    [0, 1],
    [9, 1.6],
  ],
} as const

const BASINS: Record<string, Partition> = {
  demo: divided(DEMO),
  'a beach that rises above the rim': divided(
    shape(box(0, 0, 10, 5), {
      floor: {
        kind: 'profile',
        axis: { from: [0, 0], to: [10, 0] },
        stations: [
          [0, -0.4],
          [10, 1.6],
        ],
      },
    }),
  ),
  'a ring about an island with a shelf across': divided(
    shape(circle(0, 0, 4), {
      islands: [circle(0.5, 0.2, 1)],
      features: [{ kind: 'shelf', path: box(-5, -1, 5, 0.5), depthM: 0.4 }],
    }),
  ),
  'a cove on a freeform slope': divided(shape(BEAN, { floor: SLOPE, wall: { kind: 'cove', radiusM: 0.4 } })),
  'a cove with shelf, round steps and a re-entrant corner': divided(
    shape(polygon([0, 0], [9, 0], [9, 4], [4, 4], [4, 7], [0, 7]), {
      wall: { kind: 'cove', radiusM: 0.4 },
      features: [
        { kind: 'shelf', path: box(-1, 5.5, 5, 8), depthM: 0.4 },
        {
          kind: 'roundSteps',
          centre: [9, 0],
          treads: [
            [0.6, 0.3],
            [0.9, 0.6],
            [1.2, 0.9],
          ],
        },
      ],
    }),
  ),
}

Object.assign(BASINS, {
  'leaning walls on a freeform slope': divided(
    shape(BEAN, { floor: SLOPE, wall: { kind: 'battered', run: 0.3 }, islands: [circle(5, 2.4, 0.5)] }),
  ),
  'gentle walls that meet, with a shelf': divided(
    shape(box(0, 0, 9, 4), {
      floor: SLOPE,
      wall: { kind: 'battered', run: 1.5 },
      features: [{ kind: 'shelf', path: box(5, -1, 7, 2.5), depthM: 0.6 }],
    }),
  ),
  'a hollow with a shelf across': divided(
    shape(box(0, 0, 9, 5), {
      floor: { kind: 'dish', form: 'cap', centre: [4, 2.5], radiusM: 2.2, edgeDepthM: 1, depthM: 1.8 },
      features: [{ kind: 'shelf', path: box(5, -1, 7, 2.5), depthM: 0.6 }],
    }),
  ),
})

function mesh(p: Partition, chordM?: number): BasinMesh {
  const result = meshOf(p, { chordM })
  if (!result.ok) throw new Error(result.problem.code)
  return result.value
}

/** Directed sides that no triangle has the other way round, by their ends. */
function openSides(m: BasinMesh): [number[], number[]][] {
  const at = (i: number): number[] => [m.positions[3 * i]!, m.positions[3 * i + 1]!, m.positions[3 * i + 2]!]
  const count = new Map<string, number>()
  for (let i = 0; i < m.indices.length; i += 3)
    for (let k = 0; k < 3; k++) {
      const a = at(m.indices[i + k]!).join(',')
      const b = at(m.indices[i + ((k + 1) % 3)]!).join(',')
      if (a === b) continue
      const key = a < b ? `${a}|${b}` : `${b}|${a}`
      count.set(key, (count.get(key) ?? 0) + (a < b ? 1 : -1))
    }
  return [...count]
    .filter(([, n]) => n !== 0)
    .map(([key]) => key.split('|').map((v) => v.split(',').map(Number)) as [number[], number[]])
}

/** Volume under the plane of the rim by prisms over each triangle: no tetrahedra as in the program's own check. */
function capacity(m: BasinMesh, rimZ: number): number {
  let sum = 0
  for (let i = 0; i < m.indices.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * m.indices[i + k]!) as [number, number, number]
    const p = m.positions
    const area = ((p[b]! - p[a]!) * (p[c + 1]! - p[a + 1]!) - (p[b + 1]! - p[a + 1]!) * (p[c]! - p[a]!)) / 2
    sum += area * (rimZ - (p[a + 2]! + p[b + 2]! + p[c + 2]!) / 3)
  }
  return sum
}

describe.each(Object.entries(BASINS))('the picture of %s', (_, p) => {
  const m = mesh(p)

  it('is watertight up to the rim', () => {
    for (const [a, b] of openSides(m)) {
      expect(a[2]).toBeCloseTo(0.15, 6)
      expect(b[2]).toBeCloseTo(0.15, 6)
    }
  })

  it('has the volume of the basin, nearer with finer chords', () => {
    // Above every point of the floor there is water: the exact capacity.
    const flooded = measure(p, 0.6).volumeM3 - measure(p, 0.6).waterSurfaceM2 * 0.45
    const coarse = relative(capacity(mesh(p, 0.05), 0.15), flooded)
    const fine = relative(capacity(mesh(p, 0.0005), 0.15), flooded)
    expect(coarse).toBeLessThan(0.03)
    expect(fine).toBeLessThan(p.shape.wall.kind === 'vertical' && p.shape.floor.kind !== 'dish' ? 2e-4 : 1e-3)
  })

  it('has unit normals, known parts, and faces that look into the water', () => {
    for (let i = 0; i < m.normals.length; i += 3)
      expect(Math.hypot(m.normals[i]!, m.normals[i + 1]!, m.normals[i + 2]!)).toBeCloseTo(1, 5)
    for (let i = 0; i < m.parts.length; i++) {
      const part = PARTS[m.parts[i]!]
      expect(part).toBeDefined()
      if (part !== 'floor' && part !== 'feature') continue
      expect(m.normals[3 * m.indices[3 * i]! + 2]).toBeGreaterThanOrEqual(0)
    }
    expect(m.edges.length % 6).toBe(0)
    expect(m.rings.length).toBe(1 + p.shape.islands.length)
  })

  it('cuts a section that agrees with the depth at each place, walls and rim at its ends', () => {
    const cut = sectionOf(p, { from: [0, 1.1], to: [9, 3.7] })
    expect(cut.spans.length).toBeGreaterThan(0)
    const length = Math.hypot(9, 2.6)
    let compared = 0
    for (const piece of cut.pieces) {
      if (piece.part === 'riser' || piece.part === 'rim') continue
      for (let i = 0; i + 1 < piece.points.length; i++) {
        const [sa, da] = piece.points[i]!
        const [sb, db] = piece.points[i + 1]!
        const s = (sa + sb) / 2
        const sample = depthAt(p, (9 * s) / length, 1.1 + (2.6 * s) / length)
        // A wall is upright, or it leans and is the part that a place on it has.
        if (!sample || sb - sa < 1e-9) continue
        expect(Math.abs(sample.depthM - (da + db) / 2)).toBeLessThan(2e-3)
        expect(sample.part).toBe(piece.part)
        compared++
      }
    }
    expect(compared).toBeGreaterThan(0)
    // Every piece goes on where the last one stopped, but for dry land between.
    const jumps = cut.pieces.slice(1).filter((piece, i) => {
      const last = cut.pieces[i]!.points
      return Math.abs(piece.points[0]![0] - last[last.length - 1]![0]) > 1e-6
    })
    expect(jumps.length).toBe(cut.spans.length - 1)
  })

  it('draws contours at whose points the depth is the contour’s', () => {
    const lines = contoursOf(p, [0.2, 0.8, 1.15, 1.3, 1.45])
    const isSloping = p.shape.floor.kind !== 'flat' || p.shape.wall.kind !== 'vertical'
    expect(lines.length > 0).toBe(isSloping)
    const isLinear = p.shape.wall.kind === 'vertical' && p.shape.floor.kind !== 'dish'
    for (const line of lines)
      for (let i = 0; i + 1 < line.points.length; i++) {
        const [ax, ay] = line.points[i]!
        const [bx, by] = line.points[i + 1]!
        // A point on an upright face reads one of its sides, and chords stray from a curved face by a few millimetres.
        const beside = [
          [0, 0],
          [4e-3, 0],
          [-4e-3, 0],
          [0, 4e-3],
          [0, -4e-3],
        ] as const
        const off = beside.map(([dx, dy], k) => {
          const sample = depthAt(p, (ax + bx) / 2 + dx, (ay + by) / 2 + dy)
          return sample ? Math.abs(sample.depthM - line.depthM) - (k > 0 ? 4e-3 * sample.slope : 0) : 0
        })
        // On a wall or in a hollow the line is exact at its points and runs by chords between them.
        expect(Math.min(...off)).toBeLessThan(isLinear ? 1e-9 : 2e-3)
      }
  })

  it('tints bands that cover the basin once', () => {
    const bands = bandsOf(p, [-Infinity, 0, 0.4, 0.9, 1.3, Infinity])
    const area = bands
      .flatMap((band) => band.rings)
      .reduce((sum, ring) => {
        const [start, ...rest] = ring
        return sum + areaOf({ start: start!, segments: rest.map((to) => ({ to })) })
      }, 0)
    expect(relative(area, measure(p, 1).waterSurfaceM2)).toBeLessThan(2e-3)
  })
})

describe('a cove beside an arc so flat that it is drawn as its chord', () => {
  it('still has a watertight mesh where a shelf begins on that chord', () => {
    const flat = { start: [0, 0], segments: [{ to: [6, 0], bulge: -2e-4 }, { to: [6, 4] }, { to: [0, 4] }] } as const
    const shelf = { start: [1, 1], segments: [{ to: [3, 1], bulge: 2e-4 }, { to: [3, 2] }, { to: [1, 2] }] } as const
    const p = divided(
      shape(flat, {
        wall: { kind: 'cove', radiusM: 0.5 },
        features: [
          { kind: 'shelf', path: shelf, depthM: 0.5 },
          { kind: 'shelf', path: box(1, 1, 3, 1.5), depthM: 0.8 },
          { kind: 'shelf', path: box(-1, -1, 1, 5), depthM: 0.3 },
        ],
      }),
    )
    expect(
      openSides(mesh(p, 0.05)).every(([a, b]) => Math.abs(a[2]! - 0.15) < 1e-6 && Math.abs(b[2]! - 0.15) < 1e-6),
    ).toBe(true)
  })
})

describe('depth at a place', () => {
  it('tells part, feature and slope, and nothing on dry land', () => {
    const p = BASINS['demo']!
    expect(depthAt(p, 20, 20)).toBeUndefined()
    expect(depthAt(p, 4, 4)).toMatchObject({ part: 'feature', feature: 0, depthM: 0.35, slope: 0 })
    const deep = depthAt(p, 6, 2)
    expect(deep?.part).toBe('floor')
    expect(deep?.slope).toBeGreaterThan(0)
  })
})
