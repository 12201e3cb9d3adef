import { ok, type Result } from '../base/index.ts'
import type { PeopleReadingKey } from '../water/index.ts'
import { checkOpening } from './check-input.ts'
import { withStates } from './opening-marks.ts'
import { sumOf } from './purchases.ts'
import { FALLS_HOURS, fallLine, stepLine } from './step-lines.ts'
import { targetWarnings } from './target-warnings.ts'
import type { OpeningInput, OpeningPlan, StepLine } from './types.ts'

/** Why nothing is dosed for now, whatever the readings ask for, and what to do instead. */
export interface Hold {
  readonly lines: readonly StepLine[]
  /** Said before all else. */
  readonly words: string
  /** Why nobody bathes. */
  readonly bathing: string
}

/** A reading that the test itself spoils, and how to take it rightly. */
export interface Doubted {
  readonly key: PeopleReadingKey
  readonly words: string
}

/** A start has left the pool closed. */
export function closedHold(wording: { readonly title: string; readonly how: string; readonly why: string }): Hold {
  const words = `${wording.title}. ${wording.how}`
  return { lines: [stepLine('wait', 'closed', wording, 0, 0)], words, bathing: words }
}

/**
 * Readings that every dose is counted from can't be trusted: wait where chlorine is high, read them again, plan then.
 * Undefined where all that is doubted can be left out of the plan.
 */
export function doubtedHold(doubted: readonly Doubted[], isChlorineHigh: boolean): Hold | undefined {
  const basic = doubted.filter(({ key }) => BASIC_READINGS.includes(key))
  if (basic.length === 0) return undefined
  const how = [...new Set(basic.map(({ words }) => words))].join(' ')
  const wait = isChlorineHigh ? [fallLine('chlorine-high', 0)] : []
  const again = stepLine('measure', 'measure-trusted', { ...AGAIN, how }, isChlorineHigh ? FALLS_HOURS : 0, 0)
  return {
    lines: [...wait, again],
    words: `${AGAIN.title}. ${how}`,
    bathing: 'The test may mislead on these very readings. Read them again before anyone bathes.',
  }
}

/** Free chlorine, pH and alkalinity: every other dose is counted through them. */
export const BASIC_READINGS: readonly PeopleReadingKey[] = ['fc_mg_per_L_as_Cl2', 'pH', 'ta_mg_per_L_as_CaCO3']
const AGAIN = {
  title: 'Read again before anything is dosed',
  why: 'What these readings ask for may be the opposite of what the water needs. Enter the new ones, and the plan is made from them.',
} as const

/** The plan while nothing may be dosed: what to wait for and to read, and nothing to buy. */
export function heldOpening(input: OpeningInput, hold: Hold): Result<OpeningPlan> {
  const checked = checkOpening(input)
  if (!checked.ok) return checked
  return ok({
    lines: withStates(hold.lines, input),
    purchases: [],
    purchaseSum: sumOf([]),
    targetWarnings: targetWarnings(input),
    missing: [],
    unreachable: [],
    measureAgain: false,
    warnings: [hold.words],
    bathing: { cleared: false, reason: hold.bathing },
  })
}
