import fc from 'fast-check'
import { type Path, type Point, type Transform, transformPath } from '../../src/basin/index.ts'
import { ordinaryBody } from './ordinary.ts'
import { footprint, outline, point, real } from './outlines.ts'
import { spoiltBody } from './spoilt.ts'

/** A document as it may come from a file, before anything is known of it. */
export type RawDocument = Record<string, unknown> & { readonly bodies: readonly RawBody[] }
export type RawBody = Record<string, unknown>

const depth = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(0, 0.3, 0.5, 1, 1.5, 2) },
  { weight: 1, arbitrary: fc.constantFrom(-0.5, 1e-9, 1 + 1e-12, 40) },
  { weight: 4, arbitrary: real(-0.5, 3) },
)
const axis = fc.record({ from: point, to: point })

/** Pairs of a rising distance and a depth, now and then out of order. */
const pairs = (maxLength: number, firstAt: number) =>
  fc
    .tuple(
      fc.array(fc.tuple(fc.constantFrom(0.25, 0.5, 1, 2, 1e-9, 1e-3), depth), { minLength: 1, maxLength }),
      fc.boolean(),
      fc.nat(40),
    )
    .map(([steps, isFalling, disorder]) => {
      let at = firstAt
      const rows = steps.map(([step, depthM]): [number, number] => {
        at += step
        return [at, depthM]
      })
      if (isFalling) {
        const depths = rows.map(([, depthM]) => depthM).sort((a, b) => a - b)
        rows.forEach((row, i) => {
          row[1] = depths[i]!
        })
      }
      if (disorder === 0) rows.reverse()
      return rows
    })

/** A path drawn in toward its own middle: what lies well inside an outline, or, at 1, on it. */
const middleOf = (path: Path): Point => {
  const points = [path.start, ...path.segments.map((s) => s.to)]
  return [0, 1].map((k) => points.reduce((sum, p) => sum + p[k]!, 0) / points.length) as unknown as Point
}
const within = (path: Path, share: number): Path => {
  const [x, y] = middleOf(path)
  return transformPath(path, { a: share, b: 0, c: 0, d: share, e: x * (1 - share), f: y * (1 - share) })
}
const share = fc.oneof(fc.constantFrom(0.5, 0.25, 0.9, 1, 0.999), real(0.05, 1.1))
/** A footprint of its own about some point of the outline, its middle or where it happens to be; or the outline drawn in. */
const ringWithin = fc.record({ own: fc.option(footprint, { freq: 3 }), share, anchor: fc.nat(20) })
type RingWithin = { own: Path | null; share: number; anchor: number }
function placedIn(outlined: Path, { own, share: by, anchor }: RingWithin): Path {
  if (!own) return within(outlined, by)
  const small = within(own, by)
  const [x, y] = middleOf(small)
  const [toX, toY] = anchored(outlined, anchor, [x, y])
  return transformPath(small, { a: 1, b: 0, c: 0, d: 1, e: toX - x, f: toY - y })
}

/** The middle of an outline, one of its points, half way between the two, or nothing of it. */
function anchored(outlined: Path, anchor: number, otherwise: Point): Point {
  const middle = middleOf(outlined)
  if (anchor % 4 === 0) return middle
  if (anchor % 7 === 1) return otherwise
  const vertex = outlined.segments[anchor % Math.max(1, outlined.segments.length)]?.to ?? outlined.start
  return anchor % 2 === 0 ? vertex : [(vertex[0] + middle[0]) / 2, (vertex[1] + middle[1]) / 2]
}

const floor = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('flat'), depthM: depth }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('profile'), axis, stations: pairs(5, -4) }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('contours'),
      edgeDepthM: depth,
      rings: fc.array(fc.record({ depthM: depth, path: ringWithin }), { maxLength: 3 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('soundings'),
      edgeDepthM: fc.option(depth),
      points: fc.array(fc.tuple(fc.nat(20), point, depth), { maxLength: 9 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('dish'),
      form: fc.constantFrom('cap', 'cone'),
      anchor: fc.nat(20),
      centre: point,
      radiusM: fc.oneof(fc.constantFrom(0.5, 1, 2, 5), real(1e-3, 8)),
      edgeDepthM: depth,
      depthM: depth,
    }),
  },
)

