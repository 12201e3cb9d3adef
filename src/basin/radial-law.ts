import { UPRIGHT } from './tolerance.ts'

/**
 * A depth that hangs only on the distance ρ from a centre, for ρ up to the radius of the hollow: a cap of a sphere or a
 * cone. The centre may be the shallower one (a mound).
 */
export interface RadialLaw {
  readonly form: 'cap' | 'cone'
  /** The centre, in the partition's frame. */
  readonly x: number
  readonly y: number
  readonly radiusM: number
  /** Depth at the rim and at the centre. */
  readonly edgeDepthM: number
  readonly depthM: number
}

/** Radius of a cap's sphere [m]: (R² + h²) / 2h with h = |depth − edge depth|. */
function sphereM(law: RadialLaw): number {
  const h = Math.abs(law.depthM - law.edgeDepthM)
  return (law.radiusM * law.radiusM + h * h) / (2 * h)
}

/** √(S² − ρ²), from the middle plane of the sphere to its skin at ρ. */
function skin(s: number, rho: number): number {
  return Math.sqrt(Math.max(0, (s - rho) * (s + rho)))
}

/** 1 where the centre is the deeper one, −1 where it is a mound. */
function signOf(law: RadialLaw): 1 | -1 {
  return law.depthM > law.edgeDepthM ? 1 : -1
}

/** True for a cap that comes near to half a sphere, whose rim is nearly upright. */
export function isSteepAtRim(law: RadialLaw): boolean {
  return law.form === 'cap' && skin(sphereM(law), law.radiusM) < sphereM(law) / 4
}

/** Fall of a cone's depth per metre outward [1]. */
function coneFall(law: RadialLaw): number {
  return (law.edgeDepthM - law.depthM) / law.radiusM
}

/**
 * Depth at the distance ρ from the centre [m].
 * Equation: cone d = c + (e − c) ρ/R; cap d = c ∓ v, v = S − √(S² − ρ²) = ρ² / (S + √(S² − ρ²)).
 * Symbols: c, e depth at centre and rim; R radius of the rim; S of the sphere; − for a hollow, + for a mound.
 * Accuracy: rounding, also for a nearly flat cap.
 */
export function depthAtRadius(law: RadialLaw, rho: number): number {
  if (law.form === 'cone') return law.depthM + coneFall(law) * rho
  const s = sphereM(law)
  return law.depthM - (signOf(law) * rho * rho) / (s + skin(s, rho))
}

/** Distance from the centre at which the law has a depth between those of centre and rim [m]. */
export function radiusAtDepth(law: RadialLaw, depthM: number): number {
  if (law.form === 'cone') return (law.radiusM * (depthM - law.depthM)) / (law.edgeDepthM - law.depthM)
  const v = Math.abs(depthM - law.depthM)
  return Math.sqrt(v * Math.max(0, 2 * sphereM(law) - v))
}

/** Gradient of the depth at a place of the frame; level at the very tip of a cone. */
export function lawGradient(law: RadialLaw, x: number, y: number): [dx: number, dy: number] {
  const px = x - law.x
  const py = y - law.y
  const rho = Math.hypot(px, py)
  if (rho === 0) return [0, 0]
  if (law.form === 'cone') {
    const k = coneFall(law) / rho
    return [k * px, k * py]
  }
  const s = sphereM(law)
  // At the rim of half a sphere the floor is upright: as steep as rounding can tell.
  const q = Math.max(skin(s, rho), UPRIGHT * s)
  const k = -signOf(law) / q
  return [k * px, k * py]
}

/** Depth at a place of the frame [m]. */
export function lawAt(law: RadialLaw, x: number, y: number): number {
  return depthAtRadius(law, Math.hypot(x - law.x, y - law.y))
}

/** A rate G(ρ)/ρ², where G(ρ) = ∫₀^ρ f(ρ′) ρ′ dρ′: half the mean of f over the disc of radius ρ. */
export type RadialRate = (law: RadialLaw, rho: number) => number

/** Half the mean depth over the disc [m]: cone c/2 + (e − c) ρ/3R; cap c/2 ∓ v (3S − 2v) / 6 (2S − v). */
export const depthRate: RadialRate = (law, rho) => {
  if (law.form === 'cone') return law.depthM / 2 + (coneFall(law) * rho) / 3
  const s = sphereM(law)
  const v = (rho * rho) / (s + skin(s, rho))
  return law.depthM / 2 - (signOf(law) * v * (3 * s - 2 * v)) / (6 * (2 * s - v))
}

/** Half the mean of surface per plan area [1]: cone √(1 + k²)/2; cap S / (S + √(S² − ρ²)), the zone of a sphere. */
export const slopedRate: RadialRate = (law, rho) => {
  if (law.form === 'cone') return Math.sqrt(1 + coneFall(law) ** 2) / 2
  const s = sphereM(law)
  return s / (s + skin(s, rho))
}

/** Half, for the plan area itself. */
export const areaRate: RadialRate = () => 0.5

/**
 * Half the mean of ∂d/∂(depth at the centre) [1]; by the depth of the rim it is what this leaves of ½.
 * Equation: cone ½ − ρ/3R; cap ½ (1 + S′ ρ² / (S + √(S² − ρ²))²), S′ = ∂S/∂h = (h² − R²) / 2h².
 */
export const centreShareRate: RadialRate = (law, rho) => {
  if (law.form === 'cone') return 0.5 - rho / (3 * law.radiusM)
  const h = Math.abs(law.depthM - law.edgeDepthM)
  const s = sphereM(law)
  const ratio = rho / (s + skin(s, rho))
  return (1 + ((h - law.radiusM) * (h + law.radiusM) * (ratio / h) ** 2) / 2) / 2
}

/**
 * Half the mean of ∂d/∂R, by the radius of the rim [1].
 * Equation: cone −(e − c) ρ / 3R²; cap ± (R/h) ρ² / 2 (S + √(S² − ρ²))².
 */
export const radiusShareRate: RadialRate = (law, rho) => {
  if (law.form === 'cone') return (-coneFall(law) * rho) / (3 * law.radiusM)
  const s = sphereM(law)
  const h = Math.abs(law.depthM - law.edgeDepthM)
  return (signOf(law) * (law.radiusM / h) * (rho / (s + skin(s, rho))) ** 2) / 2
}

/**
 * ∂d/∂(depth at the centre) and ∂d/∂R at a distance from the centre [1]; by the depth of the rim it is what the first leaves of 1.
 * Equation: cone 1 − ρ/R, −(e − c) ρ/R²; cap 1 + S′ v/q, ± (R/h) v/q, with q = √(S² − ρ²), S′ = (h² − R²)/2h².
 */
export function lawShares(law: RadialLaw, rho: number): [centre: number, radius: number] {
  const { radiusM } = law
  if (law.form === 'cone') return [1 - rho / radiusM, (-coneFall(law) * rho) / radiusM]
  const s = sphereM(law)
  const h = Math.abs(law.depthM - law.edgeDepthM)
  const q = skin(s, rho)
  const ratio = (rho * rho) / (s + q) / Math.max(q, UPRIGHT * s)
  return [1 + (((h - radiusM) * (h + radiusM)) / (2 * h * h)) * ratio, signOf(law) * (radiusM / h) * ratio]
}
