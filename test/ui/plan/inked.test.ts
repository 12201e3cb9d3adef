import { describe, expect, test } from 'vitest'
import { isInkedBreak, meshOf, type Partition, type Path, partition } from '../../../src/basin/index.ts'
import { demoSpec, floorAs } from '../../../src/document/index.ts'

const BODY = demoSpec.bodies[0] ?? expect.fail('the example has no pool')
const TOLERANCE = { planM: 0, depthM: 0 }

function partsOf(shape: Pick<Parameters<typeof partition>[0], 'floor' | 'outline' | 'wall'>): Partition {
  const parts = partition({ ...shape, islands: [], patches: [], freeboardM: 0.15, tolerance: TOLERANCE })
  return parts.ok ? parts.value : expect.fail(parts.problem.what)
}

/** Ends of the inked stretches that lie on the floor, not upright: two places each. */
function inkedOnFloor(parts: Partition): { ax: number; ay: number; az: number; bx: number; by: number; bz: number }[] {
  const mesh = meshOf(parts)
  if (!mesh.ok) return expect.fail(mesh.problem.what)
  const {
    edges,
    origin: [x, y],
  } = mesh.value
  const out = []
  for (let i = 0; i < edges.length; i += 6) {
    const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0] = edges.subarray(i, i + 6)
    // Float32 holds a pool's places to about a micrometre.
    if (Math.max(az, bz) < -0.1 && Math.hypot(bx - ax, by - ay) > 1e-5)
      out.push({ ax: ax + x, ay: ay + y, az, bx: bx + x, by: by + y, bz })
  }
  return out
}

const RECTANGLE: Path = { start: [0, 0], segments: [{ to: [9, 0] }, { to: [9, 5] }, { to: [0, 5] }, { to: [0, 0] }] }

describe('ink on triangulated floors', () => {
  test('a hopper in a freeform pool with a cove has its depth line inked and no side of a triangle', () => {
    const floor = floorAs('contours', BODY)
    if (floor.kind !== 'contours') return expect.fail('no hopper')
    const parts = partsOf({ outline: BODY.outline, floor, wall: { kind: 'cove', radiusM: 0.25 } })
    const sides = parts.edges.filter((edge) => edge.left >= 0 && edge.right >= 0)
    expect(sides.length, 'the floor has many sides').toBeGreaterThan(100)
    const inked = inkedOnFloor(parts)
    expect(inked.length).toBeGreaterThan(8)
    const depthM = floor.rings[0]?.depthM ?? 0
    for (const { az, bz } of inked) {
      expect(az).toBeCloseTo(-depthM, 5)
      expect(bz).toBeCloseTo(-depthM, 5)
    }
  })

  test('between soundings the net is inked where it turns by more than 5°, never the fan to a curved shore', () => {
    const box = [3, 1.5] as const
    const middle = BODY.outline.start
    // Three soundings in a row: a ridge in the middle, and one line that hardly bends.
    const points = [
      [middle[0] + box[0], middle[1], 1.2],
      [middle[0] + box[0] + 2, middle[1], 2.2],
      [middle[0] + box[0] + 4, middle[1], 1.3],
    ] as const
    const floor = { kind: 'soundings', edgeDepthM: 1.1, points } as const
    const parts = partsOf({ outline: BODY.outline, floor, wall: { kind: 'vertical' } })
    const inked = parts.edges.filter((edge) => edge.left >= 0 && edge.right >= 0 && isInkedBreak(parts, edge))
    const all = parts.edges.filter((edge) => edge.left >= 0 && edge.right >= 0)
    expect(all.length, 'the fan has many sides').toBeGreaterThan(40)
    expect(inked.length).toBe(2)
    for (const edge of inked)
      for (const node of [edge.from, edge.to]) {
        const [x, y] = [(parts.nodeX[node] ?? 0) + parts.originX, (parts.nodeY[node] ?? 0) + parts.originY]
        expect(Math.min(...points.map((p) => Math.hypot(p[0] - x, p[1] - y)))).toBeLessThan(1e-9)
      }
  })

  test('straight walls have corners, so the hips to them are inked', () => {
    const floor = { kind: 'soundings', edgeDepthM: 1, points: [[4.5, 2.5, 2]] } as const
    const parts = partsOf({ outline: RECTANGLE, floor, wall: { kind: 'vertical' } })
    expect(parts.edges.filter((e) => e.left >= 0 && e.right >= 0 && isInkedBreak(parts, e))).toHaveLength(4)
    const level = { ...floor, points: [[4.5, 2.5, 1.1]] } as const
    const nearly = partsOf({ outline: RECTANGLE, floor: level, wall: { kind: 'vertical' } })
    expect(nearly.edges.filter((e) => e.left >= 0 && e.right >= 0 && isInkedBreak(nearly, e))).toHaveLength(0)
  })

  test('a hollow has its rim inked, a profile its breaks', () => {
    const dish = { kind: 'dish', form: 'cap', centre: [4, 2.5], radiusM: 1.5, edgeDepthM: 1, depthM: 1.8 } as const
    const round = partsOf({ outline: RECTANGLE, floor: dish, wall: { kind: 'vertical' } })
    const rim = inkedOnFloor(round).filter((e) => Math.abs(Math.hypot(e.ax - 4, e.ay - 2.5) - 1.5) < 1e-4)
    const turn = rim.reduce((sum, e) => sum + Math.hypot(e.bx - e.ax, e.by - e.ay), 0)
    expect(turn).toBeGreaterThan(2 * Math.PI * 1.5 * 0.99)
    const axis = { from: [0, 2.5], to: [9, 2.5] } as const
    const stations = [
      [0, 1],
      [4, 1.2],
      [6, 2],
      [9, 2],
    ] as const
    const profile = partsOf({
      outline: RECTANGLE,
      floor: { kind: 'profile', axis, stations },
      wall: { kind: 'vertical' },
    })
    const breaks = inkedOnFloor(profile).filter((e) => e.ay !== e.by && e.ax > 0.01 && e.ax < 8.99)
    expect([...new Set(breaks.map((e) => Math.round(e.ax * 1e4) / 1e4))].sort()).toEqual([4, 6])
  })
})
