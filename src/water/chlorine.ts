import type { Workspace } from './workspace.ts'

const MOST_STEPS = 60

/**
 * Solves how chlorine and cyanurate share each other at the workspace's h: writes x = [HOCl], y = [H2Cy-], the
 * alkalinity of cyanurates and hypochlorite [eq/kg], and d(that alkalinity)/d ln(1/h) [eq/kg].
 * Equation: g(x) = x (1 + K/h) + Cy (P1 x + 2 P2 x² + 3 P3 x³) / Z − X = 0 with Z = P0 + P1 x + P2 x² + P3 x³, y = Cy/Z.
 * Symbols: K acid constant of HOCl; Pn all rings with n chlorines per y xⁿ; Cy cyanurate, X chlorine [mol/kg].
 * Valid for: all Cy, X ≥ 0. g strictly increases, since d(mean chlorines)/d ln x is their variance: one root in
 *   [0, X / (1 + K/h)].
 * Source: the equilibria of O'Brien, Morris & Butler 1974; the nesting is this program's own.
 * Accuracy: |g| below 1e-15 X.
 */
export function shareChlorine(w: Workspace): void {
  const { h, cyanurate, chlorine } = w
  const r = w.kOcl / h
  // by chlorines on the ring: species per y xⁿ, with n, alkalinity number a
  const p00 = h / w.k6
  const p02 = w.k10 / h
  const p03 = (w.k10 * w.k12) / (h * h)
  const p10 = (w.h9 * h) / w.k4
  const p11 = w.h9
  const p12 = (w.h9 * w.k8) / h
  const p21 = w.h9 * w.h7
  const p20 = (p21 * h) / w.k2
  const p30 = p20 * w.h1
  const p0 = p00 + 1 + p02 + p03
  const p1 = p10 + p11 + p12
  const p2 = p20 + p21

  let x = 0
  let z = p0
  if (chlorine > 0) {
    let lo = 0
    let hi = chlorine / (1 + r)
    x = w.x > 0 && w.x <= hi ? w.x : chlorine / (1 + r + (cyanurate * p1) / p0)
    for (let step = 0; step < MOST_STEPS; step++) {
      const q1 = p1 * x
      const q2 = p2 * x * x
      const q3 = p30 * x * x * x
      z = p0 + q1 + q2 + q3
      const mean = (q1 + 2 * q2 + 3 * q3) / z
      const g = x * (1 + r) + cyanurate * mean - chlorine
      if (Math.abs(g) <= 2e-16 * chlorine) break
      if (g > 0) hi = x
      else lo = x
      const variance = (q1 + 4 * q2 + 9 * q3) / z - mean * mean
      let next = x - (g * x) / (x * (1 + r) + cyanurate * variance)
      if (!(next > lo && next < hi)) next = 0.5 * (lo + hi)
      const moved = Math.abs(next - x)
      x = next
      if (moved <= 4e-16 * x) break
    }
    z = p0 + x * (p1 + x * (p2 + x * p30))
  }
  const y = cyanurate / z
  w.x = x
  w.y = y

  const x2 = x * x
  const s02 = p02 * y
  const s03 = p03 * y
  const s11 = p11 * x * y
  const s12 = p12 * x * y
  const s21 = p21 * x2 * y
  const ocl = r * x
  w.cyAlk = y + 2 * s02 + 3 * s03 + s11 + 2 * s12 + s21
  w.oclAlk = ocl

  // slope: alkalinity's second moment less what the two conserved totals hold fixed (a Schur complement)
  const aa = y + 4 * s02 + 9 * s03 + s11 + 4 * s12 + s21 + ocl
  const ay = w.cyAlk
  if (cyanurate === 0 || chlorine === 0) {
    if (cyanurate > 0) w.slopeChlorine = aa - (ay * ay) / cyanurate
    else w.slopeChlorine = chlorine > 0 ? (ocl * x) / (ocl + x) : 0
    return
  }
  const ax = s11 + 2 * s12 + 2 * s21 + ocl
  const one = p1 * x * y
  const two = p2 * x2 * y
  const three = p30 * x2 * x * y
  const xy = one + 2 * two + 3 * three
  const xx = one + 4 * two + 9 * three + x + ocl
  const determinant = cyanurate * xx - xy * xy
  w.slopeChlorine = aa - (ay * ay * xx - 2 * ay * ax * xy + ax * ax * cyanurate) / determinant
}
