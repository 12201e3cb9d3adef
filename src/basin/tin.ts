import { incircle, orient2d } from 'robust-predicates'

/**
 * A Delaunay triangulation of points in a wide square that takes sides which must stay. Half-edge e runs from corner
 * `corners[e]` to the next corner of triangle ⌊e/3⌋, counter-clockwise; `across[e]` is its twin, −1 on the square's border.
 * Source: C. L. Lawson (1977) for points, S. W. Sloan, Computers & Structures 47 (1993), for sides; from memory.
 * Accuracy: robust predicates decide, so that the triangles are right for the coordinates as they are.
 */
export class Tin {
  readonly x: number[]
  readonly y: number[]
  readonly corners = [0, 1, 2, 0, 2, 3]
  readonly across = [-1, -1, 3, 2, -1, -1]
  /** Mark of each half-edge that must stay, 0 for the others. */
  readonly fixed = [0, 0, 0, 0, 0, 0]
  /** A half-edge that starts at each point. */
  private readonly out = [0, 1, 2, 5]
  private near = 0

  /** The square's four corners are the points 0 to 3; everything else must lie well inside. */
  constructor(halfWidth: number) {
    this.x = [-halfWidth, halfWidth, halfWidth, -halfWidth]
    this.y = [-halfWidth, -halfWidth, halfWidth, halfWidth]
  }

  /** Above zero where point c lies to the left of the way from a to b, 0 on the line. */
  left(a: number, b: number, cx: number, cy: number): number {
    return -orient2d(this.x[a]!, this.y[a]!, this.x[b]!, this.y[b]!, cx, cy)
  }

