import { fail, type Problem, type Result } from '../base/index.ts'
import type { Partition } from './partition-types.ts'
import type { Axis, BasinMesh, ContourLine, DepthBand, DepthSample, Path, Point, SectionCut, Segment } from './types.ts'

export interface MeshOptions {
  readonly chordM?: number | undefined
}
export interface NearestPoint {
  readonly segmentIndex: number
  readonly t: number
  readonly point: Point
  readonly distanceM: number
}
export interface Bounds {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}
/** x' = a x + c y + e, y' = b x + d y + f. */
export interface Transform {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
}
export interface OutlineParameter {
  readonly id: string
  readonly label: string
  readonly defaultM: number
  readonly minM: number
  readonly maxM: number
}
export interface StartingOutline {
  readonly id: string
  readonly label: string
  readonly parameters: readonly OutlineParameter[]
  readonly make: (params: Readonly<Record<string, number>>) => Result<Path>
}
const p: Problem = { code: 'unfinished', path: '', what: '', why: '', hint: '' }
const no = (): never => {
  throw new Error('being built')
}
export const meshOf = (_: Partition, _options?: MeshOptions): Result<BasinMesh> => fail(p)
export const contoursOf = (_: Partition, _depthsM: readonly number[]): ContourLine[] => no()
export const bandsOf = (_: Partition, _depthsM: readonly number[]): DepthBand[] => no()
export const depthAt = (_: Partition, _x: number, _y: number): DepthSample | undefined => no()
export const sectionOf = (_: Partition, _axis: Axis): SectionCut => no()
export const boundsOf = (_: Path): Bounds => no()
export const pathLength = (_: Path): number => no()
export const areaOf = (_: Path): number => no()
export const pointOn = (_: Path, _segmentIndex: number, _t: number): Point => no()
export const nearestOn = (_: Path, _x: number, _y: number): NearestPoint => no()
export const splitSegment = (_: Path, _segmentIndex: number, _t: number): Path => no()
export const reversePath = (_: Path): Path => no()
export const transformPath = (_: Path, _m: Transform): Path => no()
export const flatten = (_: Path, _chordM: number): Point[] => no()
export const svgPathOf = (_: Path): string => no()
export const STARTING_OUTLINES: readonly StartingOutline[] = []
export const fitLoop = (_: readonly Point[], _toleranceM: number): Result<Path> => fail(p)
export const smoothThrough = (_: readonly Point[], _closed: boolean): Segment[] => no()
