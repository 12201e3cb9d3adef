/** How far a water was exchanged: what share of its own solutes one litre still holds, and of fresh water's. */
export interface Dilution {
  /** Concentration after / before, where the fresh water holds nothing. Above 1: water left as vapour. */
  readonly keeps: number
  /** Share of the water that is fresh. */
  readonly fresh: number
}

/** Best guess with both ends. */
export interface DilutionRange {
  readonly value: Dilution
  readonly least: Dilution
  readonly most: Dilution
}

/**
 * Rain into a pool that overflows once it is full [-]: what share of its solutes each litre keeps.
 * Equation: up to the brim V/(V + r); what comes after, q = w − r, replaces mixed water: × exp(−q/(V + r)).
 * Symbols: V water before [m³]; r room to the brim [m³]; w water that comes in [m³].
 * Valid for: rain slow against the pump's mixing. Where it lies on top and runs off unmixed, only the first factor holds.
 * Source: mass balance of a stirred tank.
 * Accuracy: exact for its assumption; the two assumptions are the ends of the range.
 */
export function rainDilution(
  volumeM3: number,
  roomM3: number,
  inflowM3: number,
): DilutionRange & { readonly overflowM3: number } {
  const room = Math.max(0, roomM3)
  const full = volumeM3 + Math.min(room, inflowM3)
  const overflowM3 = Math.max(0, inflowM3 - room)
  const unmixed = volumeM3 / full
  const mixed = unmixed * Math.exp(-overflowM3 / full)
  return {
    value: { keeps: mixed, fresh: 1 - mixed },
    least: { keeps: unmixed, fresh: 1 - unmixed },
    most: { keeps: mixed, fresh: 1 - mixed },
    overflowM3,
  }
}

export interface WinterLevels {
  /** Water at the level before winter [m³]. */
  readonly volumeM3: number
  readonly surfaceM2: number
  /** Let down at closing, below the level before [m]. */
  readonly loweredM: number
  /** Level found in spring, below the level before; negative where it stands higher [m]. */
  readonly springBelowM: number
  /** Pumped off through the winter, all together [m]. */
  readonly pumpedOffM: number
  /** Rain and melt onto the pool since closing, less what dried up; absent where nobody knows [m]. */
  readonly rainM?: number | undefined
}

/**
 * What a winter leaves of the solutes in each litre [-].
 * Equation: between closing and spring V₁/V₂, whatever dried up meanwhile; what was pumped off or ran over, o, takes
 *   mixed water with it: × exp(−o/V̄). o = A (w − (h₁ − h₂)) where rain w is known, at least what was pumped off.
 * Symbols: V₁, V₂ water after lowering and in spring [m³]; A surface [m²]; h₁, h₂ levels below the one before [m]; w rain and
 *   melt less what dried up [m]; V̄ logarithmic mean of V₁ and V₂, which is exact where the water left evenly over the winter.
 * Valid for: no leak, and walls near the surface upright. Where spring stands lower than closing, drying up and a leak
 *   cannot be told apart: 1 to V₁/V₂.
 * Source: mass balance; drying takes water only.
 * Accuracy: ends are nothing mixed into what left (fresh water on top ran off) and all of it mixed, with levels read to 10 mm.
 */
export function winterDilution(
  levels: WinterLevels,
): DilutionRange & { readonly lostM3: number; readonly isLower: boolean } {
  const { volumeM3, surfaceM2, loweredM, springBelowM, pumpedOffM, rainM } = levels
  const at = (belowM: number) => volumeM3 - belowM * surfaceM2
  const isLower = springBelowM > loweredM
  const ranOver = rainM === undefined ? 0 : rainM - (loweredM - springBelowM)
  const lostM3 = Math.max(0, pumpedOffM, ranOver) * surfaceM2
  const kept = (lowered: number, spring: number) => at(lowered) / at(spring)
  const through = (lowered: number, spring: number) => Math.exp(-lostM3 / logMean(at(lowered), at(spring)))
  const of = (keeps: number): Dilution => ({ keeps, fresh: 1 - Math.min(1, keeps) })
  // where hardly any water is left, a misread level leaves some all the same
  const leastDepthM = Math.min(at(loweredM), at(springBelowM)) / surfaceM2
  const read = Math.min(LEVEL_READ_M, leastDepthM / 2)
  const dry = kept(loweredM, springBelowM)
  if (isLower) {
    const share = through(loweredM, springBelowM)
    return { value: of(dry * share), least: of(kept(loweredM, springBelowM + read)), most: of(share), lostM3, isLower }
  }
  return {
    value: of(dry * through(loweredM, springBelowM)),
    least: of(kept(loweredM - read, springBelowM + read)),
    most: of(kept(loweredM + read, springBelowM - read) * through(loweredM + read, springBelowM - read)),
    lostM3,
    isLower,
  }
}

function logMean(a: number, b: number): number {
  const ratio = b / a
  // the difference quotient loses its digits where both are nearly alike, and the plain mean is the same there
  return Math.abs(ratio - 1) < 1e-4 ? (a + b) / 2 : (b - a) / Math.log(ratio)
}

/** A level is read to about a centimetre [m]: from memory. */
export const LEVEL_READ_M = 0.01
