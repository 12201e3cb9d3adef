import type { Linear } from './curve-linear.ts'
import type { Partition } from './partition-types.ts'
import type { Shore } from './shores.ts'
import type { Plane } from './types.ts'

/** Depth right at the foot of the wall along a stretch of shore: it follows one of a few lines, and changes where two meet. */
export interface WallFoot {
  /** What rules without the wall. */
  readonly ruling: Linear
  /** Nothing where the wall is upright. */
  readonly floor: Linear | undefined
  /** The floor less the height of a cove. */
  readonly lowered: Linear | undefined
  /** Lines that are zero wherever the foot may change from one line to another, and those that it follows itself. */
  readonly turns: readonly Linear[]
  readonly lines: readonly Linear[]
}

const DATUM: Linear = { c: 0, gx: 0, gy: 0 }
const NONE: readonly Linear[] = []

/**
 * Depth where the wall stands on the floor, from the definitions of the walls at n = 0: vertical, the floor or feature;
 * cove, min(feature, max(f − r, min(f, 0))); battered, min(feature, f, 0).
 */
export function wallFoot(p: Partition, shore: Shore): WallFoot {
  const { wall } = p.shape
  const cell = p.cells[shore.cell]!
  const ruling = linear(cell.plane)
  if (wall.kind === 'vertical' || (wall.kind === 'battered' && wall.run === 0))
    return { ruling, floor: undefined, lowered: undefined, turns: NONE, lines: [ruling] }
  const floor = linear(p.floor.pieces[cell.strip]!.plane)
  const lowered = wall.kind === 'cove' ? { c: floor.c - wall.radiusM, gx: floor.gx, gy: floor.gy } : undefined
  const turns = lowered ? [lowered, floor] : [floor]
  const lines = lowered ? [lowered, DATUM, floor] : [DATUM, floor]
  if (cell.patch >= 0) {
    for (const line of lines) turns.push({ c: line.c - ruling.c, gx: line.gx - ruling.gx, gy: line.gy - ruling.gy })
    lines.push(ruling)
  }
  return { ruling, floor, lowered, turns, lines }
}

/** The line that the foot follows at a place. */
export function footAt({ ruling, floor, lowered }: WallFoot, x: number, y: number): Linear {
  if (!floor) return ruling
  let foot = floor
  if (valueAt(floor, x, y) > 0) foot = lowered && valueAt(lowered, x, y) > 0 ? lowered : DATUM
  return valueAt(ruling, x, y) < valueAt(foot, x, y) ? ruling : foot
}

function linear(plane: Plane): Linear {
  return { c: plane.atOrigin, gx: plane.dx, gy: plane.dy }
}

function valueAt(f: Linear, x: number, y: number): number {
  return f.c + f.gx * x + f.gy * y
}
