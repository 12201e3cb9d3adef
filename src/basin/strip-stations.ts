import { type Fan, fansOf } from './cove-fan.ts'
import type { Partition } from './partition-types.ts'
import type { PlanPoints } from './plan-points.ts'
import { type Knot, knotsBetween, lateral } from './strip-knots.ts'
import { isBare, type RayPlaces } from './strip-rings.ts'
import { isSameRay, type Sample, type SampledPiece, type Sampling } from './strip-samples.ts'
import type { StripPiece } from './strip-types.ts'

/** A ray of the mesh with all the vertices on it, which the gaps on both its sides share. */
export interface Station {
  readonly n: readonly number[]
  readonly v: readonly number[]
  readonly code: readonly number[]
  /** True where two pieces meet. */
  readonly isEvent: boolean
  readonly nx: number
  readonly ny: number
  /** Its number among all, once it has one. */
  ray: number
}

/** The water between two neighbouring rays of a piece; the shore runs from a to b with the water on its left. */
export interface Gap {
  readonly piece: StripPiece
  readonly a: Station
  readonly b: Station
  /** Where each of the piece's cells begins along both rays and where the last ends, as places in their lists. */
  readonly atA: readonly number[]
  readonly atB: readonly number[]
  /** Vertices between the two rays on each of the piece's edges, from a to b; nothing where there are none. */
  readonly knots: readonly KnotRun[] | undefined
}

/** Vertices along an edge, each on a ray of its own. */
export interface KnotRun {
  readonly v: number[]
  readonly code: number[]
  readonly rays: number[]
}

/** Stations and gaps along one fan, in the shore's order. */
export interface FanRun {
  readonly fan: Fan
  readonly stations: Station[]
  /** One for each step between stations, none where no piece covers it. */
  readonly gaps: (Gap | undefined)[]
}

/** Lays out all sampled pieces as stations with vertices; joints of fans share one. */
export function stationsOf(
  s: Sampling,
  sampled: readonly SampledPiece[],
  points: PlanPoints,
  rays: number[],
): FanRun[] {
  const { p } = s
  const { fans, shores } = fansOf(p)
  const byFan = new Map<Fan, SampledPiece[]>()
  for (const one of sampled) {
    const list = byFan.get(one.piece.fan)
    if (list) list.push(one)
    else byFan.set(one.piece.fan, [one])
  }
  const outgoing = new Map<number, number>()
  const corner = new Map<number, Fan>()
  shores.forEach((shore, i) => {
    const edge = p.edges[shore.edge]!
    outgoing.set(shore.side > 0 ? edge.from : edge.to, i)
  })
  for (const fan of fans) if (fan.shore < 0) corner.set(endNode(p, shores[fan.neighbours[0]!]!), fan)
  const runs: FanRun[] = []
  const seen = new Uint8Array(shores.length)
  for (let start = 0; start < shores.length; start++) {
    if (seen[start]) continue
    const loop: Fan[] = []
    for (let i: number | undefined = start; i !== undefined && !seen[i]; ) {
      seen[i] = 1
      loop.push(fans[i]!)
      const node = endNode(p, shores[i]!)
      const about = corner.get(node)
      if (about) loop.push(about)
      i = outgoing.get(node)
    }
    runs.push(...layLoop(s, loop, byFan, points, rays))
  }
  return runs
}

function endNode(p: Partition, shore: { readonly edge: number; readonly side: number }): number {
  const edge = p.edges[shore.edge]!
  return shore.side > 0 ? edge.to : edge.from
}

/** Rays nearer to each other than so many merged points are joined, though no piece lies between them. */
const HAIR_MERGES = 64

/** One step of the loop: rays at both ends, and the piece between them. */
interface Step {
  readonly piece: StripPiece
  readonly first: Sample
  readonly last: Sample
}

