import fc from 'fast-check'
import { type Path, type Point, type Segment, STARTING_OUTLINES, transformPath } from '../../src/basin/index.ts'
import { real } from './outlines.ts'

/** Rays about the origin that differ by less than a half, joined by lines, arcs or cubics that bend a little. */
const pool: fc.Arbitrary<Path> = fc
  .array(fc.record({ r: fc.oneof(fc.constantFrom(3, 4), real(2.8, 4.2)), kind: fc.nat(4), bend: real(-0.06, 0.2) }), {
    minLength: 4,
    maxLength: 9,
  })
  .map((rays) => {
    const at = (i: number): Point => {
      const angle = (2 * Math.PI * (i % rays.length)) / rays.length
      const { r } = rays[i % rays.length]!
      return [r * Math.cos(angle), r * Math.sin(angle)]
    }
    return { start: at(0), segments: rays.map(({ kind, bend }, i) => side(at(i), at(i + 1), kind, bend)) }
  })

function side(from: Point, to: Point, kind: number, bend: number): Segment {
  if (kind === 0) return { to }
  if (kind === 1) return { to, bulge: bend }
  const along = (t: number): Point => [
    from[0] + t * (to[0] - from[0]) + bend * (to[1] - from[1]),
    from[1] + t * (to[1] - from[1]) - bend * (to[0] - from[0]),
  ]
  // A handle may lie on its own point: the curve stands still there, and may bend without a radius.
  return { to, c1: kind === 3 ? from : along(1 / 3), c2: kind === 4 ? to : along(2 / 3) }
}

const rectangle = fc
  .tuple(fc.oneof(fc.constantFrom(4, 6), real(3, 8)), fc.oneof(fc.constantFrom(4, 6), real(3, 8)))
  .map(([w, h]) => ring([-w / 2, -h / 2], [w / 2, -h / 2], [w / 2, h / 2], [-w / 2, h / 2]))
const round = fc.oneof(fc.constantFrom(2, 3), real(1.5, 4)).map((r) => circle([0, 0], r))
/** As a person starts, with nothing changed, brought to the middle. */
const started = fc.nat(STARTING_OUTLINES.rows.length - 1).map((which) => {
  const made = STARTING_OUTLINES.rows[which]!.make({})
  if (!made.ok) throw new Error('an outline can’t be made from its own defaults')
  const [x, y] = middleOf(made.value)
  return transformPath(made.value, { a: 1, b: 0, c: 0, d: 1, e: -x, f: -y })
})
const outline = fc.oneof(
  { weight: 4, arbitrary: pool },
  { weight: 3, arbitrary: rectangle },
  { weight: 2, arbitrary: round },
  { weight: 1, arbitrary: started },
)

const ring = (start: Point, ...rest: Point[]): Path => ({ start, segments: rest.map((to) => ({ to })) })
const circle = ([x, y]: Point, r: number): Path => ({
  start: [x + r, y],
  segments: [
    { to: [x - r, y], bulge: 1 },
    { to: [x + r, y], bulge: 1 },
  ],
})
function middleOf({ start, segments }: Path): Point {
  const points = [start, ...segments.map(({ to }) => to)]
  return [0, 1].map((k) => points.reduce((sum, p) => sum + p[k]!, 0) / points.length) as unknown as Point
}

/** A place on the way from the middle, the origin, to some point of the outline. */
const spot = fc.record({ corner: fc.nat(30), share: fc.oneof(fc.constantFrom(0.25, 0.5), real(0.1, 0.75)) })
type Spot = { readonly corner: number; readonly share: number }
function placeOf({ start, segments }: Path, { corner, share }: Spot): Point {
  const [x, y] = segments[corner % (segments.length + 1)]?.to ?? start
  return [x * share, y * share]
}
const drawnIn = (path: Path, share: number): Path => transformPath(path, { a: share, b: 0, c: 0, d: share, e: 0, f: 0 })

/** A footprint that reaches over the wall, lies free in the water or round a place of it. */
const footprint = fc.record({ at: spot, reach: fc.oneof(fc.constantFrom(0.5, 1), real(0.2, 2)), isRound: fc.boolean() })
type Footprint = { readonly at: Spot; readonly reach: number; readonly isRound: boolean }
function footprintOn(outlined: Path, { at, reach, isRound }: Footprint): Path {
  const [x, y] = placeOf(outlined, at)
  if (isRound) return circle([x, y], reach)
  return ring([x - reach, y - reach], [x + reach, y - reach], [x + reach, y + reach / 2], [x - reach, y + reach / 2])
}

const depth = fc.oneof(fc.constantFrom(0.9, 1.2, 1.5), real(0.6, 2.5))
const shallow = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom(0.2, 0.3, 0.45, 0.6) },
  { weight: 4, arbitrary: real(0, 1.2) },
  { weight: 1, arbitrary: fc.constantFrom(-0.1, 0, 5) },
)
const axis = fc.integer({ min: 0, max: 15 }).map((i) => {
  const [x, y] = [4 * Math.cos((Math.PI * i) / 8), 4 * Math.sin((Math.PI * i) / 8)]
  return { from: [-x, -y], to: [x, y] }
})
const rising = (start: number, steps: fc.Arbitrary<number>, at: fc.Arbitrary<number>) =>
  fc.array(fc.tuple(steps, at), { minLength: 1, maxLength: 4 }).map((rows) => {
    let s = start
    return rows.map(([step, depthM]) => {
      s += step
      return [s, depthM]
    })
  })

