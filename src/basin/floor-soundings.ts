import { fail, type Problem, type Result } from '../base/index.ts'
import type { FloorKind, FloorPlan, FloorSite } from './floor-kind.ts'
import { meanOfNearest } from './nearest-points.ts'
import { NodeSet } from './node-set.ts'
import { problem } from './problems.ts'
import { addStop, type Chain, type Stops } from './tin-chains.ts'
import { refined } from './tin-refined.ts'
import { type ShoreFoot, shoreFinder } from './tin-site.ts'
import type { Shares, TinFigure } from './tin-types.ts'
import { soundingSlack } from './tolerance.ts'
import type { SoundingsFloor } from './types.ts'

/** Depths at points: linear on the Delaunay triangulation of the points and the shore, whose sides stay. */
export const SOUNDINGS: FloorKind<SoundingsFloor> = { id: 'soundings', check, plan }

function check({ edgeDepthM, points }: SoundingsFloor): Problem | undefined {
  if (edgeDepthM !== null && !Number.isFinite(edgeDepthM)) return problem('not-a-number', 'floor.edgeDepthM')
  if (edgeDepthM === null && points.length === 0) return problem('soundings-too-few', 'floor.points')
  const bad = points.findIndex((point) => !point.every(Number.isFinite))
  return bad < 0 ? undefined : problem('not-a-number', `floor.points[${bad}]`)
}

/** A sounding in the frame of the site, moved onto the shore where it is said to lie on it. */
interface Placed {
  readonly x: number
  readonly y: number
  readonly foot?: ShoreFoot | undefined
}

function plan(floor: SoundingsFloor, site: FloorSite): Result<FloorPlan> {
  const { shores, originX, originY, extentM, grainM } = site
  const finder = shoreFinder(shores, grainM)
  const slack = soundingSlack(extentM, site.planToleranceM)
  const placed: Placed[] = []
  for (const [i, [px, py]] of floor.points.entries()) {
    const x = px - originX
    const y = py - originY
    const isWet = finder.isWater(x, y)
    const foot = finder.nearest(x, y, isWet ? 8 * grainM : slack)
    if (!isWet && !foot) return fail(problem('sounding-outside', `floor.points[${i}]`, [[px, py]]))
    placed.push(foot ? { x: foot.x, y: foot.y, foot } : { x, y })
  }
  const clash = clashOf(floor, placed, grainM)
  if (clash) return fail(clash)
  return refined(
    site,
    shores.map((ring) => ({ ring, isShore: true })),
    (chordM) => stopsFor(site, placed, finder.nearest, chordM),
    (nodes, chains) => figureOf(floor, site, placed, nodes, chains),
  )
}

/** Two soundings at one place with different depths. */
function clashOf({ points }: SoundingsFloor, placed: readonly Placed[], grainM: number): Problem | undefined {
  const nodes = new NodeSet(8 * grainM)
  const first: number[] = []
  for (const [i, { x, y }] of placed.entries()) {
    const node = nodes.at(x, y)
    const known = first[node]
    if (known === undefined) first[node] = i
    else if (points[known]![2] !== points[i]![2]) {
      const [px, py] = points[i]!
      return problem('soundings-coincide', `floor.points[${i}]`, [[px, py]])
    }
  }
  return undefined
}

/** Where soundings lie on the shore it has a node; so has a curve that passes one nearer than its chords might. */
function stopsFor(
  { shores }: FloorSite,
  placed: readonly Placed[],
  nearest: (x: number, y: number, withinM: number) => ShoreFoot | undefined,
  chordM: number,
): Stops[] {
  const stops: Stops[] = shores.map(() => new Map())
  for (const { x, y, foot } of placed) {
    const at = foot ?? nearest(x, y, 4 * chordM)
    if (at && (foot || shores[at.ring]!.curves[at.curve]!.kind !== 'line')) addStop(stops[at.ring]!, at.curve, at.t)
  }
  return stops
}

function figureOf(
  { edgeDepthM, points }: SoundingsFloor,
  { extentM, grainM }: FloorSite,
  placed: readonly Placed[],
  nodes: NodeSet,
  chains: readonly Chain[],
): TinFigure {
  const first = edgeDepthM === null ? 0 : 1
  const depths = [...(edgeDepthM === null ? [] : [edgeDepthM]), ...points.map(([, , depth]) => depth)]
  const at: number[][] = []
  for (const [i, { x, y }] of placed.entries()) {
    const node = nodes.at(x, y)
    const here = at[node]
    if (here) here.push(first + i)
    else at[node] = [first + i]
  }
  const nearby = edgeDepthM === null ? meanOfNearest(placed, 16 * grainM) : undefined
  const edge = new Map([[0, 1]])
  const shares: Shares[] = nodes.x.map((x, node) => {
    const own = at[node]
    if (own) return new Map(own.map((index) => [index, 1 / own.length]))
    return nearby ? nearby(x, nodes.y[node]!) : edge
  })
  // A depth that was measured on a curved shore stays as it is.
  const free = chains.map((chain) => ({
    ...chain,
    share: chain.share.map((share, i) => (at[chain.nodes[i]!] ? 0 : share)),
  }))
  return { nodes, chains: free, shares, depths, extentM, grainM }
}