function layLoop(
  s: Sampling,
  loop: readonly Fan[],
  byFan: ReadonlyMap<Fan, readonly SampledPiece[]>,
  points: PlanPoints,
  rays: number[],
): FanRun[] {
  const { p } = s
  const { shores } = fansOf(p)
  const steps = loop.map((fan) => stepsAlong(p, fan, byFan.get(fan) ?? []))
  const runs: FanRun[] = []
  const joints: (Station | undefined)[] = []
  const jointAt = (k: number): Station => {
    const i = (k + loop.length) % loop.length
    const known = joints[i]
    if (known) return known
    // The station where fan i begins and the one before it ends.
    const before = steps[(i + loop.length - 1) % loop.length]!
    const fan = loop[i]!
    const node = fan.shore < 0 ? endNode(p, shores[fan.neighbours[0]!]!) : startNode(p, shores[fan.shore]!)
    const left = before[before.length - 1]?.last
    const right = steps[i]![0]?.first
    const made = newStation(points, left, right, node)
    joints[i] = made
    return made
  }
  loop.forEach((fan, k) => {
    const own = steps[k]!
    const stations = [jointAt(k)]
    const gaps: (Gap | undefined)[] = []
    own.forEach((step, i) => {
      const isLast = i === own.length - 1
      const a = stations[stations.length - 1]!
      const next = own[i + 1]
      const joined = next && (next.first.t === step.last.t || isSameRay(points.mergeM, step.last, next.first))
      const node = fan.shore < 0 ? a.v[0]! : -1
      const b = isLast
        ? jointAt(k + 1)
        : newStation(
            points,
            step.last,
            joined ? next.first : undefined,
            node,
            joined && next.piece === step.piece,
            step.piece.by !== -1,
          )
      gaps.push(
        isBare(s.work, step.piece.cells)
          ? undefined
          : {
              piece: step.piece,
              a,
              b,
              atA: placesIn(a, step.first),
              atB: placesIn(b, step.last),
              knots: layKnots(knotsBetween(s, step.piece, step.first, step.last), points, rays),
            },
      )
      stations.push(b)
      if (next && !joined) {
        // Rays without length lie between, e.g. where the shore bends more than any circle; or a hair that no piece has.
        const station = newStation(points, undefined, next.first, node)
        const isHair = lateral(step.last, next.first) <= HAIR_MERGES * points.mergeM
        gaps.push(isHair ? hairBetween(s, step, next, b, station) : undefined)
        stations.push(station)
      }
    })
    if (own.length === 0) {
      gaps.push(undefined)
      stations.push(jointAt(k + 1))
    }
    runs.push({ fan, stations, gaps })
  })
  return runs
}

/** The gap between two pieces where a hair lies between them: as far from the shore as they have the same cells. */
function hairBetween(s: Sampling, before: Step, after: Step, a: Station, b: Station): Gap | undefined {
  const { cells, edges } = after.piece
  let count = 0
  while (count < cells.length && cells[count] === before.piece.cells[count]) count++
  const piece: StripPiece = {
    ...after.piece,
    cells: cells.slice(0, count),
    edges: edges.slice(0, Math.max(0, count - 1)),
  }
  if (count === 0 || isBare(s.work, piece.cells)) return undefined
  const atA = placesIn(a, before.last).slice(0, count + 1)
  const atB = placesIn(b, after.first).slice(0, count + 1)
  return { piece, a, b, atA, atB, knots: undefined }
}

function startNode(p: Partition, shore: { readonly edge: number; readonly side: number }): number {
  const edge = p.edges[shore.edge]!
  return shore.side > 0 ? edge.from : edge.to
}

/** The steps of a fan in the shore's order. */
function stepsAlong(p: Partition, fan: Fan, pieces: readonly SampledPiece[]): Step[] {
  const forward = fan.shore < 0 || fansOf(p).shores[fan.shore]!.side > 0
  const ordered = inOrder(pieces, forward)
  const steps: Step[] = []
  for (const { piece, samples } of ordered) {
    if (forward)
      for (let i = 1; i < samples.length; i++) steps.push({ piece, first: samples[i - 1]!, last: samples[i]! })
    else for (let i = samples.length - 1; i > 0; i--) steps.push({ piece, first: samples[i]!, last: samples[i - 1]! })
  }
  return steps
}

function inOrder(pieces: readonly SampledPiece[], forward: boolean): readonly SampledPiece[] {
  if (pieces.length < 2) return pieces
  return [...pieces].sort((a, b) => (forward ? a.piece.t0 - b.piece.t0 : b.piece.t0 - a.piece.t0))
}

