import { describe, expect, it } from 'vitest'
import type { BasinShape, Point } from '../../src/basin/index.ts'
import { measure, meshOf, type Partition, smoothThrough } from '../../src/basin/index.ts'
import { MeshBuilder } from '../../src/basin/mesh-builder.ts'
import { meshSlack } from '../../src/basin/mesh-check.ts'
import type { ShellPoints } from '../../src/basin/mesh-levels.ts'
import { defaultChord, planMesh } from '../../src/basin/plan-mesh.ts'
import type { Feature } from '../../src/features/index.ts'
import { box, circle, divided, polygon, shape } from './shapes.ts'

const RIM_M = 0.15

/** Straight shores with a re-entrant corner and an island; a square about a square, where breaks follow the lines between walls. */
const PLANS = {
  'an L about an island': {
    outline: polygon([0, 0], [8, 0], [8.5, 3], [4, 3.2], [3.6, 6.5], [0.2, 6]),
    islands: [polygon([1.2, 1.2], [1.9, 1.3], [1.6, 2.1])],
    at: [2.6, 3.4],
  },
  'a square about a square': { outline: box(0, 0, 4, 4), islands: [box(1, 1, 3, 3)], at: [2, 3.5] },
} as const

const WALLS: BasinShape['wall'][] = [
  { kind: 'vertical' },
  { kind: 'cove', radiusM: 0.4 },
  { kind: 'battered', run: 0.25 },
  { kind: 'battered', run: 1.2 },
]

function floorsAt([x, y]: readonly [number, number]): Record<string, BasinShape['floor']> {
  return {
    flat: { kind: 'flat', depthM: 1.4 },
    profile: {
      kind: 'profile',
      axis: { from: [0, 0.5], to: [6, 1.5] },
      stations: [
        [0.4, 0.9],
        [3.1, 1.3],
        [5, 2.4],
      ],
    },
    contours: {
      kind: 'contours',
      edgeDepthM: 0.8,
      rings: [
        { depthM: 1.7, path: polygon([x - 0.1, y - 0.1], [x + 0.1, y - 0.1], [x + 0.1, y + 0.1], [x - 0.1, y + 0.1]) },
      ],
    },
    soundings: { kind: 'soundings', edgeDepthM: 0.8, points: [[x, y, 1.7]] },
    dish: { kind: 'dish', form: 'cap', centre: [x, y], radiusM: 0.9, edgeDepthM: 1, depthM: 1.5 },
  }
}

const CASES = Object.entries(PLANS).flatMap(([plan, { outline, islands, at }]) =>
  WALLS.flatMap((wall) =>
    Object.entries(floorsAt(at)).map(([kind, floor]) => ({
      name: `${kind} under ${wall.kind}${wall.kind === 'battered' ? ` ${wall.run}` : ''} in ${plan}`,
      isDish: kind === 'dish',
      shape: shape(outline, { islands: [...islands], floor, wall }),
    })),
  ),
)

/** Water up to the rim by prisms over each triangle, as a share of the exact one that it is off by. */
function offShare(p: Partition, chordM: number): number {
  const made = meshOf(p, { chordM })
  if (!made.ok) throw new Error(made.problem.code)
  const { positions: q, indices } = made.value
  let sum = 0
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [3 * indices[i]!, 3 * indices[i + 1]!, 3 * indices[i + 2]!]
    const area = ((q[b]! - q[a]!) * (q[c + 1]! - q[a + 1]!) - (q[b + 1]! - q[a + 1]!) * (q[c]! - q[a]!)) / 2
    sum += area * (RIM_M - (q[a + 2]! + q[b + 2]! + q[c + 2]!) / 3)
  }
  return Math.abs(sum / measure(p, RIM_M).volumeM3 - 1)
}

describe.each(CASES)('a mesh of $name', ({ shape: s, isDish }) => {
  const p = divided(s)
  const chordM = defaultChord(p)

  it('has the exact volume within 0.15 % as shown, and nearer by the height of its chords', () => {
    const shown = offShare(p, chordM)
    const fine = offShare(p, chordM / 10)
    expect(shown).toBeLessThan(1.5e-3)
    // Positions have 24 bits.
    expect(fine).toBeLessThan(Math.max(shown / (isDish ? 4 : 5), 2e-6))
  })

  it('would be refused where it were off by 0.5 %, and by 0.05 % with chords of 0.1 mm; over a hollow by 0.8 % and 0.4 %', () => {
    const volumeM3 = measure(p, RIM_M).volumeM3
    const share = (heightM: number): number => meshSlack(p, planMesh(p, heightM), heightM, RIM_M) / volumeM3
    expect(share(chordM)).toBeLessThan(isDish ? 8e-3 : 5e-3)
    expect(share(1e-4)).toBeLessThan(isDish ? 4e-3 : 5e-4)
  })
})

