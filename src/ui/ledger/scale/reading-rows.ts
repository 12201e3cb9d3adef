import type { ReadingKey } from '../../../document/index.ts'
import type { Quantity } from '../../../units/index.ts'

/** Under which heading a reading that few people take is asked for. */
export type ReadingGroup = 'chlorine' | 'hardness' | 'salts' | 'metals'

/** How a reading is called and shown. The rows are in the order in which a person measures them. */
export interface ReadingRow {
  readonly key: ReadingKey
  readonly label: string
  /** For narrow columns. */
  readonly short: string
  readonly quantity: Quantity
  /** Decimals shown. */
  readonly digits: number
  /** Asked for under "More readings": the plan works without it. */
  readonly isMore: boolean
  readonly group?: ReadingGroup
  readonly min: number
  readonly max: number
}

const usual = (
  key: ReadingKey,
  label: string,
  quantity: Quantity,
  digits: number,
  [min, max]: readonly [number, number],
  short = label,
): ReadingRow => ({ key, label, short, quantity, digits, isMore: false, min, max })

const more = (
  group: ReadingGroup,
  key: ReadingKey,
  label: string,
  quantity: Quantity,
  digits: number,
  max: number,
  short = label,
): ReadingRow => ({ key, label, short, quantity, digits, isMore: true, group, min: 0, max })

/** Every reading that a person can enter; those that few take stand last, by their group. */
// biome-ignore format: one row a reading
export const READING_ROWS: readonly ReadingRow[] = [
  usual('pH', 'pH', 'pH', 1, [4, 11]),
  usual('ta_mg_per_L_as_CaCO3', 'Total alkalinity', 'alkalinity', 0, [0, 1000]),
  usual('ch_mg_per_L_as_CaCO3', 'Calcium hardness', 'hardness', 0, [0, 5000]),
  usual('cya_mg_per_L', 'Stabiliser', 'concentration', 0, [0, 500]),
  usual('borate_mg_per_L_as_B', 'Borate, as boron', 'concentration', 0, [0, 200], 'Borate, as B'),
  usual('fc_mg_per_L_as_Cl2', 'Free chlorine', 'concentration', 1, [0, 100]),
  usual('salt_mg_per_L_as_NaCl', 'Salt', 'concentration', 0, [0, 40000]),
  usual('temperature_C', 'Water temperature', 'temperature', 0, [0, 45], 'Temperature'),
  more('chlorine', 'tc_mg_per_L_as_Cl2', 'Total chlorine', 'concentration', 1, 100),
  more('chlorine', 'cc_mg_per_L_as_Cl2', 'Combined chlorine', 'concentration', 1, 50),
  more('hardness', 'th_mg_per_L_as_CaCO3', 'Total hardness', 'hardness', 0, 10000),
  more('hardness', 'mg_hardness_mg_per_L_as_CaCO3', 'Magnesium hardness', 'hardness', 0, 5000, 'Mg hardness'),
  more('salts', 'sulfate_mg_per_L', 'Sulfate', 'concentration', 0, 5000),
  more('salts', 'conductivity_uS_per_cm', 'Conductivity', 'conductivity', 0, 60000),
  more('salts', 'tds_mg_per_L', 'Dissolved solids, by a meter', 'concentration', 0, 20000, 'Dissolved solids'),
  more('metals', 'copper_mg_per_L', 'Copper', 'concentration', 2, 100),
  more('metals', 'iron_mg_per_L', 'Iron', 'concentration', 2, 100),
  more('metals', 'manganese_mg_per_L', 'Manganese', 'concentration', 2, 100),
]
