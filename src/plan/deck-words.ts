import type { LinearKey } from './effect.ts'

export const DECK_LABELS: { readonly [K in LinearKey | 'pH-high' | 'pH-low']: string } = Object.freeze({
  'pH-high': 'pH too high: acid',
  'pH-low': 'pH too low: base',
  ta_mg_per_L_as_CaCO3: 'Alkalinity too low',
  fc_mg_per_L_as_Cl2: 'Free chlorine too low',
  ch_mg_per_L_as_CaCO3: 'Calcium hardness too low',
  cya_mg_per_L: 'Stabiliser too low',
  borate_mg_per_L_as_B: 'Borate too low',
  salt_mg_per_L_as_NaCl: 'Salt too low',
})

/** Before any product's own: what holds for the whole card. Common practice, no source. */
export const DECK_CAUTIONS = [
  'One product at a time. A whole turnover of the pump before the next, and measure again before anyone bathes.',
  'Amounts are rounded down, and each counts for its own reading alone; the plan counts all that goes in together, so its amounts may differ. Measure after a turnover, then give what is still lacking.',
  'This card is no leave to bathe: only fresh readings inside your limits are, and your local code comes first.',
] as const
