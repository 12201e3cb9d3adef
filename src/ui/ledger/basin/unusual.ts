import { boundsOf, flatten, nearestOn, type Path, type Point } from '../../../basin/index.ts'
import { type Body, depthsOfFloor, isInside } from '../../../document/index.ts'
import { formatQuantity, type UnitSystem } from '../../../units/index.ts'

/** Beyond these a figure is more likely a slip of the keys or of the unit than a pool: our own judgement, no source. */
const DEEPEST_M = 6
const LONGEST_M = 100
const HIGHEST_RIM_M = 1
/** 45° from upright. */
const MOST_LEAN = 1
/** How far past either end of the section a station may lie, or beyond the outline's box the middle of a hollow, as a share of its length. */
const PAST_END = 0.5

const CHECK = 'Check the figure and its unit; it is reckoned with as it stands.'

/** What is to be looked at in a depth below the nominal waterline: above it, or hardly any pool's. */
export function depthCaution(depthM: number, units: UnitSystem): string | undefined {
  if (depthM < 0) return `This stands ${formatQuantity('length', -depthM, units)} above the waterline.`
  if (depthM <= DEEPEST_M) return undefined
  return `Deeper than ${formatQuantity('length', DEEPEST_M, units)}, as hardly any pool is. ${CHECK}`
}

export function lengthCaution(lengthM: number, units: UnitSystem): string | undefined {
  if (lengthM <= LONGEST_M) return undefined
  return `Longer than ${formatQuantity('length', LONGEST_M, units)}, as hardly any pool is. ${CHECK}`
}

export function rimCaution(freeboardM: number, units: UnitSystem): string | undefined {
  if (freeboardM <= HIGHEST_RIM_M) return undefined
  return `The rim would stand more than ${formatQuantity('length', HIGHEST_RIM_M, units)} over the water. ${CHECK}`
}

export function leanCaution(run: number): string | undefined {
  return run <= MOST_LEAN ? undefined : `More than 45° from upright: a slope rather than a wall. ${CHECK}`
}

/** A station far beyond the section's ends: the floor is drawn on from there, and nothing of the pool lies so far out. */
export function stationCaution(sM: number, sectionM: number): string | undefined {
  const isFar = sM < -PAST_END * sectionM || sM > (1 + PAST_END) * sectionM
  return isFar ? `Far outside the section from A to A′. ${CHECK}` : undefined
}

/** Today's water over the rim. */
export function levelCaution(levelM: number, freeboardM: number): string | undefined {
  return levelM > freeboardM ? `The water would stand over the rim. ${CHECK}` : undefined
}

/** A width or radius of something in the pool that is larger than the pool's shorter side. */
export function widthCaution(lengthM: number, outline: Path, units: UnitSystem): string | undefined {
  const { minX, maxX, minY, maxY } = boundsOf(outline)
  const sideM = Math.min(maxX - minX, maxY - minY)
  if (!(lengthM > sideM)) return undefined
  return `Larger than the pool itself, which is ${formatQuantity('length', sideM, units)} wide. ${CHECK}`
}

/** A place of something in the pool that lies far from it. */
export function placeCaution([x, y]: Point, outline: Path): string | undefined {
  const { minX, maxX, minY, maxY } = boundsOf(outline)
  const beyondM = PAST_END * Math.max(maxX - minX, maxY - minY)
  const isFar = x < minX - beyondM || x > maxX + beyondM || y < minY - beyondM || y > maxY + beyondM
  return isFar ? `Far outside the pool. ${CHECK}` : undefined
}

/** A drop from tread to tread that is more than the pool is deep, or none. */
export function riseCaution(riseM: number, { floor }: Pick<Body, 'floor'>, units: UnitSystem): string | undefined {
  if (riseM <= 0) return `These treads don’t go down into the water. ${CHECK}`
  const deepestM = Math.max(...depthsOfFloor(floor))
  if (!(riseM > deepestM)) return undefined
  return `More than the pool is deep: its floor goes down to ${formatQuantity('length', deepestM, units)}. ${CHECK}`
}

/** A quarter round that is higher than the water at the walls reaches over it. */
export function coveCaution(radiusM: number, { floor, levelM }: Pick<Body, 'floor' | 'levelM'>): string | undefined {
  const edgeM = 'edgeDepthM' in floor ? floor.edgeDepthM : null
  const shallowM = (edgeM ?? Math.min(...depthsOfFloor(floor))) + levelM
  if (!(radiusM > shallowM && shallowM > 0)) return undefined
  return 'More than the depth at the walls: the water’s edge then lies inside the outline.'
}

/** A hollow that reaches nowhere into the pool. */
export function hollowCaution(centre: Point, radiusM: number, outline: Path): string | undefined {
  const { minX, maxX, minY, maxY } = boundsOf(outline)
  const ring = flatten(outline, 1e-3 * Math.max(maxX - minX, maxY - minY))
  if (isInside(ring, centre) || nearestOn(outline, ...centre).distanceM < radiusM) return undefined
  return 'The hollow lies outside the pool: it changes nothing.'
}
