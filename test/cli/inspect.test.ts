import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'

/** 15 × 30 ft, 3 ft sloping to 8 ft along its length [m]. */
const FT = 0.3048
const [LENGTH, WIDTH, SHALLOW, DEEP] = [30 * FT, 15 * FT, 3 * FT, 8 * FT]
const box = (x: number, y: number) => ({ start: [0, 0], segments: [{ to: [x, 0] }, { to: [x, y] }, { to: [0, y] }] })
const SLOPED = {
  id: 'main',
  outline: box(LENGTH, WIDTH),
  floor: {
    kind: 'profile',
    axis: { from: [0, 0], to: [LENGTH, 0] },
    stations: [
      [0, SHALLOW],
      [LENGTH, DEEP],
    ],
  },
  tolerance: { planM: 0, depthM: 0.02 },
}
/** A cone 6 m across and 2 m deep, down from the waterline. */
const CONE = {
  id: 'cone',
  outline: {
    start: [3, 0],
    segments: [
      { to: [-3, 0], bulge: 1 },
      { to: [3, 0], bulge: 1 },
    ],
  },
  floor: { kind: 'dish', form: 'cone', centre: [0, 0], radiusM: 3, edgeDepthM: 0, depthM: 2 },
}
const spec = (...bodies: object[]) => ({ format: 'shoalbook-spec', version: 1, bodies })
function inspected(line: unknown, ...flags: string[]) {
  const world = { readInput: () => JSON.stringify(line), nowMs: 0 }
  const { stdout, exitCode } = runCommandLine(['inspect', '-', ...flags], world)
  return { ...JSON.parse(stdout), exitCode }
}
function bodyOf(line: unknown, ...flags: string[]) {
  const { bodies, exitCode } = inspected(line, ...flags)
  expect(exitCode).toBe(0)
  return bodies[0]
}
const valueAt = (body: { derivatives: { path: string; value: unknown }[] }, path: string) =>
  body.derivatives.find((each) => each.path === path)?.value as number