  /** Adds a point before any side is fixed; one that is there already is given back. */
  add(px: number, py: number): number {
    const { x, y, corners, across, out } = this
    const t = this.holding(px, py, this.near)
    let on = -1
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      const a = corners[e]!
      if (x[a] === px && y[a] === py) return a
      if (this.left(a, corners[next(e)]!, px, py) === 0) on = e
    }
    const p = x.length
    x.push(px)
    y.push(py)
    out.push(-1)
    const pending: number[] = []
    if (on >= 0) {
      // The point lies on a side: both triangles there are halved.
      const u = corners[on]!
      const v = corners[next(on)]!
      const far = corners[last(on)]!
      const twin = across[on]!
      const beyond = corners[last(twin)]!
      const sides = [across[next(on)]!, across[last(on)]!, across[next(twin)]!, across[last(twin)]!]
      const a = this.put((on / 3) | 0, p, v, far)
      const b = this.put(-1, p, far, u)
      const c = this.put((twin / 3) | 0, p, u, beyond)
      const d = this.put(-1, p, beyond, v)
      this.join(a + 1, sides[0]!)
      this.join(b + 1, sides[1]!)
      this.join(c + 1, sides[2]!)
      this.join(d + 1, sides[3]!)
      this.join(a + 2, b)
      this.join(b + 2, c)
      this.join(c + 2, d)
      this.join(d + 2, a)
      pending.push(a + 1, b + 1, c + 1, d + 1)
    } else {
      const [u, v, w] = [corners[3 * t]!, corners[3 * t + 1]!, corners[3 * t + 2]!]
      const sides = [across[3 * t]!, across[3 * t + 1]!, across[3 * t + 2]!]
      const a = this.put(t, p, u, v)
      const b = this.put(-1, p, v, w)
      const c = this.put(-1, p, w, u)
      this.join(a + 1, sides[0]!)
      this.join(b + 1, sides[1]!)
      this.join(c + 1, sides[2]!)
      this.join(a + 2, b)
      this.join(b + 2, c)
      this.join(c + 2, a)
      pending.push(a + 1, b + 1, c + 1)
    }
    this.near = (out[p]! / 3) | 0
    this.settle(pending)
    return p
  }

  /** Flips sides until every one that may be flipped is Delaunay; of a tie the side that is there stays. */
  settle(pending: number[]): void {
    const { x, y, corners, across, fixed } = this
    while (pending.length > 0) {
      const e = pending.pop()!
      const twin = across[e]!
      if (twin < 0 || fixed[e] !== 0) continue
      const [a, b, c, d] = [corners[e]!, corners[next(e)]!, corners[last(e)]!, corners[last(twin)]!]
      if (incircle(x[a]!, y[a]!, x[b]!, y[b]!, x[c]!, y[c]!, x[d]!, y[d]!) <= 0) continue
      this.flip(e)
      pending.push(e, next(e), twin, next(twin))
    }
  }

  /** Turns the side e of two triangles into the other diagonal, which becomes the half-edges last(e) and last(twin). */
  flip(e: number): void {
    const { corners, across, fixed, out } = this
    const twin = across[e]!
    const u = corners[e]!
    const v = corners[next(e)]!
    const p = corners[last(e)]!
    const q = corners[last(twin)]!
    const byQ = last(twin)
    const byP = last(e)
    const [sideQ, sideP, markQ, markP] = [across[byQ]!, across[byP]!, fixed[byQ]!, fixed[byP]!]
    corners[e] = q
    corners[twin] = p
    this.join(e, sideQ)
    this.join(twin, sideP)
    fixed[e] = markQ
    fixed[twin] = markP
    this.join(byP, byQ)
    fixed[byP] = 0
    fixed[byQ] = 0
    out[q] = e
    out[v] = next(e)
    out[p] = twin
    out[u] = next(twin)
  }

  /** The half-edge from one point to another, −1 where they are not joined. */
  between(from: number, to: number): number {
    const { corners } = this
    for (const e of this.around(from)) if (corners[next(e)] === to) return e
    return -1
  }

  /** Half-edges that start at a point, counter-clockwise where the point is none of the square's corners. */
  around(point: number): number[] {
    const first = this.out[point]!
    const list = [first]
    let e = this.across[last(first)]!
    for (; e >= 0 && e !== first; e = this.across[last(e)]!) list.push(e)
    // On the border the way round ends; the rest lies the other way.
    if (e < 0) for (let twin = this.across[first]!; twin >= 0; twin = this.across[next(twin)]!) list.push(next(twin))
    return list
  }

  /** A triangle that holds a place, sought from a triangle that may lie near. */
  holding(px: number, py: number, from: number): number {
    const { corners, across } = this
    let t = from
    let e = 3 * t
    let clear = 0
    // The walk ends in any Delaunay triangulation; fixed sides might lead it in a circle, hence the budget.
    for (let budget = corners.length; budget > 0; budget--) {
      if (this.left(corners[e]!, corners[next(e)]!, px, py) < 0 && across[e]! >= 0) {
        e = next(across[e]!)
        t = (e / 3) | 0
        clear = 1
        continue
      }
      e = next(e)
      if (++clear >= 3) return t
    }
    for (t = 0; 3 * t < corners.length; t++)
      if ([0, 1, 2].every((k) => this.left(corners[3 * t + k]!, corners[next(3 * t + k)]!, px, py) >= 0)) return t
    return from
  }

  private put(triangle: number, a: number, b: number, c: number): number {
    const { corners, across, fixed, out } = this
    const e = triangle < 0 ? corners.length : 3 * triangle
    for (const [k, v] of [a, b, c].entries()) {
      corners[e + k] = v
      across[e + k] = -1
      fixed[e + k] = 0
      out[v] = e + k
    }
    return e
  }

  private join(e: number, f: number): void {
    this.across[e] = f
    if (f >= 0) this.across[f] = e
  }
}

/** The half-edge after e round its triangle. */
export function next(e: number): number {
  return e % 3 === 2 ? e - 2 : e + 1
}

/** The half-edge before e round its triangle. */
export function last(e: number): number {
  return e % 3 === 0 ? e + 2 : e - 1
}
