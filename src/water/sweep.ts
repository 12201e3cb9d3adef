import { shareChlorine } from './chlorine.ts'
import type { Workspace } from './workspace.ts'

/** Writes everything that pH alone decides: CO2 and CO3 per HCO3, borate, chlorine and cyanurate, OH with its pairs. */
export function atCurrentPH(w: Workspace): void {
  const h = Math.exp(-Math.LN10 * w.pH)
  w.h = h
  w.ra = h / w.kc1
  w.rb = w.kc2 / h
  const borateShare = w.kB / (h + w.kB)
  w.borate = w.boron * borateShare
  shareChlorine(w)
  const oh = w.kw / h
  const free = h / w.gH
  const pairs = (w.kCaOh * w.ca + w.kMgOh * w.mg) / h
  const hso4 = w.kHso4 * h * w.so4
  w.hydroxide = oh + pairs - free - hso4
  w.slopeOther = w.borate * (1 - borateShare) + w.slopeChlorine + oh + pairs + free + hso4
}

/** Writes the pairs carried per free bicarbonate. */
export function pairsPerBicarbonate(w: Workspace): void {
  w.e1 = w.kCaHco3 * w.ca + w.kMgHco3 * w.mg + w.kNaHco3 * w.na
  w.e2 = w.rb * (1 + w.kCaCo3 * w.ca + w.kMgCo3 * w.mg)
}

/**
 * Writes free metals and sulfate after one pass of mass balances [mol/kg], and the largest relative change.
 * Equation: [M] = M_total / (1 + Σ K [ligand]), each newest value used at once (Gauss–Seidel).
 * Symbols: K conditional association constants.
 * Valid for: any totals; each pass contracts, because a fraction bound is below one.
 * Source: standard tableau, Morel & Hering 1993 (from memory).
 * Accuracy: passes go on until nothing changes by 1e-13.
 */
export function freeMetals(w: Workspace): void {
  const u = Math.max(0, w.u)
  const co3 = w.rb * u
  const ca = w.calcium / (1 + w.kCaHco3 * u + w.kCaCo3 * co3 + w.kCaSo4 * w.so4 + w.kCaOh / w.h)
  const mg = w.magnesium / (1 + w.kMgHco3 * u + w.kMgCo3 * co3 + w.kMgSo4 * w.so4 + w.kMgOh / w.h)
  const na = w.sodium / (1 + w.kNaHco3 * u + w.kNaSo4 * w.so4)
  const k = w.potassium / (1 + w.kKSo4 * w.so4)
  const so4 = w.sulfate / (1 + w.kHso4 * w.h + w.kCaSo4 * ca + w.kMgSo4 * mg + w.kNaSo4 * na + w.kKSo4 * k)
  w.moved = Math.max(relative(ca, w.ca), relative(mg, w.mg), relative(na, w.na), relative(k, w.k), relative(so4, w.so4))
  w.ca = ca
  w.mg = mg
  w.na = na
  w.k = k
  w.so4 = so4
}

/** Writes the ionic strength of what the workspace holds, ½ Σ m z² [mol/kg], and the sum of all particles. */
export function sumIons(w: Workspace): void {
  const { h, x, y, so4 } = w
  const u = Math.max(0, w.u)
  const co3 = w.rb * u
  const hclcy = w.h9 * x * y
  const singly =
    h / w.gH +
    w.kw / h +
    u +
    w.na +
    w.k +
    w.lithium +
    w.chloride +
    (w.kCaHco3 * u + w.kCaOh / h) * w.ca +
    (w.kMgHco3 * u + w.kMgOh / h) * w.mg +
    (w.kNaSo4 * w.na + w.kKSo4 * w.k + w.kHso4 * h) * so4 +
    w.borate +
    w.oclAlk +
    y +
    hclcy * (1 + w.h7 * x)
  const doubly = w.ca + w.mg + co3 + so4 + (w.k10 / h) * y + (w.k8 / h) * hclcy
  const triply = ((w.k10 * w.k12) / (h * h)) * y
  const paired =
    w.kCaCo3 * w.ca * co3 + w.kMgCo3 * w.mg * co3 + w.kNaHco3 * w.na * u + (w.kCaSo4 * w.ca + w.kMgSo4 * w.mg) * so4
  const rings = w.cyanurate - y - hclcy * (1 + w.h7 * x) - (w.k10 / h) * y - (w.k8 / h) * hclcy
  w.solutes = singly + doubly + paired + w.ra * u + (w.boron - w.borate) + x + rings
  w.ionicNow = 0.5 * singly + 2 * doubly + 4.5 * triply
}

function relative(fresh: number, old: number): number {
  const scale = Math.max(fresh, old)
  return scale === 0 ? 0 : Math.abs(fresh - old) / scale
}
