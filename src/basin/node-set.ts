/** Points joined where they come nearer than the grain: a hash grid of nodes. */
export class NodeSet {
  readonly x: number[] = []
  readonly y: number[] = []
  /** Widest distance from a given point to the node that took it [m]. */
  gapM = 0
  /** How far the cells' borders may lie off for all that is known before they are added up [m]: the grain where a stretch vanished. */
  slackM = 0
  private readonly grainM: number
  private readonly size: number
  private readonly buckets = new Map<number, number[]>()

  constructor(grainM: number) {
    this.grainM = grainM
    this.size = 4 * grainM
  }

  /** The node at a place, made where there is none. */
  at(x: number, y: number): number {
    const fx = x / this.size
    const fy = y / this.size
    const ix = Math.floor(fx)
    const iy = Math.floor(fy)
    // Only the quarter of the neighbourhood that the place leans to can hold a point within the grain.
    const jx = fx - ix < 0.5 ? ix - 1 : ix + 1
    const jy = fy - iy < 0.5 ? iy - 1 : iy + 1
    let best = -1
    let bestD = this.grainM
    for (let k = 0; k < 4; k++) {
      const bucket = this.buckets.get(key(k & 1 ? jx : ix, k & 2 ? jy : iy))
      if (!bucket) continue
      for (const node of bucket) {
        const d = Math.hypot(this.x[node]! - x, this.y[node]! - y)
        if (d <= bestD) {
          bestD = d
          best = node
        }
      }
    }
    if (best >= 0) {
      if (bestD > this.gapM) this.gapM = bestD
      return best
    }
    const node = this.x.length
    this.x.push(x)
    this.y.push(y)
    const home = key(ix, iy)
    const bucket = this.buckets.get(home)
    if (bucket) bucket.push(node)
    else this.buckets.set(home, [node])
    return node
  }
}

/** One number from two cell indices; two cells may share it, which costs time only. */
function key(ix: number, iy: number): number {
  return ix * 1_000_003 + iy
}
