import { cubicAt } from './polynomial.ts'

export type Vec = [number, number]

export interface RunFit {
  readonly c1: Vec
  readonly c2: Vec
  /** Greatest distance of a point from the curve, and which point. */
  readonly worst: number
  readonly worstAt: number
}

/** The cubic from the first to the last of some points with given directions there, nearest in least squares. */
export function fitRun(points: readonly Vec[], first: Vec, last: Vec): RunFit {
  const p0 = points[0]!
  const p3 = points[points.length - 1]!
  let t = chordParameters(points)
  let fit = solve(points, t, p0, p3, first, last)
  let off = strayed(points, t, p0, p3, fit)
  for (let round = 0; round < 6; round++) {
    const better = points.map((point, i) => nearer(point, t[i]!, p0, p3, fit))
    const next = solve(points, better, p0, p3, first, last)
    const nextOff = strayed(points, better, p0, p3, next)
    if (!(nextOff.worst < off.worst)) break
    t = better
    fit = next
    off = nextOff
  }
  return { ...fit, ...off }
}

interface Handles {
  readonly c1: Vec
  readonly c2: Vec
}

function chordParameters(points: readonly Vec[]): number[] {
  const t = [0]
  for (let i = 1; i < points.length; i++)
    t.push(t[i - 1]! + Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1]))
  const total = t[t.length - 1]! || 1
  return t.map((v) => v / total)
}

function solve(points: readonly Vec[], t: readonly number[], p0: Vec, p3: Vec, first: Vec, last: Vec): Handles {
  let c00 = 0
  let c01 = 0
  let c11 = 0
  let x0 = 0
  let x1 = 0
  points.forEach((point, i) => {
    const u = t[i]!
    const v = 1 - u
    const b0 = v * v * v
    const b1 = 3 * v * v * u
    const b2 = 3 * v * u * u
    const b3 = u * u * u
    const a1: Vec = [first[0] * b1, first[1] * b1]
    const a2: Vec = [-last[0] * b2, -last[1] * b2]
    const rx = point[0] - (p0[0] * (b0 + b1) + p3[0] * (b2 + b3))
    const ry = point[1] - (p0[1] * (b0 + b1) + p3[1] * (b2 + b3))
    c00 += a1[0] * a1[0] + a1[1] * a1[1]
    c01 += a1[0] * a2[0] + a1[1] * a2[1]
    c11 += a2[0] * a2[0] + a2[1] * a2[1]
    x0 += a1[0] * rx + a1[1] * ry
    x1 += a2[0] * rx + a2[1] * ry
  })
  const det = c00 * c11 - c01 * c01
  const chord = Math.hypot(p3[0] - p0[0], p3[1] - p0[1])
  let alpha = det === 0 ? 0 : (x0 * c11 - x1 * c01) / det
  let beta = det === 0 ? 0 : (c00 * x1 - c01 * x0) / det
  // Handles that vanish or run away come from too few points: a third of the chord is always sound.
  const sound = (h: number): boolean => h > chord * 1e-2 && h < chord * 3
  if (!sound(alpha) || !sound(beta)) {
    alpha = chord / 3
    beta = chord / 3
  }
  return {
    c1: [p0[0] + alpha * first[0], p0[1] + alpha * first[1]],
    c2: [p3[0] - beta * last[0], p3[1] - beta * last[1]],
  }
}

function at(u: number, p0: Vec, p3: Vec, { c1, c2 }: Handles): Vec {
  return [cubicAt(p0[0], c1[0], c2[0], p3[0], u), cubicAt(p0[1], c1[1], c2[1], p3[1], u)]
}

function strayed(
  points: readonly Vec[],
  t: readonly number[],
  p0: Vec,
  p3: Vec,
  fit: Handles,
): { worst: number; worstAt: number } {
  let worst = 0
  let worstAt = Math.floor(points.length / 2)
  points.forEach((point, i) => {
    const [x, y] = at(t[i]!, p0, p3, fit)
    const d = Math.hypot(point[0] - x, point[1] - y)
    if (d > worst) {
      worst = d
      worstAt = i
    }
  })
  return { worst, worstAt }
}

/** One Newton step of a point's parameter toward its foot on the curve. */
function nearer(point: Vec, u: number, p0: Vec, p3: Vec, fit: Handles): number {
  const h = 1e-4
  const [x, y] = at(u, p0, p3, fit)
  const a = at(u - h, p0, p3, fit)
  const b = at(u + h, p0, p3, fit)
  const dx = (b[0] - a[0]) / (2 * h)
  const dy = (b[1] - a[1]) / (2 * h)
  const ddx = (b[0] - 2 * x + a[0]) / (h * h)
  const ddy = (b[1] - 2 * y + a[1]) / (h * h)
  const rx = x - point[0]
  const ry = y - point[1]
  const slope = dx * dx + dy * dy + rx * ddx + ry * ddy
  if (!(slope > 0)) return u
  return Math.min(1, Math.max(0, u - (rx * dx + ry * dy) / slope))
}
