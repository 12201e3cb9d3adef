import { boundsOf, fitLoop, flatten, nearestOn, type Path, type Point, pathLength, pointOn } from '../basin/index.ts'
import { closed, distanceBetween, nodeAt } from './path-edit.ts'

/** Places along the outline from which a bent ring is drawn, and how near to them it keeps, as a share of their distance. */
const PLACES = 96
const RING_FIT = 0.06
/** A place keeps this share of the wanted distance from every wall, else it is left out. */
const KEPT = 0.97
/** Flattening for finding places, not for measuring: a share of the box. */
const CHORD_SHARE = 1e-3
const GRID = 24
const MOST_TRIES = 6

/** Whether a point lies inside a closed polyline (even-odd). */
export function isInside(ring: readonly Point[], [x, y]: Point): boolean {
  let inside = false
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]
    const b = ring[(i + 1) % ring.length]
    if (a && b && a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) inside = !inside
  }
  return inside
}

/**
 * A ring inside an outline and clear of islands, about `share` of the way from the wall to the place that is farthest from
 * all walls. Straight sides give straight ones, else it is a smooth loop. A start to be pulled about, not an exact offset.
 */
export function insetRing(outline: Path, islands: readonly Path[], share: number): Path {
  const room = roomIn(outline, islands)
  for (let i = 0; i < MOST_TRIES; i++) {
    const byM = room.middle.farM * share * 0.8 ** i
    const ring = straightInset(outline, byM, room) ?? smoothInset(outline, byM, room)
    if (ring) return ring
  }
  return disc(room.middle.at, room.middle.farM * (1 - share))
}

interface Room {
  /** Distance to the nearest wall; negative on dry land [m]. */
  readonly clearOf: (at: Point) => number
  readonly chordM: number
  readonly middle: { readonly at: Point; readonly farM: number }
}

function roomIn(outline: Path, islands: readonly Path[]): Room {
  const box = boundsOf(outline)
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY]
  const chordM = CHORD_SHARE * Math.max(width, height)
  const shore = flatten(outline, chordM)
  const dry = islands.map((island) => flatten(island, chordM))
  const walls = [outline, ...islands]
  const clearOf = (at: Point) => {
    const farM = Math.min(...walls.map((wall) => nearestOn(wall, at[0], at[1]).distanceM))
    return isInside(shore, at) && !dry.some((island) => isInside(island, at)) ? farM : -farM
  }
  let middle = { at: [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] as Point, farM: 0 }
  for (let i = 1; i < GRID; i++) {
    for (let j = 1; j < GRID; j++) {
      const at: Point = [box.minX + (i / GRID) * width, box.minY + (j / GRID) * height]
      const farM = clearOf(at)
      if (farM > middle.farM) middle = { at, farM }
    }
  }
  return { clearOf, chordM, middle }
}

/** Sides moved inward and cut with each other; nothing where a side is bent or the ring would come too near to a wall. */
function straightInset(outline: Path, byM: number, room: Room): Path | undefined {
  const { segments } = closed(outline)
  if (segments.some((segment) => segment.bulge || segment.c1)) return undefined
  const nodes = segments.map((_, i) => nodeAt(closed(outline), i))
  const sides = nodes.flatMap((from, i) => {
    const to = nodes[(i + 1) % nodes.length] ?? from
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (!(length > 0)) return []
    const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
    const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
    const step = Math.min(byM, length) * 0.01
    const left: Point = [-along[1], along[0]]
    const isLeftWater = room.clearOf([middle[0] + left[0] * step, middle[1] + left[1] * step]) > 0
    const inward: Point = isLeftWater ? left : [along[1], -along[0]]
    return [{ at: [from[0] + inward[0] * byM, from[1] + inward[1] * byM] as Point, along }]
  })
  const corners = sides.flatMap((side, i) => {
    const before = sides[(i + sides.length - 1) % sides.length]
    if (!before) return []
    const sine = before.along[0] * side.along[1] - before.along[1] * side.along[0]
    // Sides that run on in one line have no corner between them.
    if (Math.abs(sine) < 1e-6) return []
    const dx = side.at[0] - before.at[0]
    const dy = side.at[1] - before.at[1]
    const s = (dx * side.along[1] - dy * side.along[0]) / sine
    return [[before.at[0] + before.along[0] * s, before.at[1] + before.along[1] * s] as Point]
  })
  const first = corners[0]
  if (!first || corners.length < 3) return undefined
  const ring: Path = { start: first, segments: [...corners.slice(1), first].map((to) => ({ to })) }
  return isClear(ring, byM * KEPT, room) ? ring : undefined
}

/** Places along the outline moved inward, those too near to another wall left out, and a loop of few points near the rest. */
function smoothInset(outline: Path, byM: number, room: Room): Path | undefined {
  const { segments } = closed(outline)
  const whole = pathLength(outline)
  const places: Point[] = []
  segments.forEach((segment, i) => {
    const from = nodeAt(closed(outline), i)
    const length = pathLength({ start: from, segments: [segment, { to: from }] }) - distanceBetween(from, segment.to)
    const count = Math.max(1, Math.round((PLACES * length) / whole))
    for (let k = 0; k < count; k++) {
      const t = (k + 0.5) / count
      const at = pointOn(outline, i, t)
      const a = pointOn(outline, i, t - 1e-3)
      const b = pointOn(outline, i, t + 1e-3)
      const length = Math.hypot(b[0] - a[0], b[1] - a[1])
      if (!(length > 0)) continue
      const normal: Point = [(a[1] - b[1]) / length, (b[0] - a[0]) / length]
      for (const side of [1, -1]) {
        const inside: Point = [at[0] + side * normal[0] * byM, at[1] + side * normal[1] * byM]
        if (room.clearOf(inside) >= byM * KEPT) places.push(inside)
      }
    }
  })
  const apart = places.filter((at, i) => {
    const before = places[(i + places.length - 1) % places.length]
    return before && distanceBetween(at, before) > byM * 0.02
  })
  const [first] = apart
  if (!first || apart.length < 4) return undefined
  const ring = fitLoop([...apart, first], byM * RING_FIT)
  return ring.ok && isClear(ring.value, byM * 0.4, room) ? ring.value : undefined
}

/** Whether all of a ring keeps a distance from the walls and doesn't cross itself. */
function isClear(ring: Path, farM: number, room: Room): boolean {
  const line = flatten(ring, room.chordM)
  return line.every((at) => room.clearOf(at) >= farM) && !crossesItself(line)
}

function crossesItself(line: readonly Point[]): boolean {
  const side = (a: Point, b: Point, c: Point) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  const n = line.length
  for (let i = 0; i < n; i++) {
    for (let k = i + 2; k < n; k++) {
      const [a, b, c, d] = [line[i], line[(i + 1) % n], line[k], line[(k + 1) % n]]
      if (!a || !b || !c || !d || (k + 1) % n === i) continue
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return true
    }
  }
  return false
}

function disc([x, y]: Point, radiusM: number): Path {
  const bulge = Math.SQRT2 - 1
  const at = (dx: number, dy: number): Point => [x + dx * radiusM, y + dy * radiusM]
  return { start: at(1, 0), segments: [at(0, 1), at(-1, 0), at(0, -1), at(1, 0)].map((to) => ({ to, bulge })) }
}

/** The place of an outline's water that is farthest from every wall, and how far that is [m]. */
export function middleOfWater(outline: Path, islands: readonly Path[]): { readonly at: Point; readonly farM: number } {
  return roomIn(outline, islands).middle
}
