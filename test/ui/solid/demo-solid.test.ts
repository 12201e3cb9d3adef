import { describe, expect, test } from 'vitest'
import { nearestOn, PARTS, type Path, type Point } from '../../../src/basin/index.ts'
import { demoSpec } from '../../../src/document/index.ts'
import { axonometryOf } from '../../../src/ui/solid/axonometry.ts'
import { frameOfRim, placeOverWater } from '../../../src/ui/solid/frame.ts'
import { solidModelOf } from '../../../src/ui/solid/from-body.ts'
import { homeFor } from '../../../src/ui/solid/home.ts'
import { heightsOf, type SolidModel } from '../../../src/ui/solid/model.ts'
import { isOverBasin } from '../../../src/ui/solid/probe.ts'
import { probeAnew, probeBelow } from '../../../src/ui/solid/scene/pick.ts'
import { frameOf, HOME, type View } from '../../../src/ui/solid/turntable.ts'

const body = demoSpec.bodies[0]!
function modelOf(system: 'us' | 'metric', changed: Partial<typeof body> = {}): SolidModel {
  const model = solidModelOf({ ...body, ...changed }, system)
  if (!model.ok) throw new Error(model.problem.what)
  return model.value
}

/** Share of the treads' area whose middles show through the opening. */
function treadsInSight(model: SolidModel, view: View): number {
  const { positions, indices, parts, rings } = model.mesh
  const { back } = frameOf(view)
  let [seen, all] = [0, 0]
  parts.forEach((part, t) => {
    if (PARTS[part] !== 'feature') return
    const [a, b, c] = [0, 1, 2].map((k) => [
      ...positions.subarray(indices[t * 3 + k]! * 3, indices[t * 3 + k]! * 3 + 3),
    ])
    const middle = [0, 1, 2].map((k) => (a![k]! + b![k]! + c![k]!) / 3) as [number, number, number]
    const areaM2 = Math.abs((b![0]! - a![0]!) * (c![1]! - a![1]!) - (c![0]! - a![0]!) * (b![1]! - a![1]!)) / 2
    const up = (model.rimM - middle[2]) / back[2]
    all += areaM2
    if (isOverBasin(rings, middle[0] + back[0] * up, middle[1] + back[1] * up)) seen += areaM2
  })
  expect(all).toBeGreaterThan(0)
  return seen / all
}

