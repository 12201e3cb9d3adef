import { type BasinShape, type Floor, type Path, volumeAtLevel } from '../../src/basin/index.ts'
import { divided } from './shapes.ts'

/** Nested contours, from the shore's depth on. */
export const contours = (edgeDepthM: number, ...rings: (readonly [number, Path])[]): Floor => ({
  kind: 'contours',
  edgeDepthM,
  rings: rings.map(([depthM, path]) => ({ depthM, path })),
})

/** Points of depth, with the shore's depth where it is known. */
export const soundings = (edgeDepthM: number | null, ...points: (readonly [number, number, number])[]): Floor => ({
  kind: 'soundings',
  edgeDepthM,
  points,
})

export const volume = (s: BasinShape, levelM = 0): number => volumeAtLevel(divided(s), levelM).volumeM3
