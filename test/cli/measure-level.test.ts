import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'

const box = (x: number, y: number, from = 0) => ({
  start: [from, 0],
  segments: [{ to: [from + x, 0] }, { to: [from + x, y] }, { to: [from, y] }],
})
const SLOPED = {
  kind: 'profile',
  axis: { from: [0, 0], to: [10, 0] },
  stations: [
    [0, 1],
    [10, 2.5],
  ],
}
const DEEP = { id: 'deep', name: 'Deep pool', outline: box(10, 6), floor: SLOPED, wall: { kind: 'vertical' } }
const SHALLOW = { id: 'shallow', outline: box(3, 3, 8), floor: { kind: 'flat', depthM: 0.4 } }
const [LEVEL, STEP] = [-0.1524, ['--level', '-0.1524']]
const NO_SCATTER = { planM: 0, depthM: 0 }
/** Our own judgement of how far depths that nobody has said may be off, all together [m]. */
const ASSUMED_SIGMA_M = 0.3

const spec = (...bodies: object[]) => ({
  format: 'shoalbook-spec',
  version: 1,
  bodies: bodies.map((body) => ({ ...body, system: 'pool' })),
  systems: [{ id: 'pool', plumbingM3: 0.4 }],
})
const at = (levelM: number, ...bodies: object[]) => spec(...bodies.map((body) => ({ ...body, levelM })))
function measured(line: unknown, flags: readonly string[] = []) {
  const world = { readInput: () => JSON.stringify(line), nowMs: 0 }
  const { stdout, exitCode } = runCommandLine(['measure', '-', ...flags], world)
  expect(exitCode).toBe(0)
  return JSON.parse(stdout)
}

describe('a level that is asked for rules the whole answer', () => {
  test.each([
    ['every depth was said', {}],
    ['no depth was said', { depthsAssumed: true }],
    ['one depth was not said', { depthsAssumed: [1] }],
    ['the sketch has no scale', { sketch: { scaleSigma: 0.1 } }],
  ])('as if the water stood there, where %s', (_, change) => {
    const bodies = [{ ...DEEP, ...change }, SHALLOW]
    expect(measured(spec(...bodies), STEP)).toEqual(measured(at(LEVEL, ...bodies)))
    // not only a repeat of the level before
    expect(measured(spec(...bodies), STEP)).not.toEqual(measured(spec(...bodies)))
  })

  test('the uncertainty of assumed depths is that of the surface at that level, in the body and in its system', () => {
    const { bodies, systems } = measured(spec({ ...DEEP, depthsAssumed: true, tolerance: NO_SCATTER }), STEP)
    expect(bodies[0].sigmaM3).toBeCloseTo(ASSUMED_SIGMA_M * 60, 9)
    expect(systems[0].sigmaM3).toBeCloseTo(bodies[0].sigmaM3, 12)
    expect(systems[0].volumeM3).toBeCloseTo(60 * (1.75 + LEVEL) + 0.4, 9)
  })

  test('water that is counted twice is told at that level', () => {
    const [notice] = measured(spec(DEEP, SHALLOW), STEP).notices
    // 2 × 3 m in common, as deep as the shallower one.
    expect(notice.twiceM3).toBeCloseTo(6 * (0.4 + LEVEL), 6)
  })

  test('a body that is dry there takes nothing from what the others hold, and is told', () => {
    const { bodies, systems, notices } = measured(spec(DEEP, { ...SHALLOW, outline: box(3, 3, 20) }), ['--level', '-1'])
    // The floor falls from 1 m to 2.5 m over 10 m: above it a wedge, 1.5 m deep at its end.
    expect(bodies[0].volumeM3).toBeCloseTo(((6 * 10) / 2) * 1.5, 9)
    expect(bodies[1]).toMatchObject({ volumeM3: 0, waterSurfaceM2: 0, sigmaM3: 0 })
    expect(systems[0].volumeM3).toBeCloseTo(bodies[0].volumeM3 + 0.4, 9)
    expect(notices).toHaveLength(1)
    expect(notices[0]).toMatchObject({ code: 'dry-at-level', path: '--level' })
    expect(notices[0].what).toBe('shallow is dry at a level of −1 m: its deepest place is at −0.4 m.')
  })

  test('a level below every floor is told for each body, by the deepest place from the datum', () => {
    const { systems, notices } = measured(at(0.2, DEEP), ['--level', '-99'])
    expect(systems[0].volumeM3).toBe(0.4)
    expect(notices[0].what).toBe('Deep pool is dry at a level of −99 m: its deepest place is at −2.5 m.')
    expect(measured(at(0.2, DEEP), ['--level', '-2.4'])).not.toHaveProperty('notices')
  })
})
