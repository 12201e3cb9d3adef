import type { Problem } from '../base/index.ts'
import { arrange, type RingContact } from './arrangement.ts'
import type { FloorSite } from './floor-kind.ts'
import { problem } from './problems.ts'
import { pushRing, type Ring } from './rings.ts'
import type { Span } from './span.ts'
import type { Point } from './types.ts'

/** A contour that crosses itself, another one or a shore, judged on the exact curves. */
export function contactsOf(
  shores: readonly Ring[],
  contours: readonly Ring[],
  { originX, originY, grainM }: FloorSite,
): Problem | undefined {
  const rings = [...shores, ...contours]
  const spans: Span[] = []
  const spansInRing = rings.map((ring, id) => pushRing(ring, id, grainM, spans))
  const contacts: RingContact[] = []
  arrange(spans, spansInRing, grainM, (contact) => {
    if (Math.max(contact.a.ring, contact.b.ring) < shores.length) return
    // Where curves are joined both of them are met.
    if (!contacts.some((c) => Math.hypot(c.x - contact.x, c.y - contact.y) <= 2 * grainM)) contacts.push(contact)
  })
  const outer = (c: RingContact): number => Math.min(c.a.ring, c.b.ring)
  const inner = (c: RingContact): number => Math.max(c.a.ring, c.b.ring)
  const first = contacts.find((c) => outer(c) === inner(c)) ?? contacts[0]
  if (!first) return undefined
  const code =
    outer(first) === inner(first) ? 'crosses-itself' : outer(first) < shores.length ? 'ring-meets-shore' : 'rings-meet'
  const all = contacts.filter((c) => outer(c) === outer(first) && inner(c) === inner(first))
  return problem(
    code,
    rings[inner(first)]!.where,
    all.map((c): Point => [c.x + originX, c.y + originY]),
  )
}
