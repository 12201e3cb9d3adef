import { fail, ok, type Result, type Table, table } from '../base/index.ts'
import { problem } from './problems.ts'
import type { Path, Point, Segment } from './types.ts'

/** One measure of a starting outline [m]. */
export interface OutlineParameter {
  readonly id: string
  readonly label: string
  readonly defaultM: number
  readonly minM: number
  readonly maxM: number
}

/** An outline that is drawn from numbers. Its box begins at (0, 0) unless said otherwise. */
export interface StartingOutline {
  readonly id: string
  readonly label: string
  readonly parameters: readonly OutlineParameter[]
  readonly make: (params: Readonly<Record<string, number>>) => Result<Path>
}

type Build = (value: (id: string) => number) => Path | undefined

function row(id: string, label: string, parameters: readonly OutlineParameter[], build: Build): StartingOutline {
  const make = (params: Readonly<Record<string, number>>): Result<Path> => {
    for (const { id: name, minM, maxM, defaultM } of parameters) {
      const value = params[name] ?? defaultM
      if (!(value >= minM && value <= maxM)) return fail(problem('parameter-out-of-range', name))
    }
    const defaults = new Map(parameters.map((q) => [q.id, q.defaultM]))
    const path = build((name) => params[name] ?? defaults.get(name) ?? 0)
    return path ? ok(path) : fail(problem('parameter-out-of-range', parameters[parameters.length - 1]!.id))
  }
  return { id, label, parameters, make }
}

const measure = (id: string, label: string, defaultM: number, minM = 0.1, maxM = 1000): OutlineParameter => ({
  id,
  label,
  defaultM,
  minM,
  maxM,
})

/** Outlines to begin with. */
export const STARTING_OUTLINES: Table<StartingOutline> = table([
  row(
    'rectangle',
    'Rectangle',
    [measure('lengthM', 'Length', 8), measure('widthM', 'Width', 4), measure('cornerRadiusM', 'Corner radius', 0, 0)],
    (v) => rectangle(v('lengthM'), v('widthM'), v('cornerRadiusM')),
  ),
  row('circle', 'Circle', [measure('diameterM', 'Diameter', 5)], (v) => stadium(v('diameterM'), v('diameterM'))),
  row('ellipse', 'Ellipse', [measure('lengthM', 'Length', 8), measure('widthM', 'Width', 5)], (v) =>
    ellipse(v('lengthM'), v('widthM')),
  ),
  row('stadium', 'Straight sides, round ends', [measure('lengthM', 'Length', 9), measure('widthM', 'Width', 4)], (v) =>
    stadium(v('lengthM'), v('widthM')),
  ),
  row(
    'kidney',
    'Kidney',
    [
      measure('lengthM', 'Length', 8.6),
      measure('endRadiusM', 'Radius of the ends', 1.8),
      measure('backRadiusM', 'Radius of the back', 6),
      measure('waistRadiusM', 'Radius of the waist', 1.7),
    ],
    (v) => kidney(v('lengthM'), v('endRadiusM'), v('backRadiusM'), v('waistRadiusM')),
  ),
  row(
    'ell',
    'L',
    [
      measure('lengthM', 'Length', 9),
      measure('widthM', 'Width', 7),
      measure('footM', 'Width of the long arm', 4),
      measure('armM', 'Width of the short arm', 4),
    ],
    (v) => ell(v('lengthM'), v('widthM'), v('footM'), v('armM')),
  ),
  row(
    'twoCircles',
    'Two circles joined',
    [
      measure('firstDiameterM', 'First diameter', 5),
      measure('secondDiameterM', 'Second diameter', 4),
      measure('apartM', 'Distance of the centres', 3.5),
    ],
    (v) => twoCircles(v('firstDiameterM') / 2, v('secondDiameterM') / 2, v('apartM')),
  ),
])

const QUARTER = Math.tan(Math.PI / 8)

function rectangle(l: number, w: number, r: number): Path | undefined {
  if (2 * r > Math.min(l, w)) return undefined
  if (r === 0) return { start: [0, 0], segments: [{ to: [l, 0] }, { to: [l, w] }, { to: [0, w] }, { to: [0, 0] }] }
  const corners: Segment[] = []
  const side = (to: Point, from: Point): void => {
    if (to[0] !== from[0] || to[1] !== from[1]) corners.push({ to })
  }
  side([l - r, 0], [r, 0])
  corners.push({ to: [l, r], bulge: QUARTER })
  side([l, w - r], [l, r])
  corners.push({ to: [l - r, w], bulge: QUARTER })
  side([r, w], [l - r, w])
  corners.push({ to: [0, w - r], bulge: QUARTER })
  side([0, r], [0, w - r])
  corners.push({ to: [r, 0], bulge: QUARTER })
  return { start: [r, 0], segments: corners }
}

