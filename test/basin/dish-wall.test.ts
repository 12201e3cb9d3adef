import { describe, expect, it } from 'vitest'
import { gaussRule } from '../../src/basin/gauss.ts'
import {
  type BasinShape,
  type DishFloor,
  depthAt,
  derivativesOf,
  levelBreaks,
  measure,
  meshOf,
  type Path,
  sectionOf,
  volumeAtLevel,
  type Wall,
} from '../../src/basin/index.ts'
import { countedByDefinition } from './brute-force.ts'
import { BEAN, box, circle, divided, polygon, relative, shape } from './shapes.ts'

type Profile = (rho: number) => number

const RULE = gaussRule(40)
const COARSE = gaussRule(8)
const R = 4

/** Depth of a hollow at a distance from its centre, by its definition. */
function hollow(f: DishFloor): Profile {
  const h = Math.abs(f.depthM - f.edgeDepthM)
  const sphere = (f.radiusM ** 2 + h * h) / (2 * h)
  return (rho) => {
    if (rho >= f.radiusM) return f.edgeDepthM
    if (f.form === 'cone') return f.depthM + ((f.edgeDepthM - f.depthM) * rho) / f.radiusM
    const drop = Math.sqrt(sphere * sphere - rho * rho) - (sphere - h)
    return f.depthM > f.edgeDepthM ? f.edgeDepthM + drop : f.edgeDepthM - drop
  }
}

/** Depth under a wall n from the shore, by its definition. */
function walled(wall: Wall, floor: number, n: number): number {
  if (wall.kind === 'battered') return Math.min(floor, n / wall.run)
  if (wall.kind !== 'cove' || n >= wall.radiusM) return floor
  const r = wall.radiusM
  return Math.max(floor - r + Math.sqrt(r * r - (r - n) ** 2), Math.min(floor, 0))
}

/** Places within (0, most) at which a function changes its sign, by halving between many. */
function turns(f: Profile, most = R, count = 4000): number[] {
  const found: number[] = []
  for (let i = 0; i < count; i++) {
    let lo = most * Math.sin((Math.PI / 2) * (i / count))
    let hi = most * Math.sin((Math.PI / 2) * ((i + 1) / count))
    if (f(lo) > 0 === f(hi) > 0) continue
    const was = f(lo) > 0
    for (let k = 0; k < 60; k++) {
      const m = (lo + hi) / 2
      if (f(m) > 0 === was) lo = m
      else hi = m
    }
    found.push(hi)
  }
  return found
}

/** Volume, water surface and wetted floor with the wall's face of a body of revolution. */
function revolved(floor: DishFloor, wall: Wall, level: number) {
  const bare = hollow(floor)
  const depth: Profile = (rho) => walled(wall, bare(rho), R - rho)
  const stops = [0, floor.radiusM, R]
  if (wall.kind === 'cove') stops.push(R - wall.radiusM)
  stops.push(...turns((rho) => depth(rho) + level))
  stops.push(...turns((rho) => bare(rho) - depth(rho) - 1e-13))
  stops.push(...turns((rho) => depth(rho) - 1e-13), ...turns((rho) => bare(rho)))
  const at = stops.filter((s) => s >= 0 && s <= R).sort((a, b) => a - b)
  const out = { volume: 0, surface: 0, wetted: 0, perimeter: 0 }
  for (const rho of turns((q) => depth(q) + level)) out.perimeter += 2 * Math.PI * rho
  if (depth(R) + level > 0) out.perimeter += 2 * Math.PI * R
  for (let i = 1; i < at.length; i++) {
    const a = at[i - 1]!
    const run = at[i]! - a
    if (!(run > 1e-11)) continue
    // The slope by a central difference whose step keeps within the piece.
    for (let k = 0; k < RULE.at.length; k++) {
      const u = RULE.at[k]!
      const rho = a + run * u * u * (3 - 2 * u)
      const w = RULE.weight[k]! * run * 6 * u * (1 - u) * 2 * Math.PI * rho
      const s = depth(rho) + level
      if (s <= 0) continue
      const step = Math.min(rho - a, at[i]! - rho) / 1024
      const d = (h: number): number => (depth(rho + h) - depth(rho - h)) / (2 * h)
      const slope = (4 * d(step / 2) - d(step)) / 3
      out.volume += w * s
      out.surface += w
      out.wetted += w * Math.hypot(1, slope)
    }
  }
  return out
}

