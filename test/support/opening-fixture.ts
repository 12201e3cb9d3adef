import type { DoseLine, ExpectedWater, Movement, OpeningPlan, StepLine } from '../../src/plan/index.ts'

/** Invented plan for tests of what the screen makes of a plan: its numbers belong together, but no kernel made them. */

const PH = { low: 7.2, aim: 7.5, high: 7.8 }
const TA = { low: 60, aim: 90, high: 120 }
const BORATE = { low: 30, aim: 45, high: 50 }

const after = (pH: number, ta: number): ExpectedWater => ({
  reading: { pH, ta_mg_per_L_as_CaCO3: ta },
  equilibrium: {
    pH,
    temperatureC: 24,
    activeChlorineMgPerL: 0.9,
    hypochloriteMgPerL: 0.8,
    boundChlorineMgPerL: 0,
    calciteSI: -0.2,
    log10PCO2Atm: -2.6,
    bufferCapacity: 1e-3,
    ionicStrength: 0.01,
    alkalinity: {
      carbonate: ta - 6,
      borate: 5,
      cyanurate: 0,
      chlorinatedCyanurate: 0,
      hypochlorite: 0.9,
      hydroxide: 0.1,
      total: ta,
    },
    co2MgPerL: 4.1,
    conductanceMicroSPerCm: 700,
    residual: 1e-13,
    iterations: 6,
  } as ExpectedWater['equilibrium'],
})

const move = (key: Movement['key'], before: number, to: number, band: NonNullable<Movement['band']>): Movement => ({
  key,
  before,
  after: to,
  band,
  inBand: to >= band.low && to <= band.high,
})

const circulate: StepLine = {
  kind: 'circulate',
  key: 'circulate',
  title: 'Circulate and brush',
  how: 'Run the pump for one turnover before anything goes in.',
  why: 'Readings of still water say little.',
  startHours: 0,
  waitHours: 8,
  state: 'next',
  cautions: [],
  movements: [],
}

const dose = (
  given: Pick<DoseLine, 'key' | 'title' | 'productId' | 'purpose' | 'amountG' | 'movements' | 'startHours'>,
) =>
  ({
    kind: 'dose',
    how: 'Spread it over the deep half with the pump running',
    why: 'Alkalinity comes first, since it steadies pH for all that follows.',
    waitHours: 6,
    state: 'later',
    cautions: ['Always the chemical into water, never water into the chemical.'],
    lowG: given.amountG * 0.96,
    highG: given.amountG * 1.04,
    pours: [{ index: 1, amountG: given.amountG, hoursAfterStart: given.startHours }],
    after: after(7.6, 90),
    ...given,
  }) satisfies DoseLine

export const openingFixture: OpeningPlan = {
  lines: [
    circulate,
    dose({
      key: 'alkalinity',
      title: 'Sodium bicarbonate',
      productId: 'sodium-bicarbonate',
      purpose: 'alkalinity',
      amountG: 6520,
      startHours: 8,
      movements: [move('ta_mg_per_L_as_CaCO3', 42, 92, TA), move('pH', 7.9, 8.0, PH)],
    }),
    {
      ...dose({
        key: 'acid',
        title: 'Muriatic acid 31.45 %',
        productId: 'muriatic-acid-31',
        purpose: 'acid',
        amountG: 1400,
        startHours: 14,
        movements: [move('pH', 8.0, 7.5, PH), move('ta_mg_per_L_as_CaCO3', 92, 88, TA)],
      }),
      pours: [
        { index: 1, amountG: 700, hoursAfterStart: 14 },
        { index: 2, amountG: 700, hoursAfterStart: 15 },
      ],
    },
    dose({
      key: 'borate',
      title: 'Boric acid',
      productId: 'boric-acid',
      purpose: 'borate',
      amountG: 20_200,
      startHours: 24,
      movements: [move('borate_mg_per_L_as_B', 0, 50, BORATE)],
    }),
  ],
  purchases: [
    {
      productId: 'boric-acid',
      label: 'Boric acid',
      needG: 20_200,
      inStockG: 0,
      packageLabel: '25 kg',
      count: 1,
      leftoverG: 4800,
    },
  ],
  purchaseSum: { pricesUnknown: 1 },
  targetWarnings: [],
  missing: [{ key: 'cya_mg_per_L', label: 'Stabiliser', why: 'The chlorine floor assumes that it is there.' }],
  unreachable: [],
  measureAgain: true,
  startWater: after(7.9, 42),
  endWater: after(7.5, 88),
  warnings: [],
  bathing: {
    cleared: false,
    reason: 'Only a fresh reading inside the limits clears the water, never an expected one.',
  },
}
