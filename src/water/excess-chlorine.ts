import type { Problem } from '../base/index.ts'

/**
 * From here on it is far more than any bathing rule has, and as much as is only put into a closed pool after an accident
 * [mg/L as Cl2].
 * Source: 20 mg/L is what US CDC has held after diarrhoea in the water (seen second-hand); that it marks an overdose is ours.
 */
const FAR_TOO_MUCH_MG_PER_L = 20

/**
 * What to do where free chlorine is far too high, read or reckoned [mg/L as Cl2]; undefined where it is not.
 * Source: common practice, no source; gas from chlorine and acid as in the products' cautions.
 */
export function excessChlorine(freeMgPerL: number | undefined, isRead: boolean): Problem | undefined {
  if (freeMgPerL === undefined || !(freeMgPerL > FAR_TOO_MUCH_MG_PER_L)) return undefined
  const amount = `${Number(freeMgPerL.toPrecision(2))} mg/L`
  return {
    code: 'chlorine-far-too-high',
    path: 'fc_mg_per_L_as_Cl2',
    what: `Keep everyone out: free chlorine ${isRead ? 'reads' : 'comes by the sums to about'} ${amount}.`,
    why: 'Water like this burns eyes, skin and lungs, and eats liner, seals, metal and heater. Tests bleach out in it and can read low or none, so a low reading clears nobody.',
    hint: 'Close the pool to people and animals; cover off, heater off or bypassed, and stay out of the air over the water. Put nothing else in, above all no acid: it would drive chlorine gas off. Check what really went in; a slip is mended in the logbook. If it did go in, sun and days take it down; quicker only with a reducer (sodium thiosulfate) by its label, dissolved, in small counted parts, with a diluted sample read after each. With this much ask a licensed pool trade first, and let none of it out to ground, drain or stream. Whoever was in it or breathed over it: rinse, fresh air, and call a poison centre or a doctor.',
  }
}
