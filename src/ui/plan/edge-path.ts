import { type Cell, type Edge, isInkedBreak, type Partition, type Point } from '../../basin/index.ts'

const place = (value: number) => Math.round(value * 1e4) / 1e4
const at = (x: number, y: number, ox: number, oy: number) => `${place(x + ox)} ${place(y + oy)}`

type Cubic = readonly [Point, Point, Point, Point]
const mix = (a: Point, b: Point, t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]

/** The part of a cubic between two parameters (de Casteljau, by the blossom). */
function cubicPart([a, b, c, d]: Cubic, t0: number, t1: number): Cubic {
  const blossom = (r: number, s: number, t: number): Point => {
    const ab = mix(a, b, r)
    const bc = mix(b, c, r)
    const cd = mix(c, d, r)
    return mix(mix(ab, bc, s), mix(bc, cd, s), t)
  }
  return [blossom(t0, t0, t0), blossom(t0, t0, t1), blossom(t0, t1, t1), blossom(t1, t1, t1)]
}

/** The exact curve of an edge as the `d` of an SVG path, moved by an offset. */
function edgePath(edge: Edge, ox: number, oy: number): string {
  const { curve, t0, t1 } = edge
  if (curve.kind === 'line') {
    const dx = curve.x1 - curve.x0
    const dy = curve.y1 - curve.y0
    return `M${at(curve.x0 + dx * t0, curve.y0 + dy * t0, ox, oy)}L${at(curve.x0 + dx * t1, curve.y0 + dy * t1, ox, oy)}`
  }
  if (curve.kind === 'arc') {
    const point = (t: number) => {
      const phi = t * curve.turn
      const chord = 2 * curve.radius * Math.sin(phi / 2)
      const heading = curve.heading + phi / 2
      return at(curve.x0 + chord * Math.cos(heading), curve.y0 + chord * Math.sin(heading), ox, oy)
    }
    const r = place(Math.abs(curve.radius))
    const isLarge = Math.abs(curve.turn * (t1 - t0)) > Math.PI ? 1 : 0
    const sweep = curve.turn * (t1 - t0) > 0 ? 1 : 0
    return `M${point(t0)}A${r} ${r} 0 ${isLarge} ${sweep} ${point(t1)}`
  }
  const whole: Cubic = [
    [curve.x0, curve.y0],
    [curve.ax, curve.ay],
    [curve.bx, curve.by],
    [curve.x1, curve.y1],
  ]
  const [p, c1, c2, q] = cubicPart(whole, t0, t1)
  return `M${at(...p, ox, oy)}C${at(...c1, ox, oy)} ${at(...c2, ox, oy)} ${at(...q, ox, oy)}`
}

export interface PlanEdges {
  /** Where a shelf or tread ends. */
  readonly features: string
  /** Where the floor visibly changes its slope: of soundings the net between them. */
  readonly breaks: string
}

/** The inner lines of a plan, counted from `origin`: edges of features, and breaks of the floor. */
export function planEdges(parts: Partition, origin: Point): PlanEdges {
  const ox = parts.originX - origin[0]
  const oy = parts.originY - origin[1]
  let features = ''
  let breaks = ''
  for (const edge of parts.edges) {
    const left = parts.cells[edge.left]
    const right = parts.cells[edge.right]
    if (!left || !right) continue
    if (left.patch !== right.patch) {
      if (!isOneSurface(left, right)) features += edgePath(edge, ox, oy)
    } else if (left.strip !== right.strip) {
      if (isInkedBreak(parts, edge)) breaks += edgePath(edge, ox, oy)
    }
  }
  return { features, breaks }
}

/** Pieces of one feature that go on in one plane, as a bench does from side to side, have no edge between them. */
function isOneSurface(a: Cell, b: Cell): boolean {
  const [p, q] = [a.plane, b.plane]
  return a.feature >= 0 && a.feature === b.feature && p.atOrigin === q.atOrigin && p.dx === q.dx && p.dy === q.dy
}
