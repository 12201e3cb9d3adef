import type { Linear } from './curve-linear.ts'
import type { Partition } from './partition-types.ts'
import type { Shore } from './shores.ts'
import type { Plane } from './types.ts'
import { wallLaw } from './walls.ts'

/** Depth right at the foot of the wall along a stretch of shore: linear between the places where a break is zero. */
export interface WallFoot {
  /** The lines that it can follow. */
  readonly lines: readonly Linear[]
  /** Where it may change from one to another, they are zero. */
  readonly breaks: readonly Linear[]
  /** The one that it follows at a place. */
  readonly at: (x: number, y: number) => Linear
}

const DATUM: Linear = { c: 0, gx: 0, gy: 0 }

/**
 * Depth where the wall stands on the floor, from the definitions of the walls at n = 0: vertical, the floor or feature;
 * cove, min(feature, max(f − r, min(f, 0))); battered, min(feature, f, 0).
 */
export function wallFoot(p: Partition, shore: Shore): WallFoot {
  const { wall } = p.shape
  const cell = p.cells[shore.cell]!
  const ruling = linear(cell.plane)
  if (!wallLaw(wall)) return { lines: [ruling], breaks: [], at: () => ruling }
  const f = linear(p.floor.pieces[cell.strip]!.plane)
  const lowered: Linear | undefined = wall.kind === 'cove' ? { c: f.c - wall.radiusM, gx: f.gx, gy: f.gy } : undefined
  const lines = lowered ? [lowered, DATUM, f] : [DATUM, f]
  const breaks = lowered ? [lowered, f] : [f]
  const bare = (x: number, y: number): Linear => {
    if (value(f, x, y) <= 0) return f
    return lowered && value(lowered, x, y) > 0 ? lowered : DATUM
  }
  if (cell.patch < 0) return { lines, breaks, at: bare }
  return {
    lines: [...lines, ruling],
    breaks: [...breaks, ...lines.map((line) => difference(line, ruling))],
    at: (x, y) => {
      const foot = bare(x, y)
      return value(ruling, x, y) < value(foot, x, y) ? ruling : foot
    },
  }
}

function linear(plane: Plane): Linear {
  return { c: plane.atOrigin, gx: plane.dx, gy: plane.dy }
}

function difference(a: Linear, b: Linear): Linear {
  return { c: a.c - b.c, gx: a.gx - b.gx, gy: a.gy - b.gy }
}

function value(f: Linear, x: number, y: number): number {
  return f.c + f.gx * x + f.gy * y
}
