import { expect } from 'vitest'
import { boundsOf, type Floor } from '../../src/basin/index.ts'
import type { CommandId, Spec } from '../../src/document/index.ts'
import type { Sample } from './command-samples.ts'
import { bodyOf } from './samples.ts'

type FloorEdit = Extract<
  CommandId,
  | 'setFloorKind'
  | 'setEdgeDepth'
  | 'addContour'
  | 'setContourDepth'
  | 'moveContour'
  | 'removeContour'
  | 'addSounding'
  | 'moveSounding'
  | 'setSoundingDepth'
  | 'removeSounding'
  | 'setDish'
  | 'shiftDepths'
>

/** The floor of a body, as the kind that the test means. */
export function floorOf<Kind extends Floor['kind']>(spec: Spec, id: string, kind: Kind) {
  const { floor } = bodyOf(spec, id)
  expect(floor.kind).toBe(kind)
  return floor as Extract<Floor, { readonly kind: Kind }>
}

/** Edits of floors by contours, soundings and of dished ones. */
export const FLOOR_SAMPLES: { readonly [Id in FloorEdit]: Sample<Id> } = {
  setFloorKind: [
    { bodyId: 'main', kind: 'soundings' },
    (after, before) => {
      const old = floorOf(before, 'main', 'profile')
      expect(floorOf(after, 'main', 'soundings').points.map((p) => p[2])).toEqual(old.stations.map((s) => s[1]))
    },
  ],
  setEdgeDepth: [
    { bodyId: 'sounded', depthM: 1.05 },
    (after) => expect(floorOf(after, 'sounded', 'soundings').edgeDepthM).toBe(1.05),
  ],
  addContour: [
    { bodyId: 'hopper' },
    (after) => {
      const { rings } = floorOf(after, 'hopper', 'contours')
      expect(rings.length).toBe(2)
      expect(rings[1]!.depthM).toBeCloseTo(2.6, 12)
      // Inside the ring that was the innermost.
      const box = boundsOf(rings[1]!.path)
      expect(box.minX > 4 && box.maxX < 7 && box.minY > 1 && box.maxY < 3).toBe(true)
    },
  ],
  setContourDepth: [
    { bodyId: 'hopper', contour: 0, depthM: 2.5 },
    (after) => expect(floorOf(after, 'hopper', 'contours').rings[0]!.depthM).toBe(2.5),
  ],
  moveContour: [
    { bodyId: 'hopper', contour: 0, dxM: 0.5, dyM: -0.25 },
    (after) => expect(floorOf(after, 'hopper', 'contours').rings[0]!.path.start).toEqual([4.5, 0.75]),
  ],
  removeContour: [
    { bodyId: 'hopper', contour: 0 },
    (after) => expect(floorOf(after, 'hopper', 'contours').rings).toEqual([]),
  ],
  addSounding: [
    { bodyId: 'sounded', at: [1, 3.5], depthM: 1.1 },
    (after) => expect(floorOf(after, 'sounded', 'soundings').points[3]).toEqual([1, 3.5, 1.1]),
  ],
  moveSounding: [
    { bodyId: 'sounded', sounding: 1, to: [5.2, 1.4] },
    (after) => expect(floorOf(after, 'sounded', 'soundings').points[1]).toEqual([5.2, 1.4, 1.9]),
  ],
  setSoundingDepth: [
    { bodyId: 'sounded', sounding: 1, depthM: 1.95 },
    (after) => expect(floorOf(after, 'sounded', 'soundings').points[1]).toEqual([5, 1.5, 1.95]),
  ],
  removeSounding: [
    { bodyId: 'sounded', sounding: 0 },
    (after) => expect(floorOf(after, 'sounded', 'soundings').points[0]).toEqual([5, 1.5, 1.9]),
  ],
  setDish: [
    { bodyId: 'dished', form: 'cone', centre: [0.5, 0], radiusM: 1.2, depthM: 1.8 },
    (after) =>
      expect(floorOf(after, 'dished', 'dish')).toEqual({
        kind: 'dish',
        form: 'cone',
        centre: [0.5, 0],
        radiusM: 1.2,
        edgeDepthM: 1.3,
        depthM: 1.8,
      }),
  ],
  shiftDepths: [
    { bodyId: 'hopper', byM: 0.1 },
    (after) => {
      const floor = floorOf(after, 'hopper', 'contours')
      expect([floor.edgeDepthM, floor.rings[0]!.depthM]).toEqual([1.2000000000000002, 2.4])
    },
  ],
}
