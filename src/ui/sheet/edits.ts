import type { Axis, Path, Point } from '../../basin/index.ts'
import type { Body, Command, SegmentKind } from '../../document/index.ts'
import type { Feature } from '../../features/index.ts'
import type { Ring } from './items.ts'

/** Standard deviation of a freehand drawing's scale before any length is known: it may be anything about a pool's size. */
const UNSCALED_SIGMA = 0.35

/** The commands that the sheet gives; the one place where their names and arguments are written. */
export const edits = {
  /** A new basin from an outline; a loop drawn by hand is a sketch until its lengths are known. */
  draw: (outline: Path, isSketch: boolean): Command => ({
    id: 'setBody',
    args: { outline, ...(isSketch ? { sketch: { scaleSigma: UNSCALED_SIGMA } } : {}) },
  }),
  movePoint: (bodyId: string, ring: Ring, node: number, to: Point): Command => ({
    id: 'movePoint',
    args: { bodyId, ring, node, to: [to[0], to[1]] },
  }),
  moveControl: (bodyId: string, ring: Ring, segment: number, which: 'c1' | 'c2', to: Point): Command => ({
    id: 'moveControl',
    args: { bodyId, ring, segment, which, to: [to[0], to[1]] },
  }),
  setBulge: (bodyId: string, ring: Ring, segment: number, bulge: number): Command => ({
    id: 'setBulge',
    args: { bodyId, ring, segment, bulge },
  }),
  setSegmentKind: (bodyId: string, ring: Ring, segment: number, kind: SegmentKind): Command => ({
    id: 'setSegmentKind',
    args: { bodyId, ring, segment, kind },
  }),
  setNodeKind: (bodyId: string, ring: Ring, node: number, kind: 'corner' | 'smooth'): Command => ({
    id: 'setNodeKind',
    args: { bodyId, ring, node, kind },
  }),
  insertPoint: (bodyId: string, ring: Ring, segment: number, t: number): Command => ({
    id: 'insertPoint',
    args: { bodyId, ring, segment, t },
  }),
  deletePoint: (bodyId: string, ring: Ring, node: number): Command => ({
    id: 'deletePoint',
    args: { bodyId, ring, node },
  }),
  setSegmentLength: (bodyId: string, ring: Ring, segment: number, lengthM: number): Command => ({
    id: 'setSegmentLength',
    args: { bodyId, ring, segment, lengthM },
  }),
  stretchOutline: (bodyId: string, axis: 'x' | 'y', lengthM: number): Command => ({
    id: 'stretchOutline',
    args: { bodyId, axis, lengthM },
  }),
  setFloor: (bodyId: string, floor: Body['floor']): Command => ({ id: 'setFloor', args: { bodyId, floor } }),
  setAxis: (bodyId: string, axis: Axis): Command => ({ id: 'setAxis', args: { bodyId, axis } }),
  moveStation: (bodyId: string, index: number, sM: number, depthM: number): Command => ({
    id: 'moveStation',
    args: { bodyId, index, sM, depthM },
  }),
  addStation: (bodyId: string, sM: number): Command => ({ id: 'addStation', args: { bodyId, sM } }),
  removeStation: (bodyId: string, index: number): Command => ({ id: 'removeStation', args: { bodyId, index } }),
  addFeature: (bodyId: string, feature: Feature): Command => ({ id: 'addFeature', args: { bodyId, feature } }),
  updateFeature: (bodyId: string, index: number, feature: Feature): Command => ({
    id: 'updateFeature',
    args: { bodyId, index, feature },
  }),
  removeFeature: (bodyId: string, index: number): Command => ({ id: 'removeFeature', args: { bodyId, index } }),
}
