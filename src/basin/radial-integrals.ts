import { type Curve, evaluate, type Jet, newJet } from './curve.ts'
import { ruleFor } from './edge-integrals.ts'
import { GAUSS_ARC, integrate } from './gauss.ts'
import type { Cell, Edge } from './partition-types.ts'
import { areaRate, isSteepAtRim, lawAt, type RadialLaw, type RadialRate, radiusAtDepth } from './radial-law.ts'
import { arcAbout, nearestAlong, radiusZeros, type Stretch, sweptAngle } from './radius-along.ts'
import { ROUNDING } from './tolerance.ts'

const jet = newJet()

/** The stretches round a cell, the cell on their left. */
export function stretchesOf(
  loops: readonly (readonly number[])[],
  edges: readonly Pick<Edge, 'curve' | 't0' | 't1'>[],
): Stretch[] {
  return loops.flat().map((half) => {
    const { curve, t0, t1 } = edges[half >> 1]!
    return { curve, t0, t1, sign: half & 1 ? -1 : 1 }
  })
}

/** Halvings beyond which only rounding is refined: at an upright rim depths have few digits left. */
const MOST_HALVINGS = 12

/** What part of the plane is wet under a law: all of it, or that within or beyond a radius. */
export interface Wet {
  readonly radiusM: number
  /** 1 where it is wet beyond the radius, −1 within it, 0 everywhere. */
  readonly beyond: -1 | 0 | 1
}

export const ALL: Wet = { radiusM: 0, beyond: 0 }

export function wetOf(cell: Cell, law: RadialLaw, levelM: number): Wet {
  if (cell.minDepthM + levelM >= 0) return ALL
  return { radiusM: radiusAtDepth(law, -levelM), beyond: law.depthM < law.edgeDepthM ? 1 : -1 }
}

/** ∫ f dA over the wet part of a face, where `rate` is half the mean of f over a disc about the centre. */
export function radialIntegral(stretches: readonly Stretch[], law: RadialLaw, rate: RadialRate, wet: Wet): number {
  const { radiusM, beyond } = wet
  const within = rate(law, radiusM) * radiusM * radiusM
  let sum = 0
  for (const s of stretches)
    forParts(s, law, wet, (ta, tb, isBeyond) => {
      if (beyond === 0) sum += s.sign * alongStretch(s.curve, ta, tb, law, rate)
      else if (beyond < 0)
        sum +=
          s.sign *
          (isBeyond ? within * sweptAngle(s.curve, ta, tb, law.x, law.y) : alongStretch(s.curve, ta, tb, law, rate))
      else if (isBeyond)
        sum += s.sign * (alongStretch(s.curve, ta, tb, law, rate) - within * sweptAngle(s.curve, ta, tb, law.x, law.y))
    })
  return sum
}

/** Calls `visit` with the parts of a stretch that lie within the shore's radius and beyond it. */
export function forParts(
  s: Stretch,
  law: RadialLaw,
  wet: Wet,
  visit: (ta: number, tb: number, isBeyond: boolean) => void,
): void {
  if (wet.beyond === 0) {
    visit(s.t0, s.t1, true)
    return
  }
  const cuts = radiusZeros(s.curve, s.t0, s.t1, law.x, law.y, wet.radiusM)
  for (let i = 0; i <= cuts.length; i++) {
    const ta = i === 0 ? s.t0 : cuts[i - 1]!
    const tb = i === cuts.length ? s.t1 : cuts[i]!
    evaluate(s.curve, (ta + tb) / 2, jet)
    visit(ta, tb, Math.hypot(jet.x - law.x, jet.y - law.y) > wet.radiusM)
  }
}

/** ∫ rate (x dy − y dx) along a stretch. */
function alongStretch(curve: Curve, t0: number, t1: number, law: RadialLaw, rate: RadialRate): number {
  const { x: cx, y: cy } = law
  const about = arcAbout(curve, cx, cy)
  if (about) {
    const r = Math.abs(about.radius)
    return rate(law, r) * r * r * about.turn * (t1 - t0)
  }
  const f = (t: number): number => {
    evaluate(curve, t, jet)
    const x = jet.x - cx
    const y = jet.y - cy
    return rate(law, Math.hypot(x, y)) * (x * jet.dy - y * jet.dx)
  }
  if (rate === areaRate) {
    const rule = ruleFor(curve)
    let sum = 0
    for (let k = 0; k < rule.at.length; k++) sum += rule.weight[k]! * f(t0 + (t1 - t0) * rule.at[k]!)
    return sum * (t1 - t0)
  }
  return integrateFromFoot(f, curve, t0, t1, law, Math.abs(rate(law, law.radiusM)) + Math.abs(rate(law, 0)), 2)
}

