import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/basin/index.ts'
import { deriveBody } from '../../../src/derive/index.ts'
import { applyCommand, type Body, demoSpec } from '../../../src/document/index.ts'
import { dragInPlan } from '../../../src/ui/plan/edit.ts'
import { featureFrom } from '../../../src/ui/plan/feature-drag.ts'
import { floorLabels } from '../../../src/ui/plan/floor-labels.ts'
import { boxesTouch, boxOfText } from '../../../src/ui/plan/labels.ts'
import { featureShapes } from '../../../src/ui/sheet/feature-shapes.ts'
import { benchAlong } from '../../../src/ui/sheet/floor-gestures.ts'
import { itemOf, keyOf, selectionOf } from '../../../src/ui/sheet/items.ts'
import { pickAt } from '../../../src/ui/sheet/pick.ts'
import { placeItems } from '../../../src/ui/sheet/place-items.ts'
import { type Scene, sectionLineOf } from '../../../src/ui/sheet/scene.ts'
import { toScreen } from '../../../src/ui/sheet/view.ts'
import { bodyOf, RECTANGLE, richSpec } from '../../document/samples.ts'

const view = { turn: 0, scale: 60, u: 4.5, v: 2, stretch: 1, sectionScrollPx: 0 } as const
const panes = { width: 800, height: 700, planHeight: 480, datumY: 520 }

function sceneOf(body: Body): Scene {
  return {
    body,
    derived: deriveBody(body),
    section: sectionLineOf(body),
    units: 'metric',
    canEdit: true,
    levelM: 0,
    view,
    panes,
    isCoarse: false,
  }
}
const hopper = sceneOf(bodyOf(richSpec, 'hopper'))
const sounded = sceneOf(bodyOf(richSpec, 'sounded'))
const dished = sceneOf(bodyOf(richSpec, 'dished'))
const press = (point: Point) => ({ at: toScreen(view, panes, point), pointerType: 'mouse', isFree: false })

/** The body after what dragging an item to a place comes to. */
function dragged(scene: Scene, item: Parameters<typeof dragInPlan>[1], to: Point): Body {
  const drag = dragInPlan(scene, item, to, 0)
  if (!drag) throw new Error('nothing is dragged')
  const result = applyCommand({ ...demoSpec, bodies: [scene.body] }, drag.command)
  if (!result.ok) throw new Error(result.problem.what)
  return result.value.bodies[0]!
}

describe('what of a floor can be taken hold of', () => {
  test('a depth line as a whole; its points once it is selected', () => {
    const keys = placeItems(hopper, undefined).map((p) => p.key)
    expect(keys).toContain('contour-0')
    expect(keys.some((key) => key.startsWith('node-c0'))).toBe(false)
    const selected = placeItems(hopper, { kind: 'contour', bodyId: 'hopper', contour: 0 })
    expect(selected.filter((p) => p.key.startsWith('node-c0')).length).toBe(4)
    expect(selected.find((p) => p.key === 'contour-0')!.label.replace(/\s/g, ' ')).toBe(
      'Depth line 1 of 1, 2.30 m deep, 3.00 m by 2.00 m',
    )
  })

  test('every sounding, with its depth and place in words', () => {
    const labels = placeItems(sounded, undefined).flatMap((p) =>
      p.item.kind === 'sounding' ? [p.label.replace(/\s/g, ' ')] : [],
    )
    expect(labels[0]).toBe('Sounding 1 of 3, 1.20 m deep, 2.00 m right, 2.00 m up')
    expect(labels.length).toBe(3)
  })

  test('every item becomes a selection and comes back from it', () => {
    for (const scene of [hopper, sounded, dished]) {
      for (const { item, key } of placeItems(scene, { kind: 'contour', bodyId: 'hopper', contour: 0 })) {
        if (item.kind === 'control' || item.kind === 'feature-handle') continue
        const back = itemOf(selectionOf(item, scene.body.id))
        expect(back && keyOf(back)).toBe(key)
      }
    }
  })

  test('keys are told apart, whatever is selected', () => {
    const keys = placeItems(hopper, { kind: 'node', bodyId: 'hopper', ring: { of: 'contour', index: 0 }, node: 1 })
    expect(new Set(keys.map((p) => p.key)).size).toBe(keys.length)
  })
})

describe('pressing the plan', () => {
  test('a depth line is taken as a whole first, then by its side', () => {
    const at = press([5.5, 1.02])
    expect(pickAt(hopper, at, undefined)).toEqual({ kind: 'contour', contour: 0 })
    expect(pickAt(hopper, at, { kind: 'contour', bodyId: 'hopper', contour: 0 })).toEqual({
      kind: 'middle',
      ring: { of: 'contour', index: 0 },
      segment: 0,
    })
  })

  test('a bench along the wall is pressed on any of its stretches', () => {
    const shapes = featureShapes(hopper.body.features[0]!, RECTANGLE)
    expect(shapes.length).toBeGreaterThan(1)
    // Away from the wall itself, on the seat along the right and along the upper side.
    for (const at of [
      [8.75, 2],
      [6, 3.7],
    ] as const)
      expect(pickAt(hopper, press(at), undefined)).toEqual({ kind: 'feature', feature: 0 })
  })
})

