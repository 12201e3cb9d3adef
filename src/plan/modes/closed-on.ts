import { START_MODES } from './start-modes.ts'

/** Why a start keeps the pool closed on a day, whatever is read; undefined where it leaves that to the readings. */
export function closedOn(modeId: string, day: number): string | undefined {
  const step = START_MODES.get(modeId)?.steps.find(
    ({ closesPool, fromDay, toDay }) => closesPool === true && day >= fromDay && day <= toDay,
  )
  return step && `${step.title}, by day ${day} of this start. ${step.what}`
}
