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
