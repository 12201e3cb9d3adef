import { describe, expect, it } from 'vitest'
import { derivativesOf, measure, type Path, type Point, stripsAlong } from '../../src/basin/index.ts'
import { meetings } from '../../src/basin/intersect.ts'
import { pushSpans, type Span } from '../../src/basin/span.ts'
import { divided, relative, shape, turnedBy } from './shapes.ts'
import { expectWithinWidth } from './within-width.ts'

/** A pool of five cubics of which two have a handle on its own point: the wall bends without a radius there. */
function pear(turn: number): Path {
  const at = turnedBy(turn)
  return {
    start: at(4.4, -0.5),
    segments: [
      { to: at(2.1, 3.4), c1: at(4.7, 0.6), c2: at(2.1, 3.4) },
      { to: at(-4.4, 2.3), c1: at(0.4, 3.9), c2: at(-3.8, 3.5) },
      { to: at(-3, -1.6), c1: at(-4.4, 2.3), c2: at(-3.6, -0.5) },
      { to: at(0.9, -4.6), c1: at(-2.4, -2.7), c2: at(-0.2, -4.5) },
      { to: at(4.4, -0.5), c1: at(2.2, -4.7), c2: at(4.1, -1.7) },
    ],
  }
}

const FLOOR = 1.5
const SEAT = 0.5

function pool(turn: number, widthM: number, fromSegment: number, toSegment: number) {
  return divided(
    shape(pear(turn), {
      floor: { kind: 'flat', depthM: FLOOR },
      features: [{ kind: 'bench', along: { fromSegment, toSegment }, widthM, depthM: SEAT }],
    }),
  )
}

describe.each([0.4, 0.8, 1.6])('a bench %d m wide round bends without a radius', (widthM) => {
  it('is where the wall is within its width', () => {
    expect(expectWithinWidth(pool(0, widthM, 0, 4), pear(0), widthM)).toBeGreaterThan(1000)
  })

  it('is the same turned, and leaves no slivers', () => {
    const first = measure(pool(0, widthM, 0, 4), 0)
    for (const turn of [0.73, 2.19, 4]) {
      const p = pool(turn, widthM, 0, 4)
      const m = measure(p, 0)
      expect(p.sliverM2).toBe(0)
      expect(Math.abs(m.volumeM3 - first.volumeM3)).toBeLessThan(first.errorBoundM3 + m.errorBoundM3)
      expect(relative(m.wetted.riserM2, first.wetted.riserM2)).toBeLessThan(1e-6)
    }
  })

  it.each([
    [0, 1],
    [2, 3],
    [1, 1],
    [4, 0],
  ])('has the derivative by its width of two measurings, from side %d to %d', (from, to) => {
    // Where it ends beside a tight bend it ends at the evolute, which no width moves.
    const step = 1e-4
    const at = (width: number): number => measure(pool(0, width, from, to), 0).volumeM3
    const byWidth = derivativesOf(pool(0, widthM, from, to), 0).find(({ path }) => path === 'features[0].widthM')!.value
    expect(relative(Number(byWidth), (at(widthM + step) - at(widthM - step)) / (2 * step))).toBeLessThan(1e-3)
  })
})

describe('a side of the wall shorter than the grain', () => {
  it('has no part in a bench: it was swept in thousands of sectors', () => {
    const dust: Point = [1.4776010333066987, -4.77668244562803]
    const outline: Path = {
      start: [2.3, -1.6],
      segments: [
        { to: [1.2, 2.8], c1: [3.7, -1], c2: [2.9, 2.3] },
        { to: [-4.7, 0.6], c1: [0.6, 3], c2: [-4.6, 1.5] },
        { to: dust, c1: [-4.7, -1], c2: [1.2, -4.7] },
        {
          to: [dust[0] - 9e-16, dust[1]],
          c1: [dust[0] + 9e-16, dust[1]],
          c2: [dust[0], dust[1] - 9e-16],
        },
        { to: [2.3, -1.6], c1: [1.8, -4.8], c2: [1.9, -2] },
      ],
    }
    const strips = stripsAlong(outline, [2, 3, 4], 1.54)
    expect(strips.length).toBeLessThan(100)
    expect(strips.some(({ measuredFrom }) => measuredFrom.kind === 'shore' && measuredFrom.segment === 3)).toBe(false)
  })
})

describe('two cubics that cross at a small angle', () => {
  // Newton's steps overshot the ends of the shorter one, and the two were taken for apart.
  it.each([
    [
      [
        3.545200562455164, 0.23039005200223447, 3.5452729335745836, 0.229059110301636, 3.545309941167922,
        0.22811169182850416, 3.545327982189558, 0.22753504702953345,
      ],
      [
        3.545403961871429, 0.23129763928092706, 3.5446209849800834, 0.20585567660197213, 3.542160475579037,
        0.17802756114490903, 3.537767445136335, 0.14787036854390584,
      ],
    ],
    [
      [
        -3.192190261688546, 1.2856978827341727, -3.031454207298409, 1.501520853242351, -2.868631783473624,
        1.7185476184503035, -2.6988575950997684, 1.9233808226088707,
      ],
      [
        -3.1936069669438303, 1.2837227495093864, -3.191623018251112, 1.286450846265304, -3.190544563576054,
        1.2879199817709917, -3.1904264955154846, 1.2880806700598892,
      ],
    ],
  ])('meet once', (one, other) => {
    const spanOf = (c: readonly number[]): Span => {
      const [x0, y0, ax, ay, bx, by, x1, y1] = c as [number, number, number, number, number, number, number, number]
      const out: Span[] = []
      pushSpans({ kind: 'cubic', x0, y0, ax, ay, bx, by, x1, y1 }, 0, 1e-9, out, 0)
      expect(out.length).toBe(1)
      return out[0]!
    }
    expect(meetings(spanOf(one), spanOf(other), 1e-9).length).toBe(1)
  })
})

describe('two benches of different depth on sides that go on smoothly but for their decimals', () => {
  it.each([2e-8, -2e-8, 0])('leave no slit between them: joint off by %d m', (off) => {
    const outline = (y: number): Path => ({
      start: [0, 0],
      segments: [{ to: [4, y] }, { to: [8, 0] }, { to: [8, 4] }, { to: [0, 4] }, { to: [0, 0] }],
    })
    const features = [0.4, 0.7].map(
      (depthM, i) => ({ kind: 'bench', along: { fromSegment: i, toSegment: i }, widthM: 0.5, depthM }) as const,
    )
    const m = measure(divided(shape(outline(off), { floor: { kind: 'flat', depthM: FLOOR }, features })), 0)
    // Both faces along the pool, and the step between the two seats.
    const faces = 4 * (FLOOR - 0.4) + 4 * (FLOOR - 0.7) + 0.5 * 0.3
    expect(relative(m.wetted.riserM2, faces)).toBeLessThan(1e-6)
  })
})
