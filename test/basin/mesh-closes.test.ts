import { describe, expect, it } from 'vitest'
import { meshOf, type Partition } from '../../src/basin/index.ts'
import { MeshBuilder } from '../../src/basin/mesh-builder.ts'
import { ShellPoints } from '../../src/basin/mesh-levels.ts'
import { addUpright } from '../../src/basin/mesh-upright.ts'
import { PlanDepth } from '../../src/basin/plan-depth.ts'
import type { PlanMesh } from '../../src/basin/plan-mesh.ts'
import { PlanPoints } from '../../src/basin/plan-points.ts'
import { shellCorners } from '../../src/basin/shell-corners.ts'
import { box, circle, divided, polygon, shape } from './shapes.ts'

describe('a mesh closes', () => {
  it.each([
    ['cone', box(0, 0, 7, 5)],
    ['cap', box(0, 0, 7, 5)],
    ['cone', circle(3.7, 2.5, 3)],
    ['cap', circle(3.7, 2.5, 3)],
  ] as const)('where a %s comes up through the datum along the shore', (form, outline) => {
    for (const edgeDepthM of [-0.02, -0.1, -0.14999, -0.3]) {
      const p = divided(
        shape(outline, { floor: { kind: 'dish', form, centre: [3.5, 2.5], radiusM: 4.5, edgeDepthM, depthM: 1.6 } }),
      )
      for (const chordM of [undefined, 0.05]) {
        const mesh = meshOf(p, { chordM })
        expect(mesh.ok ? 'a mesh' : mesh.problem.code, `edge at ${edgeDepthM}`).toBe('a mesh')
      }
    }
  })

  // A bowl has vertices all along its straight sides, which the cutting of ears passes over: the gaps of two sides meet at a corner.
  it.each(['cone', 'cap'] as const)('where a wall juts into a %s with an island', (form) => {
    const outline = polygon([0, 0], [3.1, 0], [3.1, 2.2], [3.4, 2.2], [3.4, 0], [6.5, 0], [6.5, 4.3], [0, 4.3])
    const p = divided(
      shape(outline, {
        islands: [box(3.9, 2.9, 4.6, 3.2)],
        floor: { kind: 'dish', form, centre: [2.6, 1.2], radiusM: 5.2, edgeDepthM: 1.2, depthM: 0.2 },
      }),
    )
    for (const chordM of [undefined, 0.02, 0.1]) {
      const mesh = meshOf(p, { chordM })
      expect(mesh.ok ? 'a mesh' : mesh.problem.code).toBe('a mesh')
    }
  })

  it('where three depths at one place are each within the grain of the next one only', () => {
    const grain = 1e-6
    const level = (atOrigin: number) => ({ plane: { atOrigin, dx: 0, dy: 0 }, part: 'floor', patch: -1, strip: 0 })
    // The third cell lies nearest to the second one, but its triangle is settled before that one is known.
    const cells = [level(1), level(1 + 0.9 * grain), level(1 + 1.6 * grain)]
    const points = new PlanPoints(Float64Array.of(0, 1, 0, -1), Float64Array.of(0, 0, 1, -1), grain)
    const edges = [
      { from: 0, to: 1, left: 0, right: 2, curve: { kind: 'line' } },
      { from: 0, to: 2, left: 1, right: 0, curve: { kind: 'line' } },
      { from: 0, to: 3, left: 2, right: 1, curve: { kind: 'line' } },
    ]
    const p = { cells, edges, shape: { wall: { kind: 'vertical' }, freeboardM: 0.15 } } as unknown as Partition
    const plan = {
      points,
      triangles: [0, 1, 2, 0, 2, 3, 0, 3, 1],
      cellOf: [0, 1, 2],
      chains: edges.map(({ from, to }) => [from, to]),
      memory: [],
    } as unknown as PlanMesh
    const shell = shellCorners(p, plan)
    for (let i = 0; i < 9; i++)
      expect(shell.pointOf(plan.cellOf[Math.floor(i / 3)]!, plan.triangles[i]!)).toBe(shell.pointAt[i])
    const builder = new MeshBuilder(shell.points, 3)
    for (let i = 0; i < 9; i += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => builder.vertex(shell.pointAt[i + k]!, 0, 0, 1)) as [number, number, number]
      builder.triangle(a, b, c, 0)
    }
    addUpright(p, plan, shell.pointOf, shell.points, new PlanDepth(p, plan), builder)
    // The three outer sides stay open, and the upright one at the outer end of the only riser.
    expect(builder.isClosed(-0.15)).toBe(false)
    const ends = new Map<string, number>()
    const { positions, indices } = builder.finish([0, 0], [])
    const at = (i: number): string => positions.subarray(3 * indices[i]!, 3 * indices[i]! + 3).join()
    for (let i = 0; i < indices.length; i++) {
      const [a, b] = [at(i), at(i % 3 === 2 ? i - 2 : i + 1)]
      const key = a < b ? `${a} ${b}` : `${b} ${a}`
      ends.set(key, (ends.get(key) ?? 0) + (a < b ? 1 : -1))
    }
    expect([...ends.values()].filter((net) => net !== 0)).toHaveLength(4)
  })

  it('only where no triangle is missing, turned over or there twice', () => {
    const shell = (triangles: readonly (readonly number[])[]): MeshBuilder => {
      const plan = new PlanPoints(
        Float64Array.from({ length: 40 }, Math.cos),
        Float64Array.from({ length: 40 }, Math.sin),
        1e-9,
      )
      const points = new ShellPoints(plan, 1e-9)
      for (let v = 0; v < 40; v++) points.settle(v, 1 + v / 40)
      const builder = new MeshBuilder(points, triangles.length)
      const vertices = Array.from({ length: 40 }, (_, v) => builder.vertex(v, 0, 0, 1))
      for (const [a, b, c] of triangles) builder.triangle(vertices[a!]!, vertices[b!]!, vertices[c!]!, 0)
      return builder
    }
    // A double cone over a ring of 38.
    const whole = Array.from({ length: 38 }, (_, i) => [
      [i, (i + 1) % 38, 38],
      [(i + 1) % 38, i, 39],
    ]).flat()
    expect(shell(whole).isClosed(0)).toBe(true)
    whole.forEach((triangle, k) => {
      const others = whole.filter((_, i) => i !== k)
      expect(shell(others).isClosed(0)).toBe(false)
      expect(shell([...whole, triangle]).isClosed(0)).toBe(false)
      expect(shell([...others, [...triangle].reverse()]).isClosed(0)).toBe(false)
      // One that is passed both ways leaves nothing open.
      expect(shell([...whole, triangle, [...triangle].reverse()]).isClosed(0)).toBe(true)
    })
  })
})
