/** The side where a·x + b·y ≥ c. */
export type HalfPlane = readonly [a: number, b: number, c: number]

/** Ends of the part of the line a·x + b·y + c = 0 that lies in all half-planes, if there is one and it has an end. */
export function clipLine(
  a: number,
  b: number,
  c: number,
  within: readonly HalfPlane[],
): [number, number, number, number] | undefined {
  const g2 = a * a + b * b
  if (!(g2 > 0)) return undefined
  const px = (-a * c) / g2
  const py = (-b * c) / g2
  const g = Math.sqrt(g2)
  const ux = -b / g
  const uy = a / g
  let lo = -Infinity
  let hi = Infinity
  for (const [na, nb, nc] of within) {
    const slope = na * ux + nb * uy
    const value = na * px + nb * py - nc
    if (slope > 0) lo = Math.max(lo, -value / slope)
    else if (slope < 0) hi = Math.min(hi, -value / slope)
    else if (value < 0) return undefined
  }
  if (!(hi > lo) || lo === -Infinity || hi === Infinity) return undefined
  return [px + lo * ux, py + lo * uy, px + hi * ux, py + hi * uy]
}

/** A box as half-planes. */
export function boxPlanes(minX: number, minY: number, maxX: number, maxY: number): HalfPlane[] {
  return [
    [1, 0, minX],
    [0, 1, minY],
    [-1, 0, -maxX],
    [0, -1, -maxY],
  ]
}
