/** Limits that hold at every line of a plan. Ours where no source is named. */
export const LIMITS = Object.freeze({
  /** Inside this range no line leaves it; from outside every line moves toward it. */
  lowestPH: 7.0,
  highestPH: 8.2,
  /** One pour moves pH by no more than this. */
  pourPH: 0.35,
  /** One pour moves alkalinity by no more than this [mg/L as CaCO3]. */
  pourAlkalinityMgPerL: 30,
  /** One line moves alkalinity by no more than this [mg/L as CaCO3]; more is a line of its own. */
  lineAlkalinityMgPerL: 60,
  /** Calcite SI that no line exceeds unless the water starts or must end above it; above it chalk may fall out. */
  calciteSI: 0.5,
  /** Readings older than this don't carry a plan [h]. */
  readingHours: 48,
  /** Bathing needs a reading no older than this [h]. */
  bathingHours: 24,
  /** A chlorine residual is there by then [h]. */
  residualByHours: 24,
  /** Turnover where the pump's flow is unknown [h] (8 to 12 is usual at home; from memory). */
  turnoverHours: 8,
  /** Two-sided 95 % of a normal distribution. */
  z95: 1.959964,
})

/** Outside these nobody bathes. A local rule may be stricter; where it is, it comes first. */
export const BATHING = Object.freeze({
  /** CDC, operating public pools, hot tubs and splash pads: pH 7.0 to 7.8 (seen). */
  pHLow: 7.0,
  pHHigh: 7.8,
  /** MAHC 5.7.3.1.3: at most 90 (seen second-hand); some codes go as low as 30 [mg/L]. */
  stabiliserHighMgPerL: 90,
})

/** Chlorine without which nobody bathes, whatever helps it [mg/L]. */
export const CHLORINE_FLOOR = Object.freeze({
  withoutStabiliser: 1,
  withStabiliser: 2,
  /** Stabiliser below this counts as none: a test cannot tell it from zero [mg/L]. */
  noStabiliserMgPerL: 1,
  /** Above this nobody bathes (labels, from memory; MAHC allows up to 10) [mg/L]. */
  bathingCeilingMgPerL: 4,
  /** A twentieth of the stabiliser, as advice (Falk et al. 2019, Water 11:1314; number from memory). */
  perStabiliser: 1 / 20,
  source: 'MAHC 5.7.3.1.1 (seen second-hand)',
})
