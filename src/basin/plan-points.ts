import { Room } from './room.ts'

const slotRoom = new Room(Int32Array)

/** The vertices of a plan mesh. Where a vertex lies on a ray from the shore, it knows how far out. */
export class PlanPoints {
  readonly x: number[]
  readonly y: number[]
  /** Distance from the shore, NaN where no ray passes [m]. */
  readonly n: number[]
  /** Points nearer than this are one [m]. */
  readonly mergeM: number
  private readonly cellM: number
  /** The last entry in each slot, a power of two of them; each entry's vertex and the entry before it. */
  private slots: Int32Array | undefined
  private readonly mask: number
  private readonly entered: number[] = []
  private readonly before: number[] = []

  constructor(nodeX: Float64Array, nodeY: Float64Array, mergeM: number) {
    this.x = Array.from(nodeX)
    this.y = Array.from(nodeY)
    const count = nodeX.length
    this.n = new Array<number>(count).fill(Number.NaN)
    this.mergeM = mergeM
    this.cellM = 4 * mergeM
    this.mask = 2 ** Math.ceil(Math.log2(8 * count + 1024)) - 1
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

  /** Lets a vertex be found by its place, until points of another plan are. */
  enter(v: number): void {
    this.slots ??= slotRoom.filled(this.mask + 1, -1)
    const slot = this.slotOf(Math.round(this.x[v]! / this.cellM), Math.round(this.y[v]! / this.cellM))
    this.before.push(this.slots[slot]!)
    this.slots[slot] = this.entered.length
    this.entered.push(v)
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
    const { slots, mergeM } = this
    if (!slots) return -1
    for (let k = slots[this.slotOf(ix, iy)]!; k >= 0; k = this.before[k]!) {
      const v = this.entered[k]!
      if (Math.abs(this.x[v]! - x) <= mergeM && Math.abs(this.y[v]! - y) <= mergeM) return v
    }
    return -1
  }

  private slotOf(ix: number, iy: number): number {
    const key = Math.imul(ix | 0, 0x9e3779b1) ^ Math.imul(iy | 0, 0x85ebca6b)
    return (key ^ (key >>> 15)) & this.mask
  }
}
