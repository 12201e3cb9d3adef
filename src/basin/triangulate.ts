import earcut from 'earcut'

/**
 * Triangles (vertex numbers, counter-clockwise) of a region bounded by rings, the first outside, the others holes. Every
 * side of a ring is a side of exactly one triangle: where the ear cutting passed over a point that lies on a straight
 * side, a triangle without area closes the gap.
 */
export function triangulate(
  rings: readonly (readonly number[])[],
  x: ArrayLike<number>,
  y: ArrayLike<number>,
): number[] {
  const flat: number[] = []
  const holes: number[] = []
  const names: number[] = []
  for (const ring of rings) {
    if (names.length > 0) holes.push(names.length)
    for (const v of ring) {
      names.push(v)
      flat.push(x[v]!, y[v]!)
    }
  }
  const cut = earcut(flat, holes)
  // All ears are cut the same way round, which the sides that they share with their ring tell, be they never so thin.
  let along = 0
  for (let i = 0; i < cut.length; i++) {
    const step = cut[i % 3 === 2 ? i - 2 : i + 1]! - cut[i]!
    if (step === 1) along++
    else if (step === -1) along--
  }
  const triangles: number[] = []
  for (let i = 0; i < cut.length; i += 3) {
    const a = names[cut[i]!]!
    const b = names[cut[i + 1]!]!
    const c = names[cut[i + 2]!]!
    if (along >= 0) triangles.push(a, b, c)
    else triangles.push(a, c, b)
  }
  if (triangles.length / 3 !== names.length + 2 * holes.length - 2) closeGaps(rings, triangles, x, y)
  return triangles
}

/**
 * Adds fans over the loops that lie between the rings and the triangles' own border. Each is a straight side that its own
 * points go along one way and triangles the other, so at a corner where several loops meet its own way on leads back.
 */
function closeGaps(
  rings: readonly (readonly number[])[],
  triangles: number[],
  x: ArrayLike<number>,
  y: ArrayLike<number>,
): void {
  const key = (a: number, b: number): string => `${a} ${b}`
  const open = new Map<string, [number, number]>()
  const put = (a: number, b: number): void => {
    if (!open.delete(key(b, a))) open.set(key(a, b), [a, b])
  }
  for (const ring of rings) for (let i = 0; i < ring.length; i++) put(ring[i]!, ring[(i + 1) % ring.length]!)
  for (let i = 0; i < triangles.length; i += 3) {
    put(triangles[i + 1]!, triangles[i]!)
    put(triangles[i + 2]!, triangles[i + 1]!)
    put(triangles[i]!, triangles[i + 2]!)
  }
  const from = new Map<number, number[]>()
  for (const [a, b] of open.values()) {
    const list = from.get(a)
    if (list) list.push(b)
    else from.set(a, [b])
  }
  for (const start of from.keys()) {
    for (let first = from.get(start)!.pop(); first !== undefined; first = from.get(start)!.pop()) {
      const loop = [start, first]
      let before = start
      for (let at = first; at !== start; ) {
        const ways = from.get(at) ?? []
        const next = ways.splice(backmost(ways, x[at]! - x[before]!, y[at]! - y[before]!, x, y, at), 1)[0]
        if (next === undefined) break
        if (next !== start) loop.push(next)
        before = at
        at = next
      }
      for (let i = 1; i + 1 < loop.length; i++) triangles.push(loop[0]!, loop[i]!, loop[i + 1]!)
    }
  }
}

/** Which of several ways on from a vertex turns back most sharply on the way there. */
function backmost(
  ways: readonly number[],
  dx: number,
  dy: number,
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  at: number,
): number {
  let best = 0
  let least = Infinity
  for (let i = 0; i < ways.length && ways.length > 1; i++) {
    const ex = x[ways[i]!]! - x[at]!
    const ey = y[ways[i]!]! - y[at]!
    const along = (dx * ex + dy * ey) / Math.hypot(ex, ey)
    if (along < least) {
      least = along
      best = i
    }
  }
  return best
}
