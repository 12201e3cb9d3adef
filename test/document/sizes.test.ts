import { describe, expect, test } from 'vitest'
import type { Path } from '../../src/basin/index.ts'
import { applyCommand, command, validateSpec } from '../../src/document/index.ts'

/** A polygon of n sides about the origin, 20 m across. */
function polygon(sides: number): Path {
  const at = (i: number) =>
    [10 * Math.cos((2 * Math.PI * i) / sides), 10 * Math.sin((2 * Math.PI * i) / sides)] as const
  return { start: at(0), segments: Array.from({ length: sides - 1 }, (_, i) => ({ to: at(i + 1) })) }
}
const FLAT = { kind: 'flat', depthM: 1.5 }
const spec = (sides: number, parts: object = {}) => ({
  format: 'shoalbook-spec',
  version: 1,
  bodies: [{ id: 'main', outline: polygon(sides + 1), floor: FLAT, ...parts }],
})
function troubles(document: unknown) {
  const result = validateSpec(document)
  return result.ok ? [] : result.problem.map(({ code, path }) => `${code} ${path}`)
}

describe('how many segments a document may have', () => {
  test('100,000 in a ring, curves too; one more is refused at its ring', () => {
    expect(troubles(spec(100_000))).toEqual([])
    const curves = {
      start: [0, 0],
      segments: Array.from({ length: 100_000 }, (_, i) => ({ to: [i, 1], c1: [i, 0], c2: [i, 0.5] })),
    }
    expect(troubles({ ...spec(4), bodies: [{ id: 'main', outline: curves, floor: FLAT }] })).toEqual([])
    expect(troubles(spec(100_001))).toEqual(['too-many bodies[0].outline.segments'])
  })

  test.each([
    ['wall', 5000, { wall: { kind: 'cove', radiusM: 0.2 } }],
    ['wall', 5000, { wall: { kind: 'battered', run: 0.2 } }],
    ['floor', 20_000, { floor: { kind: 'soundings', edgeDepthM: 1, points: [[0, 0, 2]] } }],
    ['floor', 20_000, { floor: { kind: 'contours', edgeDepthM: 1, rings: [] } }],
    [
      'features[0]',
      20_000,
      { features: [{ kind: 'bench', along: { fromSegment: 0, toSegment: 3 }, widthM: 0.5, depthM: 0.5 }] },
    ],
  ])('what follows every side takes fewer: %s at most %d', (part, most, parts) => {
    expect(troubles(spec(most, parts))).toEqual([])
    const refused = validateSpec(spec(most + 1, parts))
    expect(refused).toMatchObject({
      ok: false,
      problem: [{ code: 'too-many-sides', path: `bodies[0].${part}`, at: [[10, 0]] }],
    })
    if (!refused.ok) expect(refused.problem[0]?.what).toContain(`${most + 1} segments`)
  })

  test('an edit can’t bring it about either', () => {
    const valid = validateSpec(spec(5001))
    if (!valid.ok) throw new Error('a plain outline is refused')
    const edit = command('setWall', { bodyId: 'main', wall: { kind: 'cove', radiusM: 0.2 } })
    expect(applyCommand(valid.value, edit)).toMatchObject({ ok: false, problem: { code: 'too-many-sides' } })
  })
})
