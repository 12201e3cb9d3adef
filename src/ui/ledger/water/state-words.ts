import type { KnownReading } from '../../../plan/index.ts'
import type { Equilibrium } from '../../../water/index.ts'
import { andList } from './reading-words.ts'

/** CO2 pressure of air [log10 atm]: about 0.000417 atm. */
const LOG10_PCO2_AIR = -3.38
const NEAR_BALANCE = 0.3

/** Why the two indices differ in this water, in one sentence, naming the largest cause. */
export function whyIndicesDiffer(known: KnownReading, temperatureC: number): string {
  const stabiliser = (known.cya_mg_per_L ?? 0) > 10
  const borate = (known.borate_mg_per_L_as_B ?? 0) > 10
  if (stabiliser || borate) {
    const what = andList([...(stabiliser ? ['stabiliser'] : []), ...(borate ? ['borate'] : [])])
    return `They differ mostly because the table counts alkalinity that belongs to ${what} as carbonate.`
  }
  if (temperatureC < 18) return 'They differ mostly because the table overstates how much cold water dissolves.'
  if ((known.salt_mg_per_L_as_NaCl ?? 0) > 1500)
    return 'They differ mostly because the table knows two steps of dissolved salts, and this water holds many.'
  return 'They differ because the table adds rounded factors, and the other solves the water as it is.'
}

/** What an index means for the surface. The limits of balance are common practice, no source. */
export function saturationWords(calciteSI: number): string {
  if (!Number.isFinite(calciteSI)) return 'no calcium or carbonate'
  if (calciteSI < -NEAR_BALANCE) return 'dissolves plaster and grout'
  if (calciteSI > NEAR_BALANCE) return 'may leave scale'
  return 'near balance'
}

/** How many times the CO2 that air would hold in it, and what follows. */
export function carbonDioxideWords(log10PCO2Atm: number, formatFactor: (factor: number) => string): string {
  if (!Number.isFinite(log10PCO2Atm)) return 'none, since there is no carbonate'
  const factor = 10 ** (log10PCO2Atm - LOG10_PCO2_AIR)
  if (factor > 1.2) return `${formatFactor(factor)} times what air would leave in it: it escapes, and pH creeps up`
  if (factor < 0.8) return `${formatFactor(factor)} times what air would leave in it: it takes some up, and pH sinks`
  return 'in balance with air'
}

/** One share of the free chlorine or of the alkalinity. */
export interface Share {
  readonly id: string
  readonly label: string
  readonly value: number
}

/** The free chlorine by what it is [mg/L as Cl2]. */
export function chlorineShares(equilibrium: Equilibrium): readonly Share[] {
  return [
    { id: 'hocl', label: 'Active (HOCl)', value: equilibrium.activeChlorineMgPerL },
    { id: 'ocl', label: 'Hypochlorite (OCl⁻), weak', value: equilibrium.hypochloriteMgPerL },
    { id: 'bound', label: 'Held by stabiliser, in store', value: equilibrium.boundChlorineMgPerL },
  ]
}

/** Total alkalinity by what it belongs to [mg/L as CaCO3]; the parts add up to the total. */
export function alkalinityShares(equilibrium: Equilibrium): readonly Share[] {
  const { carbonate, borate, cyanurate, chlorinatedCyanurate, hypochlorite, hydroxide } = equilibrium.alkalinity
  return [
    { id: 'carbonate', label: 'Carbonate', value: carbonate },
    { id: 'borate', label: 'Borate', value: borate },
    { id: 'stabiliser', label: 'Stabiliser', value: cyanurate + chlorinatedCyanurate },
    { id: 'other', label: 'Hypochlorite, hydroxide', value: hypochlorite + hydroxide },
  ]
}
