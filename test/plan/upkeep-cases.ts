import { defaultTargets, type UpkeepInput } from '../../src/plan/index.ts'

export const US_GALLON_M3 = 3.785411784e-3

const VOLUME_M3 = 23_000 * US_GALLON_M3
const MEAN_DEPTH_M = 1.45

/**
 * The pool of the trade's two sayings (common practice, no source): about 23,000 US gallons, borate, a mineral cartridge,
 * an oxidation unit and a cover, kept low without stabiliser by slow tablets of calcium hypochlorite. What the sayings
 * leave open is set to a mild summer day of a family's pool.
 */
export const TRADE_POOL: UpkeepInput = {
  volumeM3: VOLUME_M3,
  waterSurfaceM2: VOLUME_M3 / MEAN_DEPTH_M,
  meanDepthM: MEAN_DEPTH_M,
  latitudeDeg: 44,
  elevationM: 150,
  dayOfYear: 196,
  airC: 24,
  waterC: 27,
  humidityPercent: 60,
  windMPerS: 1.5,
  sunshine: 0.6,
  bathersPerDay: 1,
  bathingHours: 1,
  coverHoursPerDay: 22,
  coverKind: 'solid',
  helpers: ['mineral-cartridge', 'oxidation-unit'],
  water: {
    pH: 7.5,
    ta_mg_per_L_as_CaCO3: 80,
    ch_mg_per_L_as_CaCO3: 250,
    cya_mg_per_L: 0,
    borate_mg_per_L_as_B: 50,
    fc_mg_per_L_as_Cl2: 1,
    salt_mg_per_L_as_NaCl: 400,
    temperature_C: 27,
  },
  fill: { pH: 7.8, ta_mg_per_L_as_CaCO3: 120, ch_mg_per_L_as_CaCO3: 150, salt_mg_per_L_as_NaCl: 60 },
  targets: defaultTargets('plaster', 'unstabilised', { fc_mg_per_L_as_Cl2: { low: 1, aim: 1, high: 2 } }),
  chlorineProductId: 'cal-hypo-tablet',
  acidProductId: 'muriatic-acid-31',
  pumpHoursPerDay: 12,
  constants: 'default',
}

/** An uncovered pool with stabiliser, dosed with liquid chlorine, four bathers for an hour. */
export const OPEN_POOL: UpkeepInput = {
  ...TRADE_POOL,
  coverKind: 'none',
  coverHoursPerDay: 0,
  helpers: [],
  bathersPerDay: 4,
  water: { ...TRADE_POOL.water, cya_mg_per_L: 40, borate_mg_per_L_as_B: 0, fc_mg_per_L_as_Cl2: 3 },
  targets: defaultTargets('plaster', 'stabilised', {}),
  chlorineProductId: 'liquid-chlorine-12',
}
