import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'

const RECTANGLE = { start: [0, 0], segments: [{ to: [10, 0] }, { to: [10, 6] }, { to: [0, 6] }] }
const CIRCLE = {
  start: [3, 0],
  segments: [
    { to: [-3, 0], bulge: 1 },
    { to: [3, 0], bulge: 1 },
  ],
}
const spec = (...bodies: object[]) => ({ format: 'shoalbook-spec', version: 1, bodies })
function measured(line: unknown) {
  const { stdout, exitCode } = runCommandLine(['measure', '-'], { readInput: () => JSON.stringify(line), nowMs: 0 })
  const answer = JSON.parse(stdout)
  return { ...answer, exitCode }
}

describe('measure takes every kind, several bodies and levels in one line', () => {
  const floors = {
    // Prismatoid between 10 × 6 at 1 m and 6 × 2 at 2 m below: 60 + (60 + 12 + 4 × 8 × 4) / 6 = 93.33 m³ (closed form).
    contours: {
      kind: 'contours',
      edgeDepthM: 1,
      rings: [{ depthM: 2, path: { start: [2, 2], segments: [{ to: [8, 2] }, { to: [8, 4] }, { to: [2, 4] }] } }],
    },
    // A pyramid of height 1 over the whole plan: 60 + 60 / 3 = 80 m³ (closed form).
    soundings: { kind: 'soundings', edgeDepthM: 1, points: [[4, 3, 2]] },
    // A cone of radius 2 and height 0.6: 60 + π 4 0.6 / 3 (closed form).
    dish: { kind: 'dish', form: 'cone', centre: [5, 3], radiusM: 2, edgeDepthM: 1, depthM: 1.6 },
  }

  test('floors by contours, soundings and a cone, each a body of its own, against closed forms', () => {
    const { bodies, systems, exitCode } = measured(
      spec(
        ...Object.entries(floors).map(([id, floor]) => ({ id, outline: RECTANGLE, floor, wall: { kind: 'vertical' } })),
      ),
    )
    expect(exitCode).toBe(0)
    const truths = [60 + (60 + 12 + 4 * 8 * 4) / 6, 80, 60 + (Math.PI * 4 * 0.6) / 3]
    truths.forEach((truth, i) => {
      expect(bodies[i].volumeM3 / truth - 1, bodies[i].id).toBeCloseTo(0, 9)
    })
    expect(systems[0].volumeM3).toBeCloseTo(
      truths.reduce((a, b) => a + b),
      8,
    )
    expect(Object.keys(bodies[0].errors).sort()).toEqual(['arithmeticM3', 'measurementM3', 'modelM3'])
  })

  test('in a coved pool the deepest place is that of the hollow', () => {
    const body = { id: 'main', outline: RECTANGLE, floor: floors.dish, wall: { kind: 'cove', radiusM: 0.25 } }
    expect(measured(spec(body)).bodies[0].maxDepthM).toBeCloseTo(1.6, 9)
  })

  test('a battered circle is a frustum at every level (closed form)', () => {
    const body = {
      id: 'main',
      outline: CIRCLE,
      floor: { kind: 'flat', depthM: 2 },
      wall: { kind: 'battered', run: 0.5 },
    }
    const { bodies } = measured({ spec: spec(body), levels: [0, -0.5, -1] })
    const frustum = (r: number, h: number) => (Math.PI * h * (r * r + r * 2 + 4)) / 3
    // Radius 3 at the waterline, 2 at the floor; 3 − 0.5 t at a depth t.
    for (const [level, radius, height] of [
      [0, 3, 2],
      [1, 2.75, 1.5],
      [2, 2.5, 1],
    ] as const)
      expect(bodies[0].levels[level].volumeM3 / frustum(radius, height)).toBeCloseTo(1, 9)
  })

  test('a bench along two sides and a ramp take their prisms away (closed form)', () => {
    const flat = { id: 'main', outline: RECTANGLE, floor: { kind: 'flat', depthM: 1.5 }, wall: { kind: 'vertical' } }
    const bench = { kind: 'bench', along: { fromSegment: 0, toSegment: 1 }, widthM: 0.5, depthM: 0.5 }
    const ramp = {
      kind: 'ramp',
      path: { start: [0, 2], segments: [{ to: [3, 2] }, { to: [3, 6] }, { to: [0, 6] }] },
      axis: { from: [0, 4], to: [3, 4] },
      fromDepthM: 0,
      toDepthM: 0.5,
    }
    const { bodies } = measured(spec({ ...flat, features: [bench, ramp] }))
    // Bench: (10 + 6 − 0.5) × 0.5 in plan, 1 m high; ramp: 3 × 4 in plan, 1.25 m high in the mean.
    expect(bodies[0].volumeM3).toBeCloseTo(90 - 15.5 * 0.5 * 1 - 12 * 1.25, 9)
  })

  test('what is wrong has the path of its body', () => {
    const body = { id: 'b', outline: RECTANGLE, floor: { kind: 'soundings', edgeDepthM: null, points: [] } }
    const { problem, exitCode } = measured({ spec: spec({ ...body, id: 'a', floor: floors.dish }, body) })
    expect(exitCode).toBe(2)
    expect(problem.path).toMatch(/^spec\.bodies\[1\]\.floor/)
    expect(problem.hint).not.toBe('')
  })
})

describe('measure says more than figures where a drawing needs it', () => {
  const flat = { floor: { kind: 'flat', depthM: 1.5 }, wall: { kind: 'vertical' } }
  const bowtie = { start: [0, 0], segments: [{ to: [4, 4] }, { to: [4, 0] }, { to: [0, 4] }] }

  test('a line that crosses itself comes with the untangled one, which measures', () => {
    const { problem, exitCode } = measured({ spec: spec({ id: 'main', outline: bowtie, ...flat }) })
    expect(exitCode).toBe(2)
    expect(problem).toMatchObject({ code: 'crosses-itself', at: [[2, 2]] })
    expect(problem.path).toMatch(/^spec\.bodies\[0\]\.outline/)
    // The same four corners, gone round without a crossing: a square of 4 m.
    expect(measured(spec({ id: 'main', outline: problem.untangled, ...flat })).bodies[0].volumeM3).toBeCloseTo(24, 9)
  })

  test('of several bodies the one that crosses itself has its own line untangled', () => {
    const { problem } = measured(spec({ id: 'a', outline: RECTANGLE, ...flat }, { id: 'b', outline: bowtie, ...flat }))
    expect(problem.path).toMatch(/^bodies\[1\]/)
    expect(problem.untangled.segments.length).toBeGreaterThanOrEqual(3)
  })

  test('bodies that lie on one another are told with the water counted twice; the figures stand', () => {
    const beside = { ...RECTANGLE, start: [5, 0], segments: [{ to: [15, 0] }, { to: [15, 6] }, { to: [5, 6] }] }
    const both = spec({ id: 'a', outline: RECTANGLE, ...flat }, { id: 'b', outline: beside, ...flat })
    const { bodies, notices, exitCode } = measured({ spec: both })
    expect(exitCode).toBe(0)
    expect(bodies).toHaveLength(2)
    expect(notices).toHaveLength(1)
    expect(notices[0]).toMatchObject({ code: 'bodies-overlap', path: 'spec.bodies[1].outline' })
    // 5 × 6 m of common plan, 1.5 m deep.
    expect(notices[0].twiceM3).toBeCloseTo(45, 6)
    expect(measured(spec({ id: 'a', outline: RECTANGLE, ...flat }))).not.toHaveProperty('notices')
  })
})
