import { BORON_DOSE } from './sources.ts'

/** A day's dose that is held to be without harm: boron per kilogram of body [mg/kg]. */
const REFERENCE_MG_PER_KG = 0.2

export interface BorateIntake {
  readonly boronMg: number
  readonly mgPerKg: number
  /** 1 is all of what is held to be without harm in a day. */
  readonly shareOfReference: number
  readonly source: string
}

/**
 * Boron that someone takes in by swallowing pool water.
 * Equation: m = c V; share = m / (0.2 W).
 * Symbols: c borate as boron [mg/L]; V swallowed [mL]; W body weight [kg].
 * Valid for: any water; food brings boron too.
 * Source: US EPA reference dose 0.2 mg/kg a day (2004), seen in a health department's summary.
 * Accuracy: that of what is swallowed. The reference is for people; for animals it is only a measuring stick.
 */
export function borateIntake(boronMgPerL: number, swallowedML: number, bodyKg: number): BorateIntake {
  const boronMg = (boronMgPerL * swallowedML) / 1000
  const mgPerKg = boronMg / bodyKg
  return { boronMg, mgPerKg, shareOfReference: mgPerKg / REFERENCE_MG_PER_KG, source: BORON_DOSE.source }
}
