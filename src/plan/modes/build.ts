import { PRACTICE } from './origins.ts'
import type { Handling, StartStep, TargetPhase } from './types.ts'

type StepText = Pick<StartStep, 'title' | 'what' | 'how' | 'why'>
type StepMore = Partial<Omit<StartStep, 'key' | 'fromDay' | 'toDay' | 'handles' | keyof StepText>> & {
  readonly handles?: readonly Handling[]
}

/** A step, common practice unless it says otherwise. */
export function step(key: string, fromDay: number, toDay: number, text: StepText, more: StepMore = {}): StartStep {
  return { key, fromDay, toDay, ...PRACTICE, handles: [], ...text, ...more }
}

/** A target not dosed for on these days. */
export function withheld(
  key: TargetPhase['key'],
  fromDay: number,
  toDay: number,
  why: string,
  origin = PRACTICE,
): TargetPhase {
  return { key, fromDay, toDay, change: { kind: 'withheld' }, why, ...origin }
}
