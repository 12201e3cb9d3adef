import { type Linear, rangeAlong, zerosAlong } from './curve-linear.ts'
import type { Cell, Edge, Partition } from './partition-types.ts'

/** Where along an edge one side stops being the shallower, or the wall's foot passes the datum or the rim. */
export function splitsOf(p: Partition, edge: Edge, t0: number, t1: number): number[] {
  const { curve } = edge
  const left = edge.left < 0 ? undefined : p.cells[edge.left]!
  const right = edge.right < 0 ? undefined : p.cells[edge.right]!
  const lines: Linear[] = []
  if (left && right) {
    if (left.plane !== right.plane) lines.push(linear(left, right.plane.atOrigin, right.plane.dx, right.plane.dy))
  } else {
    const cell = (left ?? right)!
    if (cell.minDepthM < 0) lines.push(linear(cell, 0, 0, 0), linear(cell, -p.shape.freeboardM, 0, 0))
  }
  return lines.flatMap((line) => {
    const [lo, hi] = rangeAlong(curve, t0, t1, line)
    return lo < -p.grainM && hi > p.grainM ? zerosAlong(curve, t0, t1, line) : []
  })
}

function linear(cell: Cell, c: number, gx: number, gy: number): Linear {
  return { c: cell.plane.atOrigin - c, gx: cell.plane.dx - gx, gy: cell.plane.dy - gy }
}