describe('the example pool as a solid', () => {
  test('each contour line lies at its depth on the floor, and the depths are round in the shown unit', () => {
    for (const [system, unit] of [
      ['us', 0.3048],
      ['metric', 0.1],
    ] as const) {
      const { contours, sampleAt } = modelOf(system)
      expect(contours.length).toBeGreaterThan(2)
      for (const { depthM, points, closed } of contours) {
        expect(Math.abs(depthM / unit - Math.round(depthM / unit))).toBeLessThan(1e-9)
        // The ends of an open line run onto a wall or a riser, where the depth beside it is another.
        const ends = closed ? 0 : 1
        for (let i = 1 + ends; i < points.length - ends; i++) {
          const [a, b] = [points[i - 1]!, points[i]!]
          const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
          // Along a shore or a face it runs by chords: what is a millimetre aside may be land, or a tread.
          const off = [
            [0, 0],
            [1e-3, 0],
            [-1e-3, 0],
            [0, 1e-3],
            [0, -1e-3],
          ].map(([dx, dy]) => Math.abs((sampleAt(x + dx!, y + dy!)?.depthM ?? 9) - depthM))
          const isAtShore = nearestOn(body.outline, x, y).distanceM < 1e-3
          expect(isAtShore ? 0 : Math.min(...off), `${depthM} at ${a}`).toBeLessThan(0.03)
        }
      }
    }
  })

  test('contour lines are round from what depths are measured from', () => {
    const model = modelOf('us', { depthsMeasuredFrom: 'rim', freeboardM: 0.2 })
    expect(model.referenceM).toBe(0.2)
    for (const { depthM } of model.contours) {
      const shown = (depthM + 0.2) / 0.3048
      expect(Math.abs(shown - Math.round(shown))).toBeLessThan(1e-9)
    }
  })

  test('another level leaves mesh, contours and all as they are, so that nothing is uploaded anew', () => {
    const model = modelOf('us')
    expect(modelOf('us', { levelM: -0.3 })).toBe(model)
    expect(modelOf('metric').mesh).toBe(model.mesh)
  })

  test('the shell reaches from the deepest place to the rim', () => {
    const model = modelOf('us')
    const [lowM, highM] = heightsOf(model.mesh)
    expect(lowM).toBeCloseTo(-model.maxDepthM, 6)
    expect(highM).toBeCloseTo(body.freeboardM, 5)
  })

  test('it is first seen from where more of its treads show than from the plan’s own side', () => {
    const model = modelOf('us')
    const home = homeFor(model, frameOfRim(model, 0.75), 1.5)
    expect(treadsInSight(model, home)).toBeGreaterThan(0.75)
    expect(treadsInSight(model, home)).toBeGreaterThanOrEqual(treadsInSight(model, HOME))
  })

  test('the corners of its rim stay in the picture, however many points its bends have beside them', () => {
    const outline: Path = {
      start: [0, 0],
      segments: [{ to: [8, 0] }, { to: [8, 5], bulge: 0.9 }, { to: [0, 5] }, { to: [0, 0] }],
    }
    const model = modelOf('metric', { outline, islands: [], features: [], floor: { kind: 'flat', depthM: 1.5 } })
    const points = frameOfRim(model, 0.5)
    const [originX, originY] = model.mesh.origin
    for (const [x, y] of [
      [-0.5, 0],
      [-0.5, 5],
    ] as const)
      expect(Math.min(...points.map(([px, py]) => Math.hypot(px + originX - x, py + originY - y)))).toBeLessThan(1e-6)
  })

  test('a sounding stays at its place of the plan when an edit moves the middle of the outline', () => {
    const far = {
      ...body.outline,
      segments: body.outline.segments.map((s, i) => (i === 2 ? { ...s, to: [9, -1] as Point } : s)),
    }
    const [was, now] = [modelOf('us'), modelOf('us', { outline: far })]
    expect(now.mesh.origin).not.toEqual(was.mesh.origin)
    const [x, y] = [5.2 - was.mesh.origin[0], 2.6 - was.mesh.origin[1]]
    const at = probeBelow(was, x, y, () => undefined)!
    const anew = probeAnew(at, was, now, () => undefined)!
    expect(anew.x + now.mesh.origin[0]).toBeCloseTo(5.2, 12)
    expect(anew.y + now.mesh.origin[1]).toBeCloseTo(2.6, 12)
    expect(anew.z).toBeCloseTo(at.z, 9)
  })

  test('the lead is first let down over water', () => {
    const model = modelOf('us')
    const place = placeOverWater(model)
    expect(place && isOverBasin(model.mesh.rings, place[0], place[1])).toBe(true)
    expect(place && model.sampleAt(place[0], place[1])?.depthM).toBeGreaterThan(0)
  })

  test('at map coordinates its lines, tints and soundings lie where the shell does: about its own origin', () => {
    const path = (at: Point, rM: number): Path => ({
      start: [at[0] + rM, at[1]],
      segments: [
        { to: [at[0] - rM, at[1]], bulge: 1 },
        { to: [at[0] + rM, at[1]], bulge: 1 },
      ],
    })
    const at: Point = [512_000, 5_240_000]
    const floor = { kind: 'contours', edgeDepthM: 1, rings: [{ depthM: 2, path: path(at, 1) }] } as const
    const model = modelOf('metric', {
      outline: path(at, 4),
      islands: [],
      features: [],
      wall: { kind: 'vertical' },
      floor,
    })
    expect(model.mesh.origin).toEqual(at)
    const radii = [...model.contours.map(({ points }) => points), ...model.bands().flatMap(({ rings }) => rings)]
      .flat()
      .map(([x, y]) => Math.hypot(x, y))
    expect(radii.length).toBeGreaterThan(100)
    expect(Math.max(...radii)).toBeLessThan(4.001)
    expect(Math.max(...model.mesh.positions.map(Math.abs))).toBeLessThan(4.001)
    expect(model.sampleAt(0, 0)?.depthM).toBeCloseTo(2, 6)
    expect(model.sampleAt(2.5, 0)?.depthM).toBeCloseTo(1.5, 2)
    expect(model.sampleAt(5, 0)).toBeUndefined()
  })

  test('the still drawing has a tint for each band, the deepest drawn first, and lies inside its own box', () => {
    const model = modelOf('us')
    const drawing = axonometryOf(model)
    const depths = drawing.tints.map((tint) => Number(tint.key))
    expect(depths).toEqual(
      model
        .bands()
        .map((band) => Number(band.fromM.toFixed(3)))
        .toSorted((a, b) => b - a),
    )
    expect(depths.length).toBeGreaterThan(5)
    const [left, top, width, height] = drawing.viewBox.split(' ').map(Number) as [number, number, number, number]
    for (const [, x, y] of drawing.rim.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
      expect(Number(x)).toBeGreaterThan(left)
      expect(Number(x)).toBeLessThan(left + width)
      expect(Number(y)).toBeGreaterThan(top)
      expect(Number(y)).toBeLessThan(top + height)
    }
    expect(drawing.rim + drawing.edges + drawing.contours).not.toMatch(/NaN|Infinity/)
  })

  test('where a wall takes all of the water the solid says that, and complains of no picture', () => {
    const flat = { ...body, features: [], floor: { kind: 'flat', depthM: 1.5 } } as const
    const model = solidModelOf({ ...flat, wall: { kind: 'cove', radiusM: 30 } }, 'us')
    expect(model.ok ? 'a solid' : model.problem.code).toBe('no-water')
    expect(model.ok ? '' : model.problem.what).toMatch(/takes all of the water/)
    // Left dry by its level alone it is still a basin to look at.
    expect(solidModelOf({ ...flat, levelM: -1.6 }, 'us').ok).toBe(true)
  })
})
