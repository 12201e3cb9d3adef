import { describe, expect, it } from 'vitest'
import { evaluate, newJet } from '../../src/basin/curve.ts'
import type { Path, Point } from '../../src/basin/index.ts'
import { nearestShore } from '../../src/basin/shore-distance.ts'
import { shoreRuns } from '../../src/basin/shore-runs.ts'
import { shoresOf } from '../../src/basin/shores.ts'
import { footOn } from '../../src/basin/span.ts'
import { stripOf } from '../../src/basin/strip.ts'
import { divided, polygon, shape } from './shapes.ts'

/** How many stretches the busiest edge of a feature is cut into by what is nearest to it. */
function mostRuns(outline: Path, path: Path, radiusM: number): number {
  const p = divided(
    shape(outline, { wall: { kind: 'cove', radiusM }, features: [{ kind: 'shelf', path, depthM: 0.4 }] }),
  )
  const inside = p.edges.filter((edge) => edge.left >= 0 && edge.right >= 0)
  expect(inside.length).toBeGreaterThan(0)
  return Math.max(...inside.map((e) => shoreRuns(p, e.curve, e.t0, e.t1, stripOf(p).widthM).length))
}

describe('what is nearest along an edge', () => {
  // Along such a line the foot lies at the joint, and its two stretches, their ends and insides are told apart by rounding.
  it('doesn’t take turns where the edge leaves a joint of the shore square to it', () => {
    for (let i = 0; i < 60; i++) {
      const turn = (Math.PI * i) / 30
      const at = (x: number, y: number): Point => [
        x * Math.cos(turn) - y * Math.sin(turn) + 0.3,
        x * Math.sin(turn) + y * Math.cos(turn) - 0.7,
      ]
      const stadium: Path = {
        start: at(-3, -2),
        segments: [{ to: at(3, -2) }, { to: at(3, 2), bulge: 1 }, { to: at(-3, 2) }, { to: at(-3, -2), bulge: 1 }],
      }
      for (const x of [1, 4]) {
        const shelf = polygon(at(3, -2), at(x, -2), at(x, -0.5), at(3, -0.5))
        expect(mostRuns(stadium, shelf, 1.3), `turned by ${turn}`).toBeLessThan(9)
      }
    }
  })

  // The feet pass each joint as fast as the shore goes, but for a hair about it both stretches and the joint are as near.
  it('changes once at each joint along a short edge that is about one centre with the shore', () => {
    for (let i = 0; i < 60; i++) {
      const turn = (Math.PI * i) / 30
      const about = (radius: number, ...angles: number[]): Point[] =>
        angles.map((a) => [radius * Math.cos(turn + a) + 0.3, radius * Math.sin(turn + a) - 0.7])
      const arcs = (from: Point, bulge: number, ...to: Point[]): Path => ({
        start: from,
        segments: to.map((each) => ({ to: each, bulge })),
      })
      const [e, n, w, s] = about(4, 0, Math.PI / 2, Math.PI, -Math.PI / 2) as [Point, Point, Point, Point]
      const pool = arcs(e, Math.SQRT2 - 1, n, w, s, e)
      const [a, b] = about(3.62, Math.PI / 2 - 2e-4, Math.PI / 2 + 3e-4) as [Point, Point]
      const [c] = about(3.61, Math.PI / 2) as [Point]
      const shelf: Path = { start: a, segments: [{ to: b, bulge: Math.tan(5e-4 / 4) }, { to: c }, { to: a }] }
      expect(mostRuns(pool, shelf, 0.5), `turned by ${turn}`).toBeLessThan(9)
    }
  })

  // Round steps beside an island: its corner comes nearer than the shore over less than a step of the search.
  it('is found where it is so over a short way only', () => {
    for (let k = 0; k < 12; k++) {
      const turn = k * 0.37
      const at = (x: number, y: number): Point => [
        x * Math.cos(turn) - y * Math.sin(turn),
        x * Math.sin(turn) + y * Math.cos(turn),
      ]
      const p = divided(
        shape(polygon(at(0, 0), at(10, 0), at(10, 6), at(0, 6)), {
          islands: [polygon(at(3.6, 2.6), at(4.4, 2.9), at(3.8, 3.5))],
          wall: { kind: 'cove', radiusM: 2.5 },
          features: [{ kind: 'roundSteps', centre: at(3, 1.1), treads: [[1.6, 0.6]] }],
        }),
      )
      const { widthM } = stripOf(p)
      const [place, foot] = [newJet(), { t: 0, x: 0, y: 0, distance: 0 }]
      for (const { curve, left, right, t0, t1 } of p.edges) {
        if (left < 0 || right < 0) continue
        const runs = shoreRuns(p, curve, t0, t1, widthM)
        for (let i = 1; i < 500; i++) {
          const t = t0 + ((t1 - t0) * i) / 500
          evaluate(curve, t, place)
          if (nearestShore(p, place.x, place.y, 2 * widthM, foot) < 0) continue
          const nearest = Math.min(widthM, foot.distance)
          const run = runs.find((each) => t >= each.t0 && t <= each.t1)
          const shore = run && shoresOf(p)[run.by]!
          const told = shore ? footOn(shore.curve, shore.t0, shore.t1, place.x, place.y, foot).distance : widthM
          expect(told - nearest, `turned by ${turn}`).toBeLessThan(1e-8)
        }
      }
    }
  })
})
