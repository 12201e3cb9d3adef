import { deltaOf } from '../chemicals/index.ts'
import { MG_CACO3_PER_EQ, methodSigma } from '../water/index.ts'
import { effectPerGPerM3, type LinearKey } from './effect.ts'
import { LIMITS } from './limits.ts'
import type { DoseMove } from './moves.ts'
import type { OpeningInput, Purpose } from './types.ts'

/** The reading that a purpose's dose is counted from; acid and base go by pH. */
const READ_BY: { readonly [P in Purpose]?: LinearKey } = {
  alkalinity: 'ta_mg_per_L_as_CaCO3',
  openingChlorine: 'fc_mg_per_L_as_Cl2',
  dailyChlorine: 'fc_mg_per_L_as_Cl2',
  calcium: 'ch_mg_per_L_as_CaCO3',
  borate: 'borate_mg_per_L_as_B',
  stabiliser: 'cya_mg_per_L',
  salt: 'salt_mg_per_L_as_NaCl',
}

/**
 * One standard deviation of the reading a dose is counted from, as the dose that would make up for it [g/m³].
 * Equation: linear readings σ_r / e; pH β σ_pH / e_A with σ_A/A x besides, as squares; lowering alkalinity σ_A / e_A.
 * Symbols: e mg/L per g/m³; β buffer capacity [mg/L as CaCO3 per pH]; A alkalinity; x the dose.
 * Valid for: errors of the reading that are small against the reading; a slip is not in it.
 * Source: propagation of independent errors; σ of each method from the table of methods.
 * Accuracy: that of the methods' table, most of it common practice.
 */
export function readingSigma(move: DoseMove, input: OpeningInput): number {
  const { product, purpose, gPerM3 } = move.want
  const sigmaOf = (key: LinearKey | 'pH', value: number): number => {
    const method = input.kept?.find((each) => each.key === key)?.method ?? input.method ?? 'unknown'
    return (methodSigma(method, key, value) ?? methodSigma('unknown', key, value))?.sigma ?? 0
  }
  const key = READ_BY[purpose]
  if (key) {
    const effect = Math.abs(effectPerGPerM3(product, key))
    return effect > 0 ? sigmaOf(key, input.start[key] ?? 0) / effect : 0
  }
  const perGram = Math.abs(deltaOf(product, 1).alkalinityEq ?? 0) * MG_CACO3_PER_EQ
  // carbon dioxide moves pH and no alkalinity: it acts by its carbon
  const acts = perGram > 0 ? perGram : Math.abs(deltaOf(product, 1).carbonMol ?? 0) * MG_CACO3_PER_EQ
  const alkalinity = input.start.ta_mg_per_L_as_CaCO3 ?? 0
  const alkalinitySigma = sigmaOf('ta_mg_per_L_as_CaCO3', alkalinity)
  if (!(acts > 0)) return 0
  if (move.exception === 'lowering') return alkalinitySigma / acts
  const perPH = Math.abs(move.before.equilibrium.bufferCapacity) * MG_CACO3_PER_EQ
  const byPH = (perPH * sigmaOf('pH', input.start.pH ?? 0)) / acts
  const byAlkalinity = alkalinity > 0 ? (gPerM3 * alkalinitySigma) / alkalinity : 0
  return Math.hypot(byPH, byAlkalinity)
}

/**
 * The 95 % interval of an amount [g].
 * Equation: x ± z √((x σ_V/V)² + (s σ)²).
 * Symbols: x amount; V volume; σ the reading's deviation in grams for the whole job; s this line's share of the job.
 * Valid for: errors of volume and reading that are independent.
 * Source: propagation of independent errors.
 * Accuracy: first order; never below zero.
 */
export function amountInterval(move: DoseMove, jobShare: number, input: OpeningInput): readonly [number, number] {
  const amountG = move.want.gPerM3 * input.volumeM3
  const byVolume = amountG * (input.volumeSigmaM3 / input.volumeM3)
  const byReading = jobShare * readingSigma(move, input) * input.volumeM3
  const spread = LIMITS.z95 * Math.hypot(byVolume, byReading)
  return [Math.max(0, amountG - spread), amountG + spread]
}
