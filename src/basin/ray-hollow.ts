import { depthAtRadius, lawGradient, lawShares, type RadialLaw } from './radial-law.ts'
import { NEARLY } from './tolerance.ts'

/** A hollow as a ray passes it: how far past the place nearest to the centre its foot lies, and how far that is off [m]. */
export interface RayHollow {
  readonly law: RadialLaw
  readonly along: number
  readonly across: number
}

interface Line {
  readonly x: number
  readonly y: number
  readonly nx: number
  readonly ny: number
}

/** The hollow along a ray; a ray that passes the centre but for rounding is said to go through it. */
export function hollowAlong(law: RadialLaw, { x, y, nx, ny }: Line): RayHollow {
  const px = x - law.x
  const py = y - law.y
  const across = px * ny - py * nx
  return { law, along: px * nx + py * ny, across: Math.abs(across) < NEARLY * law.radiusM ? 0 : across }
}

/** Depth of the hollow at a distance along the ray [m]. */
export function hollowDepth({ law, along, across }: RayHollow, n: number): number {
  return depthAtRadius(law, Math.hypot(n + along, across))
}

/** Fall along the ray and across it [1]. */
export function hollowFall({ law, along, across }: RayHollow, n: number): readonly [along: number, across: number] {
  return lawGradient(law, law.x + n + along, law.y + across)
}

/** Shares of the hollow's own numbers in the depth there (see `lawShares`). */
export function hollowShares({ law, along, across }: RayHollow, n: number): readonly [centre: number, radius: number] {
  return lawShares(law, Math.hypot(n + along, across))
}

/** Where on a stretch of the ray it is nearest to the centre, or nothing. */
export function hollowTurn(hollow: RayHollow | undefined, from: number, to: number): number | undefined {
  const n = hollow ? -hollow.along : Number.NaN
  return n > from && n < to ? n : undefined
}

/**
 * Places between which a function of the hollow's depth is smooth enough for a short rule: about the tip of a cone, which
 * a ray passes at c, at c times powers of four.
 */
export function pushHollowCuts({ law, along, across }: RayHollow, from: number, to: number, out: number[]): void {
  if (law.form === 'cap') return
  const push = (n: number): void => {
    if (n > from && n < to) out.push(n)
  }
  push(-along)
  const most = Math.max(Math.abs(from + along), Math.abs(to + along))
  for (let u = Math.abs(across); u > 0 && u < most; u *= 4) {
    push(u - along)
    push(-u - along)
  }
}
