import type { Curve } from './curve.ts'
import type { Partition } from './partition-types.ts'

/** A stretch of outline or island with water on one side. */
export interface Shore {
  readonly edge: number
  readonly curve: Curve
  readonly t0: number
  readonly t1: number
  /** 1 where the water lies on the left, −1 where on the right. */
  readonly side: 1 | -1
  readonly cell: number
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

const known = new WeakMap<Partition, readonly Shore[]>()

/** All stretches of shore, with their boxes. Remembered for each partition. */
export function shoresOf(p: Partition): readonly Shore[] {
  let shores = known.get(p)
  if (!shores) {
    shores = find(p)
    known.set(p, shores)
  }
  return shores
}

function find(p: Partition): Shore[] {
  const shores: Shore[] = []
  p.edges.forEach((edge, i) => {
    if (edge.left >= 0 && edge.right >= 0) return
    const xs = [p.nodeX[edge.from]!, p.nodeX[edge.to]!] as const
    const ys = [p.nodeY[edge.from]!, p.nodeY[edge.to]!] as const
    shores.push({
      edge: i,
      curve: edge.curve,
      t0: edge.t0,
      t1: edge.t1,
      side: edge.left >= 0 ? 1 : -1,
      cell: Math.max(edge.left, edge.right),
      minX: Math.min(...xs),
      minY: Math.min(...ys),
      maxX: Math.max(...xs),
      maxY: Math.max(...ys),
    })
  })
  return shores
}

/** Squared distance from a place to a stretch's box, 0 within. */
export function boxDistance2(shore: Shore, x: number, y: number): number {
  const dx = Math.max(shore.minX - x, 0, x - shore.maxX)
  const dy = Math.max(shore.minY - y, 0, y - shore.maxY)
  return dx * dx + dy * dy
}
