import { MOLAR_MASSES_G_PER_MOL } from './masses.ts'

/** g Cl2 that oxidise 1 g of ammonia nitrogen to nitrogen gas, by theory: 3 mol to 2. */
export const breakpointRatio = (1.5 * MOLAR_MASSES_G_PER_MOL.chlorineAsCl2) / MOLAR_MASSES_G_PER_MOL.nitrogen

/** Temperature interval that doubles a rate [°C]: the common Arrhenius rule (no source). */
const DOUBLING_C = 10
/** Loss in the dark of a bather-free, warm, stabilised pool: about 14 % a day at 27–29 °C, Wojtowicz abstract. */
export const DARK_LOSS_PER_DAY_AT_28C = 0.14
/** From memory of water-treatment texts; sweat and urine by WHO 2006 table 4.1 give 0.57 g. */
export const NITROGEN_G_PER_BATHER_HOUR = 0.85
/** g Cl2 per g N in practice is 10 to 15, since organic nitrogen takes more than ammonia. */
const PRACTICAL_RATIO = 12

/**
 * First-order loss of chlorine in the dark, by warmth and by what water and walls hold [1/day].
 * Equation: k28 × 2^((T − 28)/10).
 * Symbols: T [°C]; k28 loss at 28 °C, 0.14 per day unless fitted to a log.
 * Valid for: 5–40 °C.
 * Source: Wojtowicz, J. Swimming Pool Spa Ind. 5(1), abstract (14 % a day at 80–85 °F); doubling per 10 °C is common
 *   practice, no source.
 * Accuracy: a factor of two between pools; fit it to readings.
 */
export function darkLossPerDay(temperatureC: number, at28CPerDay = DARK_LOSS_PER_DAY_AT_28C): number {
  return at28CPerDay * 2 ** ((temperatureC - 28) / DOUBLING_C)
}

/**
 * Chlorine that bathers use [g Cl2].
 * Equation: hours × nitrogen per hour × ratio.
 * Symbols: nitrogen 0.85 g per bather and hour; ratio 12 g Cl2 per g N.
 * Valid for: swimming of average effort after a shower.
 * Source: nitrogen from memory (0.57 g for 30 mL urine and 0.2 L sweat by WHO 2006 table 4.1, from memory); ratio
 *   "10–15 in practice", environmental engineering handbook; theory is 7.59.
 * Accuracy: a factor of two.
 */
export function batherDemandG(
  batherHours: number,
  nitrogenGPerBatherHour = NITROGEN_G_PER_BATHER_HOUR,
  ratio = PRACTICAL_RATIO,
): number {
  return batherHours * nitrogenGPerBatherHour * ratio
}
