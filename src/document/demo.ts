import type { Path } from '../basin/index.ts'
import { momentMs } from './moment.ts'
import type { Body, ReadingSet, Spec, System } from './types.ts'

/** An invented pool at an invented place, so that the first sheet shows what a plan can hold. */
const OUTLINE: Path = {
  start: [0, 2.75],
  segments: [
    { to: [2.6, 0.38], c1: [0, 1.343], c2: [1.212, 0.612] },
    { to: [5.6, 0.1], c1: [3.7, 0.196], c2: [4.486, 0.149] },
    { to: [8.4, 0], c1: [6.636, 0.055], c2: [7.363, 0] },
    { to: [11, 2.6], c1: [9.871, 0], c2: [11, 1.129] },
    { to: [8.7, 5.6], c1: [11, 4.112], c2: [10.212, 5.6] },
    { to: [5.3, 4.4], c1: [7.366, 5.6], c2: [6.624, 4.563] },
    { to: [2.25, 5.06], c1: [4.154, 4.259], c2: [3.404, 5.08] },
    { to: [0, 2.75], c1: [0.96, 5.037], c2: [0, 4.04] },
  ],
}

const BODY: Body = {
  id: 'main',
  name: 'Main pool',
  system: 'pool',
  outline: OUTLINE,
  islands: [],
  // Not steeper than 1 : 7 down to about 1.5 m, then a little under 1 : 3.
  floor: {
    kind: 'profile',
    axis: { from: [0, 2.75], to: [11, 2.75] },
    stations: [
      [0, 1.1],
      [3, 1.2],
      [5.4, 1.5],
      [7.6, 2.15],
      [10.2, 2.2],
    ],
  },
  wall: { kind: 'cove', radiusM: 0.25 },
  features: [
    {
      kind: 'shelf',
      path: {
        start: [-0.5, 2.75],
        segments: [
          { to: [1.35, 2.75] },
          { to: [1.95, 5.9], c1: [1.75, 3.5], c2: [1.95, 4.5] },
          { to: [-0.5, 5.9] },
          { to: [-0.5, 2.75] },
        ],
      },
      depthM: 0.3,
    },
    {
      kind: 'roundSteps',
      centre: [0.8, 0.85],
      treads: [
        [0.6, 0.28],
        [0.9, 0.56],
        [1.2, 0.84],
      ],
    },
  ],
  freeboardM: 0.15,
  levelM: 0,
  tolerance: { planM: 0.02, depthM: 0.02 },
  depthsMeasuredFrom: 'waterline',
}

const FILL: ReadingSet = {
  at: '2026-04-24T10:00:00-07:00',
  method: 'supplier',
  values: {
    pH: 7.9,
    ta_mg_per_L_as_CaCO3: 62,
    ch_mg_per_L_as_CaCO3: 70,
    mg_hardness_mg_per_L_as_CaCO3: 25,
    sulfate_mg_per_L: 18,
    cya_mg_per_L: 0,
    borate_mg_per_L_as_B: 0,
    fc_mg_per_L_as_Cl2: 0.4,
    salt_mg_per_L_as_NaCl: 40,
    temperature_C: 11,
  },
}

const OPENING: ReadingSet = {
  at: '2026-05-02T08:30:00-07:00',
  method: 'drop-kit',
  values: {
    pH: 7.8,
    ta_mg_per_L_as_CaCO3: 64,
    ch_mg_per_L_as_CaCO3: 90,
    mg_hardness_mg_per_L_as_CaCO3: 30,
    sulfate_mg_per_L: 30,
    cya_mg_per_L: 0,
    borate_mg_per_L_as_B: 4,
    fc_mg_per_L_as_Cl2: 0.2,
    salt_mg_per_L_as_NaCl: 180,
    temperature_C: 16,
  },
}

const SYSTEM: System = {
  id: 'pool',
  plumbingM3: 0.4,
  volumeEstimates: [
    { from: 'stated', m3: 80, sigmaM3: 8, note: 'The builder’s figure, from length × width × mean depth' },
  ],
  water: { readings: [OPENING], fill: FILL, targets: {} },
  equipment: {
    pumpM3PerH: 6,
    pumpHoursPerDay: 16,
    coverHoursPerDay: 14,
    coverKind: 'solid',
    helpers: ['mineral-cartridge', 'oxidation-unit'],
  },
  stock: [{ product: 'boric-acid', amountG: 5000 }],
  regime: { id: 'unstabilised', products: {}, bathersPerDay: 3, bathingHours: 1, packages: 'us' },
  log: [
    {
      kind: 'note',
      id: 'entry-1',
      at: '2026-05-01T17:00:00-07:00',
      text: 'Cover off, leaves out, cartridge rinsed, pump running on low.',
    },
  ],
}

/** The demonstration pool with the dates that it was written with. */
export const demoSpec: Spec = {
  format: 'shoalbook-spec',
  version: 1,
  name: 'Heron Lane',
  bodies: [BODY],
  systems: [SYSTEM],
  site: { latitudeDeg: 47.2, elevationM: 120, surface: 'plaster' },
}

/** The same with every date moved by one step, so that its newest readings were taken at the moment given. */
export function demoSpecAt(newestMs: number): Spec {
  const by = newestMs - momentMs(OPENING.at)
  const moved = <T extends { readonly at: string }>(item: T): T => ({
    ...item,
    at: new Date(momentMs(item.at) + by).toISOString(),
  })
  return {
    ...demoSpec,
    systems: [
      {
        ...SYSTEM,
        water: { ...SYSTEM.water, readings: SYSTEM.water.readings.map(moved), fill: moved(FILL) },
        log: SYSTEM.log.map(moved),
      },
    ],
  }
}
