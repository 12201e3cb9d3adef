import type { UnitSystem } from '../../../units/index.ts'

/** Lean that people read with a level and a rule: centimetres for each metre of depth, inches for each foot. */
const PER_RUN = { metric: 100, us: 12, imperial: 12 } as const

/** Enough digits for a rule, without the tail that conversion leaves. */
const rounded = (value: number, digits: number) => Math.round(value * 10 ** digits) / 10 ** digits

export function toLean(run: number, units: UnitSystem): number {
  return rounded(run * PER_RUN[units], 2)
}

export function runFromLean(lean: number, units: UnitSystem): number {
  return lean / PER_RUN[units]
}

/** The angle between a wall and the plumb line [°]: the arc tangent of its run for each unit of depth. */
export function toAngle(run: number): number {
  return rounded((Math.atan(run) * 180) / Math.PI, 1)
}

export function runFromAngle(degrees: number): number {
  return Math.tan((degrees * Math.PI) / 180)
}

/** What the field of the lean is called. */
export function leanWords(units: UnitSystem): { readonly label: string; readonly unit: string; readonly how: string } {
  return units === 'metric'
    ? {
        label: 'Lean for each metre of depth',
        unit: 'cm',
        how: 'Hang a plumb line at the waterline: how far the wall is from it, one metre down.',
      }
    : {
        label: 'Lean for each foot of depth',
        unit: 'in',
        how: 'Hang a plumb line at the waterline: how far the wall is from it, one foot down.',
      }
}
