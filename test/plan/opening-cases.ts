import {
  type DoseLine,
  defaultTargets,
  type KnownReading,
  type OpeningInput,
  type OpeningPlan,
  openingPlan,
} from '../../src/plan/index.ts'
import { good } from '../water/golden.ts'

export const HOUR = 3_600_000
export const NOW = Date.UTC(2026, 4, 2, 9)

/** A soft water as it comes from a tap, invented. */
export const FRESH: KnownReading = {
  pH: 7.8,
  ta_mg_per_L_as_CaCO3: 45,
  ch_mg_per_L_as_CaCO3: 80,
  mg_hardness_mg_per_L_as_CaCO3: 20,
  sulfate_mg_per_L: 30,
  cya_mg_per_L: 0,
  borate_mg_per_L_as_B: 0,
  fc_mg_per_L_as_Cl2: 0.1,
  salt_mg_per_L_as_NaCl: 90,
  temperature_C: 18,
}
/** A pool inside every band of the stabilised regime. */
export const BALANCED: KnownReading = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 260,
  cya_mg_per_L: 30,
  fc_mg_per_L_as_Cl2: 3,
  salt_mg_per_L_as_NaCl: 500,
  temperature_C: 26,
}

export const input = (start: KnownReading, more: Partial<OpeningInput> = {}): OpeningInput => {
  const surface = 'surface' in more ? more.surface : 'plaster'
  const regimeId = more.regimeId ?? 'stabilised'
  return {
    volumeM3: 60,
    volumeSigmaM3: 2,
    surface,
    regimeId,
    targets: defaultTargets(surface, regimeId, {}),
    products: {},
    start,
    startIs: 'pool',
    method: 'drop-kit',
    measuredAtMs: NOW - HOUR,
    nowMs: NOW,
    turnoverHours: 8,
    given: [],
    stockG: {},
    constants: 'default',
    ...more,
  }
}
export const plan = (start: KnownReading, more: Partial<OpeningInput> = {}): OpeningPlan =>
  good(openingPlan(input(start, more)))
export const doses = (of: OpeningPlan): readonly DoseLine[] => of.lines.filter((line) => line.kind === 'dose')
