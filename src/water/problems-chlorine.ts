import type { Problem } from '../base/index.ts'
import { few, rough } from './problems.ts'

/** Complaints about chlorine readings and treatments. */
export function chlorineReadingBad(path: string, name: string, value: number): Problem {
  return {
    code: 'chlorine-reading-bad',
    path,
    what: `${name} reads ${few(value)} mg/L.`,
    why: 'A chlorine reading is a number from zero up.',
    hint: 'Enter the reading again.',
  }
}

export function totalBelowFree(totalMgPerL: number, freeMgPerL: number, sigmaMgPerL: number): Problem {
  const by = freeMgPerL - totalMgPerL
  return {
    code: 'chlorine-total-below-free',
    path: 'tc_mg_per_L_as_Cl2',
    what: `Total chlorine reads ${few(totalMgPerL)} mg/L and free chlorine ${few(freeMgPerL)}: total is ${few(by)} mg/L less than the part of it that is free.`,
    why: `These readings clash: total chlorine, free chlorine. The two tests together scatter by about ${rough(sigmaMgPerL)} mg/L, so it is more than scatter; often a reagent was forgotten, or a high reading bleached its colour.`,
    hint: 'Read both again in one sample, the free first; above the range dilute the sample with chlorine-free water.',
  }
}

export function combinedDisagrees(totalMgPerL: number, freeMgPerL: number, combinedMgPerL: number): Problem {
  const off = totalMgPerL - freeMgPerL - combinedMgPerL
  return {
    code: 'chlorine-parts-disagree',
    path: 'cc_mg_per_L_as_Cl2',
    what: `Free ${few(freeMgPerL)} and combined ${few(combinedMgPerL)} mg/L make ${few(freeMgPerL + combinedMgPerL)}, but total chlorine reads ${few(totalMgPerL)}: ${few(Math.abs(off))} mg/L ${off > 0 ? 'more' : 'less'}.`,
    why: 'These readings clash: free chlorine, combined chlorine, total chlorine. Total is the sum of the other two.',
    hint: 'Read them again in one sample, or leave out the one that was only reckoned.',
  }
}

export function stabiliserTooHighForBreakpoint(stabiliserMgPerL: number, limitMgPerL: number): Problem {
  return {
    code: 'breakpoint-stabiliser-too-high',
    path: 'cya_mg_per_L',
    what: `Superchlorination is not advised: the water holds ${few(stabiliserMgPerL)} mg/L of stabiliser, above ${few(limitMgPerL)}.`,
    why: 'Most of the added chlorine would be bound to it at once; little is left to burn off combined chlorine, and the high reading lasts for days.',
    hint: `Exchange part of the water for fresh: it lowers stabiliser and combined chlorine together. Replacing ${few(100 * (1 - limitMgPerL / stabiliserMgPerL))} % brings stabiliser to ${few(limitMgPerL)}.`,
  }
}

export function incidentStabiliserUnknown(): Problem {
  return {
    code: 'incident-stabiliser-unknown',
    path: 'cya_mg_per_L',
    what: 'Stabiliser is unknown, so no treatment can be named.',
    why: 'With stabiliser in the water the usual chlorine and hours do not kill what they should.',
    hint: 'Close the pool now, and measure stabiliser. Your health authority’s response rules over anything here.',
  }
}

export function incidentStabiliserNotSeen(leastMgPerL: number, limitMgPerL: number): Problem {
  const sees = Number.isFinite(leastMgPerL)
    ? `This test tells stabiliser from none only from ${few(leastMgPerL)} mg/L on`
    : 'This method has no test for stabiliser'
  return {
    code: 'incident-stabiliser-not-seen',
    path: 'cya_mg_per_L',
    what: `${sees}, so no treatment can be named: above ${few(limitMgPerL)} mg/L it would not work.`,
    why: 'With stabiliser in the water the usual chlorine and hours do not kill what they should.',
    hint: 'Close the pool now, and have stabiliser measured by a photometer or a laboratory, which tell so little. Your health authority’s response rules over anything here.',
  }
}

export function incidentStabiliserTooHigh(stabiliserMgPerL: number, limitMgPerL: number, formed: boolean): Problem {
  const replaced = few(Math.ceil(100 * (1 - limitMgPerL / stabiliserMgPerL)))
  const otherwise = formed
    ? 'or ask your health authority what it accepts in stabilised water'
    : 'or drain it all, or run it through a secondary treatment certified against Cryptosporidium until tests find less than one oocyst in 100 mL'
  return {
    code: 'incident-stabiliser-too-high',
    path: 'cya_mg_per_L',
    what: `This water cannot be treated with chlorine as it is: it holds ${few(stabiliserMgPerL)} mg/L of stabiliser, above ${few(limitMgPerL)}.`,
    why: formed
      ? 'The minutes that are laid down hold without stabiliser; bound chlorine works many times slower.'
      : 'In a CDC study 99.9 % of Cryptosporidium was not reached above 16 mg/L (Murphy 2015, seen second-hand); the agency’s newer rule asks for 15 or less.',
    hint: `Close the pool. Replace at least ${replaced} % of the water with fresh water without stabiliser to come to ${few(limitMgPerL)} mg/L, measure again and then treat it; ${otherwise}. Use no dichlor or trichlor: they add stabiliser. Your health authority’s response rules over this.`,
  }
}
