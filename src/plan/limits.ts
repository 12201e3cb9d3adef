/** Limits that hold at every line of a plan. Ours where no source is named. */
export const LIMITS = Object.freeze({
  /** Inside this range no line leaves it; from outside every line moves toward it. */
  lowestPH: 7.0,
  highestPH: 8.2,
  /** One pour moves pH by no more than this. */
  pourPH: 0.35,
  /**
   * Where a pour brings pH back toward the range it may move it further, by what lies outside, but by no more than this:
   * standing far outside without chlorine is the greater harm.
   */
  pourPHOutside: 0.35,
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
  /** Chlorine that stands below its band is back in it by then [h]. */
  residualByHours: 24,
  /** Chlorine below its floor gets its first dose by then, counted from the first line: before the night. */
  floorByHours: 3,
  /** A first part of chlorine smaller than this is not worth a line [mg/L]. */
  leastChlorineMgPerL: 0.2,
  /** Turnover where the pump's flow is unknown [h] (8 to 12 is usual at home; from memory). */
  turnoverHours: 8,
  /** A longer one is taken for a slip in the pump's flow [h] (ours). */
  mostTurnoverHours: 168,
  /** Two-sided 95 % of a normal distribution. */
  z95: 1.959964,
})
