import { fail, ok, type Result } from '../base/index.ts'
import { arrange } from './arrangement.ts'
import { addMoments } from './edge-integrals.ts'
import type { FloorPlan, FloorSite } from './floor-kind.ts'
import { NodeSet } from './node-set.ts'
import { problem } from './problems.ts'
import { pushRing, type Ring } from './rings.ts'
import type { Span } from './span.ts'
import { addStop, type Chain, chainOf, type Stops } from './tin-chains.ts'
import { looseChords } from './tin-curves.ts'
import { type ChordAt, tinFloor, triangulated } from './tin-floor.ts'
import type { TinFigure } from './tin-types.ts'
import { FLOOR_CHORD } from './tolerance.ts'

/** Into how many chords one is divided where the triangles hang on its place, and how often. */
const PARTS = 4
const ROUNDS = 3
/** How often chords that cross others are halved. */
const HALVINGS = 12
/** From here on it is worth asking whether rings meet before so many chords are fitted to them. */
const MANY_NODES = 6_000

/**
 * The floor on chords of shores and contours. Where two curves come nearer to each other than their chords do, these may
 * cross, and finer ones are taken; where a triangle that stands on no chord has a corner on a curve, the chords there are
 * divided until the corner lies nearly where an empty circle touches the curve.
 */
export function refined(
  { shores, grainM }: FloorSite,
  bounds: readonly { readonly ring: Ring; readonly isShore: boolean }[],
  stopsAt: (chordM: number) => Stops[],
  figureOf: (nodes: NodeSet, chains: readonly Chain[]) => TinFigure,
): Result<FloorPlan> {
  const moments = { area: 0, areaX: 0, areaY: 0 }
  for (const curve of shores[0]!.curves) addMoments(curve, 0, 1, 1, moments)
  const sizeM = Math.sqrt(Math.abs(moments.area))
  let canMeet = true
  for (const finer of [1, 8, 64, 512]) {
    const chordM = (sizeM * FLOOR_CHORD) / finer
    const stops = stopsAt(chordM)
    for (let halvings = 0, round = 0; ; ) {
      const nodes = new NodeSet(8 * grainM)
      const chains = bounds.map(({ ring, isShore }, i) => chainOf(ring, isShore, chordM, grainM, nodes, stops[i]))
      const figure = figureOf(nodes, chains)
      if (canMeet && nodes.x.length > MANY_NODES) {
        if (doMeet(bounds, grainM)) return fail(problem('cannot-divide', 'floor'))
        canMeet = false
      }
      const wetTin = triangulated(figure)
      if (Array.isArray(wetTin)) {
        // Finer chords part curves that come near each other, but never ones that cross.
        if (canMeet && doMeet(bounds, grainM)) return fail(problem('cannot-divide', 'floor'))
        canMeet = false
        if (halvings++ === HALVINGS || !divided(wetTin, chains, stops, 2)) break
        continue
      }
      // Shores so near to each other that their nodes are one leave no floor between them.
      if (!wetTin.isWet.includes(1)) break
      const loose = round++ < ROUNDS ? looseChords(wetTin) : []
      if (!divided(loose, chains, stops, PARTS)) return ok(tinFloor(wetTin, figure))
    }
  }
  return fail(problem('cannot-divide', 'floor'))
}

/** Puts stops into chords of curves that divide each into parts; false where there is none. */
function divided(
  chords: readonly ChordAt[],
  chains: readonly Chain[],
  stops: readonly Stops[],
  parts: number,
): boolean {
  let isAny = false
  for (const { chain, chord } of chords) {
    const { offM, stretches } = chains[chain]!
    if (offM[chord] === 0) continue
    const [curve, t0, t1] = stretches[chord]!
    for (let k = 1; k < parts; k++) addStop(stops[chain]!, curve, t0 + ((t1 - t0) * k) / parts)
    isAny = true
  }
  return isAny
}

function doMeet(bounds: readonly { readonly ring: Ring }[], grainM: number): boolean {
  const spans: Span[] = []
  const spansInRing = bounds.map(({ ring }, id) => pushRing(ring, id, grainM, spans))
  let hasMet = false
  arrange(spans, spansInRing, grainM, () => {
    hasMet = true
    return true
  })
  return hasMet
}
