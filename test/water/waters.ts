import type { WaterReading } from '../../src/water/index.ts'
import { goldenRows } from './golden.ts'

export interface Water {
  readonly id: string
  readonly reading: WaterReading
}

/** Waters that no table has: the ends of what is met. */
const OWN: readonly Water[] = [
  { id: 'rain', reading: { pH: 5.7, ta_mg_per_L_as_CaCO3: 0.3, temperature_C: 8 } },
  {
    id: 'mine water, acid',
    reading: {
      pH: 3.4,
      ta_mg_per_L_as_CaCO3: -20,
      sulfate_mg_per_L: 300,
      salt_mg_per_L_as_NaCl: 40,
      ch_mg_per_L_as_CaCO3: 150,
      temperature_C: 12,
    },
  },
  {
    id: 'softened well',
    reading: {
      pH: 8.3,
      ta_mg_per_L_as_CaCO3: 420,
      ch_mg_per_L_as_CaCO3: 4,
      salt_mg_per_L_as_NaCl: 90,
      temperature_C: 14,
    },
  },
  {
    id: 'gypsum water',
    reading: {
      pH: 7.2,
      ta_mg_per_L_as_CaCO3: 220,
      ch_mg_per_L_as_CaCO3: 1500,
      mg_hardness_mg_per_L_as_CaCO3: 300,
      sulfate_mg_per_L: 1500,
      salt_mg_per_L_as_NaCl: 60,
      temperature_C: 11,
    },
  },
  {
    id: 'pool on tablets for years',
    reading: {
      pH: 7.1,
      ta_mg_per_L_as_CaCO3: 110,
      ch_mg_per_L_as_CaCO3: 500,
      sulfate_mg_per_L: 120,
      cya_mg_per_L: 250,
      fc_mg_per_L_as_Cl2: 6,
      salt_mg_per_L_as_NaCl: 1500,
      temperature_C: 30,
    },
  },
  {
    id: 'shocked indoor pool',
    reading: {
      pH: 7.2,
      ta_mg_per_L_as_CaCO3: 90,
      ch_mg_per_L_as_CaCO3: 250,
      fc_mg_per_L_as_Cl2: 20,
      salt_mg_per_L_as_NaCl: 600,
      temperature_C: 28,
    },
  },
  {
    id: 'hot tub with borate',
    reading: {
      pH: 7.6,
      ta_mg_per_L_as_CaCO3: 60,
      ch_mg_per_L_as_CaCO3: 150,
      cya_mg_per_L: 30,
      borate_mg_per_L_as_B: 50,
      fc_mg_per_L_as_Cl2: 4,
      salt_mg_per_L_as_NaCl: 400,
      temperature_C: 39,
    },
  },
  {
    id: 'sea-water pool',
    reading: {
      pH: 8.0,
      ta_mg_per_L_as_CaCO3: 120,
      ch_mg_per_L_as_CaCO3: 1020,
      mg_hardness_mg_per_L_as_CaCO3: 5300,
      sulfate_mg_per_L: 2700,
      borate_mg_per_L_as_B: 4.5,
      fc_mg_per_L_as_Cl2: 1.5,
      salt_mg_per_L_as_NaCl: 31000,
      temperature_C: 22,
    },
  },
  {
    id: 'limewash',
    reading: {
      pH: 11.4,
      ta_mg_per_L_as_CaCO3: 260,
      ch_mg_per_L_as_CaCO3: 200,
      salt_mg_per_L_as_NaCl: 100,
      temperature_C: 20,
    },
  },
]

/** Every starting water of the golden tables and our own: a new row in either joins the whole matrix. */
export const WATERS: readonly Water[] = [
  ...goldenRows('speciation').map(({ id, input }) => ({ id, reading: input })),
  ...goldenRows('dose_reactions').map(({ id, start }) => ({ id, reading: start })),
  ...goldenRows('blending').flatMap(({ id, input }) => [
    { id: `${id} pool`, reading: input.pool },
    ...(input.fill ? [{ id: `${id} fill`, reading: input.fill }] : []),
  ]),
  ...goldenRows('inverse').map(({ id, start }) => ({ id, reading: start })),
  ...goldenRows('first_fill').map(({ id, start }) => ({ id, reading: start })),
  ...OWN,
]
