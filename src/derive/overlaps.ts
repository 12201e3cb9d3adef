import type { Problem } from '../base/index.ts'
import { boundsOf, depthAt, overlapOf, type Partition, type Point } from '../basin/index.ts'
import type { Body, Spec } from '../document/index.ts'
import { deriveBody } from './body.ts'
import { memoLast } from './memo.ts'

/** Shared area below this share of the smaller body is a slip of the hand along a common edge, not water counted twice. */
const SLIVER = 1e-3
/** Places across the shared box at which both depths are looked up. */
const PLACES = 40

/** A notice about two bodies that lie on one another. */
export interface OverlapNotice extends Problem {
  /** Water that is counted in both [m³]; undefined where one of them can't be measured. */
  readonly twiceM3: number | undefined
}

/** Notices about bodies that lie on one another: their water is counted twice. Nothing is withheld for it. */
export const deriveOverlaps = memoLast((spec: Spec): readonly OverlapNotice[] => {
  const notices: OverlapNotice[] = []
  for (const [i, body] of spec.bodies.entries())
    for (const [k, other] of spec.bodies.entries()) {
      if (k >= i) continue
      const sharedM2 = sharedWater(body, other)
      if (!(sharedM2 > SLIVER * Math.min(boxAreaOf(body), boxAreaOf(other)))) continue
      const { twiceM3, at } = sharedDepth(body, other, sharedM2)
      notices.push({
        code: 'bodies-overlap',
        path: `bodies[${i}].outline`,
        what: `${body.name} lies on ${other.name}.`,
        why: 'The water where they overlap is counted in both.',
        hint: 'Move one of them, or draw the inner one as an island or a feature of the outer one.',
        ...(at && { at: [at] }),
        twiceM3,
      })
    }
  return notices
})

function sharedWater(body: Body, other: Body): number {
  // A body that stands on an island of the other takes none of its water.
  const onIsland = (a: Body, b: Body): number =>
    b.islands.reduce((sum, island) => {
      const area = overlapOf(a.outline, island)
      return sum + (area.ok ? area.value : 0)
    }, 0)
  const common = overlapOf(body.outline, other.outline)
  if (!common.ok) return 0
  return common.value - onIsland(body, other) - onIsland(other, body)
}

/**
 * The water that two bodies have in common, and a place in its middle.
 * Equation: V = A · mean over the shared places of min(d₁, d₂). Symbols: A the shared area, d₁ and d₂ the water's depths.
 * Valid for: saying how much it is about. Source: own.
 * Accuracy: about a hundredth where the shared area is a good part of its box; a sliver across it may be off by more.
 */
function sharedDepth(a: Body, b: Body, sharedM2: number): { twiceM3: number | undefined; at: Point | undefined } {
  const [p, q] = [deriveBody(a).partition, deriveBody(b).partition]
  if (!p.ok || !q.ok) return { twiceM3: undefined, at: undefined }
  const [boxA, boxB] = [boundsOf(a.outline), boundsOf(b.outline)]
  const [minX, minY] = [Math.max(boxA.minX, boxB.minX), Math.max(boxA.minY, boxB.minY)]
  const [maxX, maxY] = [Math.min(boxA.maxX, boxB.maxX), Math.min(boxA.maxY, boxB.maxY)]
  const shared: Point[] = []
  let sumM = 0
  for (let i = 0; i < PLACES * PLACES; i++) {
    const x = minX + (((i % PLACES) + 0.5) / PLACES) * (maxX - minX)
    const y = minY + ((Math.floor(i / PLACES) + 0.5) / PLACES) * (maxY - minY)
    const depths = [waterOver(p.value, a.levelM, x, y), waterOver(q.value, b.levelM, x, y)]
    if (depths.some(Number.isNaN)) continue
    shared.push([x, y])
    sumM += Math.min(...depths)
  }
  if (shared.length === 0) return { twiceM3: undefined, at: undefined }
  const x = shared.reduce((sum, place) => sum + place[0], 0) / shared.length
  const y = shared.reduce((sum, place) => sum + place[1], 0) / shared.length
  // The middle of a curved region may lie beside it.
  const far = (place: Point): number => Math.hypot(place[0] - x, place[1] - y)
  return {
    twiceM3: (sharedM2 * sumM) / shared.length,
    at: shared.reduce((nearest, place) => (far(place) < far(nearest) ? place : nearest)),
  }
}

/** Depth of the water at a place, not a number outside of it [m]. */
function waterOver(parts: Partition, levelM: number, x: number, y: number): number {
  const sample = depthAt(parts, x, y)
  return sample ? Math.max(0, sample.depthM + levelM) : Number.NaN
}

function boxAreaOf({ outline }: Body): number {
  const { minX, minY, maxX, maxY } = boundsOf(outline)
  return (maxX - minX) * (maxY - minY)
}
