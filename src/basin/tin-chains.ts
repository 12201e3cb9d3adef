import { type ArcCurve, type Curve, evaluate, newJet } from './curve.ts'
import { addMoments } from './edge-integrals.ts'
import type { NodeSet } from './node-set.ts'
import { norm } from './norm.ts'
import { chordsFor } from './path-draw.ts'
import type { Ring } from './rings.ts'
import { HAIR } from './tolerance.ts'

/** A closed way of chords from node to node along an outline, an island or a contour. */
export interface Chain {
  readonly isShore: boolean
  /** Nodes in order; chord i runs from node i to the next one. */
  readonly nodes: readonly number[]
  /** The exact curves of the way. */
  readonly curves: readonly Curve[]
  /** The stretch of which chord i is the chord: index of the curve in its ring, first and last t. */
  readonly stretches: readonly (readonly [curve: number, t0: number, t1: number])[]
  /** Mean distance of the curve from chord i, positive to the left of the way [m]; 0 on a line. */
  readonly offM: readonly number[]
  /** How much of a full step of correction node i takes: 0 where a curve begins (its place and depth are given). */
  readonly share: readonly number[]
}

/** Places on the curves of a ring that must be nodes, by curve. */
export type Stops = Map<number, number[]>

export function addStop(stops: Stops, curve: number, t: number): void {
  const known = stops.get(curve)
  if (known) known.push(t)
  else stops.set(curve, [t])
}

const jet = newJet()

/**
 * A ring as chords that stay within `chordM` of it. A contour's own nodes are moved outward by as much as its chords lie
 * inside on the mean, so that its polygon has the contour's area; nodes on a shore stay on it.
 */
export function chainOf(
  ring: Ring,
  isShore: boolean,
  chordM: number,
  grainM: number,
  nodes: NodeSet,
  stops?: Stops,
): Chain {
  const xs: number[] = []
  const ys: number[] = []
  const offM: number[] = []
  const share: number[] = []
  const stretches: [number, number, number][] = []
  ring.curves.forEach((curve, i) => {
    const ts = stopsOf(curve, chordM, grainM, stops?.get(i) ?? [])
    for (let k = 0; k < ts.length - 1; k++) {
      evaluate(curve, ts[k]!, jet)
      xs.push(jet.x)
      ys.push(jet.y)
      stretches.push([i, ts[k]!, ts[k + 1]!])
      offM.push(curve.kind === 'line' ? 0 : meanOffset(curve, ts[k]!, ts[k + 1]!))
      // The ends of a curve stay, so its first and last inner nodes make up for them.
      const inner = ts.length - 2
      share.push(k === 0 || curve.kind === 'line' ? 0 : inner === 1 ? 2 : k === 1 || k === inner ? 1.5 : 1)
    }
  })
  const count = xs.length
  const ids: number[] = []
  const kept: number[] = []
  for (let i = 0; i < count; i++) {
    let x = xs[i]!
    let y = ys[i]!
    const before = (i + count - 1) % count
    const after = (i + 1) % count
    if (!isShore && share[i]! > 0) {
      const ux = xs[after]! - xs[before]!
      const uy = ys[after]! - ys[before]!
      const step = (share[i]! * (offM[before]! + offM[i]!)) / (2 * norm(ux, uy))
      x -= uy * step
      y += ux * step
    }
    const id = nodes.at(x, y)
    if (ids.length > 0 && ids[ids.length - 1] === id) continue
    ids.push(id)
    kept.push(i)
  }
  while (ids.length > 1 && ids[0] === ids[ids.length - 1]) {
    ids.pop()
    kept.pop()
  }
  return {
    isShore,
    curves: ring.curves,
    nodes: ids,
    stretches: kept.map((i) => stretches[i]!),
    offM: kept.map((i) => offM[i]!),
    share: kept.map((i) => share[i]!),
  }
}

/** Where a curve is cut: evenly, and at the stops that must be; ascending from 0 to 1. */
function stopsOf(curve: Curve, chordM: number, grainM: number, must: readonly number[]): number[] {
  const n =
    curve.kind === 'line'
      ? 1
      : Math.max(2, curve.kind === 'arc' ? stepsOfArc(curve, chordM) : chordsFor(curve, 0, 1, chordM))
  const place = (t: number): [number, number] => {
    evaluate(curve, t, jet)
    return [jet.x, jet.y]
  }
  const firm: number[] = [0, 1]
  const places: [number, number][] = [place(0), place(1)]
  const isNear = ([x, y]: [number, number]): boolean => places.some(([px, py]) => norm(px - x, py - y) <= 4 * grainM)
  for (const t of must) {
    const at = place(t)
    if (isNear(at)) continue
    firm.push(t)
    places.push(at)
  }
  const ts = [...firm]
  for (let k = 1; k < n; k++) if (must.length === 0 || !isNear(place(k / n))) ts.push(k / n)
  return ts.sort((a, b) => a - b)
}

/** Even steps of a half turn by a power of four, so that nodes of arcs about one centre face each other. */
function stepsOfArc(arc: ArcCurve, chordM: number): number {
  const toHalfTurn = Math.PI / Math.abs(arc.turn)
  const fine = chordsFor(arc, 0, 1, chordM) * toHalfTurn
  return Math.ceil(4 ** Math.ceil(Math.log2(fine) / 2) / toHalfTurn - HAIR)
}

/** Area between a stretch and its chord over the chord's length, positive where the curve lies to its left [m]. */
function meanOffset(curve: Curve, t0: number, t1: number): number {
  evaluate(curve, t0, jet)
  const { x: x0, y: y0 } = jet
  evaluate(curve, t1, jet)
  const moments = { area: 0, areaX: 0, areaY: 0 }
  addMoments(curve, t0, t1, 1, moments)
  const chord = norm(jet.x - x0, jet.y - y0)
  return chord > 0 ? -(moments.area - (x0 * jet.y - jet.x * y0) / 2) / chord : 0
}
