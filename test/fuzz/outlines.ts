import fc from 'fast-check'
import { type Path, type Point, type Segment, STARTING_OUTLINES, smoothThrough } from '../../src/basin/index.ts'

const HAIRS = [0, 0, 0, 1e-15, 1e-12, 1e-10, -1e-9, 1e-6, -1e-4] as const

/** A number of a range: on a fine grid, since doubles drawn evenly by their bits are nearly all next to nothing; seldom any. */
export const real = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    { weight: 40, arbitrary: fc.integer({ min: 0, max: 1e9 }).map((i) => min + ((max - min) * i) / 1e9) },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true }) },
  )

/** A coordinate: mostly on a coarse grid, so that things fall together, sometimes a hair off it, sometimes anywhere. */
const coordinate = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: -6, max: 6 }) },
  { weight: 2, arbitrary: fc.integer({ min: -12, max: 12 }).map((i) => i / 2) },
  {
    weight: 1,
    arbitrary: fc.tuple(fc.integer({ min: -6, max: 6 }), fc.constantFrom(...HAIRS)).map(([at, hair]) => at + hair),
  },
  { weight: 3, arbitrary: real(-7, 7) },
)
export const point = fc.tuple(coordinate, coordinate) as fc.Arbitrary<Point>

const bulge = fc.oneof(
  fc.constantFrom(1, -1, 0, Math.SQRT2 - 1, 1 - Math.SQRT2, 0.5, -0.2, 1e-3, 1e-9, -1e-17, 30),
  real(-1.5, 1.5),
)

const segment: fc.Arbitrary<Segment> = fc.oneof(
  { weight: 3, arbitrary: point.map((to) => ({ to })) },
  { weight: 2, arbitrary: fc.record({ to: point, bulge }) },
  { weight: 2, arbitrary: fc.record({ to: point, c1: point, c2: point }) },
)

/** Anything at all: mostly crossing itself. */
const anyPath: fc.Arbitrary<Path> = fc.record({ start: point, segments: fc.array(segment, { maxLength: 8 }) })

/** Rays of any length about a middle, joined by lines, arcs or cubics: mostly sound, with re-entrant corners. */
const star: fc.Arbitrary<Path> = fc
  .tuple(
    point,
    fc.array(
      fc.record({
        r: fc.oneof(fc.constantFrom(1, 2, 3), real(0.5, 6)),
        kind: fc.nat(4),
        bend: fc.oneof(fc.constantFrom(0, 0.25), real(-0.45, 0.45)),
      }),
      { minLength: 3, maxLength: 11 },
    ),
    fc.boolean(),
  )
  .map(([middle, rays, isTurned]) => {
    const at = (i: number): Point => {
      const { r } = rays[i % rays.length]!
      const angle = ((isTurned ? -2 : 2) * Math.PI * (i % rays.length)) / rays.length
      return [middle[0] + r * Math.cos(angle), middle[1] + r * Math.sin(angle)]
    }
    return { start: at(0), segments: rays.map(({ kind, bend }, i) => joined(at(i), at(i + 1), kind, bend)) }
  })

function joined(from: Point, to: Point, kind: number, bend: number): Segment {
  if (kind === 0) return { to }
  if (kind === 1) return { to, bulge: bend }
  const along = (t: number): Point => [
    from[0] + t * (to[0] - from[0]) - bend * (to[1] - from[1]),
    from[1] + t * (to[1] - from[1]) + bend * (to[0] - from[0]),
  ]
  // A handle may lie on its own point: the curve stands still there, and may bend without a radius.
  return { to, c1: kind === 3 ? from : along(1 / 3), c2: kind === 4 ? to : along(2 / 3) }
}

export const box: fc.Arbitrary<Path> = fc.tuple(point, point).map(([[x0, y0], [x1, y1]]) => ({
  start: [x0, y0],
  segments: [{ to: [x1, y0] }, { to: [x1, y1] }, { to: [x0, y1] }],
}))

export const disc: fc.Arbitrary<Path> = fc
  .tuple(point, fc.oneof(fc.constantFrom(0.5, 1, 2, 3, 5), real(1e-3, 6)))
  .map(([[x, y], r]) => ({
    start: [x + r, y],
    segments: [
      { to: [x - r, y], bulge: 1 },
      { to: [x + r, y], bulge: 1 },
    ],
  }))

/** The outlines that a person starts from, with measures in and out of their range. */
const started: fc.Arbitrary<Path> = fc
  .tuple(fc.nat(), fc.array(real(0.05, 12), { minLength: 4, maxLength: 4 }))
  .map(([which, measures]) => {
    const kinds = STARTING_OUTLINES.rows
    const kind = kinds[which % kinds.length]!
    const given = Object.fromEntries(kind.parameters.map(({ id }, i) => [id, measures[i % measures.length]!]))
    for (const parameters of [given, {}]) {
      const made = kind.make(parameters)
      if (made.ok) return made.value
    }
    throw new Error(`${kind.id} can't be made from its own defaults`)
  })

const smooth: fc.Arbitrary<Path> = fc
  .array(point, { minLength: 3, maxLength: 9 })
  .map((points) => ({ start: points[0]!, segments: smoothThrough(points, true) }))

/** A comb of narrow teeth: long re-entrant sides close together. */
const comb: fc.Arbitrary<Path> = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.constantFrom(1, 0.25, 0.05, 1e-3, 1e-6, 1e-9), fc.boolean())
  .map(([teeth, gap, isRound]) => {
    const segments: Segment[] = []
    for (let i = 0; i < teeth; i++) {
      const x = 2 * i
      segments.push({ to: [x + 2 - gap, 0] }, { to: [x + 2 - gap, 3] })
      segments.push(isRound ? { to: [x + 2, 3], bulge: -1 } : { to: [x + 2, 3] }, { to: [x + 2, 0] })
    }
    segments.push({ to: [2 * teeth + 1, 0] }, { to: [2 * teeth + 1, 5] }, { to: [0, 5] })
    return { start: [0, 0], segments }
  })

/** A path with one of its points doubled, drawn out to a spike or moved by a hair, or with a segment gone. */
const blemished: fc.Arbitrary<Path> = fc
  .tuple(fc.oneof(star, box, disc), fc.nat(), fc.nat(3), fc.constantFrom(...HAIRS), point)
  .map(([path, at, how, hair, tip]) => {
    const segments = [...path.segments]
    const i = at % segments.length
    const to = segments[i]!.to
    if (how === 0) segments.splice(i + 1, 0, { to: [to[0] + hair, to[1]] })
    else if (how === 1) segments.splice(i + 1, 0, { to: tip }, { to })
    else if (how === 2) segments[i] = { ...segments[i]!, to: [to[0], to[1] + hair] }
    else segments.splice(i, 1)
    return { ...path, segments }
  })

/** Outlines of all kinds: sound ones for the most part, since a refused outline shows nothing of what follows it. */
export const outline = fc.oneof(
  { weight: 7, arbitrary: star },
  { weight: 3, arbitrary: box },
  { weight: 2, arbitrary: disc },
  { weight: 3, arbitrary: started },
  { weight: 2, arbitrary: smooth },
  { weight: 2, arbitrary: comb },
  { weight: 2, arbitrary: blemished },
  { weight: 2, arbitrary: anyPath },
)

/** Footprints of islands, rings and features. */
export const footprint = fc.oneof(
  { weight: 4, arbitrary: disc },
  { weight: 4, arbitrary: box },
  { weight: 4, arbitrary: star },
  { weight: 1, arbitrary: blemished },
  { weight: 1, arbitrary: anyPath },
)
