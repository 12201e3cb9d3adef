import type { Problem } from '../base/index.ts'
import type { RingContact } from './arrangement.ts'
import type { Curve } from './curve.ts'
import { NodeSet } from './node-set.ts'
import { problem } from './problems.ts'
import type { Ring } from './rings.ts'
import { NEARLY } from './tolerance.ts'
import type { Point } from './types.ts'

/** Places to mark at most: more than this hides the line that they are on. */
export const MOST_PLACES = 1000

/** Lines that meet more often than this are a scribble: enough is known of it. */
export const MOST_CONTACTS = 50_000

/** A ring that crosses itself, or an island in the way of another shore; `empty` are the rings that bound no area. */
export function contactProblem(
  contacts: readonly RingContact[],
  rings: readonly Ring[],
  empty: ReadonlySet<number>,
  islands: number,
  originX: number,
  originY: number,
): Problem | undefined {
  const at = (list: readonly RingContact[]): Point[] =>
    placesOf(list, rings[0]!).map(([x, y]) => [x + originX, y + originY])
  const ofRing = new Map<number, RingContact[]>()
  for (const contact of contacts) {
    if (contact.a.ring !== contact.b.ring) continue
    const own = ofRing.get(contact.a.ring)
    if (own) own.push(contact)
    else ofRing.set(contact.a.ring, [contact])
  }
  for (let ring = 0; ring < rings.length; ring++) {
    const own = ofRing.get(ring) ?? []
    if (own.length === 0) {
      if (empty.has(ring)) return problem('no-area', rings[ring]!.where)
      continue
    }
    const { curves, segments, where } = rings[ring]!
    const indexOf = new Map<Curve, number>(curves.map((curve, i) => [curve, i]))
    const isSpike = ({ a, b }: RingContact): boolean => {
      const gap = Math.abs(indexOf.get(a.curve)! - indexOf.get(b.curve)!)
      return a.curve.kind === 'line' && b.curve.kind === 'line' && (gap === 1 || gap === curves.length - 1)
    }
    const spike = own.find(isSpike)
    // Going out and back along one line is a figure without area; crossing itself may leave none by chance.
    if (empty.has(ring) && spike) return problem('no-area', where)
    const first = spike ?? own[0]!
    const segment = Math.min(segments[indexOf.get(first.a.curve)!]!, segments[indexOf.get(first.b.curve)!]!)
    const place = ring <= islands ? `${where}.segments[${segment}]` : where
    return problem(spike ? 'doubles-back' : 'crosses-itself', place, at(own))
  }
  const shores = contacts.filter((c) => c.a.ring <= islands && c.b.ring <= islands)
  if (shores.length === 0) return undefined
  const worst = shores.find((c) => Math.min(c.a.ring, c.b.ring) === 0) ?? shores[0]!
  const nearer = Math.min(worst.a.ring, worst.b.ring)
  const pair = shores.filter((c) => Math.min(c.a.ring, c.b.ring) === nearer)
  const where = rings[Math.max(worst.a.ring, worst.b.ring)]!.where
  return problem(nearer === 0 ? 'island-meets-outline' : 'islands-meet', where, at(pair))
}

/** The places of contacts, each once: nearer than a share of the outline's extent is one, however many pairs meet there. */
function placesOf(contacts: readonly RingContact[], { minX, minY, maxX, maxY }: Ring): Point[] {
  const nodes = new NodeSet(NEARLY * Math.hypot(maxX - minX, maxY - minY))
  for (const { x, y } of contacts) {
    if (nodes.x.length === MOST_PLACES) break
    nodes.at(x, y)
  }
  return nodes.x.map((x, i) => [x, nodes.y[i]!])
}
