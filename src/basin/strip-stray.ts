import { norm } from './norm.ts'
import { isCrease } from './strip-rings.ts'
import type { Sample } from './strip-samples.ts'

/** True where nothing on the ray between two others strays from the chord between theirs by more than a height [m]. */
export function isStraight(a: Sample, m: Sample, b: Sample, chordM: number): boolean {
  for (let k = 1; k < m.at.length; k++) if (strays(a, a.at[k]!, m, m.at[k]!, b, b.at[k]!) > chordM) return false
  const pa = a.places
  const pm = m.places
  const pb = b.places
  if (!sameCreases(a, b) || !sameCreases(a, m)) return false
  for (let i = 0; i < pm.code.length; i++) {
    if (!isCrease(pm.code[i]!)) continue
    const ia = pa.code.indexOf(pm.code[i]!)
    const ib = pb.code.indexOf(pm.code[i]!)
    if (strays(a, pa.n[ia]!, m, pm.n[i]!, b, pb.n[ib]!) > chordM) return false
  }
  return true
}

/** True where the same creases, rings apart, follow each other in the same cells. */
export function sameCreases(a: Sample, b: Sample): boolean {
  const pa = a.places
  const pb = b.places
  let i = 0
  let k = 0
  for (;;) {
    while (i < pa.n.length && !isCrease(pa.code[i]!)) i++
    while (k < pb.n.length && !isCrease(pb.code[k]!)) k++
    if (i === pa.n.length || k === pb.n.length) return i === pa.n.length && k === pb.n.length
    if (pa.code[i] !== pb.code[k] || cellOf(a, pa.n[i]!) !== cellOf(b, pb.n[k]!)) return false
    i++
    k++
  }
}

/** Which of a piece's cells a distance lies in. */
function cellOf({ at }: Sample, n: number): number {
  let j = 1
  while (j + 1 < at.length && at[j]! < n) j++
  return j
}

/** Distance of a place on the middle ray from the chord between the places on two others [m]. */
function strays(a: Sample, na: number, m: Sample, nm: number, b: Sample, nb: number): number {
  const ax = a.x + na * a.nx
  const ay = a.y + na * a.ny
  const dx = b.x + nb * b.nx - ax
  const dy = b.y + nb * b.ny - ay
  const ex = m.x + nm * m.nx - ax
  const ey = m.y + nm * m.ny - ay
  const length = norm(dx, dy)
  return length > 0 ? Math.abs(dx * ey - dy * ex) / length : norm(ex, ey)
}
