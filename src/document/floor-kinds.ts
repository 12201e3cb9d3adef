import { boundsOf, type Floor, type Path, type Point } from '../basin/index.ts'
import { assumedDepths } from './assumed-depths.ts'
import { depthsOfFloor } from './floor-depths.ts'
import { fitted, type LaidFloor, laidFloor, type Plan, placesInWater } from './floor-fit.ts'
import { insetRing, middleOfWater } from './inset.ts'
import type { Body, OtherFloor } from './types.ts'

export type FloorKindId = Floor['kind']

/** A new ring lies this share of the way from the wall to the middle of the water. */
const RING_SHARE = 0.5
/** A new hollow reaches this share of the way from the middle to the wall. */
const DISH_SHARE = 0.8
/** Stations that stand for a floor which isn't the same all across. */
const STATIONS = 5
/** Guesses that stand for soundings around the middle of a hollow. */
const AROUND = 6
/** How far out from it they stand, as a share of its radius. */
const AROUND_SHARE = 0.7

/** So many guesses are made at most so that soundings hold as much water as before, to this share of it. */
const MOST_GUESSES = 10
const NEAR_ENOUGH = 0.01
/** And so that their floor is off the one before by no more than this share of its range of depths, root mean square. */
const FORM_LIKE = 0.08
/** Of the places in the water each so many is looked at for it. */
const EACH = 5

type Fitted = Pick<Body, 'outline' | 'islands' | 'floor' | 'depthsAssumed'>

/** A floor, and of each of its depths whether nobody has said it. */
export interface FloorOfKind {
  readonly floor: Floor
  readonly assumed: readonly boolean[]
}

/** A floor of another kind that holds as much water as the body's own, and is as near to it as the kind can be. */
export function floorAs(kind: FloorKindId, body: Fitted): Floor {
  return asKind(kind, body).floor
}

/**
 * The same with what is known of its depths: said are only those that mean the same on both floors and keep their value (a
 * station's as a sounding at its place, the depth at the walls). All others are reckoned so that the water stays as much.
 */
export function asKind(kind: FloorKindId, body: Fitted): FloorOfKind {
  const { floor } = body
  if (floor.kind === kind) return { floor, assumed: assumedDepths(body) }
  const depths = depthsOfFloor(floor)
  const leastM = depths.length > 0 ? Math.min(...depths) : 1
  const greatestM = depths.length > 0 ? Math.max(...depths) : leastM
  const laid = laidFloor(floor, body)
  const meanM = Math.min(greatestM, Math.max(leastM, laid?.meanM ?? (leastM + greatestM) / 2))
  const old: Old = { ...body, leastM, greatestM, laid, meanM }
  switch (kind) {
    case 'flat':
      return guessed({ kind, depthM: old.meanM })
    case 'profile':
      return guessed(profileFrom(old))
    case 'contours': {
      const path = insetRing(body.outline, body.islands, RING_SHARE)
      return hollowed(old, (edgeDepthM, depthM) => ({ kind, edgeDepthM, rings: [{ depthM, path }] }))
    }
    case 'soundings':
      return soundingsFrom(old)
    case 'dish': {
      const { at, farM } = middleOfWater(body.outline, body.islands)
      const radiusM = DISH_SHARE * farM
      return hollowed(old, (edgeDepthM, depthM) => ({
        kind,
        form: 'cap',
        centre: at,
        radiusM,
        edgeDepthM,
        depthM: Math.min(depthM, edgeDepthM + radiusM),
      }))
    }
  }
}

/**
 * Whether the floor's one depth line still runs where it was put when the floor became one of depth lines: a place that
 * nobody drew. Its depth may be a measured one.
 */
export function isLineAssumed({ outline, islands, floor }: Pick<Body, 'outline' | 'islands' | 'floor'>): boolean {
  if (floor.kind !== 'contours' || floor.rings.length !== 1) return false
  return JSON.stringify(floor.rings[0]?.path) === JSON.stringify(insetRing(outline, islands, RING_SHARE))
}

interface Old extends Plan, OtherFloor {
  readonly leastM: number
  readonly greatestM: number
  readonly meanM: number
  /** Nothing where the drawing can't be measured. */
  readonly laid: LaidFloor | undefined
}

function guessed(floor: Floor): FloorOfKind {
  return { floor, assumed: depthsOfFloor(floor).map(() => true) }
}

/**
 * One depth at the walls and one deeper inside, holding as much water as before: first the deeper one is reckoned, and
 * where it would go below all that was said, the other.
 */
function hollowed(old: Old, make: (edgeDepthM: number, depthM: number) => Floor): FloorOfKind {
  const { floor: before, leastM, greatestM, meanM } = old
  const edgeM = 'edgeDepthM' in before && before.edgeDepthM !== null ? before.edgeDepthM : leastM
  const wish = { meanM, leastM, greatestM }
  const inner = fitted(make(edgeM, greatestM), old, (i) => i === 1, wish)
  const floor = fitted(inner, old, (i) => i === 0, wish)
  const isEdgeSaid = 'edgeDepthM' in before && before.edgeDepthM !== null && !assumedDepths(old)[0]
  return { floor, assumed: [!(isEdgeSaid && depthsOfFloor(floor)[0] === edgeM), true] }
}

