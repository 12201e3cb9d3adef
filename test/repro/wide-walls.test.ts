import { describe, expect, it } from 'vitest'
import { type Path, volumeAtLevel } from '../../src/basin/index.ts'
import { divided, shape } from '../basin/shapes.ts'

const OUTLINE: Path = {
  start: [3.783555116250208, -6.156870491848083],
  segments: [
    {
      to: [1.7731213399680372, -5.732018934753636],
      c1: [3.2996773050730774, -5.133823024204441],
      c2: [2.6295327129790205, -4.99220583850629],
    },
    { to: [1.0873116265312082, -6.990916340992121] },
    {
      to: [2.4719346263370463, -7.991092312836222],
      c1: [1.0873116265312082, -6.990916340992121],
      c2: [2.2604376193627926, -7.311544572270062],
    },
    {
      to: [3.783555116250208, -6.156870491848083],
      c1: [3.734541249339969, -7.969914240747096],
      c2: [4.171748079311023, -7.358506967084383],
    },
  ],
}

// Found by npm run fuzz: integrals were held to the width that the wall would have in a larger pool, so that a volume fell.
describe('a wall that would be wider than its pool', () => {
  const p = divided(
    shape(OUTLINE, { floor: { kind: 'flat', depthM: 2.3610570975 }, wall: { kind: 'battered', run: 5 } }),
  )

  it('takes all of the water to 1e-8 m³ below the lowest place that it leaves', () => {
    // No place is further than 1.29 m from the walls: nothing is deeper than 0.258 m.
    for (const levelM of [-0.3, -0.5, -1, -2]) expect(volumeAtLevel(p, levelM).volumeM3).toBeLessThan(1e-8)
  })

  it('leaves as much as counted from level to level by the water surface (Simpson)', () => {
    const area = (levelM: number) => volumeAtLevel(p, levelM).waterSurfaceM2
    const [from, to, n] = [-0.15, -0.05, 64]
    let sum = area(from) - area(to)
    for (let i = 0; i < n; i++) {
      const step = (to - from) / n
      sum += 4 * area(from + (i + 0.5) * step) + 2 * area(from + (i + 1) * step)
    }
    const rise = volumeAtLevel(p, to).volumeM3 - volumeAtLevel(p, from).volumeM3
    expect(Math.abs(rise / ((sum * (to - from)) / n / 6) - 1)).toBeLessThan(1e-7)
  })
})