describe('inspect tells what measure leaves out', () => {
  test('levels for volumes: of a cone as the cube root, of a box with a sloping floor above its shallow end (closed forms)', () => {
    const whole = (Math.PI * 9 * 2) / 3
    const { levels } = bodyOf({ spec: spec(CONE), volumesM3: [whole, whole / 8, 0] })
    expect(levels.map(({ levelM }: { levelM: number }) => levelM)).toEqual([
      expect.closeTo(0, 9),
      expect.closeTo(-1, 9),
      expect.closeTo(-2, 9),
    ])
    const half = LENGTH * WIDTH * ((SHALLOW + DEEP) / 2 - 0.5)
    expect(bodyOf({ spec: spec(SLOPED), volumesM3: [half] }).levels[0].levelM).toBeCloseTo(-0.5, 9)
  })

  test('a volume that can’t be is told in its place, and the others and all else are answered', () => {
    const whole = (Math.PI * 9 * 2) / 3
    const { bodies, exitCode } = inspected({ spec: spec(CONE), volumesM3: [whole, -3, 0], places: [[0, 0]] })
    expect(exitCode).toBe(0)
    const { levels, places, levelBreaksM } = bodies[0]
    expect(levels[0].levelM).toBeCloseTo(0, 9)
    expect(levels[1]).toMatchObject({ volumeM3: -3, levelM: null })
    expect(levels[1].problem).toMatchObject({ code: 'volume-out-of-reach', path: 'volumesM3[1]' })
    expect(levels[2].levelM).toBeCloseTo(-2, 9)
    expect(places[0].depthM).toBeCloseTo(2, 9)
    expect(levelBreaksM.length).toBeGreaterThan(0)
    const asked = inspected({ spec: spec(CONE, SLOPED), volumesM3: [-3], places: [[0, 0]] })
    expect([asked.exitCode, asked.bodies.length, asked.bodies[1].levels[0].levelM]).toEqual([0, 2, null])
    const nothingElse = inspected({ spec: spec(CONE, SLOPED), volumesM3: [-3, -1] })
    expect([nothingElse.exitCode, nothingElse.problem.path]).toEqual([2, 'volumesM3[0]'])
    expect(nothingElse.others.map(({ path }: { path: string }) => path)).toEqual(['volumesM3[1]'])
  })

  test('levels at which the level curve breaks: both ends of a sloping floor, top and tip of a cone', () => {
    const breaks = bodyOf(spec(SLOPED)).levelBreaksM
    expect(breaks).toEqual([expect.closeTo(-DEEP, 9), expect.closeTo(-SHALLOW, 9)])
    const ofCone = bodyOf(spec(CONE)).levelBreaksM
    expect(ofCone[0]).toBeCloseTo(-2, 9)
    expect(ofCone[ofCone.length - 1]).toBeCloseTo(0, 9)
  })

  test('depth, slope and part at places; on dry land nothing', () => {
    const { places } = bodyOf({
      spec: spec(SLOPED),
      places: [
        [LENGTH / 2, 1],
        [-1, 1],
      ],
    })
    expect(places[0]).toMatchObject({ at: [LENGTH / 2, 1], part: 'floor' })
    expect(places[0].depthM).toBeCloseTo((SHALLOW + DEEP) / 2, 12)
    expect(places[0].slope).toBeCloseTo((DEEP - SHALLOW) / LENGTH, 12)
    expect(places[1]).toEqual({ at: [-1, 1], depthM: null, part: null })
  })

  test('a cross section with its true parts: rim, wall, shelf, riser, floor, wall, rim', () => {
    const shelf = { kind: 'shelf', depthM: 0.4, path: box(2, WIDTH) }
    const line = { from: [0, 1], to: [LENGTH, 1] }
    const [section] = bodyOf({ spec: spec({ ...SLOPED, features: [shelf] }), sections: [line] }).sections
    expect(section).toMatchObject(line)
    expect(section.spans).toEqual([[expect.closeTo(0, 9), expect.closeTo(LENGTH, 9)]])
    expect(section.pieces.map(({ part }: { part: string }) => part)).toEqual([
      'rim',
      'wall',
      'feature',
      'riser',
      'floor',
      'wall',
      'rim',
    ])
    const riser = section.pieces[3].points
    expect(riser[0]).toEqual([expect.closeTo(2, 9), expect.closeTo(0.4, 9)])
    expect(riser[1][1]).toBeCloseTo(SHALLOW + (2 * (DEEP - SHALLOW)) / LENGTH, 9)
  })

  test('contour lines: straight across a sloping floor, a circle in a cone', () => {
    const [across] = bodyOf({ spec: spec(SLOPED), depthsM: [(SHALLOW + DEEP) / 2] }).contours
    for (const [x] of across.points) expect(x).toBeCloseTo(LENGTH / 2, 9)
    const [round] = bodyOf({ spec: spec(CONE), depthsM: [1] }).contours
    expect(round.closed).toBe(true)
    // Half way down the cone; chords run inside its circle.
    for (const [x, y] of round.points) expect(Math.abs(Math.hypot(x, y) - 1.5)).toBeLessThan(2e-3)
  })

  test('derivatives by nodes, stations, dish and level against closed forms', () => {
    const sloped = bodyOf(spec(SLOPED))
    const areaM2 = LENGTH * WIDTH
    expect(valueAt(sloped, 'levelM')).toBeCloseTo(areaM2, 9)
    expect(valueAt(sloped, 'floor.stations[0][1]')).toBeCloseTo(areaM2 / 2, 9)
    expect(valueAt(sloped, 'floor.stations[1][1]')).toBeCloseTo(areaM2 / 2, 9)
    // One corner moved by dx sweeps a triangle dx · WIDTH / 2 at the deep end, which is as deep all along.
    const corner = sloped.derivatives.find(({ path }: { path: string }) => path === 'outline.segments[0].to')
    expect(corner.kind).toBe('node')
    expect(corner.value[0]).toBeCloseTo((WIDTH / 2) * DEEP, 9)
    const cone = bodyOf({ spec: spec(CONE), want: ['derivatives'] })
    expect(cone).not.toHaveProperty('errors')
    expect(valueAt(cone, 'floor.depthM')).toBeCloseTo((Math.PI * 9) / 3, 9)
  })

  test('derivatives by every sounding and by a wall’s radius', () => {
    // A pyramid of height 1 over the plan: each metre more at its tip is a third of the area.
    const outline = box(10, 6)
    const pyramid = { id: 'p', outline, floor: { kind: 'soundings', edgeDepthM: 1, points: [[4, 3, 2]] } }
    const tip = bodyOf(spec(pyramid)).derivatives.find(({ path }: { path: string }) =>
      path.startsWith('floor.points[0]'),
    )
    expect([tip.value].flat().map(Number)).toContainEqual(expect.closeTo(20, 9))
    // Coved all round: V = 60 · 1.5 − (1 − π/4) r² · 32 + corners of order r³.
    const coved = { id: 'c', outline, floor: { kind: 'flat', depthM: 1.5 }, wall: { kind: 'cove', radiusM: 1e-3 } }
    const byRadius = valueAt(bodyOf(spec(coved)), 'wall.radiusM')
    expect(byRadius / (-2 * (1 - Math.PI / 4) * 1e-3 * 32)).toBeCloseTo(1, 3)
  })

  test('the three errors apart, and what makes the measured one', () => {
    const { errors, measurement, volumeM3 } = bodyOf(spec(SLOPED))
    expect(volumeM3).toBeCloseTo(LENGTH * WIDTH * ((SHALLOW + DEEP) / 2), 9)
    expect(errors.arithmeticM3).toBeGreaterThan(0)
    expect(errors.arithmeticM3).toBeLessThan(1e-9)
    expect(errors.modelM3).toBe(0)
    // Two stations, each off by 0.02 m by itself and worth half of the area.
    expect(errors.measurementM3).toBeCloseTo(Math.SQRT1_2 * LENGTH * WIDTH * 0.02, 9)
    const squares = measurement.contributions.map(({ sigmaM3 }: { sigmaM3: number }) => sigmaM3 ** 2)
    expect(Math.sqrt(squares.reduce((a: number, b: number) => a + b))).toBeCloseTo(errors.measurementM3, 12)
  })

  test('at another level, by key or by flag; of one body of several', () => {
    const line = { spec: spec(SLOPED, CONE), body: 'cone', want: ['errors'], levelM: -1 }
    const { bodies } = inspected(line)
    expect(bodies).toHaveLength(1)
    expect(bodies[0]).toMatchObject({ id: 'cone', levelM: -1 })
    expect(bodies[0].volumeM3).toBeCloseTo((Math.PI * 9 * 2) / 3 / 8, 9)
    expect(inspected(spec(CONE), '--level', '-1').bodies[0].volumeM3).toBeCloseTo(bodies[0].volumeM3, 12)
  })
})