const FLOORS: readonly [string, DishFloor][] = (['cap', 'cone'] as const).flatMap((form): [string, DishFloor][] => [
  [`${form} down from the datum`, { kind: 'dish', form, centre: [0, 0], radiusM: R, edgeDepthM: 0, depthM: 1.2 }],
  [`${form} down from 0.9 m`, { kind: 'dish', form, centre: [0, 0], radiusM: R, edgeDepthM: 0.9, depthM: 2 }],
  [`${form} with its rim within`, { kind: 'dish', form, centre: [0, 0], radiusM: 3.9, edgeDepthM: 0.9, depthM: 2 }],
  [`mound, ${form}`, { kind: 'dish', form, centre: [0, 0], radiusM: R, edgeDepthM: 1.6, depthM: 0.4 }],
])
const WALLS: readonly [string, Wall][] = [
  ['a cove of 0.15 m', { kind: 'cove', radiusM: 0.15 }],
  ['a cove of 0.8 m', { kind: 'cove', radiusM: 0.8 }],
  ['a batter of 0.25', { kind: 'battered', run: 0.25 }],
  ['a batter of 3', { kind: 'battered', run: 3 }],
]

describe('a round bowl under a wall that leans is a body of revolution', () => {
  it.each(FLOORS.flatMap(([floor, f]) => WALLS.map(([wall, w]) => [floor, wall, f, w] as const)))(
    '%s under %s',
    (_, __, floor, wall) => {
      const p = divided(shape(circle(0, 0, R), { floor, wall }))
      for (const level of [-0.3, 0, 0.1]) {
        const m = measure(p, level)
        const truth = revolved(floor, wall, level)
        expect(relative(m.volumeM3, truth.volume)).toBeLessThan(1e-8)
        expect(relative(m.waterSurfaceM2, truth.surface)).toBeLessThan(1e-8)
        // The upright part of a wall: the foot's depth and what stands above the datum.
        const foot = Math.max(0, walled(wall, hollow(floor)(R), 0) + level)
        const upright = 2 * Math.PI * R * foot
        expect(relative(m.wetted.totalM2, truth.wetted + upright)).toBeLessThan(1e-7)
        expect(relative(m.perimeterM, truth.perimeter)).toBeLessThan(1e-7)
        for (const rho of [0.3, 2.5, 3.7, 3.86, 3.99])
          expect(depthAt(p, 0.6 * rho, 0.8 * rho)!.depthM).toBeCloseTo(walled(wall, hollow(floor)(rho), R - rho), 12)
        let deepest = 0
        for (let i = 0; i <= 40000; i++)
          deepest = Math.max(deepest, walled(wall, hollow(floor)((R * i) / 40000), (R * (40000 - i)) / 40000) + level)
        expect(Math.abs(m.maxDepthM - deepest)).toBeLessThan(1e-4)
        expect(m.maxDepthM).toBeGreaterThan(deepest - 1e-9)
      }
    },
  )
})

