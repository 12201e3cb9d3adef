import { TARGET_KEYS, TARGET_LABELS } from './targets.ts'
import type { OpeningInput, OpeningPlan, TargetKey } from './types.ts'

const WHY: { readonly [K in TargetKey]: string } = {
  pH: 'No dose can be counted without it.',
  ta_mg_per_L_as_CaCO3: 'No dose can be counted without it.',
  fc_mg_per_L_as_Cl2: 'No chlorine is dosed until it is known.',
  ch_mg_per_L_as_CaCO3: 'No calcium is dosed and scale cannot be watched until it is known.',
  cya_mg_per_L: 'No stabiliser is dosed, and the chlorine floor takes it as present until it is known.',
  borate_mg_per_L_as_B: 'No borate is dosed until it is known.',
  salt_mg_per_L_as_NaCl: 'No salt is dosed until it is known.',
}
const ALWAYS: readonly TargetKey[] = ['pH', 'ta_mg_per_L_as_CaCO3']

/** Readings that have a target, or that every sum needs, and are not there. */
export function missingReadings(input: OpeningInput): OpeningPlan['missing'] {
  return TARGET_KEYS.filter(
    (key) => input.start[key] === undefined && (input.targets[key] !== undefined || ALWAYS.includes(key)),
  ).map((key) => ({ key, label: TARGET_LABELS[key], why: WHY[key] }))
}