interface RawFloor {
  readonly kind: string
  readonly rings?: readonly { readonly depthM: number; readonly path: RingWithin }[]
  readonly points?: readonly (readonly [number, Point, number])[]
  readonly anchor?: number
  readonly centre?: Point
}

function placedFloor(outlined: Path, { rings, points, anchor, ...rest }: RawFloor): Record<string, unknown> {
  return {
    ...rest,
    ...(rings && { rings: rings.map(({ depthM, path }) => ({ depthM, path: placedIn(outlined, path) })) }),
    ...(points && { points: points.map(([near, at, depthM]) => [...anchored(outlined, near, at), depthM]) }),
    ...(anchor !== undefined && rest.centre && { centre: anchored(outlined, anchor, rest.centre) }),
  }
}

const radius = fc.oneof(fc.constantFrom(0.1, 0.3, 0.5, 1, 3), real(1e-6, 2))
const wall = fc.oneof(
  { weight: 10, arbitrary: fc.constant({ kind: 'vertical' }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('cove'), radiusM: radius }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('battered'),
      run: fc.oneof(fc.constantFrom(0, 0.25, 1, 5), real(0, 2)),
    }),
  },
)

const feature = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('shelf'), path: ringWithin, depthM: depth }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('bench'),
      along: fc.record({ fromSegment: fc.nat(5), toSegment: fc.nat(5) }),
      widthM: fc.oneof(fc.constantFrom(0.1, 0.45, 1), real(1e-4, 2)),
      depthM: depth,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('ramp'),
      path: ringWithin,
      axis,
      fromDepthM: depth,
      toDepthM: depth,
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('steps'), path: ringWithin, axis, treads: pairs(4, 0) }) },
  {
    weight: 2,
    arbitrary: fc.record({ kind: fc.constant('roundSteps'), anchor: fc.nat(20), centre: point, treads: pairs(4, 0) }),
  },
)

function placedFeature(outlined: Path, row: { readonly kind: string } & Record<string, unknown>): RawBody {
  const { anchor, path, ...rest } = row as { anchor?: number; path?: RingWithin; centre?: Point }
  if (path) return { ...rest, path: placedIn(outlined, path) }
  return anchor === undefined ? rest : { ...rest, centre: anchored(outlined, anchor, rest.centre ?? [0, 0]) }
}

const level = fc.oneof(fc.constantFrom(0, 0, -0.3, -0.5, 0.2), real(-2.5, 0.5))
const tolerance = fc.option(fc.record({ planM: fc.constantFrom(0, 0.02, 5), depthM: fc.constantFrom(0, 0.02) }), {
  freq: 3,
})

const body: fc.Arbitrary<RawBody> = fc
  .record({
    outline,
    islands: fc.array(ringWithin, { maxLength: 2 }),
    hasIslands: fc.nat(3),
    floor,
    wall,
    features: fc.array(feature, { maxLength: 4 }),
    levelM: level,
    freeboardM: fc.constantFrom(0, 0.15, 1),
    tolerance,
  })
  .map(({ islands, hasIslands, features, tolerance: known, ...rest }) => ({
    ...rest,
    islands: hasIslands === 0 ? islands.map((ring) => placedIn(rest.outline, ring)) : [],
    features: features.map((row) => placedFeature(rest.outline, row)),
    floor: placedFloor(rest.outline, rest.floor as unknown as RawFloor),
    ...(known ? { tolerance: known } : {}),
  }))

/** Where the whole plan is put: sizes from a millimetre to kilometres, turns that spoil the grid, map coordinates. */
const place = fc.record({
  scale: fc.oneof(
    { weight: 6, arbitrary: fc.constant(1) },
    { weight: 2, arbitrary: fc.constantFrom(1e-4, 0.01, 30, 900) },
  ),
  angle: fc.oneof(
    { weight: 4, arbitrary: fc.constant(0) },
    { weight: 2, arbitrary: fc.constantFrom(Math.PI / 2, 0.3, 1e-9, 1e-5) },
  ),
  origin: fc.oneof(
    { weight: 6, arbitrary: fc.constant([0, 0]) },
    { weight: 2, arbitrary: fc.constantFrom([12.5, -7.25], [5e5, 5e6], [1e-7, 0], [-9e7, 9e7]) },
  ) as unknown as fc.Arbitrary<number[]>,
})