/** ∫ of depth over a round pool by rays from its centre, for a hollow that lies anywhere. */
function byRays(floor: DishFloor, wall: Wall, level: number, rays: number) {
  const bare = hollow(floor)
  const reach = wall.kind === 'cove' ? wall.radiusM : 0
  let volume = 0
  let surface = 0
  for (let j = 0; j < rays; j++) {
    const angle = (2 * Math.PI * (j + 0.5)) / rays
    const at: Profile = (q) =>
      bare(Math.hypot(q * Math.cos(angle) - floor.centre[0], q * Math.sin(angle) - floor.centre[1]))
    const depth: Profile = (q) => walled(wall, at(q), R - q)
    const turned = [...turns((q) => depth(q) + level), ...turns((q) => at(q) - depth(q) - 1e-13)]
    // A cone's tip bends what a ray sees as it passes by.
    const by = Math.max(0, floor.centre[0] * Math.cos(angle) + floor.centre[1] * Math.sin(angle))
    const stops = [0, by, by / 2, by + (R - reach - by) / 4, R - reach, R, ...turned].sort((a, b) => a - b)
    for (let i = 1; i < stops.length; i++) {
      const a = stops[i - 1]!
      const run = stops[i]! - a
      for (let k = 0; k < RULE.at.length; k++) {
        const u = RULE.at[k]!
        const q = a + run * u * u * (3 - 2 * u)
        const w = ((RULE.weight[k]! * run * 6 * u * (1 - u) * 2 * Math.PI) / rays) * q
        const s = depth(q) + level
        if (s <= 0) continue
        volume += w * s
        surface += w
      }
    }
  }
  return { volume, surface }
}

describe('a hollow off the middle of a round pool', () => {
  const about = { kind: 'dish', centre: [0.5, 0.3], radiusM: 6, edgeDepthM: 0.3, depthM: 2.2 } as const
  it.each((['cap', 'cone'] as const).flatMap((form) => WALLS.map(([wall, w]) => [form, wall, w] as const)))(
    'as a %s under %s',
    (form, _, wall) => {
      const floor: DishFloor = { ...about, form }
      const p = divided(shape(circle(0, 0, R), { floor, wall }))
      for (const level of [-0.3, 0.1]) {
        const truth = byRays(floor, wall, level, 192)
        const m = measure(p, level)
        expect(relative(m.volumeM3, truth.volume)).toBeLessThan(1e-7)
        expect(relative(m.waterSurfaceM2, truth.surface)).toBeLessThan(1e-7)
      }
    },
    30_000,
  )
})

/** The same over a box, by rays square to its sides up to where another side is as near. */
function byBoxRays(floor: DishFloor, wall: Wall, level: number, x0: number, y0: number, x1: number, y1: number) {
  const bare = hollow(floor)
  const [cx, cy] = floor.centre
  let volume = 0
  let surface = 0
  for (const [length, width, at] of [
    [x1 - x0, y1 - y0, (t: number, n: number) => [x0 + t, y0 + n]],
    [x1 - x0, y1 - y0, (t: number, n: number) => [x1 - t, y1 - n]],
    [y1 - y0, x1 - x0, (t: number, n: number) => [x0 + n, y1 - t]],
    [y1 - y0, x1 - x0, (t: number, n: number) => [x1 - n, y0 + t]],
  ] as const) {
    const half = Math.min(width, length) / 2
    const stops = [0, length, half, length - half, cx - x0, x1 - cx, cy - y0, y1 - cy]
    for (let i = 1; i < 192; i++) stops.push((length * i) / 192)
    const outer = stops.filter((t) => t >= 0 && t <= length).sort((a, b) => a - b)
    for (let i = 1; i < outer.length; i++)
      for (let k = 0; k < COARSE.at.length; k++) {
        const t = outer[i - 1]! + (outer[i]! - outer[i - 1]!) * COARSE.at[k]!
        const end = Math.min(t, length - t, width / 2)
        const floorAt: Profile = (n) => {
          const [x, y] = at(t, n) as [number, number]
          return bare(Math.hypot(x - cx, y - cy))
        }
        const depth: Profile = (n) => walled(wall, floorAt(n), n)
        const rim: Profile = (n) => {
          const [x, y] = at(t, n) as [number, number]
          return Math.hypot(x - cx, y - cy) - floor.radiusM
        }
        const nearest = at(t, 0)[0] === at(t, 1)[0] ? Math.abs(at(t, 0)[1]! - cy) : Math.abs(at(t, 0)[0]! - cx)
        const cuts = [0, end, nearest, nearest - 0.15, nearest + 0.15, wall.kind === 'cove' ? wall.radiusM : 0]
        for (const f of [rim, (n: number) => depth(n) + level, (n: number) => floorAt(n) - depth(n) - 1e-13])
          cuts.push(...turns(f, end, 300))
        const inner = cuts.filter((n) => n >= 0 && n <= end).sort((a, b) => a - b)
        for (let j = 1; j < inner.length; j++) {
          const run = inner[j]! - inner[j - 1]!
          for (let m = 0; m < RULE.at.length; m++) {
            const u = RULE.at[m]!
            const s = depth(inner[j - 1]! + run * u * u * (3 - 2 * u)) + level
            if (s <= 0) continue
            const w = COARSE.weight[k]! * (outer[i]! - outer[i - 1]!) * RULE.weight[m]! * run * 6 * u * (1 - u)
            volume += w * s
            surface += w
          }
        }
      }
  }
  return { volume, surface }
}

