import { describe, expect, it } from 'vitest'
import { fansOf } from '../../src/basin/cove-fan.ts'
import type { BasinShape } from '../../src/basin/index.ts'
import { stripOf } from '../../src/basin/strip.ts'
import { type NearEdge, planFans } from '../../src/basin/strip-plan.ts'
import { wholeSwath } from '../../src/basin/strip-sweep.ts'
import { type Tracer, trace } from '../../src/basin/strip-trace.ts'
import { BEAN, BENT, box, circle, divided, shape } from './shapes.ts'

const POOLS: Record<string, BasinShape> = {
  'a bean over soundings, under a batter wider than its bends': shape(BEAN, {
    floor: { kind: 'soundings', edgeDepthM: 0.9, points: [[3, 2.2, 1.5]] },
    wall: { kind: 'battered', run: 2 },
  }),
  'arcs, lines and a cubic with re-entrant corners': shape(BENT, {
    features: [
      { kind: 'shelf', path: circle(2.4, 2, 0.8), depthM: 0.4 },
      { kind: 'shelf', path: box(1, 0.2, 3.1, 1.9), depthM: 0.7 },
    ],
    wall: { kind: 'cove', radiusM: 1.3 },
  }),
  'a round hopper with an island': shape(circle(0, 0, 4), {
    islands: [box(-1, -0.5, 0.5, 0.5)],
    floor: { kind: 'contours', edgeDepthM: 1, rings: [{ depthM: 2.2, path: circle(0.4, 0.2, 2.6) }] },
    wall: { kind: 'battered', run: 1.5 },
  }),
}

describe('edges near a ray', () => {
  it.each(Object.entries(POOLS))('are all that it meets, and few more: %s', (_, pool) => {
    const p = divided(pool)
    const fans = fansOf(p)
    const { widthM } = stripOf(p)
    // Every edge of the plan, whether it lies near the fan or not.
    const near: NearEdge[] = []
    p.edges.forEach((edge, index) => {
      if (edge.left < 0 || edge.right < 0) return
      const [x0, y0, x1, y1] = [edge.from, edge.to].flatMap((node) => [p.nodeX[node]!, p.nodeY[node]!])
      near.push({ index, edge, x0: x0!, y0: y0!, x1: x1!, y1: y1!, riseM: edge.curve.kind === 'line' ? 0 : Infinity })
    })
    const placed = {
      ends: Float64Array.from(near.flatMap(({ x0, y0, x1, y1 }) => [x0, y0, x1, y1])),
      rises: Float64Array.from(near, ({ riseM }) => riseM),
    }
    let met = 0
    let rays = 0
    let lookedAt = 0
    for (const plan of planFans(p, fans, widthM)) {
      const { fan } = plan
      const sorted: Tracer = { p, fans, plan, widthM, leaving: [] }
      const whole: Tracer = {
        ...sorted,
        plan: { ...plan, near, placed, swath: { ...wholeSwath(fan, near.length), patience: 0 } },
      }
      for (const share of [1e-9, 1e-4, 0.1, 0.25, 0.375, 0.5, 0.618, 0.83, 1 - 1e-4, 1 - 1e-9]) {
        const t = fan.t0 + share * (fan.t1 - fan.t0)
        const found = trace(sorted, t)
        const wanted = trace(whole, t)
        expect(found.edges).toEqual(wanted.edges)
        expect(found.startsOnEdge).toBe(wanted.startsOnEdge)
        met += found.edges.length
        rays++
        let swath = plan.swath
        for (;;) {
          const half = [swath.first, swath.second].find((one) => one && t >= one.t0 && t <= one.t1)
          if (!half) break
          swath = half
        }
        lookedAt += swath.near.length
      }
    }
    expect(met).toBeGreaterThan(rays / 4)
    expect(lookedAt).toBeLessThan(4 * met + 12 * rays)
  })
})
