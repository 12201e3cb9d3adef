import { ok, type Result } from '../base/index.ts'
import {
  type Constants,
  leastSaltMgPerL,
  MOLAR_MASSES_G_PER_MOL as MASS,
  totalsOf,
  type WaterReading,
} from '../water/index.ts'
import { type SolvedWater, solvedWater } from './solved.ts'
import { TARGET_LABELS } from './targets.ts'
import type { KnownReading } from './types.ts'

/** What the sums go on with where a reading is unknown; nothing is ever dosed on it. */
const ASSUMED = { temperature_C: 25, ch_mg_per_L_as_CaCO3: 200, salt_mg_per_L_as_NaCl: 300 } as const
/** Salt beyond what balances the hardness, so that some sodium is left [mg/L as NaCl] (ours). */
const SPARE_SALT_MG_PER_L = 20
/** Sulfate that may be assumed at most [mg/L]: the US secondary drinking-water level, from memory. */
const MOST_SULFATE_MG_PER_L = 250
/** One mole of sulfate stands for two of chloride: mg/L of sulfate for a mg/L of salt [1]. */
const SULFATE_PER_SALT = (0.5 * MASS.sulfate) / MASS.sodiumChloride

export interface StartWater {
  readonly water: SolvedWater
  /** What was assumed, in words. */
  readonly assumptions: readonly string[]
}

/** The water of known readings; pH and alkalinity must be among them. Unknown ones are assumed, and said. */
export function startWater(
  known: KnownReading & { readonly pH: number; readonly ta_mg_per_L_as_CaCO3: number },
  constants: Constants,
): Result<StartWater> {
  const assumptions: string[] = []
  const calcium = known.ch_mg_per_L_as_CaCO3 ?? ASSUMED.ch_mg_per_L_as_CaCO3
  const magnesium = known.mg_hardness_mg_per_L_as_CaCO3 ?? 0
  // enough chloride that hardness is balanced and some sodium is left
  const least = leastSaltMgPerL({
    pH: known.pH,
    ta_mg_per_L_as_CaCO3: known.ta_mg_per_L_as_CaCO3,
    ch_mg_per_L_as_CaCO3: calcium,
    mg_hardness_mg_per_L_as_CaCO3: magnesium,
    sulfate_mg_per_L: known.sulfate_mg_per_L,
  })
  const salt = known.salt_mg_per_L_as_NaCl ?? Math.max(ASSUMED.salt_mg_per_L_as_NaCl, least + SPARE_SALT_MG_PER_L)
  const sulfate = known.sulfate_mg_per_L ?? closingSulfate(least - salt)
  const reading: WaterReading = {
    pH: known.pH,
    ta_mg_per_L_as_CaCO3: known.ta_mg_per_L_as_CaCO3,
    ch_mg_per_L_as_CaCO3: calcium,
    mg_hardness_mg_per_L_as_CaCO3: magnesium,
    sulfate_mg_per_L: sulfate,
    cya_mg_per_L: known.cya_mg_per_L ?? 0,
    borate_mg_per_L_as_B: known.borate_mg_per_L_as_B ?? 0,
    fc_mg_per_L_as_Cl2: known.fc_mg_per_L_as_Cl2 ?? 0,
    salt_mg_per_L_as_NaCl: salt,
    temperature_C: known.temperature_C ?? ASSUMED.temperature_C,
  }
  if (known.temperature_C === undefined) assumptions.push('Temperature is unknown; the sums take 25 °C.')
  if (known.ch_mg_per_L_as_CaCO3 === undefined)
    assumptions.push('Calcium hardness is unknown; to watch for scale the sums take 200 mg/L, and none is dosed.')
  if (known.salt_mg_per_L_as_NaCl === undefined)
    assumptions.push(
      `Salt is unknown; the sums take ${Math.round(salt)} mg/L, which hardly matters unless the pool is salted.`,
    )
  const noIons = [
    ...(known.mg_hardness_mg_per_L_as_CaCO3 === undefined ? ['Magnesium hardness'] : []),
    ...(known.sulfate_mg_per_L === undefined && sulfate === 0 ? ['sulfate'] : []),
  ].join(' and ')
  if (noIons !== '')
    assumptions.push(`${noIons.charAt(0).toUpperCase()}${noIons.slice(1)} unknown: the sums take none.`)
  if (known.sulfate_mg_per_L === undefined && sulfate > 0)
    assumptions.push(
      `Sulfate is unknown, and the other readings need some beside them; the sums take ${Math.round(sulfate)} mg/L.`,
    )
  for (const key of ['cya_mg_per_L', 'borate_mg_per_L_as_B', 'fc_mg_per_L_as_Cl2'] as const)
    if (known[key] === undefined)
      assumptions.push(
        `${TARGET_LABELS[key]} is unknown; the sums go on as if there were none, and none is dosed.${key === 'cya_mg_per_L' ? ' How much of the chlorine is active can’t be told.' : ''}`,
      )
  const totals = totalsOf(reading, constants)
  if (!totals.ok) return totals
  const water = solvedWater(totals.value, constants)
  return water.ok ? ok({ water: water.value, assumptions }) : water
}

/** Sulfate that balances the hardness where the salt that was read is too little; none where that would be unusual. */
function closingSulfate(lackingSaltMgPerL: number): number {
  if (lackingSaltMgPerL <= 0) return 0
  const least = lackingSaltMgPerL * SULFATE_PER_SALT
  if (least > MOST_SULFATE_MG_PER_L) return 0
  return Math.min(MOST_SULFATE_MG_PER_L, least + SPARE_SALT_MG_PER_L * SULFATE_PER_SALT)
}
