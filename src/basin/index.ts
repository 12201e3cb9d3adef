export { bandsOf } from './bands.ts'
export { buriedFeatures } from './buried.ts'
export { contoursOf } from './contours.ts'
export { depthAt } from './depth-at.ts'
export type { DerivativeKind, Uncertainty, VolumeDerivative } from './derivative-types.ts'
export { derivativesOf } from './derivatives.ts'
export { fitLoop } from './fit-loop.ts'
export { isInkedBreak } from './inked-breaks.ts'
export { levelBreaks } from './level-breaks.ts'
export { levelForVolume } from './levels.ts'
export { measure, volumeAtLevel } from './measure.ts'
export { type MeshOptions, meshOf } from './mesh.ts'
export { type OutlineParameter, STARTING_OUTLINES, type StartingOutline } from './outlines.ts'
export { overlapOf } from './overlap.ts'
export { partition } from './partition.ts'
export type { Cell, Edge, Partition } from './partition-types.ts'
export { PARTS } from './parts.ts'
export { closed } from './path.ts'
export { flatten, svgPathOf } from './path-draw.ts'
export { reversePath, splitSegment, type Transform, transformPath } from './path-edit.ts'
export { areaOf, type Bounds, boundsOf, type NearestPoint, nearestOn, pathLength, pointOn } from './path-figures.ts'
export { sectionOf } from './section.ts'
export { smoothThrough } from './smooth.ts'
export { solveForVolume, type VolumeMet, type VolumeWish } from './solve-volume.ts'
export { stripsAlong, type WallStrip } from './strips-along.ts'
export type {
  Axis,
  Band,
  BasinMesh,
  BasinShape,
  BatteredWall,
  ContourLine,
  ContoursFloor,
  CoveWall,
  DepthBand,
  DepthSample,
  DishFloor,
  FlatFloor,
  Floor,
  Measures,
  Part,
  Patch,
  Path,
  Plane,
  Point,
  ProfileFloor,
  SectionCut,
  Segment,
  SoundingsFloor,
  Tolerance,
  VerticalWall,
  VolumeErrors,
  Wall,
  Wetted,
} from './types.ts'
export { uncertaintyOf } from './uncertainty.ts'
export { untangle } from './untangle.ts'
export { waterAt } from './water-at.ts'
