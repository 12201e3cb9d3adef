import { describe, expect, it } from 'vitest'
import { derivativesOf, measure, meshOf, type Path, type Point } from '../../src/basin/index.ts'
import { nearestShore } from '../../src/basin/shore-distance.ts'
import { divided, relative, shape } from './shapes.ts'

/** A long oval of four cubics whose ends bend tightly. */
function oval(a: number, b: number): Path {
  // A quarter of a circle as a cubic, the usual handle.
  const k = (4 / 3) * Math.tan(Math.PI / 8)
  const at = (x: number, y: number): Point => [a * x, b * y]
  return {
    start: at(1, 0),
    segments: [
      { to: at(0, 1), c1: at(1, k), c2: at(k, 1) },
      { to: at(-1, 0), c1: at(-k, 1), c2: at(-1, k) },
      { to: at(0, -1), c1: at(-1, -k), c2: at(-k, -1) },
      { to: at(1, 0), c1: at(k, -1), c2: at(1, -k) },
    ],
  }
}

describe.each([
  { widthM: 0.5, benchM: 0.5 },
  { widthM: 0.7, benchM: 0.9 },
])('a bench $widthM m wide round bends tighter than that', ({ widthM, benchM }) => {
  const floorM = 1.5
  const p = divided(
    shape(oval(4, 1.2), {
      floor: { kind: 'flat', depthM: floorM },
      features: [{ kind: 'bench', along: { fromSegment: 0, toSegment: 3 }, widthM, depthM: benchM }],
    }),
  )
  const m = measure(p, 0)

  it('is one, whatever footprints it is made of, and leaves no slivers', () => {
    expect(p.shape.patches.length).toBeGreaterThan(12)
    expect(p.sliverM2).toBe(0)
    expect(p.cells.length).toBe(2)
    for (const { left, right } of p.edges) expect(left).not.toBe(right)
  })

  it('covers what is as near to the shore, counted by squares', () => {
    const foot = { t: 0, x: 0, y: 0, distance: 0 }
    const n = 800
    let inside = 0
    let near = 0
    for (let i = 0; i < n; i++)
      for (let k = 0; k < n; k++) {
        const [x, y] = [-4 + (8 * (i + 0.5)) / n, -1.2 + (2.4 * (k + 0.5)) / n]
        if ((x / 4) ** 2 + (y / 1.2) ** 2 >= 1) continue
        inside++
        if (nearestShore(p, x, y, widthM, foot) >= 0) near++
      }
    expect(near).toBeGreaterThan(0.5 * inside)
    expect(relative(m.wetted.featureM2 / m.waterSurfaceM2, near / inside)).toBeLessThan(2e-3)
  })

  it('grows by its face over the step for each metre of its width', () => {
    // Every place of the face moves square to itself: dV/dw = −(floor − bench) · length, which is the face.
    const byWidth = derivativesOf(p, 0).find(({ path }) => path === 'features[0].widthM')!.value
    expect(relative(-Number(byWidth), m.wetted.riserM2)).toBeLessThan(1e-6)
    expect(m.wetted.wallM2 / measure(p, 0).perimeterM).toBeCloseTo(benchM, 6)
  })

  it('has a mesh', () => {
    expect(meshOf(p).ok).toBe(true)
  })
})

describe('a mesh of features that stand out of a floor that stands out of none', () => {
  it('is not refused for what chords lose between the two', () => {
    // From 0.35 m above the rim down to 0.3 m below it: more than from the rim to either.
    const steps = (x: number, y: number) => ({ kind: 'roundSteps', centre: [x, y], treads: [[0.8, -0.35]] }) as const
    const p = divided(
      shape(oval(4, 3), {
        floor: { kind: 'flat', depthM: 0.3 },
        freeboardM: 0,
        features: [steps(-1.6, 0), steps(0.2, 0.9), steps(0.3, -1), steps(2, 0)],
      }),
    )
    expect(meshOf(p).ok).toBe(true)
  })
})
