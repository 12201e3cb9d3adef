import { next, type Tin } from './tin.ts'
import type { WetTin } from './tin-types.ts'

/** The wet triangle at a place; for one between a curve and its chord the half-edge on the nearest chord of the shore as well, else −1. */
export interface Located {
  triangle: number
  beyond: number
}

/** Finds what holds a place, in a record that the next call writes over: a grid says where to begin to walk. */
export function tinLocator({ tin, isWet }: WetTin, extentM: number): (x: number, y: number) => Located {
  const { x, y, corners, across } = tin
  const size = Math.max(1, Math.ceil(Math.sqrt(isWet.length / 2)))
  const start = new Int32Array(size * size).fill(-1)
  const cell = (px: number, py: number): number => {
    const ix = Math.floor((px / extentM + 0.5) * size)
    const iy = Math.floor((py / extentM + 0.5) * size)
    return Math.min(size - 1, Math.max(0, ix)) * size + Math.min(size - 1, Math.max(0, iy))
  }
  const shore: number[] = []
  for (let t = 0; t < isWet.length; t++) {
    if (isWet[t] === 0) continue
    const [a, b, c] = [corners[3 * t]!, corners[3 * t + 1]!, corners[3 * t + 2]!]
    start[cell((x[a]! + x[b]! + x[c]!) / 3, (y[a]! + y[b]! + y[c]!) / 3)] = t
    for (let e = 3 * t; e < 3 * t + 3; e++) if (isWet[(across[e]! / 3) | 0] === 0) shore.push(e)
  }
  const near: Located = { triangle: shore.length > 0 ? (shore[0]! / 3) | 0 : 0, beyond: -1 }
  return (px, py) => {
    const hint = start[cell(px, py)]!
    const t = tin.holding(px, py, hint < 0 ? near.triangle : hint)
    near.beyond = isWet[t] === 1 ? -1 : nearestShore(tin, shore, px, py)
    near.triangle = near.beyond < 0 ? t : (near.beyond / 3) | 0
    return near
  }
}

function nearestShore(tin: Tin, shore: readonly number[], px: number, py: number): number {
  const { x, y, corners } = tin
  let best = -1
  let bestM2 = Infinity
  for (const e of shore) {
    const u = corners[e]!
    const v = corners[next(e)]!
    const dx = x[v]! - x[u]!
    const dy = y[v]! - y[u]!
    const along = Math.min(1, Math.max(0, ((px - x[u]!) * dx + (py - y[u]!) * dy) / (dx * dx + dy * dy)))
    const d = (px - x[u]! - along * dx) ** 2 + (py - y[u]! - along * dy) ** 2
    if (d < bestM2) {
      bestM2 = d
      best = e
    }
  }
  return best
}
