import { fail, type Problem, type Result } from '../base/index.ts'
import type { FloorKind, FloorPlan, FloorSite } from './floor-kind.ts'
import { contactsOf } from './floor-rings.ts'
import { problem } from './problems.ts'
import { checkNumbers, checkRing, pushRing, type Ring, ringOf } from './rings.ts'
import type { Span } from './span.ts'
import { refined } from './tin-refined.ts'
import { holderOf, shoreFinder } from './tin-site.ts'
import type { Shares } from './tin-types.ts'
import type { ContoursFloor } from './types.ts'

/**
 * Depth along the shore and along closed contours: linear on the constrained Delaunay triangulation of all of them, level
 * inside the innermost ones. An island that stands inside a contour leaves the floor as it would be without it.
 */
export const CONTOURS: FloorKind<ContoursFloor> = { id: 'contours', check, plan }

function check({ edgeDepthM, rings }: ContoursFloor): Problem | undefined {
  if (!Number.isFinite(edgeDepthM)) return problem('not-a-number', 'floor.edgeDepthM')
  for (const [i, { depthM, path }] of rings.entries()) {
    if (!Number.isFinite(depthM)) return problem('not-a-number', `floor.rings[${i}].depthM`)
    const wrong = checkNumbers(path, `floor.rings[${i}].path`)
    if (wrong) return wrong
    if (path.segments.length === 0) return problem('too-few-points', `floor.rings[${i}].path`)
  }
  return undefined
}

function plan(floor: ContoursFloor, site: FloorSite): Result<FloorPlan> {
  const { shores, originX, originY, extentM, grainM } = site
  const contours = floor.rings.map(({ path }, i) => ringOf(path, `floor.rings[${i}].path`, originX, originY, grainM))
  for (const ring of contours) {
    const wrong = checkRing(ring)
    if (wrong) return fail(wrong)
  }
  const contact = contactsOf(shores, contours, site)
  if (contact) return fail(contact)
  // Nothing meets anything else, so that one point of a ring tells on which side of another it lies.
  const { isWater } = shoreFinder(shores, grainM)
  for (const { curves, where } of contours) {
    const { x0, y0 } = curves[0]!
    if (!isWater(x0, y0)) return fail(problem('ring-outside', where, [[x0 + originX, y0 + originY]]))
  }
  const holders = contours.map((ring) => holderOf(spansOf(ring, grainM)))
  const bounds = shores.filter(
    ({ curves }, i) => i === 0 || !holders.some((holds) => holds(curves[0]!.x0, curves[0]!.y0)),
  )
  const depths = [floor.edgeDepthM, ...floor.rings.map(({ depthM }) => depthM)]
  return refined(
    site,
    [...bounds.map((ring) => ({ ring, isShore: true })), ...contours.map((ring) => ({ ring, isShore: false }))],
    () => [...bounds, ...contours].map(() => new Map()),
    (nodes, chains) => {
      const shares: Shares[] = []
      for (const [i, chain] of chains.entries()) {
        const own = new Map([[Math.max(0, 1 + i - bounds.length), 1]])
        for (const node of chain.nodes) shares[node] = own
      }
      return { nodes, chains, shares, depths, extentM, grainM }
    },
  )
}

function spansOf(ring: Ring, grainM: number): Span[] {
  const spans: Span[] = []
  pushRing(ring, 0, grainM, spans)
  return spans
}
