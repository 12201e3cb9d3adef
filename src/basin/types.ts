/**
 * The shapes a basin is made of. Plan frame: x right, y up [m]. Depth is positive downward from the nominal
 * waterline, the datum [m]. These types are the ones a saved document carries (see src/document).
 */
export type Point = readonly [x: number, y: number]

/** A straight line, an arc (`bulge` = tan(θ/4), positive counter-clockwise) or a cubic Bézier (`c1`, `c2`). */
export interface Segment {
  readonly to: Point
  readonly bulge?: number | undefined
  readonly c1?: Point | undefined
  readonly c2?: Point | undefined
}

/** A closed path; a last `to` that differs from `start` is joined by a line. Either direction. */
export interface Path {
  readonly start: Point
  readonly segments: readonly Segment[]
}

export interface Axis {
  readonly from: Point
  readonly to: Point
}

export interface FlatFloor {
  readonly kind: 'flat'
  readonly depthM: number
}

/** Depth along an axis, the same all across it; linear between stations, constant beyond them. */
export interface ProfileFloor {
  readonly kind: 'profile'
  readonly axis: Axis
  readonly stations: readonly (readonly [sM: number, depthM: number])[]
}

/** Depth at the outline and islands, and along nested rings; linear on the constrained Delaunay triangulation of all of them. */
export interface ContoursFloor {
  readonly kind: 'contours'
  readonly edgeDepthM: number
  /** In any order; the inside of an innermost ring is flat. */
  readonly rings: readonly { readonly depthM: number; readonly path: Path }[]
}

/** Depths measured at points; linear on the Delaunay triangulation of points and shore. */
export interface SoundingsFloor {
  readonly kind: 'soundings'
  /** Depth along outline and islands; null lets the shore take the depth of the nearest sounding. */
  readonly edgeDepthM: number | null
  readonly points: readonly (readonly [x: number, y: number, depthM: number])[]
}

/** A level floor with a round hollow: a cap of a sphere, or a cone. */
export interface DishFloor {
  readonly kind: 'dish'
  readonly form: 'cap' | 'cone'
  readonly centre: Point
  /** Radius of the hollow's rim in plan [m]. */
  readonly radiusM: number
  /** Depth from the rim of the hollow outward [m]. */
  readonly edgeDepthM: number
  /** Depth at the centre [m]. */
  readonly depthM: number
}

export type Floor = FlatFloor | ProfileFloor | ContoursFloor | SoundingsFloor | DishFloor

export interface VerticalWall {
  readonly kind: 'vertical'
}

/** Within s < r of a wall the floor rises by r − √(r² − (r − s)²), never above the datum. */
export interface CoveWall {
  readonly kind: 'cove'
  readonly radiusM: number
}

/** At distance n from the waterline's edge the wall allows the depth n / run; above the datum it goes straight up. */
export interface BatteredWall {
  readonly kind: 'battered'
  /** Horizontal metres for each metre of depth [1]; 0 is a vertical wall. */
  readonly run: number
}

export type Wall = VerticalWall | CoveWall | BatteredWall

/** Depth as a linear function of place: depth = atOrigin + dx·x + dy·y [m]. */
export interface Plane {
  readonly atOrigin: number
  readonly dx: number
  readonly dy: number
}

/** A footprint that stands in the water at a given depth: what a feature comes down to. The shallowest rules. */
export interface Patch {
  readonly path: Path
  readonly plane: Plane
  /** Index of the feature that it belongs to. */
  readonly feature: number
  /** Only the part of the footprint between two lines across an axis, e.g. one tread of a flight. */
  readonly band?: Band | undefined
  /** Only the part of the footprint outside this path, e.g. a ring of a round flight. */
  readonly except?: Path | undefined
  /** How far the path may lie from the curve that is meant, where it only comes near it [m]. */
  readonly offM?: number | undefined
  /** Weight of each of the feature's depths in this plane, linear in place; without it the plane is one depth of its own. */
  readonly weights?: readonly { readonly depthIndex: number; readonly plane: Plane }[] | undefined
  /** What the feature calls those depths by their numbers, e.g. `treads[1][1]`; without it `depthM`. */
  readonly depthNames?: readonly string[] | undefined
  /** What its edge is measured from; without it the edge stands where it is. */
  readonly measuredFrom?: EdgeOrigin | undefined
}

/**
 * What the edge of a footprint is measured from: a segment of the outline, at a width, the whole of it or the part about one
 * of its ends or carried on past that; or a centre, at a radius that the feature calls by a name.
 */
