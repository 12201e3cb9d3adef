import { describe, expect, it } from 'vitest'
import { deriveOverlaps } from '../../src/derive/index.ts'
import { type Body, demoSpec, type Spec } from '../../src/document/index.ts'
import { box, circle } from '../basin/shapes.ts'

const body = (id: string, outline: Body['outline'], more: Partial<Body> = {}): Body => ({
  ...demoSpec.bodies[0]!,
  id,
  name: id,
  outline,
  features: [],
  ...more,
})
const spec = (...bodies: Body[]): Spec => ({ ...demoSpec, bodies })

describe('bodies that lie on one another', () => {
  it('are pointed out, the later one by its outline', () => {
    const [notice, ...rest] = deriveOverlaps(spec(body('Pool', box(0, 0, 8, 4)), body('Spa', circle(8, 2, 1))))
    expect(rest).toEqual([])
    expect(notice).toMatchObject({ code: 'bodies-overlap', path: 'bodies[1].outline', what: 'Spa lies on Pool.' })
  })

  it('say where, and how much water is counted twice', () => {
    const flat = (depthM: number) => ({ floor: { kind: 'flat', depthM }, wall: { kind: 'vertical' } }) as const
    const pool = body('Pool', box(0, 0, 8, 4), flat(1.5))
    const spa = body('Spa', box(7, 1, 9, 3), flat(0.9))
    const [notice] = deriveOverlaps(spec(pool, spa))
    // 1 m by 2 m of the shallower one's 0.9 m.
    expect(notice?.twiceM3).toBeCloseTo(1.8, 9)
    expect(notice?.at?.[0]?.[0]).toBeCloseTo(7.5, 1)
    expect(notice?.at?.[0]?.[1]).toBeCloseTo(2, 1)
    // A round one, 0.2 m below its datum: half a disc of 1 m radius, 0.7 m deep.
    const round = body('Spa', circle(8, 2, 1), { ...flat(0.9), levelM: -0.2 })
    expect((deriveOverlaps(spec(pool, round))[0]?.twiceM3 ?? 0) / ((Math.PI / 2) * 0.7)).toBeCloseTo(1, 9)
    const broken = body('Spa', circle(8, 2, 1), flat(Number.NaN))
    expect(deriveOverlaps(spec(pool, broken))[0]).toMatchObject({ twiceM3: undefined })
  })

  it.each<[string, Spec]>([
    ['are apart', spec(body('Pool', box(0, 0, 8, 4)), body('Spa', circle(10, 2, 1)))],
    ['share a wall', spec(body('Pool', box(0, 0, 8, 4)), body('Trough', box(8, 0, 9, 4)))],
    [
      'stand on an island',
      spec(body('Pool', box(0, 0, 8, 4), { islands: [circle(4, 2, 1)] }), body('Spa', circle(4, 2, 1))),
    ],
  ])('are not where they %s', (_, document) => {
    expect(deriveOverlaps(document)).toEqual([])
  })
})
