import type { Problem } from '../base/index.ts'
import { TARGET_LABELS } from './targets.ts'
import type { Band, TargetKey } from './types.ts'

/** Every complaint of this layer, worded in one place. */
const few = (value: number): string => String(Number(value.toPrecision(3)))

/** As it stands inside a sentence. */
const labelOf = (key: TargetKey): string => (key === 'pH' ? 'pH' : TARGET_LABELS[key].toLowerCase())

export function badNumber(path: string, value: number, need: string): Problem {
  return {
    code: 'plan-number',
    path,
    what: `${path} is ${String(value)}; it has to be ${need}.`,
    why: 'The plan is counted from it.',
    hint: 'Enter it again.',
  }
}

export function unknownRegime(id: string, known: readonly string[]): Problem {
  return {
    code: 'unknown-regime',
    path: 'regimeId',
    what: `There is no regime called "${id}".`,
    why: 'The regime sets the bands and the products.',
    hint: `Use one of: ${known.join(', ')}.`,
  }
}

export function floorAboveCeiling(clash: { readonly floorMgPerL: number; readonly ceilingMgPerL: number }): Problem {
  return {
    code: 'floor-above-ceiling',
    path: 'targets.fc_mg_per_L_as_Cl2',
    what: `The least free chlorine for bathing, ${clash.floorMgPerL} mg/L, is above the most, ${clash.ceilingMgPerL} mg/L.`,
    why: 'No free chlorine is right for both, so none is dosed and nobody may bathe.',
    hint: 'Check your own floor and ceiling, and the rules that you chose. Your local code comes first.',
  }
}

export function bandUpsideDown(key: TargetKey): Problem {
  return {
    code: 'band-upside-down',
    path: `targets.${key}`,
    what: `The band of ${labelOf(key)} does not run low, aim, high.`,
    why: 'A target is a band with its aim inside.',
    hint: 'Put the three numbers in order.',
  }
}

export function bandNotNumbers(key: TargetKey): Problem {
  return {
    code: 'band-not-numbers',
    path: `targets.${key}`,
    what: `The band of ${labelOf(key)} holds something that is no number, or one below zero.`,
    why: 'A dose is counted to it.',
    hint: 'Enter low, aim and high, none below zero.',
  }
}

export function bandOutOfRange(key: TargetKey, band: Band, lowest: number, highest: number): Problem {
  return {
    code: 'band-out-of-range',
    path: `targets.${key}`,
    what: `The band of ${labelOf(key)} runs from ${few(band.low)} to ${few(band.high)}; it has to lie between ${lowest} and ${highest}.`,
    why: 'Beyond that the water hurts eyes and metal, or chlorine hardly works.',
    hint: 'Choose a band inside; 7.2 to 7.8 is usual.',
  }
}

export function wrongProduct(path: string, label: string, purpose: string): Problem {
  return {
    code: 'wrong-product',
    path,
    what: `${label} is not something for ${purpose}.`,
    why: 'Each purpose needs a product that does it.',
    hint: 'Choose another product for it.',
  }
}

export function tooHigh(key: TargetKey, value: number, high: number, wayOut: string): Problem {
  return {
    code: `${key.split('_')[0]}-too-high`,
    path: `start.${key}`,
    what: `${TARGET_LABELS[key]} stands at ${few(value)} mg/L, above the ${few(high)} of its band.`,
    why: 'No product takes it out of the water.',
    hint: wayOut,
  }
}

export function noBalance(pH: number, alkalinity: number): Problem {
  return {
    code: 'balance-unreachable',
    path: 'targets.pH',
    what: `pH and alkalinity cannot both be brought into their bands from pH ${few(pH)} and ${few(alkalinity)} mg/L with these products.`,
    why: 'Acid, alkalinity, base and air were tried, alone and in pairs.',
    hint: 'Widen one of the two bands, choose another product for pH, or check both readings.',
  }
}

export function alkalinityStays(value: number, high: number): Problem {
  return {
    code: 'alkalinity-stays-high',
    path: 'targets.ta_mg_per_L_as_CaCO3',
    what: `Alkalinity ends at ${few(value)} mg/L, above the ${few(high)} of its band.`,
    why: 'Bringing it down would take more than six rounds of acid and air, more than a fortnight; that is not worth it.',
    hint: 'Leave it and widen the band: it does no harm but more acid over the season. Or exchange part of the water for water of less alkalinity.',
  }
}

export function notPlaced(label: string): Problem {
  return {
    code: 'dose-not-placed',
    path: '',
    what: `${label} is wanted, but found no place in the plan.`,
    why: 'At every place it would take pH out of 7.0 to 8.2 or let chalk fall out.',
    hint: 'Follow the lines that are there, measure again, and the plan is made anew.',
  }
}

export function targetUnreachable(missing: string): Problem {
  return {
    code: 'target-unreachable',
    path: 'target',
    what: `These products cannot bring the water to that target: ${missing}.`,
    why: 'No set of amounts, none below zero, gives it.',
    hint: 'Add a product that moves it the right way, aerate where pH has to rise at constant alkalinity, or exchange water where something has to fall.',
  }
}