describe('triangles beside the shore', () => {
  const cone = (radiusM: number, edgeDepthM: number, depthM: number): BasinShape['floor'] => ({
    kind: 'dish',
    form: 'cone',
    centre: [0, 0],
    radiusM,
    edgeDepthM,
    depthM,
  })
  const fall = { from: [2.8284271247461907, 2.82842712474619], to: [-2.8284271247461907, -2.82842712474619] } as const
  // The hollow's rim leaves an island's shore within its strip.
  const leaning = shape(box(-3.2, -1.6, 4.8, 2.4), {
    islands: [circle(-0.8, -0.4, 0.19754401925), circle(0.48000009048, 0.24000004524, 0.176586058)],
    floor: cone(0.6902306604999999, 0.9, 0.9776067987020511),
    wall: { kind: 'battered', run: 0.1 },
    features: [{ kind: 'shelf', path: circle(-0.8, -0.4, 0.8), depthM: 0.3 }],
  })
  // A side of steps leaves an island's shore all but along its rays.
  const coved = shape(box(-3, -3.3706792425, 3, 3.3706792425), {
    islands: [
      circle(2.2499999863, 2.52800941653841, 0.13251030175),
      circle(-1.2382781499, 1.3912794854364114, 0.344013424),
    ],
    floor: cone(0.46351512308357307, 1.2, 1.3067324305964065),
    wall: { kind: 'cove', radiusM: 0.08978933555 },
    features: [
      { kind: 'steps', path: box(-1.25, 0.342669810625, -0.25, 1.092669810625), axis: fall, treads: [[1.3, 0.3]] },
    ],
  })

  // A bench ends square to the shore at a smooth joint, so that the first ray of its strip passes the corner of its edge.
  const oval = smoothThrough(
    Array.from({ length: 8 }, (_, i): Point => [4 * Math.cos((i * Math.PI) / 4), 2.5 * Math.sin((i * Math.PI) / 4)]),
    true,
  )
  const benched = shape(
    { start: [4, 0], segments: oval },
    {
      wall: { kind: 'cove', radiusM: 0.2 },
      features: [{ kind: 'bench', along: { fromSegment: 1, toSegment: 2 }, widthM: 0.1, depthM: 0.5 }],
    },
  )
  // Rays pass the ends of treads' arcs, at the shore and where the strip ends.
  const rounded = shape(circle(0, 0, 4), {
    wall: { kind: 'battered', run: 0.2 },
    features: [
      {
        kind: 'roundSteps',
        centre: [3.8, 0.3],
        treads: [
          [0.7, 0.3],
          [1.1, 0.6],
        ],
      },
    ],
  })

  it.each([
    ['under a leaning wall', leaning],
    ['under a cove', coved],
    ['beside a bench’s end', benched],
    ['where treads leave the shore', rounded],
  ] as const)('lie side by side %s, whatever the height of their chords', (_, s) => {
    const p = divided(s)
    for (let k = 0; k < 12; k++) {
      const { points, triangles } = planMesh(p, 1e-3 * p.extentM * 0.7 ** k)
      let turnedM2 = 0
      for (let i = 0; i < triangles.length; i += 3) {
        const [a, b, c] = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!]
        const [ux, uy] = [points.x[b]! - points.x[a]!, points.y[b]! - points.y[a]!]
        const [vx, vy] = [points.x[c]! - points.x[a]!, points.y[c]! - points.y[a]!]
        turnedM2 += Math.max(0, (uy * vx - ux * vy) / 2)
      }
      expect(turnedM2).toBeLessThan(1e-5)
    }
  })
})

describe('a mesh that holds another volume than the one computed', () => {
  it.each(
    CASES.filter(({ name }) => /^(flat|profile|dish)/.test(name)).flatMap(({ name, shape: s }) =>
      [0.98, 1.02].map((share) => [name, share, s] as const),
    ),
  )('is a problem, not a picture: %s, %f of it', (_, share, s) => {
    const p = divided(s)
    expect(meshOf(p).ok).toBe(true)
    // The exact volume is a sum over the cells by their areas, of which the mesh knows nothing.
    const cells = p.cells.map((cell) => ({ ...cell, areaM2: share * cell.areaM2 }))
    const made = meshOf({ ...p, cells, memory: [] })
    expect(!made.ok && [made.problem.code, made.problem.path]).toEqual(['mesh-disagrees', 'outline'])
  })
})

describe('a mesh with a leak', () => {
  it('is a problem though its volume is right: a riser is left out in whose plane all is summed', () => {
    const features: Feature[] = [{ kind: 'shelf', path: polygon([0, 0], [8, 4], [0, 4]), depthM: 0.5 }]
    const p = divided(shape(box(0, 0, 8, 4), { features }))
    expect(meshOf(p).ok).toBe(true)
    const edges = p.edges.map((edge) => (edge.left >= 0 && edge.right >= 0 ? { ...edge, right: edge.left } : edge))
    const made = meshOf({ ...p, edges, memory: [] })
    expect(!made.ok && made.problem.code).toBe('mesh-disagrees')
  })
})

describe('a shell', () => {
  /** A pyramid on its tip 1 m below the rim, some of its three walls left out. */
  const pyramid = (walls: readonly number[]): MeshBuilder => {
    const plan = { x: Float64Array.of(0, 2, 0, 0.5), y: Float64Array.of(0, 0, 2, 0.5) }
    const points = { depth: Float64Array.of(0, 0, 0, 1), vertex: Int32Array.of(0, 1, 2, 3), plan }
    const builder = new MeshBuilder(points as unknown as ShellPoints, 3)
    for (let i = 0; i < 4; i++) builder.vertex(i, 0, 0, 1)
    for (const i of walls) builder.triangle(i, (i + 1) % 3, 3, 0)
    return builder
  }

  it('is closed but for the rim, and told from one with a wall missing or a wall twice', () => {
    expect(pyramid([0, 1, 2]).isClosed(0)).toBe(true)
    expect(pyramid([0, 1, 2]).volumeBelow(0)).toBeCloseTo(2 / 3, 14)
    for (const walls of [[0, 1], [1, 2], [0], [0, 1, 2, 2]]) expect(pyramid(walls).isClosed(0)).toBe(false)
    // To a plane above it the rim is open.
    expect(pyramid([0, 1, 2]).isClosed(-0.1)).toBe(false)
  })
})

describe('a wall that leans by less than a mesh can show', () => {
  it('is upright in it', () => {
    const p = divided(shape(box(0, 0, 4, 4), { wall: { kind: 'battered', run: 2e-8 } }))
    expect(offShare(p, defaultChord(p))).toBeLessThan(2e-6)
  })
})