describe('inspect says what is wrong with a question and where', () => {
  test.each([
    [{ volumesM3: [-1, -3] }, 'volume-out-of-reach', 'volumesM3[0]'],
    [{ volumesM3: 3 }, 'not-a-list', 'volumesM3'],
    [{ volumesM3: Array.from({ length: 10_001 }, () => 1) }, 'too-many', 'volumesM3'],
    [{ places: [[0, 0], [1]] }, 'not-a-point', 'places[1]'],
    [{ places: [[0, 'x']] }, 'not-a-number', 'places[0][1]'],
    [{ sections: [{ from: [0, 0] }] }, 'not-a-point', 'sections[0].to'],
    [{ sections: [[0, 0]] }, 'not-an-object', 'sections[0]'],
    [{ sections: [{ from: [1, 1], to: [1, 1] }] }, 'line-without-length', 'sections[0]'],
    [{ depthsM: [null] }, 'not-a-number', 'depthsM[0]'],
    [{ levelM: 'low' }, 'not-a-number', 'levelM'],
    [{ want: ['errors', 'everything'] }, 'not-one-of', 'want[1]'],
    [{ body: 'spa' }, 'no-such-body', 'body'],
  ])('%j', (asked, code, path) => {
    const { problem, exitCode } = inspected({ spec: spec(SLOPED), ...asked })
    expect(exitCode).toBe(2)
    expect(problem).toMatchObject({ code, path })
    for (const words of [problem.what, problem.why, problem.hint]) expect(words).not.toBe('')
  })

  test('a broken spec keeps its own paths below “spec”', () => {
    const crossed = {
      ...SLOPED,
      outline: { start: [0, 0], segments: [{ to: [4, 4] }, { to: [4, 0] }, { to: [0, 4] }] },
    }
    expect(inspected({ spec: spec(crossed) }).problem).toMatchObject({
      code: 'crosses-itself',
      path: expect.stringMatching(/^spec\.bodies\[0\]\.outline/),
    })
    expect(inspected({ spec: { ...spec(SLOPED), version: 'x' } }).problem.path).toBe('spec.version')
  })
})
