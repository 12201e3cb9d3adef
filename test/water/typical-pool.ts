import type { WaterReading } from '../../src/water/index.ts'

/** A pool with everything that counts, invented: what timings and heap are measured on. */
export const TYPICAL_POOL: WaterReading = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 300,
  mg_hardness_mg_per_L_as_CaCO3: 50,
  sulfate_mg_per_L: 60,
  cya_mg_per_L: 40,
  borate_mg_per_L_as_B: 30,
  fc_mg_per_L_as_Cl2: 3,
  salt_mg_per_L_as_NaCl: 1500,
  temperature_C: 28,
}
