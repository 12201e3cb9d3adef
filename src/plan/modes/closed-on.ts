import { START_MODES } from './start-modes.ts'
import type { StartMode } from './types.ts'

/** Why a start keeps the pool closed on a day, whatever is read; undefined where it leaves that to the readings. */
export function closedOn(modeId: string, day: number): string | undefined {
  const after = closedAfter(modeId, day)
  if (after) return `${after.title}. ${after.how}`
  const step = START_MODES.get(modeId)?.steps.find(
    ({ closesPool, fromDay, toDay }) => closesPool === true && day >= fromDay && day <= toDay,
  )
  return step && `${step.title}, by day ${day} of this start. ${step.what}`
}

/** What holds after the last day of a start that leaves the pool closed; undefined on its days, and where it opens the pool. */
export function closedAfter(modeId: string, day: number): StartMode['staysClosed'] {
  const mode = START_MODES.get(modeId)
  return mode && day > mode.lastDay ? mode.staysClosed : undefined
}
