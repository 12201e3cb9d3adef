import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'
import { demoSpec } from '../../src/document/index.ts'
import sample from '../golden/document/spec-1.sample.json'

const NOW = Date.UTC(2026, 5, 1, 12)
function answer(verb: string, line: unknown) {
  const { stdout, exitCode } = runCommandLine([verb], { readInput: () => JSON.stringify(line), nowMs: NOW })
  expect(exitCode).toBe(0)
  return JSON.parse(stdout)
}

const box = (x: number, y: number) => ({ start: [0, 0], segments: [{ to: [x, 0] }, { to: [x, y] }, { to: [0, y] }] })
const RINGS = { kind: 'contours', edgeDepthM: 1, rings: [] }
const MAIN = { id: 'main', outline: box(10, 6), floor: { kind: 'flat', depthM: 1.4 } }
const spec = (body: object) => ({ format: 'shoalbook-spec', version: 1, bodies: [{ ...MAIN, ...body }] })
const shelf = (more: object) => ({ kind: 'shelf', path: box(2, 2), depthM: 0.3, ...more })
const bent = (more: object) => ({
  ...box(10, 6),
  segments: [{ to: [10, 0], ...more }, ...box(10, 6).segments.slice(1)],
})

describe('a key of a body that nothing reads is named', () => {
  test.each([
    ['fetures', 'features', { fetures: [shelf({})] }],
    ['Walls', 'wall', { Walls: { kind: 'cove', radiusM: 0.3 } }],
    ['level', 'levelM', { level: -0.2 }],
    ['floor.depth', 'depthM', { floor: { kind: 'flat', depthM: 1.4, depth: 2 } }],
    ['floor.ring', 'rings', { floor: { ...RINGS, ring: [] } }],
    ['wall.radius', 'radiusM', { wall: { kind: 'cove', radiusM: 0.3, radius: 0.4 } }],
    ['features[0].depth_m', 'depthM', { features: [shelf({ depth_m: 0.5 })] }],
    ['tolerance.datum', 'datumM', { tolerance: { planM: 0.02, depthM: 0.02, datum: 0.1 } }],
    ['outline.segments[0].buldge', 'bulge', { outline: bent({ buldge: 0.4 }) }],
  ])('%s, with %s as what may be meant', (key, near, change) => {
    for (const [line, prefix] of [
      [spec(change), ''],
      [{ spec: spec(change) }, 'spec.'],
    ] as const) {
      const { notices } = answer('measure', line)
      expect(notices).toHaveLength(1)
      expect(notices[0]).toMatchObject({ code: 'unknown-key', path: `${prefix}bodies[0].${key}` })
      expect(notices[0].hint).toBe(`The nearest known name is ${near}.`)
    }
  })

  test('one that is like none comes with those that are known; a width of a bench with a footprint is one', () => {
    const bench = { kind: 'bench', path: box(2, 2), depthM: 0.4, widthM: 0.5 }
    const { notices } = answer('measure', spec({ colour: 'blue', features: [bench] }))
    expect(notices.map(({ path }: { path: string }) => path)).toEqual([
      'bodies[0].colour',
      'bodies[0].features[0].widthM',
    ])
    expect(notices[0].hint).toMatch(/^Known are id, name, .*features/)
  })

  test('every verb that reckons from a body says it', () => {
    const [body] = demoSpec.bodies
    const line = { ...demoSpec, bodies: [{ ...body!, fetures: [] }] }
    for (const verb of ['measure', 'inspect', 'plan', 'card', 'season', 'water'])
      expect(answer(verb, line).notices, verb).toEqual([
        {
          code: 'unknown-key',
          path: 'bodies[0].fetures',
          what: '“fetures” is no key that is read here; the answer is as if it was not given.',
          hint: 'The nearest known name is features.',
        },
      ])
  })

  test('what a document may carry along is left alone: handles of a line, an owner’s own keys, all keys of a saved one', () => {
    const handles = { smooth: true, handleIn: [1, 0], tag: 'x' }
    const own = {
      ...spec({ outline: bent(handles) }),
      colour: 1,
      systems: [{ id: 'pool', colour: 1 }],
      site: { pets: 2 },
    }
    expect(answer('measure', own)).not.toHaveProperty('notices')
    // Of every key that a saved document can have only the one that is put there as a stranger.
    const strangers = answer('measure', sample).notices.filter(({ code }: { code: string }) => code === 'unknown-key')
    expect(strangers.map(({ path }: { path: string }) => path)).toEqual(['bodies[0].hue'])
    expect(answer('measure', demoSpec)).not.toHaveProperty('notices')
  })
})

test('inspect tells a body that is dry at the level that was asked for, at the key or the flag', () => {
  const line = { spec: spec({ name: 'Main pool' }), levelM: -99, want: ['errors'] }
  expect(answer('inspect', line).notices).toMatchObject([{ code: 'dry-at-level', path: 'levelM' }])
  expect(answer('inspect', { ...line, levelM: -1.3 })).not.toHaveProperty('notices')
})
