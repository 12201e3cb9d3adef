import type { Equilibrium } from './types.ts'

const CUBIC_TO_C = 30
/** Decline per °C beyond the cubic: Wanninkhof 2014, Limnol. Oceanogr. Methods 12:351 (from memory), 367 to 241 over 30–40 °C. */
const DECLINE_PER_C = 0.0423

/**
 * Schmidt number of CO2 in fresh water [-].
 * Equation: 1911.1 − 118.11 t + 3.4527 t² − 0.04132 t³ up to 30 °C; beyond, its value there × e^(−0.0423 (t − 30)).
 * Symbols: t [°C].
 * Valid for: 0–45 °C. The cubic alone falls to zero near 43 °C, so it is left at its last valid point.
 * Source: Wanninkhof 1992, J. Geophys. Res. 97:7373, table A1.
 * Accuracy: 3 %; 600 at 20 °C.
 */
export function schmidtNumberCO2(temperatureC: number): number {
  const t = Math.min(temperatureC, CUBIC_TO_C)
  const cubic = 1911.1 - t * (118.11 - t * (3.4527 - t * 0.04132))
  return cubic * Math.exp(-DECLINE_PER_C * (temperatureC - t))
}

const CM_PER_H_TO_M_PER_DAY = 0.24

/**
 * Transfer velocity of CO2 through the surface [m/day].
 * Equation: (2.07 + 0.215 U^1.7) cm/h × (600/Sc)^0.5.
 * Symbols: U wind at 10 m [m/s]; Sc Schmidt number.
 * Valid for: sheltered water, wind to 10 m/s. Jets, spillways and bubbles come on top.
 * Source: Cole & Caraco 1998, Limnol. Oceanogr. 43:647; the Schmidt exponent 0.5 is standard (from memory).
 * Accuracy: a factor of two on a small pool.
 */
export function gasTransferVelocityMPerDay(windU10MPerS: number, temperatureC: number): number {
  const k600 = (2.07 + 0.215 * Math.max(0, windU10MPerS) ** 1.7) * CM_PER_H_TO_M_PER_DAY
  return k600 * Math.sqrt(600 / schmidtNumberCO2(temperatureC))
}

/**
 * CO2 leaving the water [mol/m² day]; negative where it enters.
 * Equation: k ([CO2] − [CO2] 10^(p_air − p_water)) × 1000 kg/m³.
 * Symbols: k transfer velocity [m/day]; [CO2] [mol/kg]; p log10 of CO2 pressure [atm].
 * Valid for: any solved water; alkalinity is untouched by it.
 * Source: two-film model with the water side ruling (from memory).
 * Accuracy: that of k.
 */
export function co2FluxMolPerM2Day(
  equilibrium: Equilibrium,
  log10PCO2Atm: number,
  transferVelocityMPerDay: number,
): number {
  return transferVelocityMPerDay * (equilibrium.species.co2 - saturatedCO2MolPerKg(equilibrium, log10PCO2Atm)) * 1000
}

/** Dissolved CO2 that air of this pressure would hold in this water [mol/kg]. */
export function saturatedCO2MolPerKg(equilibrium: Equilibrium, log10PCO2Atm: number): number {
  const { log10HenryMolPerKgAtm } = equilibrium
  return 10 ** (log10HenryMolPerKgAtm + log10PCO2Atm)
}
