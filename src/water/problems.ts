import type { Problem } from '../base/index.ts'
import { MG_CACO3_PER_EQ, MOLAR_MASSES_G_PER_MOL, mgPerLOf } from './masses.ts'
import type { TotalKey, WaterReading } from './types.ts'

/** Every complaint of this layer, worded in one place. Numbers are for people: few digits. */
/** A scatter or a difference of two readings, which is known to two figures at most. */
export const rough = (value: number): string => String(Number(value.toPrecision(2)))
export const few = (value: number): string => String(Number(value.toPrecision(3)))

/** As few digits, never less than the value: for what is needed at least. */
function fewUp(value: number): string {
  if (!(value > 0)) return few(value)
  const step = 10 ** (Math.floor(Math.log10(value)) - 2)
  return few(Math.ceil(value / step - 1e-9) * step)
}

const NAMES: { readonly [key in TotalKey]: string } = {
  alkalinityEq: 'alkalinity',
  carbonMol: 'dissolved carbonate',
  calciumMol: 'calcium',
  magnesiumMol: 'magnesium',
  sodiumMol: 'sodium',
  potassiumMol: 'potassium',
  chlorideMol: 'chloride',
  sulfateMol: 'sulfate',
  boronMol: 'borate',
  cyanurateMol: 'stabiliser',
  chlorineMol: 'free chlorine',
  lithiumMol: 'lithium',
}

const SAID: { readonly [key in keyof WaterReading]-?: string } = {
  pH: 'pH',
  ta_mg_per_L_as_CaCO3: 'total alkalinity',
  ch_mg_per_L_as_CaCO3: 'calcium hardness',
  mg_hardness_mg_per_L_as_CaCO3: 'magnesium hardness',
  sulfate_mg_per_L: 'sulfate',
  cya_mg_per_L: 'stabiliser',
  borate_mg_per_L_as_B: 'borate',
  fc_mg_per_L_as_Cl2: 'free chlorine',
  salt_mg_per_L_as_NaCl: 'salt',
  temperature_C: 'temperature',
}

/** A reading as people call it; a path that is no reading stays as it is. */
function said(path: string): string {
  const found = Object.entries(SAID).find(([key]) => key === path)
  return found ? found[1] : path
}

/** The same at the beginning of a sentence. */
function saidFirst(path: string): string {
  const words = said(path)
  return words === 'pH' ? words : words.charAt(0).toUpperCase() + words.slice(1)
}

export function notANumber(path: string, value: unknown): Problem {
  return {
    code: 'water-not-a-number',
    path,
    what: `${saidFirst(path)} is ${String(value)}, not a number.`,
    why: 'A water is solved from numbers alone.',
    hint: 'Enter the reading again, or leave it out.',
  }
}

export function negativeReading(path: string, value: number): Problem {
  return {
    code: 'water-reading-negative',
    path,
    what: `${saidFirst(path)} is ${few(value)}, below zero.`,
    why: 'There cannot be less than nothing of it in the water.',
    hint: 'Check the sign of the reading.',
  }
}

export function readingOutOfRange(path: string, value: number, low: number, high: number, unit: string): Problem {
  return {
    code: 'water-reading-out-of-range',
    path,
    what: `${saidFirst(path)} is ${few(value)}${unit}, outside ${low} to ${high}${unit}.`,
    why: 'The equilibrium constants hold only inside that range.',
    hint: 'Check the reading and its unit.',
  }
}

export function negativeTotal(key: TotalKey, molPerKg: number): Problem {
  return {
    code: 'water-total-negative',
    path: key,
    what: `More ${NAMES[key]} is taken away than the water holds, by ${few(-molPerKg * 1000)} mmol/kg.`,
    why: 'A water cannot hold less than nothing of something.',
    hint: 'Reduce the dose that removes it, or check the readings it started from.',
  }
}

/** The parts that leave no room for carbonate [mg/L as CaCO3]. */
export interface AlkalinityShare {
  readonly path: string
  readonly name: string
  readonly mgPerLAsCaCO3: number
}

