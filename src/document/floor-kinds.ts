import { boundsOf, type Floor, type Path } from '../basin/index.ts'
import { depthsOfFloor } from './floor-depths.ts'
import { insetRing, middleOfWater } from './inset.ts'
import type { Body } from './types.ts'

export type FloorKindId = Floor['kind']

/** A new ring lies this share of the way from the wall to the middle of the water, and is this much deeper [m]. */
const RING_SHARE = 0.5
const RING_DROP_M = 0.6
/** A new hollow reaches this share of the way from the middle to the wall, and is this deep [m]. */
const DISH_SHARE = 0.8
const DISH_DROP_M = 0.3

/** A floor of another kind in place of the body's own, as near to it as the new kind can be without any guess hidden in it. */
export function floorAs(kind: FloorKindId, body: Pick<Body, 'outline' | 'islands' | 'floor'>): Floor {
  const { floor, outline, islands } = body
  if (floor.kind === kind) return floor
  const depths = depthsOfFloor(floor)
  const shallowM = depths.length > 0 ? Math.min(...depths) : 1
  const deepM = depths.length > 0 ? Math.max(...depths) : shallowM
  switch (kind) {
    case 'flat':
      return { kind, depthM: meanDepth(floor) ?? shallowM }
    case 'profile':
      return sloping(outline, shallowM, floor.kind === 'flat' ? shallowM : deepM)
    case 'contours': {
      const depthM = deepM > shallowM ? deepM : shallowM + RING_DROP_M
      return { kind, edgeDepthM: shallowM, rings: [{ depthM, path: insetRing(outline, islands, RING_SHARE) }] }
    }
    case 'soundings':
      return soundingsOf(floor, shallowM)
    case 'dish': {
      const { at, farM } = middleOfWater(outline, islands)
      return {
        kind,
        form: 'cap',
        centre: at,
        radiusM: DISH_SHARE * farM,
        edgeDepthM: shallowM,
        depthM: deepM > shallowM ? deepM : shallowM + DISH_DROP_M,
      }
    }
  }
}

/**
 * Whether the floor's one depth line still runs where it was put when the floor became one of depth lines: a place that
 * nobody drew. Its depth may be a measured one.
 */
export function isLineAssumed({ outline, islands, floor }: Pick<Body, 'outline' | 'islands' | 'floor'>): boolean {
  if (floor.kind !== 'contours' || floor.rings.length !== 1) return false
  return JSON.stringify(floor.rings[0]?.path) === JSON.stringify(insetRing(outline, islands, RING_SHARE))
}

/** Half way between the first and the last depth of a profile, or between the shallowest and the deepest of another floor. */
function meanDepth(floor: Floor): number | undefined {
  const depths = depthsOfFloor(floor)
  if (depths.length === 0) return undefined
  const [first, last] =
    floor.kind === 'profile' ? [depths[0] ?? 0, depths.at(-1) ?? 0] : [Math.min(...depths), Math.max(...depths)]
  return (first + last) / 2
}

/** A slope along the longer side of the outline's box, through its middle. */
function sloping(outline: Path, fromDepthM: number, toDepthM: number): Floor {
  const box = boundsOf(outline)
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY]
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
  const isAcross = width >= height
  return {
    kind: 'profile',
    axis: isAcross ? { from: [box.minX, y], to: [box.maxX, y] } : { from: [x, box.minY], to: [x, box.maxY] },
    stations: [
      [0, fromDepthM],
      [isAcross ? width : height, toDepthM],
    ],
  }
}

/** Depths that were measured stay as soundings where their places are known; a flat floor's depth is that of the edge. */
function soundingsOf(floor: Floor, shallowM: number): Floor {
  if (floor.kind === 'profile') {
    const { from, to } = floor.axis
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
    const at = (s: number) =>
      [from[0] + ((to[0] - from[0]) * s) / length, from[1] + ((to[1] - from[1]) * s) / length] as const
    // With the shore taking the nearest depth, the floor stays about what it was across the axis.
    return { kind: 'soundings', edgeDepthM: null, points: floor.stations.map(([s, d]) => [...at(s), d] as const) }
  }
  if (floor.kind === 'dish')
    return { kind: 'soundings', edgeDepthM: floor.edgeDepthM, points: [[...floor.centre, floor.depthM]] }
  if (floor.kind !== 'contours') return { kind: 'soundings', edgeDepthM: shallowM, points: [] }
  const points = floor.rings.flatMap(({ path, depthM }) => path.segments.map(({ to }) => [...to, depthM] as const))
  return { kind: 'soundings', edgeDepthM: floor.edgeDepthM, points }
}