/** An integral along a stretch, cut where it comes nearest to the centre, for the distance bends sharply there. */
export function integrateFromFoot(
  f: (t: number) => number,
  curve: Curve,
  t0: number,
  t1: number,
  law: RadialLaw,
  scale: number,
  dimensions: 1 | 2,
): number {
  evaluate(curve, t0, jet)
  const r0 = Math.hypot(jet.x - law.x, jet.y - law.y)
  evaluate(curve, t1, jet)
  const size = (Math.max(r0, Math.hypot(jet.x - law.x, jet.y - law.y)) + law.radiusM) ** dimensions
  const tolerance = 64 * ROUNDING * scale * size
  const part = (a: number, b: number): number => {
    if (!isSteepAtRim(law)) return integrate(f, a, b, tolerance, MOST_HALVINGS)
    // Toward an upright rim the depth has a root, which t = a + (b − a)(3u² − 2u³) smooths.
    const smoothed = (u: number): number => 6 * u * (1 - u) * (b - a) * f(a + (b - a) * u * u * (3 - 2 * u))
    return integrate(smoothed, 0, 1, tolerance, MOST_HALVINGS)
  }
  const near = nearestAlong(curve, t0, t1, law.x, law.y)
  return near === undefined ? part(t0, t1) : part(t0, near) + part(near, t1)
}

/** ∫ x dA and ∫ y dA over the wet part of a face, from the centre. */
export function radialMoments(stretches: readonly Stretch[], law: RadialLaw, wet: Wet): [number, number] {
  let mx = 0
  let my = 0
  const cube = wet.radiusM ** 3 / 3
  for (const s of stretches) {
    const rule = ruleFor(s.curve)
    forParts(s, law, wet, (ta, tb, isBeyond) => {
      // Beyond the shore's radius the integral up to it, ρ₀³/3 (cos θ, sin θ) dθ, is taken or left.
      if (isBeyond) {
        const part = -wet.beyond * s.sign * cube
        const [sinB, cosB] = directionAt(s.curve, tb, law)
        const [sinA, cosA] = directionAt(s.curve, ta, law)
        mx += part * (sinB - sinA)
        my -= part * (cosB - cosA)
      }
      if (isBeyond === wet.beyond < 0) return
      const h = s.sign * (tb - ta)
      for (let k = 0; k < rule.at.length; k++) {
        evaluate(s.curve, ta + (tb - ta) * rule.at[k]!, jet)
        const x = jet.x - law.x
        const y = jet.y - law.y
        const flux = (h * rule.weight[k]! * (x * jet.dy - y * jet.dx)) / 3
        mx += flux * x
        my += flux * y
      }
    })
  }
  return [mx, my]
}

function directionAt(curve: Curve, t: number, law: RadialLaw): [sin: number, cos: number] {
  evaluate(curve, t, jet)
  const x = jet.x - law.x
  const y = jet.y - law.y
  const r = Math.hypot(x, y) || 1
  return [y / r, x / r]
}

/**
 * Calls `visit` at places along a stretch with s⁺ dt there, for sums of s⁺ times what is smooth; `at` holds the place.
 * Accuracy: 12 points in each of 4 parts between where the stretch is nearest to the centre and where it runs dry.
 */
export function alongLaw(
  cell: Cell,
  law: RadialLaw,
  curve: Curve,
  t0: number,
  t1: number,
  levelM: number,
  visit: (t: number, weight: number) => void,
  at: Jet,
): void {
  if (cell.maxDepthM + levelM <= 0) return
  const near = nearestAlong(curve, t0, t1, law.x, law.y)
  const wet = wetOf(cell, law, levelM)
  for (const [a, b] of near === undefined
    ? [[t0, t1]]
    : [
        [t0, near],
        [near, t1],
      ])
    forParts({ curve, t0: a!, t1: b!, sign: 1 }, law, wet, (ta, tb, isBeyond) => {
      if (wet.beyond !== 0 && isBeyond !== wet.beyond > 0) return
      const h = (tb - ta) / 4
      for (let part = 0; part < 4; part++)
        for (let k = 0; k < GAUSS_ARC.at.length; k++) {
          const t = ta + h * (part + GAUSS_ARC.at[k]!)
          evaluate(curve, t, at)
          visit(t, h * GAUSS_ARC.weight[k]! * (lawAt(law, at.x, at.y) + levelM))
        }
    })
}
