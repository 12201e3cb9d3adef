import { effectPerGPerM3 } from './effect.ts'
import { chlorineFloor } from './floor.ts'
import { LIMITS } from './limits.ts'
import type { Move } from './moves.ts'
import { type Order, type Schedule, type ScheduleInput, schedule } from './schedule.ts'
import type { SolvedWater } from './solved.ts'
import type { OpeningInput, OpeningLine } from './types.ts'

const ORDERS: readonly Order[] = ['usual', 'chlorine-first', 'little-first', 'ph-then-chlorine']

/** Whether this water lacks chlorine even for the floor, so that no night may come before some is in. */
function isBelowFloor(water: SolvedWater, input: OpeningInput): boolean {
  return (water.reading.fc_mg_per_L_as_Cl2 ?? 0) < chlorineFloor(input.start.cya_mg_per_L, input).mgPerL - 1e-9
}

/** Within how many hours of the first line chlorine has to be in. */
export function residualByHours(water: SolvedWater, input: OpeningInput): number {
  return isBelowFloor(water, input) ? LIMITS.floorByHours : LIMITS.residualByHours
}

/** What brings chlorine to its floor and no further [g/m³], for a first part where the whole has no room yet. */
export function littleChlorine(job: ScheduleInput, input: OpeningInput): number {
  const want = job.fixed.find(({ purpose }) => purpose === 'openingChlorine')
  const effect = want ? effectPerGPerM3(want.product, 'fc_mg_per_L_as_Cl2') : 0
  if (!want || !(effect > 0)) return 0
  const lacking = chlorineFloor(input.start.cya_mg_per_L, input).mgPerL - (job.start.reading.fc_mg_per_L_as_Cl2 ?? 0)
  return Math.min(want.gPerM3, Math.max(0, lacking) / effect)
}

/** The usual order, unless chlorine would come too late in it; then the first other order that is in time and complete. */
export function inTime(
  asked: ScheduleInput,
  assembled: (moves: readonly Move[]) => readonly OpeningLine[],
  clock: number,
  input: OpeningInput,
): Schedule {
  const usual = schedule(asked, 'usual')
  if (!asked.fixed.some((want) => want.purpose === 'openingChlorine')) return usual
  const byHours = residualByHours(asked.start, input)
  const chlorineAt = (plan: Schedule): number => {
    const line = assembled(plan.moves).find((each) => each.kind === 'dose' && each.purpose === 'openingChlorine')
    return line ? line.startHours - clock : Number.POSITIVE_INFINITY
  }
  if (chlorineAt(usual) <= byHours) return usual
  const job = { ...asked, littleGPerM3: littleChlorine(asked, input) }
  const plans = ORDERS.map((order) => schedule(job, order))
  const good = plans.find((plan) => plan.left.length === 0 && chlorineAt(plan) <= byHours)
  if (good) return good
  return plans.toSorted((a, b) => a.left.length - b.left.length || chlorineAt(a) - chlorineAt(b))[0] ?? usual
}
