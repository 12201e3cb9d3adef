/**
 * Length of a vector [as its parts are]. Math.hypot guards against squares that overflow, which places below 1e9 m never
 * do, and takes ten times as long for it.
 */
export function norm(x: number, y: number): number {
  return Math.sqrt(x * x + y * y)
}
