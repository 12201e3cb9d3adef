import type { Curve } from './curve.ts'
import type { VolumeDerivative } from './derivative-types.ts'
import type { Partition } from './partition-types.ts'
import type { Ring } from './rings.ts'
import { BULGE, FIRST, HANDLE_1, HANDLE_2, LAST, SLOTS, shoreCurvesOf } from './shore-moves.ts'
import type { Path } from './types.ts'

/** Derivatives by what one path is drawn with. */
export interface PathGradient {
  readonly where: string
  /** By each node; a path that closes itself has its last point as its first. */
  readonly nodes: readonly NodeGradient[]
  /** By each arc's bulge. */
  readonly bulges: readonly { readonly segment: number; readonly value: number }[]
}

export interface NodeGradient {
  /** The segment that ends there, −1 for the start. */
  readonly segment: number
  x: number
  y: number
  /** By the handle after it and the handle before it, where there are any. */
  out?: { readonly segment: number; readonly x: number; readonly y: number }
  in?: { readonly segment: number; readonly x: number; readonly y: number }
}

/** Gathers the derivatives by the curves' own numbers to the nodes, handles and bulges of outline and islands. */
export function pathGradients(p: Partition, slots: Float64Array): PathGradient[] {
  const { first } = shoreCurvesOf(p)
  return [p.shape.outline, ...p.shape.islands].map((path, i) => {
    const ring = p.rings[i]!
    return gatherPath(p, path, ring, ring.where, slots, SLOTS * first[i]!)
  })
}

/** Gathers the derivatives by the numbers of a path's curves, which begin at a place of the slots. */
export function gatherPath(
  p: Partition,
  path: Path,
  ring: Ring,
  where: string,
  slots: Float64Array,
  from: number,
): PathGradient {
  const { curves, segments } = ring
  const count = path.segments.length
  const last = path.segments[count - 1]!.to
  const isClosed = last[0] === path.start[0] && last[1] === path.start[1]
  const nodes: NodeGradient[] = []
  for (let i = 0; i < (isClosed ? count : count + 1); i++) nodes.push({ segment: i - 1, x: 0, y: 0 })
  const bulges: { segment: number; value: number }[] = []
  const closing = isClosed ? -1 : closingCurve(p, path, curves)
  curves.forEach((curve, i) => {
    const at = from + SLOTS * i
    const segment = segments[i]!
    const a = nodes[i === closing ? count : segment]!
    const b = nodes[i === closing ? 0 : (segment + 1) % nodes.length]!
    a.x += slots[at + FIRST]!
    a.y += slots[at + FIRST + 1]!
    b.x += slots[at + LAST]!
    b.y += slots[at + LAST + 1]!
    if (curve.kind === 'cubic') {
      a.out = { segment, x: slots[at + HANDLE_1]!, y: slots[at + HANDLE_1 + 1]! }
      b.in = { segment, x: slots[at + HANDLE_2]!, y: slots[at + HANDLE_2 + 1]! }
    }
    if (curve.kind === 'arc') bulges.push({ segment, value: slots[at + BULGE]! })
  })
  return { where, nodes, bulges }
}

/** The curve that closes a path which doesn't do so itself: the last one, where it ends at the start and begins at the last point. */
function closingCurve(p: Partition, path: Path, curves: readonly Curve[]): number {
  const curve = curves[curves.length - 1]!
  const last = path.segments[path.segments.length - 1]!.to
  const joins = curve.kind === 'line' && curve.x0 === last[0] - p.originX && curve.y0 === last[1] - p.originY
  return joins ? curves.length - 1 : -1
}

/** The same as a list, in the order of the path. */
export function listPath({ where, nodes, bulges }: PathGradient): VolumeDerivative[] {
  const list: VolumeDerivative[] = []
  for (const node of nodes) {
    list.push({ path: nodePath(where, node.segment), kind: 'node', value: [node.x, node.y] })
    if (node.in)
      list.push({ path: `${where}.segments[${node.in.segment}].c2`, kind: 'handle', value: [node.in.x, node.in.y] })
    if (node.out)
      list.push({ path: `${where}.segments[${node.out.segment}].c1`, kind: 'handle', value: [node.out.x, node.out.y] })
  }
  for (const { segment, value } of bulges)
    list.push({ path: `${where}.segments[${segment}].bulge`, kind: 'bulge', value })
  return list
}

/** Where a node stands in a body. */
export function nodePath(where: string, segment: number): string {
  return segment < 0 ? `${where}.start` : `${where}.segments[${segment}].to`
}
