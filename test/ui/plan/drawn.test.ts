import { describe, expect, test } from 'vitest'
import { boundsOf, depthAt, type Partition } from '../../../src/basin/index.ts'
import { deriveBody } from '../../../src/derive/index.ts'
import { applyCommand, type Body, demoSpec } from '../../../src/document/index.ts'
import { planEdges } from '../../../src/ui/plan/edge-path.ts'
import { dragInPlan, dragStation } from '../../../src/ui/plan/edit.ts'
import { featureFrom } from '../../../src/ui/plan/feature-drag.ts'
import { figuresOf } from '../../../src/ui/plan/figures.ts'
import { boxesTouch } from '../../../src/ui/plan/labels.ts'
import { ringsPath } from '../../../src/ui/plan/svg-rings.ts'
import { fitSheet } from '../../../src/ui/sheet/fit.ts'
import { keyOf, OUTLINE } from '../../../src/ui/sheet/items.ts'
import { placeItems } from '../../../src/ui/sheet/place-items.ts'
import { type Scene, sectionLineOf } from '../../../src/ui/sheet/scene.ts'
import { fromScreen } from '../../../src/ui/sheet/view.ts'

const BODY: Body = { ...demoSpec.bodies[0]!, wall: { kind: 'vertical' } }
const margins = { left: 70, right: 90, planTop: 60, planBottom: 14, sectionTop: 34, sectionBottom: 36 }

function sceneOf(body: Body): Scene {
  const { view, panes } = fitSheet({
    width: 960,
    height: 530,
    bounds: boundsOf(body.outline),
    turn: 0,
    depthM: 2.2,
    aboveM: 0.15,
    margins,
  })
  const section = sectionLineOf(body)
  return {
    body,
    derived: deriveBody(body),
    section,
    units: 'metric',
    canEdit: true,
    levelM: 0,
    view,
    panes,
    isCoarse: false,
  }
}
const scene = sceneOf(BODY)
function partsOf(body: Body): Partition {
  const { partition } = deriveBody(body)
  if (!partition.ok) throw new Error(partition.problem.what)
  return partition.value
}

describe('figures of the plan', () => {
  const write = (depthM: number) => `${depthM.toFixed(2)} m`
  const figures = figuresOf({
    parts: partsOf(BODY),
    depthsM: [0.5, 1, 1.5, 2],
    view: scene.view,
    panes: scene.panes,
    write,
    writeContour: write,
    taken: [],
    sizePx: 13,
  })

  test('each sounding gives the depth at its place', () => {
    expect(figures.soundings.length).toBeGreaterThan(5)
    for (const sounding of figures.soundings) {
      const [x, y] = fromScreen(scene.view, scene.panes, sounding.at)
      expect(depthAt(partsOf(BODY), x, y)?.depthM).toBeCloseTo(sounding.depthM, 2)
    }
  })

  test('no figure lies on another, and the shelf has its own', () => {
    const boxes = [...figures.contours, ...figures.soundings].map((figure) => figure.box)
    boxes.forEach((a, i) => {
      boxes.slice(i + 1).forEach((b) => {
        expect(boxesTouch(a, b)).toBe(false)
      })
    })
    expect(figures.soundings.some((sounding) => sounding.text === '0.30 m')).toBe(true)
  })
})

test('under a wall that takes all of the water no depth of nothing is written', () => {
  const dry = {
    ...BODY,
    features: [],
    floor: { kind: 'flat', depthM: 1.5 },
    wall: { kind: 'cove', radiusM: 30 },
  } as const
  const { view, panes } = scene
  const write = (depthM: number) => depthM.toFixed(2)
  const input = { parts: partsOf(dry), depthsM: [], view, panes, write, writeContour: write, taken: [], sizePx: 13 }
  expect(figuresOf(input).soundings).toEqual([])
})

