import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'

/** A regular polygon's area [m²] (closed form). */
const polygonArea = (sides: number, radiusM: number) => (sides / 2) * radiusM ** 2 * Math.sin((2 * Math.PI) / sides)

function polygon(sides: number, radiusM: number) {
  const at = (i: number) => [
    radiusM * Math.cos((2 * Math.PI * i) / sides),
    radiusM * Math.sin((2 * Math.PI * i) / sides),
  ]
  return { start: at(0), segments: Array.from({ length: sides - 1 }, (_, i) => ({ to: at(i + 1) })) }
}

describe('measure takes outlines of very many segments', () => {
  test.each([5000, 100_000])(
    '%d segments against the area of a regular polygon (closed form)',
    (sides) => {
      const spec = {
        format: 'shoalbook-spec',
        version: 1,
        bodies: [
          {
            id: 'main',
            outline: polygon(sides, 10),
            floor: {
              kind: 'profile',
              axis: { from: [-10, 0], to: [10, 0] },
              stations: [
                [0, 1],
                [20, 2],
              ],
            },
          },
        ],
      }
      const { stdout, exitCode } = runCommandLine(['measure', '-'], { readInput: () => JSON.stringify(spec), nowMs: 0 })
      expect(exitCode).toBe(0)
      const [body] = JSON.parse(stdout).bodies
      // The polygon lies evenly about its middle, where the sloping floor is 1.5 m deep.
      expect(body.volumeM3 / (1.5 * polygonArea(sides, 10)) - 1).toBeCloseTo(0, 9)
      expect(body.waterSurfaceM2 / polygonArea(sides, 10) - 1).toBeCloseTo(0, 9)
    },
    60_000,
  )

  test('more than can be held is a problem with its place and what to do', () => {
    const spec = { format: 'shoalbook-spec', version: 1, bodies: [{ id: 'main', outline: polygon(100_002, 10) }] }
    const { stdout, exitCode } = runCommandLine(['measure', '-'], { readInput: () => JSON.stringify(spec), nowMs: 0 })
    expect(exitCode).toBe(2)
    const { problem, others } = JSON.parse(stdout)
    const found = [problem, ...(others ?? [])].find(({ code }) => code === 'too-many')
    expect(found.path).toBe('bodies[0].outline.segments')
    expect(found.what).toContain('100000')
  })
})