const OFF: readonly [string, Path, DishFloor][] = (['cap', 'cone'] as const).flatMap(
  (form): [string, Path, DishFloor][] => [
    [
      `a ${form} that a box cuts`,
      box(-2, -1.5, 3, 2),
      { kind: 'dish', form, centre: [0.6, 0.4], radiusM: 2.3, edgeDepthM: 0.7, depthM: 1.9 },
    ],
    [
      `a ${form} with its centre by the wall of an L`,
      polygon([-2, -2], [3, -2], [3, 0.5], [0.5, 0.5], [0.5, 3], [-2, 3]),
      { kind: 'dish', form, centre: [0.3, 0.2], radiusM: 2.4, edgeDepthM: 0.6, depthM: 1.6 },
    ],
    [
      `a mound, ${form}, that a freeform pool cuts`,
      BEAN,
      { kind: 'dish', form, centre: [2.4, 2], radiusM: 2.5, edgeDepthM: 1.5, depthM: 0.2 },
    ],
  ],
)
const LEAN: readonly Wall[] = [
  { kind: 'cove', radiusM: 0.5 },
  { kind: 'battered', run: 0.6 },
]
const shelf = (path: Path) => ({ kind: 'shelf', path, depthM: 0.9 }) as const
const SHELF = shelf(box(-1.6, -1.2, 1.1, 0.7))
const OTHER = shelf(box(0.4, 1.1, 3.1, 3))
const CASES = OFF.flatMap(([name, outline, floor]) =>
  LEAN.flatMap((wall) =>
    [false, true].map((withShelf) => [name, wall.kind, withShelf ? 'with' : 'without', outline, floor, wall] as const),
  ),
)
const made = (outline: Path, floor: DishFloor, wall: Wall, withShelf: string): BasinShape =>
  shape(outline, { floor, wall, features: withShelf === 'with' ? [outline === BEAN ? OTHER : SHELF] : [] })

