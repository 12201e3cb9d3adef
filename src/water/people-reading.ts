import type { WaterReading } from './types.ts'

/** What people's tests report besides the readings that a water is solved from. */
export interface ExtraReading {
  /** Total chlorine: free and combined. */
  readonly tc_mg_per_L_as_Cl2?: number | undefined
  readonly cc_mg_per_L_as_Cl2?: number | undefined
  /** Total hardness, calcium and magnesium: what strips report. */
  readonly th_mg_per_L_as_CaCO3?: number | undefined
  readonly copper_mg_per_L?: number | undefined
  readonly iron_mg_per_L?: number | undefined
  readonly manganese_mg_per_L?: number | undefined
  /** Corrected to 25 °C, as meters show it. */
  readonly conductivity_uS_per_cm?: number | undefined
  /** As a meter shows it: conductivity times a fixed factor. */
  readonly tds_mg_per_L?: number | undefined
}

/** Readings as somebody has them: any may be missing, and a missing one is unknown, never zero. */
export type PeopleReading = { readonly [key in keyof WaterReading]?: number | undefined } & ExtraReading

export type PeopleReadingKey = keyof PeopleReading

/** Their names in a sentence. */
export const PEOPLE_READING_NAMES: { readonly [key in PeopleReadingKey]-?: string } = Object.freeze({
  pH: 'pH',
  ta_mg_per_L_as_CaCO3: 'total alkalinity',
  ch_mg_per_L_as_CaCO3: 'calcium hardness',
  mg_hardness_mg_per_L_as_CaCO3: 'magnesium hardness',
  sulfate_mg_per_L: 'sulfate',
  cya_mg_per_L: 'stabiliser',
  borate_mg_per_L_as_B: 'borate',
  fc_mg_per_L_as_Cl2: 'free chlorine',
  salt_mg_per_L_as_NaCl: 'salt',
  temperature_C: 'temperature',
  tc_mg_per_L_as_Cl2: 'total chlorine',
  cc_mg_per_L_as_Cl2: 'combined chlorine',
  th_mg_per_L_as_CaCO3: 'total hardness',
  copper_mg_per_L: 'copper',
  iron_mg_per_L: 'iron',
  manganese_mg_per_L: 'manganese',
  conductivity_uS_per_cm: 'conductivity',
  tds_mg_per_L: 'dissolved solids',
})
