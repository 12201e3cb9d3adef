export { levelForVolume } from './levels.ts'
export { measure, volumeAtLevel } from './measure.ts'
export { partition } from './partition.ts'
export type { Cell, Edge, Partition } from './partition-types.ts'
export { PARTS } from './parts.ts'
export type { Bounds, MeshOptions, NearestPoint, OutlineParameter, StartingOutline, Transform } from './pending.ts'
export {
  areaOf,
  bandsOf,
  boundsOf,
  contoursOf,
  depthAt,
  fitLoop,
  flatten,
  meshOf,
  nearestOn,
  pathLength,
  pointOn,
  reversePath,
  STARTING_OUTLINES,
  sectionOf,
  smoothThrough,
  splitSegment,
  svgPathOf,
  transformPath,
} from './pending.ts'
export type {
  Axis,
  Band,
  BasinMesh,
  BasinShape,
  ContourLine,
  CoveWall,
  DepthBand,
  DepthSample,
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
  Tolerance,
  VerticalWall,
  Wall,
  Wetted,
} from './types.ts'
