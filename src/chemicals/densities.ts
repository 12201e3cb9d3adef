/** A curve through measured points, straight between them: [%, kg/L]. */
type Curve = readonly (readonly [percent: number, kgPerL: number])[]

// 10 to 34 %: a density table at 20 °C, handbook copy (seen); 0 and above 34 % from memory
const HCL: Curve = [
  [0, 0.998],
  [10, 1.048],
  [20, 1.098],
  [30, 1.149],
  [32, 1.159],
  [34, 1.169],
  [36, 1.179],
  [42, 1.208],
]

// from memory: liquid chlorine by trade %
const LIQUID_CHLORINE: Curve = [
  [0, 0.998],
  [10, 1.14],
  [12.5, 1.168],
  [15, 1.2],
  [20, 1.26],
]

function along(curve: Curve, percent: number): number {
  const found = curve.findIndex(([at]) => at >= percent)
  const next = found === -1 ? curve.length - 1 : Math.max(1, found)
  const [lowAt, low] = curve[next - 1]!
  const [highAt, high] = curve[next]!
  return low + ((high - low) * (percent - lowAt)) / (highAt - lowAt)
}

/**
 * Density of hydrochloric acid at 20 °C [kg/L].
 * Equation: straight lines between the points of a table.
 * Symbols: percent, hydrogen chloride by mass [%].
 * Valid for: 0 to 42 %.
 * Source: density table of hydrochloric acid, handbook copy, 10 to 34 % (seen); the ends from memory.
 * Accuracy: 0.002 kg/L from 10 to 34 %, 0.005 beyond.
 */
export const acidDensity = (percent: number): number => along(HCL, percent)

/**
 * Density of liquid chlorine [kg/L].
 * Equation: straight lines between the points of a table.
 * Symbols: tradePercent, grams of chlorine in 100 mL.
 * Valid for: 0 to 20 trade %.
 * Source: from memory.
 * Accuracy: 0.02 kg/L; it depends on how much salt and lye are in it. Doses in mL do not depend on it.
 */
export const liquidChlorineDensity = (tradePercent: number): number => along(LIQUID_CHLORINE, tradePercent)

/** Trade % of liquid chlorine whose available chlorine by mass is given [%]: density itself depends on the answer. */
export function tradePercentOf(availablePercent: number): number {
  let trade = availablePercent
  // a contraction: density changes by 0.014 per trade %, so each round gains most of a digit
  for (let round = 0; round < 40; round += 1) trade = availablePercent * liquidChlorineDensity(trade)
  return trade
}
