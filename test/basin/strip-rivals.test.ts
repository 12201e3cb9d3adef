import { describe, expect, it } from 'vitest'
import { fansOf, type Ray, rayAt } from '../../src/basin/cove-fan.ts'
import { type Reach, reachOf } from '../../src/basin/cove-reach.ts'
import { type Partition, type Path, type Point, smoothThrough } from '../../src/basin/index.ts'
import { nearestShore } from '../../src/basin/shore-distance.ts'
import { planFans } from '../../src/basin/strip-plan.ts'
import { BEAN, BENT, box, circle, divided, shape } from './shapes.ts'

/** A wobbly pool of cubics whose points and handles are written to so many decimals: smooth, or with blunt corners of both kinds. */
function wobbly(seed: number, decimals: number): Path {
  const points = Array.from({ length: 9 }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / 9
    const radiusM = 3 + 0.9 * Math.sin(2 * angle + seed) + 0.5 * Math.cos(3 * angle + 2.3 * seed)
    return [radiusM * Math.cos(angle), radiusM * Math.sin(angle)]
  })
  const written = ([x, y]: Point): Point => [Number(x.toFixed(decimals)), Number(y.toFixed(decimals))]
  const segments = smoothThrough(points, true).map((each) =>
    'c1' in each && each.c1 && each.c2
      ? { to: written(each.to), c1: written(each.c1), c2: written(each.c2) }
      : { to: written(each.to) },
  )
  return { start: written(points[0]!), segments }
}

/** Rays of all fans, each with how far it is said to be nearest to its own foot; returns how many end before the width. */
function lookAtRays(p: Partition, widthM: number): { rays: number; ended: number; pruned: number } {
  const fans = fansOf(p)
  const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }
  const reach: Reach = { n: 0, by: 0, how: 0 }
  const foot = { t: 0, x: 0, y: 0, distance: 0 }
  const nearestM = (n: number): number => {
    const x = ray.x + n * ray.nx
    const y = ray.y + n * ray.ny
    nearestShore(p, x, y, 2 * widthM, foot)
    return Math.hypot(x - foot.x, y - foot.y)
  }
  let [rays, ended, pruned] = [0, 0, 0]
  for (const { fan, rivals } of planFans(p, fans, widthM)) {
    pruned += fans.shores.length - rivals.length
    const count = 24
    for (let i = 0; i < count; i++) {
      // Denser toward both ends, where corners end rays.
      const share = (1 - Math.cos((Math.PI * (i + 0.5)) / count)) / 2
      rayAt(fans, fan, fan.t0 + (fan.t1 - fan.t0) * share, ray)
      reachOf(fans, fan, rivals, ray, widthM, reach)
      rays++
      // Up to its end nothing is nearer than its own foot …
      expect(nearestM(reach.n)).toBeGreaterThan(reach.n - 1e-9 - 1e-8 * widthM)
      if (reach.n > 0.999 * widthM) continue
      ended++
      // … and further out something is.
      const beyondM = reach.n + 0.02 * widthM
      expect(nearestM(beyondM)).toBeLessThan(beyondM)
    }
  }
  return { rays, ended, pruned }
}

describe.each([
  { name: 'a bean', outline: BEAN, islands: [] },
  { name: 'arcs, lines and a cubic with blunt corners', outline: BENT, islands: [] },
  { name: 'a box about an island', outline: box(-1, -1, 4, 3), islands: [circle(2, 1, 0.6)] },
  ...[0, 1, 2, 3].flatMap((seed) =>
    [12, 3, 2].map((decimals) => ({
      name: `wobbly pool ${seed} to ${decimals} decimals`,
      outline: wobbly(seed, decimals),
      islands: seed % 2 === 0 ? [] : [circle(0.3, 0.2, 0.7)],
    })),
  ),
])('rays from the shores of $name', ({ outline, islands }) => {
  it.each([0.1, 0.3, 0.8, 1.6])(
    'end where another shore is as near, whichever are left out as none that can be: %s m wide',
    (widthM) => {
      const p = divided(shape(outline, { islands, wall: { kind: 'cove', radiusM: widthM } }))
      const { rays, ended, pruned } = lookAtRays(p, widthM)
      expect(rays).toBeGreaterThan(90)
      expect(pruned).toBeGreaterThan(0)
      if (widthM > 1) expect(ended).toBeGreaterThan(10)
    },
  )
})