export function alkalinityTooLow(pH: number, taMgPerL: number, shares: readonly AlkalinityShare[]): Problem {
  const taken = shares.filter((share) => share.mgPerLAsCaCO3 >= 0.05)
  const sum = shares.reduce((total, share) => total + share.mgPerLAsCaCO3, 0)
  const list = taken.map((share) => `${share.name} ${few(share.mgPerLAsCaCO3)}`).join(', ')
  const clashing = ['pH', 'ta_mg_per_L_as_CaCO3', ...taken.map((share) => share.path)].filter((path) => path !== '')
  const short = few(sum - taMgPerL)
  return {
    code: 'water-alkalinity-too-low',
    path: 'ta_mg_per_L_as_CaCO3',
    what:
      taken.length > 0
        ? `At pH ${few(pH)} this water already needs ${few(sum)} mg/L of alkalinity without any carbonate (${list}), but total alkalinity reads ${few(taMgPerL)}: ${short} too little.`
        : `At pH ${few(pH)} total alkalinity is ${few(sum)} mg/L even without any carbonate, but it reads ${few(taMgPerL)}: ${short} too little.`,
    why: `These readings clash: ${clashing.map(said).join(', ')}. No amount of carbonate makes up for it.`,
    hint: 'Measure pH and total alkalinity again, and check the readings named here.',
  }
}

/** The charges of a reading [eq/kg], those that are balanced and those that balance them. */
export interface ReadingCharges {
  readonly calciumEq: number
  readonly magnesiumEq: number
  readonly alkalinityEq: number
  readonly chlorideEq: number
  readonly sulfateEq: number
}

export function chlorideTooLow(charges: ReadingCharges): Problem {
  const { calciumEq, magnesiumEq, alkalinityEq, chlorideEq, sulfateEq } = charges
  const missingEq = calciumEq + magnesiumEq - alkalinityEq - chlorideEq - sulfateEq
  const salt = mgPerLOf(chlorideEq + missingEq, MOLAR_MASSES_G_PER_MOL.sodiumChloride)
  const asCaCO3 = (eq: number) => few(eq * MG_CACO3_PER_EQ)
  const hard =
    magnesiumEq > 0
      ? `Calcium ${asCaCO3(calciumEq)} and magnesium ${asCaCO3(magnesiumEq)}`
      : `Calcium ${asCaCO3(calciumEq)}`
  return {
    code: 'water-charge-does-not-close',
    path: 'salt_mg_per_L_as_NaCl',
    what: `${hard} mg/L as CaCO3 ${magnesiumEq > 0 ? 'carry' : 'carries'} ${asCaCO3(missingEq)} mg/L as CaCO3 more charge than alkalinity ${asCaCO3(alkalinityEq)}, salt ${asCaCO3(chlorideEq)} and sulfate ${asCaCO3(sulfateEq)} can balance.`,
    why: `These readings clash: calcium ${magnesiumEq > 0 ? 'and magnesium ' : ''}hardness, total alkalinity, salt, sulfate. Every water is electrically neutral.`,
    hint: `Salt of at least ${fewUp(salt)} mg/L as NaCl (or that much sulfate) would balance it; enter the salt reading, or check hardness.`,
  }
}

export function phOutOfRange(side: 'acid' | 'base'): Problem {
  return {
    code: 'water-ph-out-of-range',
    path: '',
    what: side === 'acid' ? 'The water would be more acid than pH 0.' : 'The water would be more alkaline than pH 14.',
    why: 'That is beyond anything this model describes.',
    hint: `Reduce the ${side === 'acid' ? 'acid' : 'base'} in the doses.`,
  }
}

export function tooSalty(ionicStrength: number, most: number): Problem {
  return {
    code: 'water-too-salty',
    path: '',
    what: `The water's ionic strength would be ${few(ionicStrength)} mol/kg; the model goes up to ${most}.`,
    why: 'Activity coefficients of brine need another model.',
    hint: 'Check salt and hardness and their units.',
  }
}

export function notConverged(residual: number): Problem {
  if (!Number.isFinite(residual)) {
    return {
      code: 'water-beyond-model',
      path: '',
      what: 'The amounts are far beyond any water, so its equilibrium cannot be worked out.',
      why: 'The activity formula itself runs away there.',
      hint: 'Check the amounts and their units.',
    }
  }
  return {
    code: 'water-not-converged',
    path: '',
    what: `The equilibrium did not settle; the largest imbalance left is ${few(residual)}.`,
    why: 'A half-solved water is worse than none.',
    hint: 'Please report this water: it should not happen.',
  }
}
