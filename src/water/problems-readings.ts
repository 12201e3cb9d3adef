import type { Problem } from '../base/index.ts'
import { few, rough } from './problems.ts'

/** Complaints about readings that a water is not solved from. */
export function peopleReadingBad(path: string, name: string, value: number): Problem {
  return {
    code: 'water-extra-reading-bad',
    path,
    what: `${name} reads ${few(value)}.`,
    why: 'There cannot be less than nothing of it, and it has to be a number.',
    hint: 'Enter the reading again, or leave it out.',
  }
}

export function hardnessDisagrees(totalMgPerL: number, partsMgPerL: number, sigmaMgPerL: number): Problem {
  return {
    code: 'water-hardness-disagrees',
    path: 'th_mg_per_L_as_CaCO3',
    what: `Calcium and magnesium hardness make ${few(partsMgPerL)} mg/L, but total hardness reads ${few(totalMgPerL)}: about ${rough(partsMgPerL - totalMgPerL)} too little.`,
    why: `These readings clash: total hardness, calcium hardness, magnesium hardness. Total is their sum, and the tests scatter by about ${rough(sigmaMgPerL)} mg/L.`,
    hint: 'Measure them again, in one unit (mg/L as CaCO₃), and leave out the coarser one.',
  }
}

export function conductivityTooLow(readMicroS: number, neededMicroS: number): Problem {
  return {
    code: 'water-conductivity-too-low',
    path: 'conductivity_uS_per_cm',
    what: `The other readings alone conduct ${few(neededMicroS)} µS/cm, but conductivity reads ${few(readMicroS)}: about ${rough(neededMicroS - readMicroS)} too little.`,
    why: 'These readings clash: conductivity, calcium and magnesium hardness, total alkalinity, sulfate. No water conducts less than what is dissolved in it.',
    hint: 'Check the meter against its standard and its unit (µS or mS), and the hardness and alkalinity.',
  }
}

export function conductivityTooHigh(readMicroS: number, mostMicroS: number): Problem {
  return {
    code: 'water-conductivity-too-high',
    path: 'conductivity_uS_per_cm',
    what: `Conductivity reads ${few(readMicroS)} µS/cm; this model goes up to ${few(mostMicroS)}.`,
    why: 'Brine needs another model.',
    hint: 'Check the unit: 1 mS/cm is 1000 µS/cm.',
  }
}
