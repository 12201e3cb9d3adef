import type { Floor, Path, Segment, Tolerance, Wall } from '../basin/index.ts'
import type { Body, Sketch, Spec } from '../document/index.ts'
import type { Feature, FreeBench, WallBench } from '../features/index.ts'
import { type Notice, unknownKeys } from './unknown-keys.ts'

/** Each key of a type, by hand but complete: one that is missing or too many doesn't compile. */
type KeysOf<T> = { readonly [K in keyof T]-?: true }
type KeysByKind<T extends { readonly kind: string }> = {
  readonly [K in T['kind']]: KeysOf<Extract<T, { readonly kind: K }>>
}

const BODY: KeysOf<Body> = {
  id: true,
  name: true,
  system: true,
  outline: true,
  islands: true,
  floor: true,
  wall: true,
  features: true,
  freeboardM: true,
  levelM: true,
  tolerance: true,
  depthsMeasuredFrom: true,
  tileLineM: true,
  depthsAssumed: true,
  otherFloors: true,
  sketch: true,
}
const FLOORS: KeysByKind<Floor> = {
  flat: { kind: true, depthM: true },
  profile: { kind: true, axis: true, stations: true },
  contours: { kind: true, edgeDepthM: true, rings: true },
  soundings: { kind: true, edgeDepthM: true, points: true },
  dish: { kind: true, form: true, centre: true, radiusM: true, edgeDepthM: true, depthM: true },
}
const WALLS: KeysByKind<Wall> = {
  vertical: { kind: true },
  battered: { kind: true, run: true },
  cove: { kind: true, radiusM: true },
}
const WALL_BENCH: KeysOf<WallBench> = { kind: true, along: true, widthM: true, depthM: true }
const FREE_BENCH: KeysOf<FreeBench> = { kind: true, path: true, depthM: true }
const FEATURES: KeysByKind<Exclude<Feature, { readonly kind: 'bench' }>> = {
  shelf: { kind: true, path: true, depthM: true },
  ramp: { kind: true, path: true, axis: true, fromDepthM: true, toDepthM: true },
  steps: { kind: true, path: true, axis: true, treads: true },
  roundSteps: { kind: true, centre: true, treads: true },
}
const TOLERANCE: KeysOf<Tolerance> = { planM: true, depthM: true, tapeScale: true, datumM: true }
const SKETCH: KeysOf<Sketch> = { knownLengthM: true, knownWidthM: true, scaleSigma: true }
const SEGMENT: KeysOf<Segment> = { to: true, bulge: true, c1: true, c2: true }

/** Beyond this share of its letters changed, a key is like none. */
const MOST_CHANGED = 0.4
/** A line may carry handles of whoever drew it: only what is all but a key of its own is a slip. */
const SLIP = 0.3

/** A notice for each key of a document's bodies that nothing reads: a misspelt one would change the water without a word. */
export function bodyNotices({ bodies }: Spec, prefix: string): readonly Notice[] {
  const beside = prefix === '' ? '' : `${prefix}.`
  return bodies.flatMap((body, i) => {
    const path = `${beside}bodies[${i}]`
    return [
      ...keysOf(body, path, BODY),
      ...pathNotices(body.outline, `${path}.outline`),
      ...body.islands.flatMap((island, k) => pathNotices(island, `${path}.islands[${k}]`)),
      ...floorNotices(body.floor, `${path}.floor`),
      ...keysOf(body.wall, `${path}.wall`, WALLS[body.wall.kind]),
      ...body.features.flatMap((feature, k) => featureNotices(feature, `${path}.features[${k}]`)),
      ...keysOf(body.tolerance, `${path}.tolerance`, TOLERANCE),
      ...keysOf(body.sketch, `${path}.sketch`, SKETCH),
    ]
  })
}

function keysOf(value: unknown, path: string, known: Readonly<Record<string, true>>): readonly Notice[] {
  return unknownKeys(value, path, Object.keys(known), { isCalled: 'key', mostChanged: MOST_CHANGED })
}

function floorNotices(floor: Floor, path: string): readonly Notice[] {
  const rings = floor.kind === 'contours' ? floor.rings : []
  return [
    ...keysOf(floor, path, FLOORS[floor.kind]),
    ...rings.flatMap((ring, i) => pathNotices(ring.path, `${path}.rings[${i}].path`)),
  ]
}

function featureNotices(feature: Feature, path: string): readonly Notice[] {
  const bench = 'along' in feature ? WALL_BENCH : FREE_BENCH
  return [
    ...keysOf(feature, path, feature.kind === 'bench' ? bench : FEATURES[feature.kind]),
    ...('path' in feature ? pathNotices(feature.path, `${path}.path`) : []),
  ]
}

function pathNotices({ segments }: Path, path: string): readonly Notice[] {
  const known = { isCalled: 'key', mostChanged: SLIP, isNearOnly: true }
  return segments.flatMap((segment, i) => unknownKeys(segment, `${path}.segments[${i}]`, Object.keys(SEGMENT), known))
}