describe('dragging', () => {
  test('a depth line moves as it is', () => {
    const { floor } = dragged(hopper, { kind: 'contour', contour: 0 }, [6.5, 3.5])
    if (floor.kind !== 'contours') throw new Error('another floor')
    // Its grip is the middle of its highest side, (5.5, 3).
    expect(floor.rings[0]!.path.start).toEqual([5, 1.5])
  })

  test('a sounding moves with its depth', () => {
    expect(dragged(sounded, { kind: 'sounding', sounding: 1 }, [5.5, 1]).floor).toMatchObject({
      points: [{}, [5.5, 1, 1.9], {}],
    })
  })

  test('a hollow is moved by its middle and widened by its rim, to whole centimetres', () => {
    expect(dragged(dished, { kind: 'dish', part: 'centre' }, [1, 0.5]).floor).toMatchObject({
      centre: [1, 0.5],
      radiusM: 1.6,
    })
    expect(dragged(dished, { kind: 'dish', part: 'radius' }, [0, 1.203]).floor).toMatchObject({ radiusM: 1.2 })
  })

  test('a ramp can be drawn out from anywhere along a curved wall, and there is a volume', () => {
    const body = bodyOf(demoSpec)
    const { partition } = deriveBody(body)
    const ground = { outline: body.outline, parts: partition.ok ? partition.value : undefined, units: 'us' } as const
    for (let x = 0.5; x < 10.6; x += 0.5)
      for (const [y, to] of [
        [0.2, 1.4],
        [0.2, 2.9],
        [5, 3],
      ] as const) {
        const ramp = featureFrom(ground, 'ramp', [x, y], [x, to])
        const { measures } = deriveBody({ ...body, features: [...body.features, ramp] })
        expect(measures.ok, `from ${x}, ${y} to ${to}`).toBe(true)
      }
  })

  test('a ramp falls no steeper than 1 : 7 and ends in the water', () => {
    const ground = { outline: RECTANGLE, parts: undefined, units: 'metric' } as const
    const ramp = featureFrom(ground, 'ramp', [0, 2], [3.5, 2])
    if (ramp.kind !== 'ramp') throw new Error('no ramp')
    expect(ramp.fromDepthM).toBe(0)
    expect(ramp.toDepthM / 3.5).toBeCloseTo(1 / 7, 9)
    expect(featureShapes(ramp, RECTANGLE).length).toBe(1)
  })

  test('a bench goes the shorter way round from one side to the other', () => {
    const scene = sceneOf({ ...bodyOf(richSpec, 'stadium'), outline: RECTANGLE })
    expect(benchAlong(scene, 0, 1)).toMatchObject({ along: { fromSegment: 0, toSegment: 1 } })
    expect(benchAlong(scene, 0, 3)).toMatchObject({ along: { fromSegment: 3, toSegment: 0 } })
    expect(benchAlong(scene, 2, 2)).toMatchObject({ along: { fromSegment: 2, toSegment: 2 } })
  })
})

describe('depths that a floor is given by', () => {
  test('are written beside their places; soundings with a cross', () => {
    const labels = floorLabels(sounded, (m) => `${m} m`)
    expect(labels.map((label) => label.text)).toEqual(['1.2 m', '1.9 m', '2.2 m'])
    expect(labels[0]!.at).toEqual(toScreen(view, panes, [2, 2]))
    expect(labels.every((label) => label.hasCross)).toBe(true)
    expect(floorLabels(hopper, (m) => `${m}`).map((label) => [label.text, label.hasCross])).toEqual([['2.3', false]])
    expect(floorLabels(sceneOf(bodyOf(richSpec)), (m) => `${m}`)).toEqual([])
  })

  test('soundings close together keep their crosses; no text lies on another or on a cross, and what finds no room is left out', () => {
    const body = bodyOf(richSpec, 'sounded')
    const points = Array.from({ length: 36 }, (_, i) => [2 + (i % 6) * 0.35, 1 + Math.floor(i / 6) * 0.3, 1.5] as const)
    const scene = sceneOf({ ...body, floor: { kind: 'soundings', edgeDepthM: 1, points } })
    const labels = floorLabels(scene, () => '4\' 11"')
    expect(labels).toHaveLength(36)
    const texts = labels.flatMap(({ textAt, text, sizePx }) => (textAt ? [boxOfText(text, textAt, sizePx)] : []))
    expect(texts.length).toBeGreaterThan(3)
    expect(texts.length, 'there is not room for all').toBeLessThan(36)
    const crosses = labels.map(({ at: [x, y] }) => ({ x, y, halfWidth: 5, halfHeight: 5 }))
    texts.forEach((box, i) => {
      expect([...texts.slice(0, i), ...crosses].filter((other) => boxesTouch(box, other))).toEqual([])
    })
  })

  test('beside the right wall a depth is written on its left, where there is water', () => {
    const body = bodyOf(richSpec, 'sounded')
    const [right] = body.outline.segments.map(({ to }) => to[0]).sort((a, b) => b - a)
    const points = [[right! - 0.15, 2, 1.5]] as const
    const [label] = floorLabels(
      sceneOf({ ...body, floor: { kind: 'soundings', edgeDepthM: 1, points } }),
      () => '1.50 m',
    )
    expect(label!.textAt![0]).toBeLessThan(label!.at[0])
  })

  test('the section goes through the hollow and through the deepest line', () => {
    expect(sectionLineOf(dished.body).axis.from[1]).toBe(0)
    expect(sectionLineOf(hopper.body).axis.from).toEqual([0, 2])
  })
})
