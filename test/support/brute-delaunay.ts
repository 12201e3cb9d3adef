/** A triangle by the numbers of its corners. */
export type Corners = readonly [number, number, number]

type Place = readonly [number, number]

const cross = (a: Place, b: Place, c: Place): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

function circle(a: Place, b: Place, c: Place): { x: number; y: number; r: number } {
  const d = 2 * cross(a, b, c)
  const bb = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2
  const cc = (c[0] - a[0]) ** 2 + (c[1] - a[1]) ** 2
  const x = a[0] + ((c[1] - a[1]) * bb - (b[1] - a[1]) * cc) / d
  const y = a[1] + ((b[0] - a[0]) * cc - (c[0] - a[0]) * bb) / d
  return { x, y, r: Math.hypot(x - a[0], y - a[1]) }
}

const doCross = (a: Place, b: Place, c: Place, d: Place): boolean =>
  cross(a, b, c) * cross(a, b, d) < -1e-18 && cross(c, d, a) * cross(c, d, b) < -1e-18

function isInside(loops: readonly (readonly Place[])[], x: number, y: number): boolean {
  let inside = false
  for (const loop of loops)
    for (let i = 0; i < loop.length; i++) {
      const [ax, ay] = loop[i]!
      const [bx, by] = loop[(i + 1) % loop.length]!
      if (ay > y !== by > y && ax + ((y - ay) * (bx - ax)) / (by - ay) > x) inside = !inside
    }
  return inside
}

/**
 * The constrained Delaunay triangles of points within loops of them, by trying all triples: one is taken if it lies inside,
 * crosses no loop and its circle holds no point that is seen from its middle. For points in general position, some dozens.
 */
export function bruteDelaunay(points: readonly Place[], loops: readonly (readonly Place[])[]): Corners[] {
  const sides = loops.flatMap((loop) => loop.map((p, i) => [p, loop[(i + 1) % loop.length]!] as const))
  const isFree = (a: Place, b: Place): boolean => !sides.some(([c, d]) => doCross(a, b, c, d))
  const found: Corners[] = []
  for (let i = 0; i < points.length; i++)
    for (let j = i + 1; j < points.length; j++)
      for (let k = j + 1; k < points.length; k++) {
        const [a, b, c] = [points[i]!, points[j]!, points[k]!]
        if (Math.abs(cross(a, b, c)) < 1e-9) continue
        const middle: Place = [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3]
        if (!isInside(loops, ...middle)) continue
        if (!isFree(a, b) || !isFree(b, c) || !isFree(c, a)) continue
        const { x, y, r } = circle(a, b, c)
        const isTaken = points.some(
          (p, n) =>
            n !== i && n !== j && n !== k && Math.hypot(p[0] - x, p[1] - y) < r * (1 - 1e-9) && isFree(middle, p),
        )
        if (!isTaken) found.push([i, j, k])
      }
  return found
}

/** Depth at a place by the triangle that holds it. */
export function depthOn(
  triangles: readonly Corners[],
  points: readonly Place[],
  depths: readonly number[],
  x: number,
  y: number,
): number | undefined {
  for (const [i, j, k] of triangles) {
    const [a, b, c] = [points[i]!, points[j]!, points[k]!]
    const whole = cross(a, b, c)
    const u = cross([x, y], b, c) / whole
    const v = cross(a, [x, y], c) / whole
    if (u >= 0 && v >= 0 && u + v <= 1) return u * depths[i]! + v * depths[j]! + (1 - u - v) * depths[k]!
  }
  return undefined
}

/** Σ area · mean depth of the corners: the volume below a floor that is wet throughout [m³]. */
export function volumeOn(triangles: readonly Corners[], points: readonly Place[], depths: readonly number[]): number {
  let sum = 0
  for (const [i, j, k] of triangles)
    sum += (Math.abs(cross(points[i]!, points[j]!, points[k]!)) / 6) * (depths[i]! + depths[j]! + depths[k]!)
  return sum
}