/** Plan points by the keys under which a body holds them. */
const POINT_KEYS = new Set(['start', 'to', 'c1', 'c2', 'from', 'centre'])
const LENGTH_KEYS = new Set(['radiusM', 'widthM'])

function moved(value: unknown, m: Transform, scale: number, key = ''): unknown {
  if (typeof value === 'number') return LENGTH_KEYS.has(key) ? value * scale : value
  if (Array.isArray(value)) {
    if (POINT_KEYS.has(key)) return at(value[0], value[1], m)
    if (key === 'points') return value.map(([x, y, d]) => [...at(x, y, m), d])
    if (key === 'stations' || key === 'treads') return value.map(([s, d]) => [s * scale, d])
    return value.map((item) => moved(item, m, scale))
  }
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, moved(item, m, scale, name)]))
}

const at = (x: number, y: number, m: Transform): [number, number] => [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]

const WILD = [Number.NaN, Infinity, -Infinity, 1e308, -1e300, 1e-320, -0, 1e9, -1e6, 2 ** 53, 0.1 + 0.2] as const

/** Puts a wild value in place of the n-th number of a document (n counts round). */
function withWild(document: RawDocument, n: number, value: number): RawDocument {
  const holders: [Record<string, unknown>, string][] = []
  const walk = (holder: Record<string, unknown>): void => {
    for (const [key, item] of Object.entries(holder)) {
      if (typeof item === 'number') holders.push([holder, key])
      else if (typeof item === 'object' && item !== null) walk(item as Record<string, unknown>)
    }
  }
  const copy = structuredClone(document)
  for (const raw of copy.bodies) walk(raw)
  if (holders.length > 0) {
    const [holder, key] = holders[n % holders.length]!
    holder[key] = value
  }
  return copy
}

/** What the name of an ordinary pool’s document says. */
export const ORDINARY = 'Ordinary'

/** Anything that a file may hold: mostly refused, one body, seldom two. */
const wildDocument: fc.Arbitrary<RawDocument> = fc
  .record({
    bodies: fc.oneof(
      { weight: 15, arbitrary: fc.array(body, { minLength: 1, maxLength: 1 }) },
      { weight: 1, arbitrary: fc.array(body, { minLength: 2, maxLength: 2 }) },
    ),
    place,
    wild: fc.oneof(
      { weight: 11, arbitrary: fc.constant(undefined) },
      { weight: 1, arbitrary: fc.record({ at: fc.nat(200), value: fc.constantFrom(...WILD) }) },
    ),
  })
  .map(({ bodies, place: { scale, angle, origin }, wild }) => {
    const cos = scale * Math.cos(angle)
    const sin = scale * Math.sin(angle)
    const m: Transform = { a: cos, b: sin, c: -sin, d: cos, e: origin[0]!, f: origin[1]! }
    const document = {
      format: 'shoalbook-spec',
      version: 1,
      name: 'Fuzz',
      bodies: bodies.map((raw, i) => ({ id: `b${i}`, ...(moved(raw, m, scale) as RawBody) })),
    }
    return wild ? withWild(document, wild.at, wild.value) : document
  })

const named = (name: string, body: RawBody): RawDocument => ({
  format: 'shoalbook-spec',
  version: 1,
  name,
  bodies: [{ id: 'b0', ...body }],
})

/**
 * Whole documents: ordinary pools, which are measured; ones with one thing wrong, for every complaint; and anything at all.
 * Triangulated floors under leaning walls, which take most of the time, are kept as one in `leaning` ordinary pools that have them.
 */
export const rawDocument = (leaning: number): fc.Arbitrary<RawDocument> =>
  fc.oneof(
    { weight: 12, arbitrary: ordinaryBody(leaning).map((body) => named(ORDINARY, body)) },
    { weight: 3, arbitrary: spoiltBody.map((body) => named('Spoilt', body)) },
    { weight: 5, arbitrary: wildDocument },
  )
