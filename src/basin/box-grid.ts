interface Box {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** Boxes sorted into a grid of squares, so that those near a place are found without looking at all of them. */
export class BoxGrid {
  readonly #minX: number
  readonly #minY: number
  readonly #size: number
  readonly #columns: number
  readonly #rows: number
  readonly #first: Int32Array
  readonly #items: Int32Array
  readonly #seen: Int32Array
  #round = 0

  constructor(boxes: readonly Box[]) {
    let minX = Infinity
    let minY = Infinity
    let maxX = -Infinity
    let maxY = -Infinity
    for (const box of boxes) {
      minX = Math.min(minX, box.minX)
      minY = Math.min(minY, box.minY)
      maxX = Math.max(maxX, box.maxX)
      maxY = Math.max(maxY, box.maxY)
    }
    const width = Math.max(maxX - minX, 0)
    const height = Math.max(maxY - minY, 0)
    const size = Math.max(Math.sqrt((width * height) / (boxes.length + 1)), Math.max(width, height) / 256)
    this.#minX = minX
    this.#minY = minY
    this.#size = size > 0 ? size : 1
    this.#columns = boxes.length === 0 ? 0 : Math.floor(width / this.#size) + 1
    this.#rows = boxes.length === 0 ? 0 : Math.floor(height / this.#size) + 1
    this.#first = new Int32Array(this.#columns * this.#rows + 1)
    this.#seen = new Int32Array(boxes.length)
    for (let i = 0; i < boxes.length; i++) {
      const { minX: x0, minY: y0, maxX: x1, maxY: y1 } = boxes[i]!
      const c1 = this.#column(x1)
      const r1 = this.#row(y1)
      for (let r = this.#row(y0); r <= r1; r++)
        for (let c = this.#column(x0); c <= c1; c++) this.#first[r * this.#columns + c + 1]!++
    }
    for (let s = 0; s < this.#columns * this.#rows; s++) this.#first[s + 1]! += this.#first[s]!
    const next = this.#first.slice()
    this.#items = new Int32Array(this.#first[this.#columns * this.#rows] ?? 0)
    for (let i = 0; i < boxes.length; i++) {
      const { minX: x0, minY: y0, maxX: x1, maxY: y1 } = boxes[i]!
      const c1 = this.#column(x1)
      const r1 = this.#row(y1)
      for (let r = this.#row(y0); r <= r1; r++)
        for (let c = this.#column(x0); c <= c1; c++) this.#items[next[r * this.#columns + c]!++] = i
    }
  }

  #column(x: number): number {
    return Math.min(Math.max(Math.floor((x - this.#minX) / this.#size), 0), this.#columns - 1)
  }

  #row(y: number): number {
    return Math.min(Math.max(Math.floor((y - this.#minY) / this.#size), 0), this.#rows - 1)
  }

  /** Numbers of the boxes in the squares that a box meets, each once, added to `out`; some may lie beside it. */
  near(minX: number, minY: number, maxX: number, maxY: number, out: number[]): number[] {
    if (this.#columns === 0) return out
    const round = ++this.#round
    const c0 = this.#column(minX)
    const c1 = this.#column(maxX)
    const r1 = this.#row(maxY)
    for (let r = this.#row(minY); r <= r1; r++)
      for (let c = c0; c <= c1; c++) {
        const square = r * this.#columns + c
        for (let k = this.#first[square]!; k < this.#first[square + 1]!; k++) {
          const i = this.#items[k]!
          if (this.#seen[i] === round) continue
          this.#seen[i] = round
          out.push(i)
        }
      }
    return out
  }
}
