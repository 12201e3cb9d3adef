import type { Edge, Partition } from './partition-types.ts'
import { shoresOf } from './shores.ts'

/** True where an edge between cells with a step comes within r of a shore, so that the cove changes its face. */
export function isStepInCove(p: Partition, edge: Edge, r: number): boolean {
  if (edge.left < 0 || edge.right < 0) return false
  const left = p.cells[edge.left]!
  const right = p.cells[edge.right]!
  if (left.part === 'floor' && right.part === 'floor') return false
  const minX = Math.min(p.nodeX[edge.from]!, p.nodeX[edge.to]!) - r
  const maxX = Math.max(p.nodeX[edge.from]!, p.nodeX[edge.to]!) + r
  const minY = Math.min(p.nodeY[edge.from]!, p.nodeY[edge.to]!) - r
  const maxY = Math.max(p.nodeY[edge.from]!, p.nodeY[edge.to]!) + r
  return shoresOf(p).some((s) => s.minX < maxX && s.maxX > minX && s.minY < maxY && s.maxY > minY)
}
