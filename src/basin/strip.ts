import { type Fan, type Fans, fansOf, type Ray, rayAt } from './cove-fan.ts'
import { edgesNear, followRay, newCrossing } from './cove-ray.ts'
import { type Reach, reachOf, rivalsOf } from './cove-reach.ts'
import type { Partition } from './partition-types.ts'
import { changes, mark } from './pattern-integral.ts'
import type { Strip, StripPiece } from './strip-types.ts'
import { wallWidth } from './wall-width.ts'

const known = new WeakMap<Partition, Strip>()
const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }
const reach: Reach = { n: 0, by: 0 }
const crossing = newCrossing()

/** The strip of water along the shores that a wall changes; nothing for a vertical one. Remembered for each partition. */
export function stripOf(p: Partition): Strip {
  let strip = known.get(p)
  if (!strip) {
    const widthM = wallWidth(p)
    const fans = fansOf(p)
    strip = { widthM, pieces: widthM > 0 ? fans.fans.flatMap((fan) => piecesOf(p, fans, fan, widthM)) : [] }
    known.set(p, strip)
  }
  return strip
}

function piecesOf(p: Partition, fans: Fans, fan: Fan, widthM: number): StripPiece[] {
  const rivals = rivalsOf(fans, fan, widthM)
  const near = edgesNear(p, fans, fan, widthM)
  const length = fan.shore >= 0 ? p.edges[fans.shores[fan.shore]!.edge]!.length : widthM * (fan.t1 - fan.t0)
  const samples = Math.min(1000, 12 + Math.ceil((4 * length) / widthM))
  const follow = (t: number): void => {
    rayAt(fans, fan, t, ray)
    reachOf(fans, fan, rivals, ray, widthM, reach)
    followRay(p, fan, near, ray, reach.n, crossing)
  }
  const nameAt = (t: number): number => {
    follow(t)
    return crossing.edges.reduce(mark, mark(0, reach.by))
  }
  const cuts =
    rivals.length === 0 && near.length === 0
      ? [fan.t0, fan.t1]
      : [fan.t0, ...changes(nameAt, fan.t0, fan.t1, samples), fan.t1]
  const pieces: StripPiece[] = []
  for (let i = 1; i < cuts.length; i++) {
    const t0 = cuts[i - 1]!
    const t1 = cuts[i]!
    follow((t0 + t1) / 2)
    if (!(reach.n > 0)) continue
    pieces.push({ fan, t0, t1, by: reach.by, cells: [...crossing.cells], edges: [...crossing.edges] })
  }
  return pieces
}
