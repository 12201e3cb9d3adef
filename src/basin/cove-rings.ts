import { type Fan, type Fans, fansOf, type Ray, rayAt } from './cove-fan.ts'
import { type Reach, reachOf } from './cove-reach.ts'
import type { Partition } from './partition-types.ts'
import { chordsFor } from './path-draw.ts'
import { planFans } from './strip-plan.ts'
import { HAIR } from './tolerance.ts'

/** How many rings follow the curve of a cove; the last one is its edge. */
export const COVE_RINGS = 6

const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }
const reach: Reach = { n: 0, by: 0, how: 0 }

/** Lines along the cove at even steps of its quarter circle, as polylines (x and y in turn) that join at mitres. */
export function coveRings(p: Partition, r: number, chordM: number): number[][] {
  const fans = fansOf(p)
  const lines: number[][] = []
  for (const { fan, rivals } of planFans(p, fans, r)) {
    const ts = stepsOf(fans, fan, r, chordM)
    const reaches = ts.map((t) => reachAt(fans, fan, rivals, t, r))
    for (let k = 1; k <= COVE_RINGS; k++) {
      const n = k === COVE_RINGS ? r : r * (1 - Math.cos((Math.PI / 2) * (k / COVE_RINGS)))
      addRing(fans, fan, rivals, ts, reaches, n, r, lines)
    }
    addMitre(fans, fan, rivals, ts, reaches, r, lines)
  }
  return lines
}

function reachAt(fans: Fans, fan: Fan, rivals: readonly number[], t: number, r: number): number {
  rayAt(fans, fan, t, ray)
  reachOf(fans, fan, rivals, ray, r, reach)
  return reach.n
}

function stepsOf(fans: Fans, fan: Fan, r: number, chordM: number): number[] {
  let n: number
  if (fan.shore < 0) n = Math.max(2, Math.ceil((fan.t1 - fan.t0) / (2 * Math.acos(Math.max(0, 1 - chordM / r)))))
  else n = chordsFor(fans.shores[fan.shore]!.curve, fan.t0, fan.t1, chordM)
  return Array.from({ length: n + 1 }, (_, i) => (i === n ? fan.t1 : fan.t0 + ((fan.t1 - fan.t0) * i) / n))
}

/** The runs of one ring where the rays are long enough; their ends are found by halving. */
function addRing(
  fans: Fans,
  fan: Fan,
  rivals: readonly number[],
  steps: readonly number[],
  reaches: readonly number[],
  n: number,
  r: number,
  lines: number[][],
): void {
  let line: number[] = []
  const put = (t: number): void => {
    rayAt(fans, fan, t, ray)
    line.push(ray.x + n * ray.nx, ray.y + n * ray.ny)
  }
  const holds = (t: number): boolean => reachAt(fans, fan, rivals, t, r) >= n
  const edge = (inside: number, outside: number): number => {
    let lo = inside
    let hi = outside
    for (let i = 0; i < 52; i++) {
      const m = (lo + hi) / 2
      if (holds(m)) lo = m
      else hi = m
    }
    return lo
  }
  // A long straight stretch has two steps only: look in between, for a mitre may end the ring at both sides.
  const ts =
    steps.length > 2
      ? steps
      : [
          steps[0]!,
          (steps[0]! * 2 + steps[1]!) / 3,
          (steps[0]! + steps[1]!) / 2,
          (steps[0]! + steps[1]! * 2) / 3,
          steps[1]!,
        ]
  const inside = steps.length > 2 ? reaches.map((v) => v >= n) : ts.map(holds)
  for (let i = 0; i < ts.length; i++) {
    const isStep = steps.length > 2 || i === 0 || i === ts.length - 1
    if (inside[i]) {
      if (i > 0 && !inside[i - 1]) put(edge(ts[i]!, ts[i - 1]!))
      if (isStep) put(ts[i]!)
    } else if (i > 0 && inside[i - 1]) {
      put(edge(ts[i - 1]!, ts[i]!))
      if (line.length > 2) lines.push(line)
      line = []
    }
  }
  if (line.length > 2) lines.push(line)
}

/** The line from a corner along the mitre, so that triangles don't bridge it. */
function addMitre(
  fans: Fans,
  fan: Fan,
  rivals: readonly number[],
  ts: readonly number[],
  reaches: readonly number[],
  r: number,
  lines: number[][],
): void {
  if (fan.shore < 0) return
  for (const [end, inner] of [[0, 1] as const, [ts.length - 1, ts.length - 2] as const]) {
    if (reaches[end]! > 1e-3 * r) continue
    // Follow the rays' ends from the corner to where they are r long.
    let lo = ts[end]!
    let hi = ts[inner]!
    for (let k = 0; k < 60 && reachAt(fans, fan, rivals, hi, r) >= r; k++) {
      const m = (lo + hi) / 2
      if (reachAt(fans, fan, rivals, m, r) >= r) hi = m
      else lo = m
      if (Math.abs(hi - lo) < 1e-12 * Math.abs(ts[inner]! - ts[end]!)) break
    }
    const far = hi
    const line: number[] = []
    for (let k = 0; k <= COVE_RINGS; k++) {
      const n = k === COVE_RINGS ? r : r * (1 - Math.cos((Math.PI / 2) * (k / COVE_RINGS)))
      let a = ts[end]!
      let b = far
      for (let i = 0; i < 52 && k > 0; i++) {
        const m = (a + b) / 2
        if (reachAt(fans, fan, rivals, m, r) >= n) b = m
        else a = m
      }
      const t = k === 0 ? ts[end]! : b
      if (k > 0 && reachAt(fans, fan, rivals, t, r) < n * (1 - HAIR)) break
      rayAt(fans, fan, t, ray)
      const length = k === 0 ? 0 : n
      line.push(ray.x + length * ray.nx, ray.y + length * ray.ny)
    }
    if (line.length > 2) lines.push(line)
  }
}