/** A station from the rays of the pieces on its two sides, which are the same ray. Its foot is a node where one is given. */
function newStation(
  points: PlanPoints,
  left: Sample | undefined,
  right: Sample | undefined,
  node: number,
  isSame = false,
  endsAtLocus = true,
): Station {
  const ray = left && (left.at[left.at.length - 1]! > 0 || !right) ? left : right
  if (!ray) return { n: [0], v: [node], code: [-1], isEvent: true, nx: 0, ny: 0, ray: -1 }
  if (isSame) take(ray)
  else {
    length = 0
    if (left) merge(left, points.mergeM)
    if (right) merge(right, points.mergeM)
    listed = { n: listN.slice(0, length), code: listCode.slice(0, length) }
  }
  const { x, y, nx, ny } = ray
  const { n, code } = listed
  const end = n[n.length - 1]!
  const v = new Array<number>(n.length)
  for (let i = 0; i < n.length; i++) {
    const at = n[i]!
    if (i === 0) {
      const foot = node >= 0 ? node : points.addOnRay(x, y, 0)
      points.place(foot, 0)
      v[0] = foot
      continue
    }
    const px = x + at * nx
    const py = y + at * ny
    const mayMeet = !isSame || (endsAtLocus && at === end)
    let found = mayMeet ? points.find(px, py) : -1
    if (found < 0) {
      found = points.addOnRay(px, py, at)
      if (mayMeet) points.enter(found)
    } else if (!(points.n[found]! <= at)) points.place(found, at)
    v[i] = found
  }
  return { n, v, code, isEvent: !isSame, nx, ny, ray: -1 }
}

function layKnots(
  byEdge: readonly (readonly Knot[])[] | undefined,
  points: PlanPoints,
  rays: number[],
): KnotRun[] | undefined {
  return byEdge?.map((knots) => {
    const run: KnotRun = { v: [], code: [], rays: [] }
    for (const { x, y, nx, ny, n, code } of knots) {
      run.v.push(points.addOnRay(x + n * nx, y + n * ny, n))
      run.code.push(code)
      run.rays.push(rays.length / 2)
      rays.push(nx, ny)
    }
    return run
  })
}

/** Distances along a ray in the making and what lies there, ascending. */
const listN: number[] = []
const listCode: number[] = []
let length = 0

function append(n: number, code: number): void {
  listN[length] = n
  listCode[length++] = code
}

/** What the last station was given, and what the last one was taken from that is a sample's own. */
let listed: Pick<Station, 'n' | 'code'> = { n: [], code: [] }
let taken = listed
let takenAt: readonly number[] | undefined
let takenPlaces: RayPlaces | undefined

/** A sample's own distances, in order; the same lists as the last time where the sample shares them. */
function take({ at, places }: Sample): void {
  if (at === takenAt && places === takenPlaces) {
    listed = taken
    return
  }
  length = 0
  let i = 0
  let last = -1
  for (let k = 0; k < at.length; k++) {
    const n = at[k]!
    for (; i < places.n.length && places.n[i]! < n; i++) {
      last = places.n[i]!
      append(last, places.code[i]!)
    }
    if (n > last) {
      last = n
      append(n, -1)
    }
  }
  taken = { n: listN.slice(0, length), code: listCode.slice(0, length) }
  takenAt = at
  takenPlaces = places
  listed = taken
}

/** Adds a sample's distances to the list; the same distance is taken once. */
function merge({ at, places }: Sample, hair: number): void {
  let i = 0
  for (let k = 0; k < at.length; k++) {
    const n = at[k]!
    for (; i < places.n.length && places.n[i]! < n; i++) insert(places.n[i]!, places.code[i]!, hair)
    insert(n, -1, hair)
  }
}

function insert(n: number, code: number, hair: number): void {
  let k = length
  while (k > 0 && listN[k - 1]! >= n - hair) k--
  if (k < length && listN[k]! <= n + hair) {
    if (listCode[k]! < 0) listCode[k] = code
    return
  }
  append(0, 0)
  for (let i = length - 1; i > k; i--) {
    listN[i] = listN[i - 1]!
    listCode[i] = listCode[i - 1]!
  }
  listN[k] = n
  listCode[k] = code
}

/** Places in a station's list of a sample's crossings; neighbours that share their lists share these. */
function placesIn({ n }: Station, { at }: Sample): readonly number[] {
  if (n === placedN && at === placedAt) return placed
  placedN = n
  placedAt = at
  placed = []
  let k = 0
  for (let i = 0; i < at.length; i++) {
    const crossing = at[i]!
    while (k + 1 < n.length && Math.abs(n[k + 1]! - crossing) <= Math.abs(n[k]! - crossing)) k++
    placed.push(k)
  }
  return placed
}

let placed: number[] = []
let placedN: readonly number[] | undefined
let placedAt: readonly number[] | undefined
