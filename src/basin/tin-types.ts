import type { NodeSet } from './node-set.ts'
import type { Tin } from './tin.ts'
import type { Chain } from './tin-chains.ts'

/** How much of the depth at a node hangs on each measured depth; the shares sum to 1. */
export type Shares = ReadonlyMap<number, number>

/** Nodes, the chains that bound and divide them, and their depths. */
export interface TinFigure {
  readonly nodes: NodeSet
  readonly chains: readonly Chain[]
  /** Of each node. */
  readonly shares: readonly Shares[]
  /** The measured depths [m]. */
  readonly depths: readonly number[]
  readonly extentM: number
  readonly grainM: number
}

/** A triangulated figure, its points renumbered, and which triangles lie in the water. */
export interface WetTin {
  readonly tin: Tin
  readonly isWet: Uint8Array
  readonly chains: readonly Chain[]
  /** Shares of each point in the measured depths. */
  readonly shares: Shares[]
  /** Number of the node that each point is, as they were stated; less than nothing for the square's corners. */
  readonly order: readonly number[]
}

/** Marks of sides that stay: what they belong to, and whether a curve is beyond them. */
export const CONTOUR = 1
export const SHORE = 2
export const CURVED = 4

/** The depth that shares in the measured depths come to [m]. */
export function depthOfShares(shares: Shares, depths: readonly number[]): number {
  let depth = 0
  for (const [index, share] of shares) depth += share * depths[index]!
  return depth
}
