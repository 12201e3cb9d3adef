import { describe, expect, it } from 'vitest'
import type { Path } from '../../src/basin/index.ts'
import { deriveBody, deriveProblems, deriveUntangled } from '../../src/derive/index.ts'
import { applyCommand, type Body, command, demoSpec, type Spec } from '../../src/document/index.ts'
import { box } from '../basin/shapes.ts'

const bow = (x: number, y: number, w: number, h: number): Path => ({
  start: [x, y],
  segments: [{ to: [x + w, y] }, { to: [x, y + h] }, { to: [x + w, y + h] }, { to: [x, y] }],
})
const spec = (body: Partial<Body>): Spec => ({
  ...demoSpec,
  bodies: [
    {
      ...demoSpec.bodies[0]!,
      outline: box(0, 0, 9, 5),
      islands: [],
      features: [],
      floor: { kind: 'flat', depthM: 1.5 },
      wall: { kind: 'vertical' },
      ...body,
    },
  ],
})

describe('the untangled line', () => {
  it.each<[string, Partial<Body>]>([
    ['an outline', { outline: bow(0, 0, 9, 5) }],
    ['an island', { islands: [bow(4, 2, 1, 1)] }],
    ['a depth line', { floor: { kind: 'contours', edgeDepthM: 1, rings: [{ depthM: 2, path: bow(3, 1, 3, 2) }] } }],
    ['a footprint', { features: [{ kind: 'shelf', path: bow(-1, -1, 4, 3), depthM: 0.4 }] }],
  ])('of %s is proposed, and with it the basin measures', (_, body) => {
    const tangled = spec(body)
    const [problem] = deriveProblems(tangled)
    expect(problem?.code).toMatch(/crosses-itself|doubles-back/)
    const [proposal, ...rest] = deriveUntangled(tangled)
    expect(rest).toEqual([])
    expect(proposal?.answers).toBe(problem?.path)
    const { bodyId = '', ring = { of: 'outline' as const }, path = box(0, 0, 1, 1) } = proposal ?? {}
    const mended = applyCommand(tangled, command('untangleLine', { bodyId, ring, path }))
    if (!mended.ok) return expect.fail(mended.problem.what)
    expect(deriveProblems(mended.value)).toEqual([])
    const { measures } = deriveBody(mended.value.bodies[0] ?? expect.fail('no body'))
    expect(measures.ok && measures.value.volumeM3).toBeGreaterThan(20)
    expect(deriveUntangled(mended.value)).toEqual([])
  })

  it('is for lines that cross themselves, not for other trouble', () => {
    expect(deriveUntangled(spec({ islands: [box(8, 2, 10, 3)] }))).toEqual([])
    expect(deriveUntangled(spec({}))).toEqual([])
  })
})