describe('a hollow that a wall cuts anywhere', () => {
  it.each(
    OFF.filter(([, outline]) => outline.segments.length === 3).flatMap(([name, , floor]) =>
      LEAN.map((wall) => [name, wall.kind, floor, wall] as const),
    ),
  )(
    'agrees with rays square to the sides of a box: %s under %s',
    (_, __, floor, wall) => {
      const p = divided(shape(box(-2, -1.5, 3, 2), { floor, wall }))
      for (const level of [-0.3, 0.1]) {
        const m = measure(p, level)
        const truth = byBoxRays(floor, wall, level, -2, -1.5, 3, 2)
        expect(relative(m.volumeM3, truth.volume)).toBeLessThan(1e-7)
        expect(relative(m.waterSurfaceM2, truth.surface)).toBeLessThan(1e-6)
      }
    },
    60_000,
  )

  it.each(CASES)(
    'agrees with the definition counted in small squares: %s, %s, %s a shelf',
    (_, __, shelf, outline, floor, wall) => {
      const s = made(outline, floor, wall, shelf)
      const p = divided(s)
      const levels = [-0.4, 0, 0.1]
      const truth =
        outline === BEAN
          ? countedByDefinition(s, levels, 300, [-0.5, -0.5], 11)
          : countedByDefinition(s, levels, 500, [-2.1, -2.1], 5.3)
      levels.forEach((level, i) => {
        const m = measure(p, level)
        expect(relative(m.volumeM3, truth[i]!.volume)).toBeLessThan(2e-3)
        expect(relative(m.waterSurfaceM2, truth[i]!.area)).toBeLessThan(4e-3)
      })
    },
    30_000,
  )

  it.each(CASES)('has −V′ equal to the water surface: %s, %s, %s a shelf', (_, __, shelf, outline, floor, wall) => {
    const p = divided(made(outline, floor, wall, shelf))
    for (const level of [-0.83, -0.41, 0.07]) {
      const h = 1e-4
      const slope = (volumeAtLevel(p, level + h).volumeM3 - volumeAtLevel(p, level - h).volumeM3) / (2 * h)
      expect(Math.abs(slope - measure(p, level).waterSurfaceM2)).toBeLessThan(2e-5)
    }
  })

  it.each(CASES)(
    'has the derivatives that small changes show: %s, %s, %s a shelf',
    (_, __, shelf, outline, floor, wall) => {
      const level = -0.13
      const v = (parts: Partial<DishFloor>, by: Wall = wall, path: Path = outline): number =>
        volumeAtLevel(divided(made(path, { ...floor, ...parts }, by, shelf)), level).volumeM3
      const h = 1e-5
      const slope = (f: (h: number) => number): number => (f(h) - f(-h)) / (2 * h)
      const list = derivativesOf(divided(made(outline, floor, wall, shelf)), level)
      const at = (path: string) => list.find((d) => d.path === path)!.value
      const near = (value: unknown, truth: number): void => expect(Math.abs(Number(value) - truth)).toBeLessThan(2e-5)
      near(
        at('floor.depthM'),
        slope((d) => v({ depthM: floor.depthM + d })),
      )
      near(
        at('floor.edgeDepthM'),
        slope((d) => v({ edgeDepthM: floor.edgeDepthM + d })),
      )
      near(
        at('floor.radiusM'),
        slope((d) => v({ radiusM: floor.radiusM + d })),
      )
      const centre = at('floor.centre') as readonly [number, number]
      near(
        centre[0],
        slope((d) => v({ centre: [floor.centre[0] + d, floor.centre[1]] })),
      )
      near(
        centre[1],
        slope((d) => v({ centre: [floor.centre[0], floor.centre[1] + d] })),
      )
      if (wall.kind === 'cove')
        near(
          at('wall.radiusM'),
          slope((d) => v({}, { ...wall, radiusM: wall.radiusM + d })),
        )
      if (wall.kind === 'battered')
        near(
          at('wall.run'),
          slope((d) => v({}, { ...wall, run: wall.run + d })),
        )
      const moved = (d: number): Path => ({ ...outline, start: [outline.start[0] + d, outline.start[1]] })
      const start = list.find((d) => d.path === 'outline.start')?.value as readonly [number, number] | undefined
      if (start && outline !== BEAN)
        near(
          start[0],
          slope((d) => v({}, wall, moved(d))),
        )
    },
  )

  it.each(CASES)('is drawn with its volume: %s, %s, %s a shelf', (_, __, shelf, outline, floor, wall) => {
    const p = divided(made(outline, floor, wall, shelf))
    expect(meshOf(p, { chordM: 0.01 }).ok).toBe(true)
    expect(levelBreaks(p).every(Number.isFinite)).toBe(true)
    expect(sectionOf(p, { from: [-3, 0.3], to: [11, 0.4] }).pieces.length).toBeGreaterThan(2)
  })
})
