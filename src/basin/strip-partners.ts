import { type Fan, fansOf } from './cove-fan.ts'
import { norm } from './norm.ts'
import { type Foot, footOn } from './span.ts'
import { isSameRay, type SampledPiece, type Sampling, sampleAt } from './strip-samples.ts'

const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** Gives each end on a cut locus its ray from the other side, so that both sides have the same points on it. */
export function addPartners(s: Sampling, sampled: readonly SampledPiece[]): void {
  const byFan = new Map<Fan, SampledPiece[]>()
  for (const one of sampled) {
    const list = byFan.get(one.piece.fan)
    if (list) list.push(one)
    else byFan.set(one.piece.fan, [one])
  }
  const { fans, shores } = fansOf(s.p)
  const corners = new Map<number, Fan[]>()
  for (const fan of fans)
    if (fan.shore < 0)
      for (const shore of fan.neighbours) {
        const list = corners.get(shore)
        if (list) list.push(fan)
        else corners.set(shore, [fan])
      }
  const wanted: { to: SampledPiece; t: number }[] = []
  for (const { piece, samples } of sampled) {
    if (piece.by < 0) continue
    const rival = shores[piece.by]!
    for (const sample of samples) {
      const n = sample.at[sample.at.length - 1]!
      if (!(n > 0)) continue
      const x = sample.x + n * sample.nx
      const y = sample.y + n * sample.ny
      footOn(rival.curve, rival.t0, rival.t1, x, y, foot)
      let fan: Fan | undefined = fans[piece.by]
      let t = foot.t
      if (t === rival.t0 || t === rival.t1)
        for (const corner of corners.get(piece.by) ?? []) {
          if (norm(corner.x - foot.x, corner.y - foot.y) > 8 * s.p.grainM) continue
          const turn = corner.direction - Math.atan2(y - corner.y, x - corner.x)
          const around = turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI))
          if (around < corner.t1) {
            fan = corner
            t = around
          }
        }
      for (const to of (fan && byFan.get(fan)) ?? [])
        if (t > to.piece.t0 && t < to.piece.t1 && to.piece.by >= 0) wanted.push({ to, t })
    }
  }
  for (const { to, t } of wanted) {
    const { piece, samples } = to
    let lo = 0
    let hi = samples.length
    while (lo < hi) {
      const middle = (lo + hi) >> 1
      if (samples[middle]!.t < t) lo = middle + 1
      else hi = middle
    }
    const partner = sampleAt(s, piece, t)
    if (lo === 0 || lo === samples.length) continue
    if (isSameRay(s.mergeM, samples[lo - 1]!, partner) || isSameRay(s.mergeM, partner, samples[lo]!)) continue
    samples.splice(lo, 0, partner)
  }
}
