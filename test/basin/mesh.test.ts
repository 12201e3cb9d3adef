import { describe, expect, it } from 'vitest'
import { meshOf, partition } from '../../src/basin/index.ts'
import { applyCommand, demoSpec } from '../../src/document/index.ts'
import { patchesOf } from '../../src/features/index.ts'

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
        const mesh = meshOf(parts.value)
        expect(mesh.ok ? 'a mesh' : mesh.problem.code, `point ${node}, step ${step}`).toBe('a mesh')
        if (mesh.ok) expect(mesh.value.indices.length / 3).toBeGreaterThan(1000)
      }
    }
  })
})
