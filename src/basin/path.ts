import { arcCurve, type Curve, lineCurve } from './curve.ts'
import type { Path } from './types.ts'

/** The curves of a path, seen from an origin; a closing line is added where the path doesn't close itself. */
export function curvesOf(path: Path, originX = 0, originY = 0): Curve[] {
  const curves: Curve[] = []
  const sx = path.start[0] - originX
  const sy = path.start[1] - originY
  let x = sx
  let y = sy
  for (const segment of path.segments) {
    const nx = segment.to[0] - originX
    const ny = segment.to[1] - originY
    if (segment.c1 && segment.c2) {
      curves.push({
        kind: 'cubic',
        x0: x,
        y0: y,
        ax: segment.c1[0] - originX,
        ay: segment.c1[1] - originY,
        bx: segment.c2[0] - originX,
        by: segment.c2[1] - originY,
        x1: nx,
        y1: ny,
      })
    } else curves.push(arcCurve(x, y, nx, ny, segment.bulge ?? 0))
    x = nx
    y = ny
  }
  if (x !== sx || y !== sy) curves.push(lineCurve(x, y, sx, sy))
  return curves
}

/** The path with its closing line written out, so that segment i runs from node i to node i + 1 and the last to node 0. */
export function closed(path: Path): Path {
  const last = path.segments.at(-1)
  if (last === undefined || (last.to[0] === path.start[0] && last.to[1] === path.start[1])) return path
  return { ...path, segments: [...path.segments, { to: path.start }] }
}