function stadium(l: number, w: number): Path | undefined {
  if (l < w) return undefined
  const r = w / 2
  if (l === w)
    return {
      start: [l, r],
      segments: [
        { to: [0, r], bulge: 1 },
        { to: [l, r], bulge: 1 },
      ],
    }
  return {
    start: [r, 0],
    segments: [{ to: [l - r, 0] }, { to: [l - r, w], bulge: 1 }, { to: [r, w] }, { to: [r, 0], bulge: 1 }],
  }
}

/**
 * An ellipse of eight cubics whose handles are chosen so that the area is exactly that of the ellipse.
 * Equation: 3 s k² − 12 (1 − c) k + 10 (θ − s) = 0, θ = π/4, s = sin θ, c = cos θ, k handle on the unit circle.
 * Accuracy: area to rounding; the curve stays within 1e-5 of a half axis from the ellipse.
 */
function ellipse(l: number, w: number): Path {
  const theta = Math.PI / 4
  const s = Math.sin(theta)
  const c = Math.cos(theta)
  const k = (12 * (1 - c) - Math.sqrt(144 * (1 - c) ** 2 - 120 * s * (theta - s))) / (6 * s)
  const at = (angle: number, along: number): Point => [
    (l / 2) * (1 + Math.cos(angle) - along * Math.sin(angle)),
    (w / 2) * (1 + Math.sin(angle) + along * Math.cos(angle)),
  ]
  const start: Point = [l, w / 2]
  const segments: Segment[] = []
  for (let i = 1; i <= 8; i++)
    segments.push({ to: i === 8 ? start : at(i * theta, 0), c1: at((i - 1) * theta, k), c2: at(i * theta, -k) })
  return { start, segments }
}

function kidney(l: number, a: number, back: number, waist: number): Path | undefined {
  const h = l / 2 - a
  const above = (back - a) ** 2 - h * h
  const below = (waist + a) ** 2 - h * h
  if (!(h > 0 && back > a && above > 0 && below > 0)) return undefined
  const yBack = -Math.sqrt(above)
  const yWaist = -Math.sqrt(below)
  // The back must pass over the waist, and the ends must not meet.
  if (!(yBack + back > yWaist + waist) || h * (waist / (waist + a)) >= waist * 2) return undefined
  const up = Math.atan2(-yBack, h)
  const down = Math.atan2(-yWaist, h)
  const place = (x: number, y: number): Point => [x + l / 2, y + a]
  const right = (angle: number): Point => place(h + a * Math.cos(angle), a * Math.sin(angle))
  const left = (angle: number): Point => place(-h - a * Math.cos(angle), a * Math.sin(angle))
  const bulge = (turn: number): number => Math.tan(turn / 4)
  // Ends meet the back at angle `up`, the waist at π + `down` on the right end (measured at its centre).
  const waistAngle = Math.PI + down
  const endTurn = up - (waistAngle - 2 * Math.PI)
  return {
    start: right(up),
    segments: [
      { to: left(up), bulge: bulge(Math.PI - 2 * up) },
      { to: left(waistAngle), bulge: bulge(endTurn) },
      { to: right(waistAngle), bulge: -bulge(Math.PI - 2 * down) },
      { to: right(up), bulge: bulge(endTurn) },
    ],
  }
}

function ell(l: number, w: number, foot: number, arm: number): Path | undefined {
  if (!(foot < w && arm < l)) return undefined
  const points: Point[] = [
    [l, 0],
    [l, foot],
    [arm, foot],
    [arm, w],
    [0, w],
    [0, 0],
  ]
  return { start: [0, 0], segments: points.map((to) => ({ to })) }
}

function twoCircles(a: number, b: number, apart: number): Path | undefined {
  if (!(apart < a + b && apart > Math.abs(a - b))) return undefined
  const x = (apart * apart + a * a - b * b) / (2 * apart)
  const y = Math.sqrt(a * a - x * x)
  const top = Math.max(a, b)
  const first = 2 * Math.PI - 2 * Math.atan2(y, x)
  const second = 2 * Math.PI - 2 * Math.atan2(y, apart - x)
  const upper: Point = [a + x, top + y]
  const lower: Point = [a + x, top - y]
  return {
    start: upper,
    segments: [
      { to: lower, bulge: Math.tan(first / 4) },
      { to: upper, bulge: Math.tan(second / 4) },
    ],
  }
}
