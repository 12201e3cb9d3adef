import { ok, type Problem, type Result } from '../base/index.ts'
import type { FloorKind, FloorPiece, FloorPlan, FloorSite } from './floor-kind.ts'
import type { HalfPlane } from './half-planes.ts'
import { problem } from './problems.ts'
import { MIN_LENGTH_M } from './tolerance.ts'
import type { Plane, ProfileFloor } from './types.ts'

export const PROFILE: FloorKind<ProfileFloor> = { id: 'profile', check, plan }

function check(floor: ProfileFloor): Problem | undefined {
  const { from, to } = floor.axis
  for (const [name, point] of [['from', from] as const, ['to', to] as const])
    if (!point.every(Number.isFinite)) return problem('not-a-number', `floor.axis.${name}`)
  const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (!(lengthM > MIN_LENGTH_M)) return problem('axis-too-short', 'floor.axis', [from])
  if (floor.stations.length === 0) return problem('stations-too-few', 'floor.stations')
  for (let i = 0; i < floor.stations.length; i++) {
    const [s, depth] = floor.stations[i]!
    if (!Number.isFinite(s) || !Number.isFinite(depth)) return problem('not-a-number', `floor.stations[${i}]`)
    if (i > 0 && !(s - floor.stations[i - 1]![0] > MIN_LENGTH_M))
      return problem('stations-not-rising', `floor.stations[${i}]`, [
        [from[0] + (s / lengthM) * (to[0] - from[0]), from[1] + (s / lengthM) * (to[1] - from[1])],
      ])
  }
  return undefined
}

/** Piece 0 lies before the first station, piece i between stations i − 1 and i, the last one beyond the last. */
function plan(floor: ProfileFloor, { originX, originY }: FloorSite): Result<FloorPlan> {
  const { from, to } = floor.axis
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const ux = (to[0] - from[0]) / length
  const uy = (to[1] - from[1]) / length
  // Distance along the axis of the frame's origin.
  const s0 = (originX - from[0]) * ux + (originY - from[1]) * uy
  const count = floor.stations.length
  const at = (i: number): readonly [number, number] => floor.stations[i]!
  /** v + k (s − sRef) as a function of place. */
  const along = (value: number, k: number, sRef: number): Plane => ({
    atOrigin: value + k * (s0 - sRef),
    dx: k * ux,
    dy: k * uy,
  })
  const flat = (value: number): Plane => ({ atOrigin: value, dx: 0, dy: 0 })
  const beyond = (i: number): HalfPlane => [ux, uy, at(i)[0] - s0]
  const before = (i: number): HalfPlane => [-ux, -uy, s0 - at(i)[0]]
  const pieces: FloorPiece[] = [
    { plane: flat(at(0)[1]), within: [before(0)], weights: [{ depthIndex: 0, plane: flat(1) }] },
  ]
  for (let i = 1; i < count; i++) {
    const [sa, da] = at(i - 1)
    const [sb, db] = at(i)
    const run = sb - sa
    // From the nearer station, so that a long axis loses no digits.
    const nearB = Math.abs(s0 - sb) < Math.abs(s0 - sa)
    const k = (db - da) / run
    pieces.push({
      plane: k === 0 ? flat(da) : nearB ? along(db, k, sb) : along(da, k, sa),
      within: [beyond(i - 1), before(i)],
      weights: [
        { depthIndex: i - 1, plane: along(0, -1 / run, sb) },
        { depthIndex: i, plane: along(0, 1 / run, sa) },
      ],
    })
  }
  pieces.push({
    plane: flat(at(count - 1)[1]),
    within: [beyond(count - 1)],
    weights: [{ depthIndex: count - 1, plane: flat(1) }],
  })
  const breaks: { line: HalfPlane; within: HalfPlane[] }[] = []
  for (let i = 0; i < count; i++) {
    // Also where the slope doesn't change: the two sides hang on different measured depths.
    if (count > 1) breaks.push({ line: [ux, uy, s0 - at(i)[0]], within: [] })
  }
  const pieceAt = (x: number, y: number): number => {
    const s = s0 + x * ux + y * uy
    let i = 0
    while (i < count && s >= at(i)[0]) i++
    return i
  }
  return ok({ pieces, breaks, pieceAt })
}