/** Along the longer side of the outline's box, through its middle: the floor's mean depth across there. */
function profileFrom(old: Old): Floor {
  const box = boundsOf(old.outline)
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY]
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
  const isAcross = width >= height
  const lengthM = isAcross ? width : height
  const isLevel = old.leastM === old.greatestM || !old.laid
  const count = isLevel ? 2 : STATIONS
  const across = isLevel ? undefined : meansAcross(old, isAcross ? 0 : 1, lengthM)
  const floor: Floor = {
    kind: 'profile',
    axis: isAcross ? { from: [box.minX, y], to: [box.maxX, y] } : { from: [x, box.minY], to: [x, box.maxY] },
    stations: Array.from({ length: count }, (_, i) => [(lengthM * i) / (count - 1), across?.[i] ?? old.meanM]),
  }
  return isLevel ? floor : fitted(floor, old, () => true, old)
}

/** Mean depth near each station, over the half stretches to its neighbours [m]. */
function meansAcross(old: Old, way: 0 | 1, lengthM: number): readonly (number | undefined)[] {
  const box = boundsOf(old.outline)
  const from = way === 0 ? box.minX : box.minY
  const sums = Array.from({ length: STATIONS }, () => ({ depthM: 0, count: 0 }))
  for (const place of placesInWater(old)) {
    const depthM = old.laid?.at(place)
    const near = sums[Math.round(((place[way] - from) / lengthM) * (STATIONS - 1))]
    if (depthM === undefined || !near) continue
    near.depthM += depthM
    near.count += 1
  }
  return sums.map(({ depthM, count }) => (count > 0 ? depthM / count : undefined))
}

/** Depths that were said stay as soundings where their places are known; guesses stand for the rest of the form. */
function soundingsFrom(old: Old): FloorOfKind {
  const { floor } = old
  const was = assumedDepths(old)
  if (floor.kind === 'profile') {
    const { from, to } = floor.axis
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
    const places = placesInWater(old)
    const points = floor.stations.map(([s, depthM]) => {
      const at = [from[0] + ((to[0] - from[0]) * s) / length, from[1] + ((to[1] - from[1]) * s) / length] as const
      return [...inWater(old, at, places), depthM] as const
    })
    return withGuesses(old, points, was)
  }
  if (floor.kind !== 'contours' && floor.kind !== 'dish')
    return guessed({ kind: 'soundings', edgeDepthM: old.meanM, points: [] })
  const centre = floor.kind === 'dish' ? [[...floor.centre, floor.depthM] as const] : []
  const around = floor.kind === 'dish' ? aroundDish(floor) : floor.rings.flatMap(aroundLine)
  const made: Floor = { kind: 'soundings', edgeDepthM: floor.edgeDepthM, points: [...centre, ...around] }
  const first = 1 + centre.length
  return {
    floor: fitted(made, old, (i) => i >= first, old),
    assumed: depthsOfFloor(made).map((_, i) => i >= first || was[i] === true),
  }
}

/**
 * With the shore taking the nearest depth the floor stays about what it was across the axis; where it doesn't, guesses of the
 * old floor's depth are put where no sounding is near.
 */
function withGuesses(old: Old, said: readonly Sounding[], was: readonly boolean[]): FloorOfKind {
  const points = [...said]
  const floor = (): Floor => ({ kind: 'soundings', edgeDepthM: null, points: [...points] })
  const places = placesInWater(old)
  for (let i = 0; i < MOST_GUESSES && !isLike(floor(), old, places); i++) {
    const farM = ([x, y]: Point) => Math.min(...points.map((point) => Math.hypot(point[0] - x, point[1] - y)))
    const at = places.reduce((a, b) => (farM(b) > farM(a) ? b : a), places[0] ?? old.outline.start)
    const depthM = old.laid?.at(at)
    if (depthM === undefined) break
    points.push([...at, depthM])
  }
  return {
    floor: points.length > said.length ? fitted(floor(), old, (i) => i >= said.length, old) : floor(),
    assumed: points.map((_, i) => i >= said.length || was[i] === true),
  }
}

/** Whether a floor holds about as much water as the old one, much where that did, and nowhere reaches deeper. */
function isLike(made: Floor, old: Old, places: readonly Point[]): boolean {
  const laid = laidFloor(made, old)
  // What can't be measured isn't mended by guesses.
  if (!laid || !old.laid) return true
  const rangeM = old.greatestM - old.leastM
  let squares = 0
  let count = 0
  for (let i = 0; i < places.length; i += EACH) {
    const [now, was] = [laid.at(places[i]!), old.laid.at(places[i]!)]
    if (now === undefined || was === undefined) continue
    if (now > old.greatestM + NEAR_ENOUGH * rangeM) return false
    squares += (now - was) ** 2
    count += 1
  }
  const isFormLike = Math.sqrt(squares / Math.max(1, count)) <= FORM_LIKE * rangeM
  return isFormLike && Math.abs(laid.meanM - old.meanM) <= NEAR_ENOUGH * old.meanM
}

type Sounding = readonly [x: number, y: number, depthM: number]

function aroundDish({ centre: [x, y], radiusM, edgeDepthM, depthM }: Extract<Floor, { kind: 'dish' }>): Sounding[] {
  return Array.from({ length: AROUND }, (_, i) => {
    const turn = (2 * Math.PI * i) / AROUND
    const farM = AROUND_SHARE * radiusM
    return [x + farM * Math.cos(turn), y + farM * Math.sin(turn), (edgeDepthM + depthM) / 2]
  })
}

function aroundLine({ path, depthM }: { readonly path: Path; readonly depthM: number }): Sounding[] {
  return path.segments.map(({ to }) => [...to, depthM] as const)
}

/** A place, or where it lies on dry land the nearest in the water. */
function inWater(old: Old, at: Point, places: readonly Point[]): Point {
  if (!old.laid || old.laid.at(at) !== undefined) return at
  const farM = ([x, y]: Point) => Math.hypot(x - at[0], y - at[1])
  return places.reduce((a, b) => (farM(b) < farM(a) ? b : a), places[0] ?? at)
}