describe('what can be taken hold of', () => {
  const items = placeItems(scene, undefined)

  test('every node, station, feature and end of the section line is there once, and says its numbers', () => {
    expect(items.filter((p) => p.item.kind === 'node')).toHaveLength(8)
    expect(items.filter((p) => p.item.kind === 'station')).toHaveLength(5)
    expect(items.filter((p) => p.item.kind === 'feature')).toHaveLength(BODY.features.length)
    expect(items.filter((p) => p.item.kind === 'axis')).toHaveLength(2)
    expect(new Set(items.map((p) => p.key)).size).toBe(items.length)
    expect(items[1]?.label).toMatch(/^Point 2 of 8, .* right, .* up, smooth$/)
    expect(items.find((p) => p.item.kind === 'station')?.label).toMatch(/^Station 1 of 5, .* from A, .* deep$/)
  })

  test('the handles of a curve show where its point is selected', () => {
    const selected = placeItems(scene, { kind: 'node', bodyId: BODY.id, ring: OUTLINE, node: 2 })
    expect(selected.filter((p) => p.item.kind === 'control')).toHaveLength(2)
  })

  test('the tab order goes from points to stations to features to the section line', () => {
    const kinds = items.map((p) => p.item.kind)
    expect(kinds.lastIndexOf('node')).toBeLessThan(kinds.indexOf('station'))
    expect(kinds.lastIndexOf('station')).toBeLessThan(kinds.indexOf('feature'))
    expect(kinds.lastIndexOf('feature')).toBeLessThan(kinds.indexOf('axis'))
  })
})

describe('dragging', () => {
  test('a node comes to whole centimetres, or with Alt exactly where it is put', () => {
    const item = { kind: 'node', ring: OUTLINE, node: 4 } as const
    const drag = dragInPlan(scene, item, [11.2345, 3.1654], 0.02)
    const edited = drag && applyCommand(demoSpec, drag.command)
    expect(edited?.ok && edited.value.bodies[0]?.outline.segments[3]?.to).toEqual([11.23, 3.17])
    expect(drag?.remarks).toHaveLength(2)
    const free = dragInPlan(scene, item, [11.2345, 3.1654], 0)
    const exact = free && applyCommand(demoSpec, free.command)
    expect(exact?.ok && exact.value.bodies[0]?.outline.segments[3]?.to).toEqual([11.2345, 3.1654])
  })

  test('a station keeps its order and takes distance and depth', () => {
    const command = dragStation(scene, 1, [3.337, 1.273], false)
    const edited = command && applyCommand(demoSpec, command)
    const floor = edited?.ok ? edited.value.bodies[0]?.floor : undefined
    expect(floor?.kind === 'profile' && floor.stations[1]).toEqual([3.34, 1.27])
  })

  test('a feature is moved as a whole by its mark', () => {
    const drag = dragInPlan(scene, { kind: 'feature', feature: 1 }, [2, 2], 0.01)
    const edited = drag && applyCommand(demoSpec, drag.command)
    const feature = edited?.ok ? edited.value.bodies[0]?.features[1] : undefined
    expect(feature && 'centre' in feature && feature.centre).toEqual([2, 2])
  })

  test('steps dragged out of the wall measure as steps of this depth', () => {
    const ground = { outline: BODY.outline, parts: partsOf(BODY), units: 'metric' as const }
    const steps = featureFrom(ground, 'steps', [5.6, 0.1], [5.6, 1.6])
    const derived = deriveBody({ ...BODY, features: [steps] })
    if (!derived.measures.ok) throw new Error(derived.measures.problem.what)
    expect(derived.measures.value.wetted.riserM2).toBeGreaterThan(0.5)
    const bare = deriveBody({ ...BODY, features: [] })
    expect(bare.measures.ok && bare.measures.value.volumeM3).toBeGreaterThan(derived.measures.value.volumeM3)
  })

  test('keys name each item apart', () => {
    expect(keyOf({ kind: 'control', ring: OUTLINE, segment: 3, which: 'c1' })).toBe('control-o-3-c1')
  })
})

describe('paths', () => {
  test('far coordinates keep their digits by counting from an origin', () => {
    const d = ringsPath(
      [
        [
          [1_000_000.1234, 5],
          [1_000_001, 5],
          [1_000_001, 6],
        ],
      ],
      [1_000_000, 5],
      true,
    )
    expect(d).toBe('M0.1234 0L1 0L1 1Z')
  })

  test('edges of features and breaks of the floor are drawn, the outline is not', () => {
    const edges = planEdges(partsOf(BODY), [0, 0])
    expect(edges.features).toContain('A')
    expect(edges.breaks.length).toBeGreaterThan(0)
    const bare = planEdges(partsOf({ ...BODY, features: [], floor: { kind: 'flat', depthM: 1 } }), [0, 0])
    expect(bare).toEqual({ features: '', breaks: '' })
  })
})
