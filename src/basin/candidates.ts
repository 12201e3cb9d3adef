import type { Span } from './span.ts'

/** Spans in one leaf of the tree: few enough to be compared one by one. */
const LEAF = 4

/**
 * Calls `visit` once for every pair of spans that may come within the grain of each other. The boxes of neighbours along
 * a ring lie in one branch of a binary tree: branches whose boxes are apart are passed over whole, whichever way the
 * spans run; sorting along one axis would compare all with all where they lie abreast. Break lines of one number are known
 * to meet at their ends only and are not paired with each other.
 */
export function forEachNearPair(spans: readonly Span[], grainM: number, visit: (a: Span, b: Span) => void): void {
  let leaves = 1
  while (leaves * LEAF < spans.length) leaves *= 2
  // Node i has the children 2i and 2i + 1; leaf k is node `leaves` + k. A branch without spans keeps an empty box.
  const minX = new Float64Array(2 * leaves).fill(Infinity)
  const minY = new Float64Array(2 * leaves).fill(Infinity)
  const maxX = new Float64Array(2 * leaves).fill(-Infinity)
  const maxY = new Float64Array(2 * leaves).fill(-Infinity)
  const grow = (node: number, x0: number, y0: number, x1: number, y1: number): void => {
    if (x0 < minX[node]!) minX[node] = x0
    if (y0 < minY[node]!) minY[node] = y0
    if (x1 > maxX[node]!) maxX[node] = x1
    if (y1 > maxY[node]!) maxY[node] = y1
  }
  // The number that all break lines of a branch share, −1 where anything else is in it, −2 where it is empty.
  const kin = new Int32Array(2 * leaves).fill(-2)
  const join = (node: number, family: number): void => {
    if (family !== -2) kin[node] = kin[node] === -2 || kin[node] === family ? family : -1
  }
  spans.forEach((span, i) => {
    join(leaves + Math.floor(i / LEAF), span.ring < 0 ? span.index : -1)
    grow(leaves + Math.floor(i / LEAF), span.minX, span.minY, span.maxX, span.maxY)
  })
  for (let node = 2 * leaves - 1; node > 1; node--) {
    grow(node >> 1, minX[node]!, minY[node]!, maxX[node]!, maxY[node]!)
    join(node >> 1, kin[node]!)
  }

  const compare = (i: number, k: number): void => {
    const a = spans[i]!
    const b = spans[k]!
    if (a.ring < 0 && b.ring < 0 && a.index === b.index) return
    if (a.minX > b.maxX + grainM || b.minX > a.maxX + grainM) return
    if (a.minY > b.maxY + grainM || b.minY > a.maxY + grainM) return
    if (a.curve.kind === 'line' && b.curve.kind === 'line' && (isBeside(a, b, grainM) || isBeside(b, a, grainM))) return
    visit(a, b)
  }
  const within = (node: number): void => {
    if (kin[node]! >= 0) return
    if (node < leaves) {
      within(2 * node)
      within(2 * node + 1)
      between(2 * node, 2 * node + 1)
      return
    }
    const first = (node - leaves) * LEAF
    const end = Math.min(first + LEAF, spans.length)
    for (let i = first; i < end; i++) for (let k = i + 1; k < end; k++) compare(i, k)
  }
  const between = (p: number, q: number): void => {
    if (kin[p]! >= 0 && kin[p] === kin[q]) return
    if (minX[p]! > maxX[q]! + grainM || minX[q]! > maxX[p]! + grainM) return
    if (minY[p]! > maxY[q]! + grainM || minY[q]! > maxY[p]! + grainM) return
    if (p < leaves) {
      between(2 * p, 2 * q)
      between(2 * p, 2 * q + 1)
      between(2 * p + 1, 2 * q)
      between(2 * p + 1, 2 * q + 1)
      return
    }
    const firstP = (p - leaves) * LEAF
    const firstQ = (q - leaves) * LEAF
    const endP = Math.min(firstP + LEAF, spans.length)
    const endQ = Math.min(firstQ + LEAF, spans.length)
    for (let i = firstP; i < endP; i++) for (let k = firstQ; k < endQ; k++) compare(i, k)
  }
  within(1)
}

/** True where the line b lies on one side of the line through a, farther off than the grain. */
function isBeside(a: Span, b: Span, grainM: number): boolean {
  const dx = a.x1 - a.x0
  const dy = a.y1 - a.y0
  const first = dx * (b.y0 - a.y0) - dy * (b.x0 - a.x0)
  const last = dx * (b.y1 - a.y0) - dy * (b.x1 - a.x0)
  if (first > 0 !== last > 0) return false
  return Math.min(Math.abs(first), Math.abs(last)) > 2 * grainM * (Math.abs(dx) + Math.abs(dy))
}