type Placed = (outlined: Path) => Record<string, unknown>
const placed = <T>(given: fc.Arbitrary<T>, make: (outlined: Path, row: T) => Record<string, unknown>) =>
  given.map(
    (row): Placed =>
      (outlined) =>
        make(outlined, row),
  )

const FLOORS: readonly fc.Arbitrary<Placed>[] = [
  placed(depth, (_, depthM) => ({ kind: 'flat', depthM })),
  placed(fc.record({ axis, stations: rising(-1, fc.constantFrom(0.5, 1, 2, 3), depth) }), (_, row) => ({
    kind: 'profile',
    ...row,
  })),
  placed(
    fc.record({
      edgeDepthM: depth,
      rings: fc.subarray([0.65, 0.4, 0.2]),
      depthsM: fc.array(depth, { minLength: 3, maxLength: 3 }),
    }),
    (outlined, { edgeDepthM, rings, depthsM }) => ({
      kind: 'contours',
      edgeDepthM,
      rings: rings.map((share, i) => ({ depthM: depthsM[i]!, path: drawnIn(outlined, share) })),
    }),
  ),
  placed(
    fc.record({
      edgeDepthM: fc.option(depth, { freq: 3 }),
      points: fc.uniqueArray(fc.tuple(spot, depth), { minLength: 1, maxLength: 6, selector: ([{ share }]) => share }),
    }),
    (outlined, { edgeDepthM, points }) => ({
      kind: 'soundings',
      edgeDepthM,
      points: points.map(([at, depthM]) => [...placeOf(outlined, at), depthM]),
    }),
  ),
  placed(
    fc.record({ form: fc.constantFrom('cap', 'cone'), radiusM: real(0.3, 0.8), edgeDepthM: depth, share: real(0, 1) }),
    (_, { share, ...row }) => ({ kind: 'dish', centre: [0, 0], ...row, depthM: row.edgeDepthM + share * row.radiusM }),
  ),
]
const WALLS: readonly fc.Arbitrary<Record<string, unknown>>[] = [
  fc.constant({ kind: 'vertical' }),
  fc.record({ kind: fc.constant('cove'), radiusM: fc.oneof(fc.constantFrom(0.1, 0.2), real(0.02, 0.35)) }),
  fc.record({ kind: fc.constant('battered'), run: fc.oneof(fc.constantFrom(0.1, 0.2), real(0.02, 0.25)) }),
]
const FEATURES: readonly fc.Arbitrary<Placed>[] = [
  placed(fc.record({ path: footprint, depthM: shallow }), (outlined, { path, depthM }) => ({
    kind: 'shelf',
    path: footprintOn(outlined, path),
    depthM,
  })),
  placed(
    fc.record({ from: fc.nat(30), length: fc.nat(3), widthM: real(0.1, 0.6), depthM: shallow }),
    ({ segments }, { from, length, ...row }) => ({
      kind: 'bench',
      along: { fromSegment: from % segments.length, toSegment: (from + length) % segments.length },
      ...row,
    }),
  ),
  placed(fc.record({ path: footprint, axis, fromDepthM: shallow, toDepthM: shallow }), (outlined, row) => ({
    kind: 'ramp',
    ...row,
    path: footprintOn(outlined, row.path),
  })),
  placed(
    fc.record({ path: footprint, axis, treads: rising(1, fc.constantFrom(0.3, 0.5, 1), shallow) }),
    (outlined, row) => ({ kind: 'steps', ...row, path: footprintOn(outlined, row.path) }),
  ),
  placed(
    fc.record({ at: spot, treads: rising(0, fc.constantFrom(0.3, 0.5), shallow) }),
    (outlined, { at, treads }) => ({
      kind: 'roundSteps',
      centre: placeOf(outlined, at),
      treads,
    }),
  ),
]

const island = fc.record({ at: spot, r: real(0.1, 0.35) })

/**
 * A pool as people have them: nearly all can be measured, every floor under every wall with every feature alike often. What takes
 * most of the time, a triangulated floor under a leaning wall, is kept as one in `leaning` of them, and else has a vertical wall.
 */
export const ordinaryBody = (leaning: number): fc.Arbitrary<Record<string, unknown>> =>
  fc
    .record({
      outline,
      islands: fc.oneof(
        { weight: 4, arbitrary: fc.array(island, { maxLength: 0 }) },
        { weight: 5, arbitrary: fc.array(island, { minLength: 1, maxLength: 2 }) },
      ),
      // Lines of depth and soundings meet islands more often: they are drawn more often too.
      floor: fc.oneof(...FLOORS.map((arbitrary, i) => ({ weight: [9, 9, 15, 13, 14][i]!, arbitrary }))),
      wall: fc.oneof(...WALLS),
      features: fc.subarray([...FEATURES.keys()], { minLength: 2 }),
      drawn: fc.tuple(...FEATURES),
      levelM: fc.oneof(fc.constantFrom(0, 0, -0.1, 0.1), real(-0.4, 0.2)),
      freeboardM: fc.constantFrom(0, 0.15, 0.5),
      leans: leaning === 1 ? fc.constant(0) : fc.nat(leaning - 1),
    })
    .map(({ islands, floor, wall, features, drawn, leans, ...rest }) => {
      const made = floor(rest.outline)
      const isDear = made['kind'] === 'contours' || made['kind'] === 'soundings'
      return {
        ...rest,
        islands: islands.map(({ at, r }) => circle(placeOf(rest.outline, at), r)),
        floor: made,
        wall: isDear && leans > 0 ? { kind: 'vertical' } : wall,
        features: features.map((which) => drawn[which]!(rest.outline)),
      }
    })
