import type { ActiveChlorineAccount } from '../../../derive/index.ts'
import type { ExpectedWater } from '../../../plan/index.ts'
import { formatQuantity, type UnitSystem } from '../../../units/index.ts'
import {
  CONSTANT_SETS,
  type Equilibrium,
  equilibrateAtPH,
  halfLifeInSunMin,
  MOLAR_MASSES_G_PER_MOL,
  NO_STABILISER_MG_PER_L,
  type Totals,
} from '../../../water/index.ts'
import { spanWords } from '../opening/schedule.ts'
import type { BarPart } from '../scale/index.ts'

/** The published sets of constants, as a person tells them apart. */
export const CHLORINE_CONSTANTS = [
  { id: 'obrien', label: 'O’Brien 1974' },
  { id: 'wahman', label: 'Wahman 2018' },
] as const

/** Free chlorine by what it is [mg/L as Cl2]: what works at once first. */
export function chlorineParts(equilibrium: Equilibrium): readonly BarPart[] {
  return [
    { id: 'hocl', label: 'Active (HOCl)', value: equilibrium.activeChlorineMgPerL, ink: 'solid' },
    { id: 'ocl', label: 'Hypochlorite (OCl⁻), weak', value: equilibrium.hypochloriteMgPerL, ink: 'hatched' },
    { id: 'bound', label: 'Held by stabiliser, in store', value: equilibrium.boundChlorineMgPerL, ink: 'plain' },
  ]
}

/** Decimals that give a small concentration two figures, which is more than either set of constants is sure of. */
function digitsOf(value: number): number {
  return value > 0 ? Math.min(4, Math.max(1, 1 - Math.floor(Math.log10(value)))) : 1
}

/** A small concentration with two figures, or with no more decimals than two figures of the half-width leave it [mg/L]. */
export function smallMgPerL(value: number, units: UnitSystem, halfWidth = 0): string {
  return formatQuantity('concentration', value, units, { digits: digitsBeside(value, halfWidth) })
}

/** How much of the chlorine of an expected water is active, or why that can't be told. */
export function activeWords({ equilibrium, unknown = [] }: ExpectedWater, units: UnitSystem): string {
  if (unknown.includes('fc_mg_per_L_as_Cl2')) return 'can’t be told: free chlorine is not measured'
  if (unknown.includes('cya_mg_per_L')) return 'can’t be told: stabiliser is not measured'
  return smallMgPerL(equilibrium.activeChlorineMgPerL, units)
}

/** The half-width at the decimals of the concentration that it stands after, without its unit; never none. */
export function halfWidthWords(halfWidth: number, value: number, units: UnitSystem): string {
  const digits = digitsBeside(value, halfWidth)
  return formatQuantity('number', Math.max(halfWidth, 10 ** -digits), units, { digits })
}

function digitsBeside(value: number, halfWidth: number): number {
  return halfWidth > 0 ? Math.min(digitsOf(value), digitsOf(halfWidth)) : digitsOf(value)
}

/** What to make of two answers. */
export function spreadWords(
  account: Pick<ActiveChlorineAccount, 'ratio' | 'chosenMgPerL' | 'mgPerL' | 'wahmanMgPerL'>,
): string {
  if (account.ratio < 1.05) return 'Both published sets of constants agree here, since little is held by stabiliser.'
  return `Two sets of constants are published; for this water they lie ${account.ratio.toFixed(1)} times apart. Nobody knows yet which is right. ${lowerWords(account)}`
}

/** Whether the careful one of the two is chosen. */
function lowerWords({ chosenMgPerL, mgPerL, wahmanMgPerL }: Parameters<typeof spreadWords>[0]): string {
  return chosenMgPerL <= Math.min(mgPerL, wahmanMgPerL)
    ? 'The lower one, the careful one, is chosen.'
    : 'The higher one is chosen, since the usual tables and advice are made with it; no floor and no leave to bathe hangs on it. Choose the other to be on the careful side.'
}

/** Stabiliser to compare with where there is none [mg/L]: the middle of what pools in the sun are kept at. */
const USUAL_STABILISER_MG_PER_L = 30

export interface SunLine {
  readonly id: 'here' | 'without' | 'with'
  readonly label: string
  readonly minutes: number
}

/** How long half of the chlorine lasts in sun, here and in the same water without stabiliser, or with a usual amount of it. */
export function sunLines(
  account: ActiveChlorineAccount,
  totals: Totals,
  pH: number,
  stabiliserMgPerL: number,
): readonly SunLine[] {
  if (stabiliserMgPerL >= NO_STABILISER_MG_PER_L)
    return [
      { id: 'here', label: 'Here, with its stabiliser', minutes: account.sunHereMin },
      { id: 'without', label: 'The same water without', minutes: account.sunWithoutStabiliserMin },
    ]
  const cyanurateMol = USUAL_STABILISER_MG_PER_L / 1000 / MOLAR_MASSES_G_PER_MOL.cyanuricAcid
  const shielded = equilibrateAtPH(
    { ...totals, cyanurateMol },
    pH,
    CONSTANT_SETS[account.chosen === 'wahman' ? 'wahman' : 'default'],
  )
  return [
    { id: 'here', label: 'Here, without stabiliser', minutes: account.sunHereMin },
    ...(shielded.ok
      ? [
          {
            id: 'with',
            label: `The same water with ${USUAL_STABILISER_MG_PER_L} mg/L`,
            minutes: halfLifeInSunMin(shielded.value.equilibrium),
          } as const,
        ]
      : []),
  ]
}

/** A half-life in words, two figures of it; an endless one means that there is nothing to lose. */
export function halfLifeWords(minutes: number, units: UnitSystem): string {
  return Number.isFinite(minutes) ? spanWords(Number((minutes / 60).toPrecision(2)), units) : 'none to lose'
}

/** "38 %", "0.4 %": a share of the whole, with a decimal where it is small. */
export function shareWords(value: number, whole: number, units: UnitSystem): string {
  const percent = whole > 0 ? (100 * value) / whole : 0
  return formatQuantity('percent', percent, units, { digits: percent > 0 && percent < 9.5 ? 1 : 0 })
}
