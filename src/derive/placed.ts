import type { Problem } from '../base/index.ts'
import type { Path, Point } from '../basin/index.ts'
import type { Body } from '../document/index.ts'

/** A complaint about a part of a body that has a place in the plan, shown at that place where it didn't name one itself. */
export function placed(problem: Problem, body: Body): Problem {
  if (problem.at && problem.at.length > 0) return problem
  const at = placeOf(problem.path, body)
  return at ? { ...problem, at: [at] } : problem
}

function placeOf(path: string, body: Body): Point | undefined {
  const { floor } = body
  const part = (pattern: RegExp) => pattern.exec(path)
  const index = (match: RegExpExecArray) => Number(match[1])
  const ring = part(/^floor\.rings\[(\d+)\]/)
  if (ring) return floor.kind === 'contours' ? onPath(floor.rings[index(ring)]?.path, path) : undefined
  const sounding = part(/^floor\.points\[(\d+)\]/)
  if (sounding && floor.kind === 'soundings') {
    const point = floor.points[index(sounding)]
    return point && finite([point[0], point[1]])
  }
  if (path.startsWith('floor') && floor.kind === 'dish') return finite(floor.centre)
  const island = part(/^islands\[(\d+)\]/)
  if (island) return onPath(body.islands[index(island)], path)
  const feature = part(/^features\[(\d+)\]/)
  if (feature) {
    const found = body.features[index(feature)]
    if (found && 'centre' in found) return finite(found.centre)
    if (found && 'along' in found) return onPath(body.outline, `segments[${found.along.fromSegment}]`)
    return found && 'path' in found ? onPath(found.path, path) : undefined
  }
  return path.startsWith('outline') ? onPath(body.outline, path) : undefined
}

/** The end of the segment that a path of names speaks of, else the start. */
function onPath(path: Path | undefined, name: string): Point | undefined {
  const segment = /segments\[(\d+)\]/.exec(name)
  return path && finite((segment && path.segments[Number(segment[1])]?.to) ?? path.start)
}

function finite(at: Point): Point | undefined {
  return Number.isFinite(at[0]) && Number.isFinite(at[1]) ? at : undefined
}
