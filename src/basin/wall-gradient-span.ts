/** Width of the sheaf of rays: h0 + h1 n for each unit of t. */
export interface Sheaf {
  readonly h0: number
  readonly h1: number
}

/**
 * What a stretch of a ray adds: ∫ ∂d/∂n; ∂V by the wall's number; wet area gained; ∫ n ∂d/∂n; then area and its lever
 * along the ray that the floor's depth makes and that a patch's depth makes, gained against no wall.
 */
export const LEAN = 0
export const BY_WALL = 1
export const LEVEL = 2
export const UNSCALED = 3
export const FLOOR_MOMENTS = 4
export const PATCH_MOMENTS = 6
/** By the depth of a hollow's centre and of its rim, by its radius, and by the place of its centre along the ray and across it. */
export const HOLLOW_MOMENTS = 8
export const SPAN_SUMS = 13

/** Adds area and lever of the sheaf between two distances, times a sign. */
export function addArea({ h0, h1 }: Sheaf, a: number, b: number, sign: number, sums: Float64Array, at: number): void {
  const d1 = b - a
  const d2 = (b * b - a * a) / 2
  const d3 = (b * b * b - a * a * a) / 3
  sums[at]! += sign * (h0 * d1 + h1 * d2)
  sums[at + 1]! += sign * (h0 * d2 + h1 * d3)
}

/** ∫ (h0 + h1 n) dn. */
export function areaOf({ h0, h1 }: Sheaf, a: number, b: number): number {
  return h0 * (b - a) + (h1 * (b * b - a * a)) / 2
}

/** ∫ n (h0 + h1 n) dn. */
export function leverOf({ h0, h1 }: Sheaf, a: number, b: number): number {
  return (h0 * (b * b - a * a)) / 2 + (h1 * (b * b * b - a * a * a)) / 3
}

/** A place where a linear depth is zero, if it lies ahead. */
export function pushZero(c: number, slope: number, out: number[]): void {
  if (slope === 0) return
  const n = -c / slope
  if (n > 0) out.push(n)
}
