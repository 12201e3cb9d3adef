/** The vertices of a plan mesh. Where a vertex lies on a ray from the shore, it knows how far out. */
export class PlanPoints {
  readonly x: number[]
  readonly y: number[]
  /** Distance from the shore, NaN where no ray passes [m]. */
  readonly n: number[]
  /** Points nearer than this are one [m]. */
  readonly mergeM: number
  private readonly cellM: number
  private readonly table = new Map<number, number>()
  private readonly next: number[] = []

  constructor(nodeX: Float64Array, nodeY: Float64Array, mergeM: number) {
    this.x = Array.from(nodeX)
    this.y = Array.from(nodeY)
    const count = nodeX.length
    this.n = new Array<number>(count).fill(Number.NaN)
    this.mergeM = mergeM
    this.cellM = 4 * mergeM
  }

  /** A new vertex off the rays. */
  add(x: number, y: number): number {
    this.x.push(x)
    this.y.push(y)
    this.n.push(Number.NaN)
    return this.x.length - 1
  }

  /** A new vertex on a ray. */
  addOnRay(x: number, y: number, n: number): number {
    this.x.push(x)
    this.y.push(y)
    this.n.push(n)
    return this.x.length - 1
  }

  /** Tells a vertex how far from the shore it lies. */
  place(v: number, n: number): void {
    this.n[v] = n
  }

  /** Lets a vertex be found by its place. */
  enter(v: number): void {
    const key = this.keyOf(Math.round(this.x[v]! / this.cellM), Math.round(this.y[v]! / this.cellM))
    this.next[v] = this.table.get(key) ?? -1
    this.table.set(key, v)
  }

  /** The vertex that was entered at a place, −1 for none. */
  find(x: number, y: number): number {
    const cx = x / this.cellM
    const cy = y / this.cellM
    const ix = Math.round(cx)
    const iy = Math.round(cy)
    // A place so near a box's border that a vertex beside it may lie in the next box.
    const jx = Math.abs(cx - ix) > 0.2 ? ix + Math.sign(cx - ix) : ix
    const jy = Math.abs(cy - iy) > 0.2 ? iy + Math.sign(cy - iy) : iy
    let found = this.inBox(ix, iy, x, y)
    if (found < 0 && jx !== ix) found = this.inBox(jx, iy, x, y)
    if (found < 0 && jy !== iy) found = this.inBox(ix, jy, x, y)
    if (found < 0 && jx !== ix && jy !== iy) found = this.inBox(jx, jy, x, y)
    return found
  }

  private inBox(ix: number, iy: number, x: number, y: number): number {
    for (let v = this.table.get(this.keyOf(ix, iy)) ?? -1; v >= 0; v = this.next[v]!)
      if (Math.abs(this.x[v]! - x) <= this.mergeM && Math.abs(this.y[v]! - y) <= this.mergeM) return v
    return -1
  }

  private keyOf(ix: number, iy: number): number {
    return (Math.imul(ix | 0, 0x9e3779b1) ^ Math.imul(iy | 0, 0x85ebca6b)) | 0
  }
}