export type EdgeOrigin =
  | {
      readonly kind: 'shore'
      readonly segment: number
      readonly widthM: number
      readonly end?: 0 | 1 | undefined
      readonly isCarried?: boolean
    }
  | { readonly kind: 'centre'; readonly centre: Point; readonly radiusName: string }

/** The places whose distance along the axis from `axis.from` lies between two values; ±Infinity leaves a side open [m]. */
export interface Band {
  readonly axis: Axis
  readonly fromM: number
  readonly toM: number
  /** What the feature calls the two distances, e.g. `treads[1][0]`; without names they are those of the axis' own ends. */
  readonly names?: readonly [from: string, to: string] | undefined
}

export interface Tolerance {
  /** One standard deviation of a measured point in plan [m]. */
  readonly planM: number
  /** One standard deviation of a measured depth [m]. */
  readonly depthM: number
  /** One standard deviation of the tape's scale, an error that all distances in plan share [1]. */
  readonly tapeScale?: number | undefined
  /** One standard deviation of the waterline that all depths were read from, an error that they share [m]. */
  readonly datumM?: number | undefined
}

export interface BasinShape {
  readonly outline: Path
  readonly islands: readonly Path[]
  readonly floor: Floor
  readonly wall: Wall
  readonly patches: readonly Patch[]
  /** Height of the rim above the datum [m]. */
  readonly freeboardM: number
  readonly tolerance?: Tolerance | undefined
}

export interface Wetted {
  readonly floorM2: number
  readonly wallM2: number
  /** Vertical faces of features. */
  readonly riserM2: number
  /** Treads and shelves. */
  readonly featureM2: number
  readonly totalM2: number
}

/** What makes a volume uncertain, apart [m³]. */
export interface VolumeErrors {
  /** Bound of rounding and quadrature. */
  readonly arithmeticM3: number
  /** Bound of what pieces that stand for a curve lose: chords under a triangulated floor, offsets of a bench. */
  readonly modelM3: number
  /** One standard deviation from the tolerance of what was measured. */
  readonly measurementM3: number
}

/** What a body measures at one level of its water. */
export interface Measures {
  readonly levelM: number
  readonly volumeM3: number
  readonly waterSurfaceM2: number
  readonly wetted: Wetted
  readonly perimeterM: number
  readonly meanDepthM: number
  readonly maxDepthM: number
  /** dV/dlevel, which is the water surface [m²]. */
  readonly volumePerLevelM2: number
  readonly centroid: Point
  /** Bound of the computation's own error, arithmetic and model [m³]. */
  readonly errorBoundM3: number
  readonly errors: VolumeErrors
  /** One standard deviation from the tolerance of the measured points [m³]; 0 without a tolerance. */
  readonly sigmaM3: number
}

export type Part = 'floor' | 'wall' | 'riser' | 'feature' | 'rim'

/** A watertight triangle mesh of shell from the floor up to the rim; z is up, 0 at the datum [m]. */
export interface BasinMesh {
  /**
   * The place of the plan that all of it is reckoned from, in the middle of the outline: 32 bits hold a pool to a micrometre
   * there, but at map coordinates not to a hand's breadth.
   */
  readonly origin: Point
  /** xyz per vertex, from the origin [m]. Vertices are not shared between triangles of different parts or across a sharp edge. */
  readonly positions: Float32Array
  readonly normals: Float32Array
  readonly indices: Uint32Array
  /** Part of each triangle, an index into PARTS. */
  readonly parts: Uint8Array
  /** Sharp lines to ink (rim, edges of treads and shelf, breaks of the floor): xyz pairs of end points. */
  readonly edges: Float32Array
  /** The flattened outline and islands, closed rings without a repeated last point. */
  readonly rings: readonly Float64Array[]
}

export interface ContourLine {
  readonly depthM: number
  readonly closed: boolean
  readonly points: readonly Point[]
}

/** A region of one depth band between two contour depths, as polygons with holes (even-odd), for tints. */
export interface DepthBand {
  readonly fromM: number
  readonly toM: number
  readonly rings: readonly (readonly Point[])[]
}

/** The cut along a line: depth against the distance from its start, vertical faces as two points at one distance. */
export interface SectionCut {
  readonly pieces: readonly {
    readonly part: Part
    readonly points: readonly (readonly [sM: number, depthM: number])[]
  }[]
  /** Distances along the line where it enters and leaves the basin, in pairs. */
  readonly spans: readonly (readonly [sM: number, sM: number])[]
}

export interface DepthSample {
  readonly depthM: number
  readonly part: Part
  /** Fall of the floor per unit of run, 0 where flat; 1 : n has slope 1/n; endless at the foot of an upright wall. */
  readonly slope: number
  readonly feature?: number
}
