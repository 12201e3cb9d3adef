import fc from 'fast-check'
import { evaluate, newJet } from '../../src/basin/curve.ts'
import type { Path, Point } from '../../src/basin/index.ts'
import { curvesOf } from '../../src/basin/path.ts'
import type { Feature } from '../../src/features/index.ts'
import { BEAN, circle } from './shapes.ts'

const STADIUM: Path = {
  start: [-3, -2],
  segments: [{ to: [3, -2] }, { to: [3, 2], bulge: 1 }, { to: [-3, 2] }, { to: [-3, -2], bulge: 1 }],
}

const OUTLINES = [BEAN, circle(0, 0, 3), STADIUM]

/** A place on the outline with the normal that points into the water. */
function onWall(outline: Path, where: number): { at: Point; inward: Point } {
  const curves = curvesOf(outline)
  const place = where * curves.length
  const index = Math.min(curves.length - 1, Math.floor(place))
  const jet = evaluate(curves[index]!, place - index, newJet())
  const speed = Math.hypot(jet.dx, jet.dy)
  // The bean runs clockwise, the others the other way.
  const side = outline === BEAN ? -1 : 1
  return { at: [jet.x, jet.y], inward: [(-jet.dy / speed) * side, (jet.dx / speed) * side] }
}

/** A rectangle whose side passes `back` behind a place, square to a direction. */
function rectangle([x, y]: Point, [ux, uy]: Point, back: number, length: number, left: number, right: number): Path {
  const corner = (s: number, n: number): Point => [x + s * ux - n * uy, y + s * uy + n * ux]
  return {
    start: corner(-back, -right),
    segments: [{ to: corner(length, -right) }, { to: corner(length, left) }, { to: corner(-back, left) }],
  }
}

type Kind = 'ramp' | 'wide ramp' | 'shelf' | 'outer ramp' | 'bench' | 'round steps' | 'steps'

export interface Draft {
  readonly outline: Path
  readonly where: number
  readonly kind: Kind
  readonly length: number
  readonly left: number
  readonly right: number
  readonly beside: boolean
}

export const draft: fc.Arbitrary<Draft> = fc.record({
  outline: fc.constantFrom(...OUTLINES),
  where: fc.double({ min: 0, max: 0.999, noNaN: true }),
  kind: fc.constantFrom<Kind>('ramp', 'wide ramp', 'shelf', 'outer ramp', 'bench', 'round steps', 'steps'),
  length: fc.double({ min: 0.3, max: 2, noNaN: true }),
  left: fc.double({ min: 0.2, max: 2, noNaN: true }),
  right: fc.double({ min: 0.2, max: 2, noNaN: true }),
  beside: fc.boolean(),
})

/** A feature that has an edge tangent to the wall, moved into the water by a distance. */
export function featuresOf({ outline, where, kind, length, left, right, beside }: Draft, moved: number): Feature[] {
  const { at, inward } = onWall(outline, where)
  const [ux, uy] = inward
  const from: Point = [at[0] + moved * ux, at[1] + moved * uy]
  const to: Point = [from[0] + length * ux, from[1] + length * uy]
  const axis = { from, to }
  const others: Feature[] = beside ? [{ kind: 'shelf', path: circle(at[0], at[1], 0.5), depthM: 0.3 }] : []
  switch (kind) {
    case 'ramp':
      return [
        { kind, path: rectangle(from, inward, 0, length, left, right), axis, fromDepthM: 0, toDepthM: 0.9 },
        ...others,
      ]
    case 'wide ramp':
      return [
        { kind: 'ramp', path: rectangle(from, inward, 0.8, length, left, right), axis, fromDepthM: 0.1, toDepthM: 1 },
        ...others,
      ]
    case 'shelf':
      return [{ kind, path: rectangle(from, inward, 0, length, left, right), depthM: 0.4 }, ...others]
    case 'outer ramp': {
      // It comes down behind the wall and is level from there on.
      const behind: Point = [from[0] - length * ux, from[1] - length * uy]
      const path = rectangle(from, inward, length + 0.1, length, left, right)
      return [{ kind: 'ramp', path, axis: { from: behind, to: from }, fromDepthM: 0.1, toDepthM: 0.6 }, ...others]
    }
    case 'bench':
      return [
        { kind, path: rectangle(from, inward, 0, 0.45, left, right), depthM: 0.45 },
        { kind: 'bench', path: rectangle(from, inward, 0, length, left, right / 2), depthM: 0.5 },
        ...others,
      ]
    case 'round steps': {
      // Circles that touch the wall from within.
      const r = 0.2 + 0.3 * left
      const centre: Point = [from[0] + r * ux, from[1] + r * uy]
      return [
        {
          kind: 'roundSteps',
          centre,
          treads: [
            [r / 2, 0.3],
            [r, 0.6],
          ],
        },
        ...others,
      ]
    }
    case 'steps':
      return [
        {
          kind,
          path: rectangle(from, inward, 0.5, length, left, right),
          axis,
          treads: [
            [0, 0.2],
            [length / 2, 0.5],
          ],
        },
        ...others,
      ]
  }
}
