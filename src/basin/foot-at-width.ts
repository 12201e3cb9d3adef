import { bracketedRoot } from '../base/index.ts'
import { type Curve, evaluate, newJet } from './curve.ts'
import { norm } from './norm.ts'
import { type Foot, footOn } from './span.ts'

/** Looks along a curve for a normal that leads to a place. */
const LOOKS = 48

/** How near a distance is to the width, as a share of it, to be that width. */
const NEAR = 1e-5

const jet = newJet()

/**
 * The foot from which a normal of a given length leads to a place; where there is none, the nearest one. Beside a bend other
 * places of a curve may be nearer than the one that an edge is measured from.
 * Returns whether the place is at that distance from the foot.
 */
export function footAtWidth(curve: Curve, x: number, y: number, widthM: number, out: Foot): boolean {
  footOn(curve, 0, 1, x, y, out)
  const isAt = (distance: number): boolean => Math.abs(distance - widthM) <= NEAR * widthM
  if (isAt(out.distance)) return true
  if (curve.kind !== 'cubic' || out.distance > widthM) return false
  const along = (t: number): number => {
    evaluate(curve, t, jet)
    return (x - jet.x) * jet.dx + (y - jet.y) * jet.dy
  }
  let before = along(0)
  for (let k = 1; k <= LOOKS; k++) {
    const now = along(k / LOOKS)
    if (before > 0 !== now > 0) {
      const root = bracketedRoot(along, (k - 1) / LOOKS, k / LOOKS, 0)
      if (root.ok) {
        evaluate(curve, root.value.x, jet)
        const distance = norm(x - jet.x, y - jet.y)
        if (isAt(distance)) {
          out.t = root.value.x
          out.x = jet.x
          out.y = jet.y
          out.distance = distance
          return true
        }
      }
    }
    before = now
  }
  return false
}
