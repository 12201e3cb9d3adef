import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CubicCurve, type Curve, evaluate, newJet } from '../../src/basin/curve.ts'
import { meshOf, partition } from '../../src/basin/index.ts'
import { chordsFor } from '../../src/basin/path-draw.ts'
import type { Shore } from '../../src/basin/shores.ts'
import { chordStops } from '../../src/basin/strip-chords.ts'
import { demoSpec } from '../../src/document/index.ts'
import { patchesOf } from '../../src/features/index.ts'

const CHORD_M = 0.002
const SEED = 20_261_128

/** A stretch that bends one way by at most a quarter turn, as the plan's spans do: both handles within a right angle. */
const bend = fc
  .record({
    radiusM: fc.double({ min: 0.5, max: 20, noNaN: true }),
    first: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
    last: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
    side: fc.constantFrom(1 as const, -1 as const),
  })
  .map(({ radiusM: r, first, last, side }): { curve: CubicCurve; side: 1 | -1 } => ({
    // From heading east to heading north about the corner (r, 0).
    curve: { kind: 'cubic', x0: 0, y0: 0, ax: first * r, ay: 0, bx: r, by: (1 - last) * r, x1: r, y1: r },
    side,
  }))

/** Greatest distance of a curve, or of its parallel, from its chords [m]. */
function strayM(curve: Curve, side: number, stops: readonly number[], outM: number): number {
  const jet = newJet()
  const place = (t: number): [number, number] => {
    const { x, y, dx, dy } = evaluate(curve, t, jet)
    const speed = Math.hypot(dx, dy)
    return [x - (side * outM * dy) / speed, y + (side * outM * dx) / speed]
  }
  let most = 0
  for (let k = 1; k < stops.length; k++) {
    const [a, b] = [stops[k - 1]!, stops[k]!]
    const [ax, ay] = place(a)
    const [bx, by] = place(b)
    for (let i = 1; i < 32; i++) {
      const [x, y] = place(a + ((b - a) * i) / 32)
      most = Math.max(most, Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay))
    }
  }
  return most
}

describe('the steps along a shore that bends', () => {
  it('keep every chord within its height, and that of the parallel at the far side of the strip', () => {
    let ours = 0
    let even = 0
    fc.assert(
      fc.property(bend, fc.double({ min: 0, max: 0.5, noNaN: true }), ({ curve, side }, widthM) => {
        const stops = chordStops({ curve, side } as unknown as Shore, 0, 1, CHORD_M, widthM)
        expect(stops[0]).toBe(0)
        expect(stops[stops.length - 1]).toBe(1)
        for (let k = 1; k < stops.length; k++) expect(stops[k]! > stops[k - 1]!).toBe(true)
        expect(strayM(curve, side, stops, 0)).toBeLessThanOrEqual(CHORD_M * (1 + 1e-9))
        // On the outer side of the bend the far side is longer.
        if (side < 0) expect(strayM(curve, side, stops, widthM)).toBeLessThanOrEqual(CHORD_M * (1 + 1e-9))
        ours += stops.length - 1
        even += chordsFor(curve, 0, 1, CHORD_M)
      }),
      { seed: SEED, numRuns: 300 },
    )
    expect(ours).toBeLessThan(even)
  })

  it('are no more about a tip of a nanometre than its rays at their far end ask for', () => {
    const widthM = 7
    for (const radiusM of [5e-10, 1e-3, 1, 100]) {
      // From heading east to heading north, the water outside.
      const turn = Math.PI / 2
      const curve: Curve = { kind: 'arc', x0: 0, y0: 0, x1: radiusM, y1: radiusM, heading: 0, turn, radius: radiusM }
      const stops = chordStops({ curve, side: -1 } as unknown as Shore, 0, 1, CHORD_M, widthM)
      expect(strayM(curve, -1, stops, widthM)).toBeLessThanOrEqual(CHORD_M * (1 + 1e-9))
      expect(stops.length).toBeLessThan(3 + Math.PI / 4 / Math.acos(1 - CHORD_M / (radiusM + widthM)))
    }
  })

  it('make some 2,800 triangles of the example, for a picture that is redrawn as a point is dragged', () => {
    const body = demoSpec.bodies[0]!
    const patches = patchesOf(body.features, body.outline)
    if (!patches.ok) throw new Error(patches.problem.what)
    const { outline, islands, floor, wall, freeboardM } = body
    const p = partition({ outline, islands, floor, wall, freeboardM, patches: patches.value })
    if (!p.ok) throw new Error(p.problem.what)
    const mesh = meshOf(p.value)
    if (!mesh.ok) throw new Error(mesh.problem.what)
    expect(mesh.value.indices.length / 3).toBeLessThan(3_000)
  })
})
