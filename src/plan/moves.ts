import { deltaOf } from '../chemicals/index.ts'
import { addTotals, type Constants, type Delta, type Totals } from '../water/index.ts'
import { LIMITS } from './limits.ts'
import { type SolvedWater, solvedWater } from './solved.ts'
import type { Want } from './wants.ts'

/** Why a line stands elsewhere than the usual order has it. */
export type Exception =
  | 'same-day'
  | 'before-exchange'
  | 'ph-first'
  | 'makes-room'
  | 'part'
  | 'afterwards'
  | 'deferred'
  | 'lowering'
  | 'step'
  | 'toward-floor'

export interface DoseMove {
  readonly kind: 'dose'
  readonly want: Want
  readonly before: SolvedWater
  readonly after: SolvedWater
  readonly exception?: Exception | undefined
}

interface AerateMove {
  readonly kind: 'aerate'
  readonly before: SolvedWater
  readonly after: SolvedWater
}

interface MeasureMove {
  readonly kind: 'measure'
  readonly before: SolvedWater
  readonly after: SolvedWater
}

/** What holds for a whole plan. */
export interface Rules {
  /** Calcite SI that no line exceeds unless the water stands above it: the limit, or what it must end with where that is higher. */
  readonly boundSI: number
  readonly constants: Constants
}

export type Move = DoseMove | AerateMove | MeasureMove

const SLACK_PH = 1e-6
const SLACK_SI = 1e-6
const HALVINGS = 40

/** Calcite SI that the next line may go to: the bound follows the water down, never back up. */
export function boundSIFrom(before: SolvedWater, rules: Rules): number {
  return Math.max(rules.boundSI, before.equilibrium.calciteSI)
}

/** What no line may exceed: pH in `LIMITS`, calcite SI in a bound of the plan's own. */
export function isPermitted(before: SolvedWater, after: SolvedWater, rules: Rules): boolean {
  const from = before.equilibrium.pH
  const to = after.equilibrium.pH
  const inside = to >= LIMITS.lowestPH - SLACK_PH && to <= LIMITS.highestPH + SLACK_PH
  const toward =
    from < LIMITS.lowestPH
      ? to >= from - SLACK_PH && to <= LIMITS.highestPH + SLACK_PH
      : from > LIMITS.highestPH
        ? to <= from + SLACK_PH && to >= LIMITS.lowestPH - SLACK_PH
        : inside
  return toward && after.equilibrium.calciteSI <= boundSIFrom(before, rules) + SLACK_SI
}

/** The largest part of a dose that is permitted [g/m³], all of it if all of it is. */
export function permittedPart(before: SolvedWater, want: Want, rules: Rules): number {
  const ok = (gPerM3: number): boolean => {
    const after = afterDose(before.totals, deltaOf(want.product, gPerM3), rules.constants)
    return after !== undefined && isPermitted(before, after, rules)
  }
  if (ok(want.gPerM3)) return want.gPerM3
  let lo = 0
  let hi = want.gPerM3
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (lo + hi)
    if (ok(middle)) lo = middle
    else hi = middle
  }
  return lo
}

/** The water after a change, or undefined where no such water can be solved. */
export function afterDose(totals: Totals, delta: Delta, constants: Constants): SolvedWater | undefined {
  const solved = solvedWater(addTotals(totals, delta), constants)
  return solved.ok ? solved.value : undefined
}
