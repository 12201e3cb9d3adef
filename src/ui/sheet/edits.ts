import { boundsOf, type Path, type Point, transformPath } from '../../basin/index.ts'
import type { Body, Command, CommandArgs, RingRef, SegmentKind } from '../../document/index.ts'
import type { Feature } from '../../features/index.ts'
import type { AppStoreState } from '../../state/index.ts'
import type { UnitSystem } from '../../units/index.ts'
import type { Ring } from './items.ts'

/** Standard deviation of a drawing's scale before any length is known: it may be anything about a pool's size. */
const UNSCALED_SIGMA = 0.35

/** What lengths nobody has said yet are round in. */
export const roundIn = (units: UnitSystem) => (units === 'metric' ? 'metres' : 'feet')

function fromItsCorner(outline: Path): Path {
  const { minX, minY } = boundsOf(outline)
  return transformPath(outline, { a: 1, b: 0, c: 0, d: 1, e: -minX, f: -minY })
}

/** The commands that the sheet gives; the one place where their names and arguments are written. */
export const edits = {
  /**
   * A new basin from an outline laid out by hand, as a loop or by points: a sketch until its lengths are known. On a blank
   * sheet its coordinates are counted from the corner of its own box, as those of a starting outline are.
   */
  draw: (outline: Path, { settings, spec }: Pick<AppStoreState, 'settings' | 'spec'>): Command => ({
    id: 'drawOutline',
    args: {
      outline: spec.bodies.length === 0 ? fromItsCorner(outline) : outline,
      roundIn: roundIn(settings.units),
      sketch: { scaleSigma: UNSCALED_SIGMA },
    },
  }),
  movePoint: (bodyId: string, ring: Ring, node: number, to: Point): Command => ({
    id: 'movePoint',
    args: { bodyId, ring, node, to: [to[0], to[1]] },
  }),
  moveHandle: (bodyId: string, ring: Ring, segment: number, which: 'c1' | 'c2', to: Point): Command => ({
    id: 'moveHandle',
    args: { bodyId, ring, segment, which, to: [to[0], to[1]] },
  }),
  untangleLine: (bodyId: string, ring: RingRef, path: Path): Command => ({
    id: 'untangleLine',
    args: { bodyId, ring, path },
  }),
  setBulge: (bodyId: string, ring: Ring, segment: number, bulge: number): Command => ({
    id: 'setBulge',
    args: { bodyId, ring, segment, bulge },
  }),
  setSegmentKind: (bodyId: string, ring: Ring, segment: number, kind: SegmentKind): Command => ({
    id: 'setSegmentKind',
    args: { bodyId, ring, segment, kind },
  }),
  setPointKind: (bodyId: string, ring: Ring, node: number, kind: 'corner' | 'smooth'): Command => ({
    id: 'setPointKind',
    args: { bodyId, ring, node, kind },
  }),
  insertPoint: (bodyId: string, ring: Ring, segment: number, t: number): Command => ({
    id: 'insertPoint',
    args: { bodyId, ring, segment, t },
  }),
  removePoint: (bodyId: string, ring: Ring, node: number): Command => ({
    id: 'removePoint',
    args: { bodyId, ring, node },
  }),
  setSegmentLength: (bodyId: string, ring: Ring, segment: number, lengthM: number): Command => ({
    id: 'setSegmentLength',
    args: { bodyId, ring, segment, lengthM },
  }),
  scaleSketch: (bodyId: string, lengths: { readonly lengthM?: number; readonly widthM?: number }): Command => ({
    id: 'scaleSketch',
    args: { bodyId, ...lengths },
  }),
  /** What was drawn on the grid is as long and as wide as it looks there. */
  takeAsDrawn: ({ id, outline }: Body): Command => {
    const { minX, minY, maxX, maxY } = boundsOf(outline)
    return { id: 'scaleSketch', args: { bodyId: id, lengthM: maxX - minX, widthM: maxY - minY } }
  },
  stretchOutline: (bodyId: string, axis: 'x' | 'y', lengthM: number): Command => ({
    id: 'stretchOutline',
    args: { bodyId, axis, lengthM },
  }),
  setFloor: (bodyId: string, floor: Body['floor']): Command => ({ id: 'setFloor', args: { bodyId, floor } }),
  moveAxis: (bodyId: string, end: 'from' | 'to', to: Point): Command => ({
    id: 'moveAxis',
    args: { bodyId, end, to: [to[0], to[1]] },
  }),
  moveStation: (bodyId: string, station: number, sM: number, depthM: number): Command => ({
    id: 'moveStation',
    args: { bodyId, station, sM, depthM },
  }),
  /** A depth that somebody says, even where it was guessed just so. */
  setStationDepth: (bodyId: string, station: number, sM: number, depthM: number): Command => ({
    id: 'moveStation',
    args: { bodyId, station, sM, depthM, saysDepth: true },
  }),
  addStation: (bodyId: string, sM: number): Command => ({ id: 'addStation', args: { bodyId, sM } }),
  removeStation: (bodyId: string, station: number): Command => ({ id: 'removeStation', args: { bodyId, station } }),
  addContour: (bodyId: string, path: Path): Command => ({ id: 'addContour', args: { bodyId, path } }),
  addContourInside: (bodyId: string): Command => ({ id: 'addContour', args: { bodyId } }),
  setContourDepth: (bodyId: string, contour: number, depthM: number): Command => ({
    id: 'setContourDepth',
    args: { bodyId, contour, depthM },
  }),
  moveContour: (bodyId: string, contour: number, [dxM, dyM]: Point): Command => ({
    id: 'moveContour',
    args: { bodyId, contour, dxM, dyM },
  }),
  removeContour: (bodyId: string, contour: number): Command => ({ id: 'removeContour', args: { bodyId, contour } }),
  addSounding: (bodyId: string, at: Point, depthM: number): Command => ({
    id: 'addSounding',
    args: { bodyId, at: [at[0], at[1]], depthM },
  }),
  moveSounding: (bodyId: string, sounding: number, to: Point): Command => ({
    id: 'moveSounding',
    args: { bodyId, sounding, to: [to[0], to[1]] },
  }),
  setSoundingDepth: (bodyId: string, sounding: number, depthM: number): Command => ({
    id: 'setSoundingDepth',
    args: { bodyId, sounding, depthM },
  }),
  removeSounding: (bodyId: string, sounding: number): Command => ({
    id: 'removeSounding',
    args: { bodyId, sounding },
  }),
  setEdgeDepth: (bodyId: string, depthM: number): Command => ({ id: 'setEdgeDepth', args: { bodyId, depthM } }),
  setDish: (bodyId: string, changes: Omit<CommandArgs<'setDish'>, 'bodyId'>): Command => ({
    id: 'setDish',
    args: { bodyId, ...changes },
  }),
  addFeature: (bodyId: string, feature: Feature): Command => ({ id: 'addFeature', args: { bodyId, feature } }),
  setFeature: (bodyId: string, index: number, feature: Feature): Command => ({
    id: 'setFeature',
    args: { bodyId, index, feature },
  }),
  removeFeature: (bodyId: string, index: number): Command => ({ id: 'removeFeature', args: { bodyId, index } }),
}
