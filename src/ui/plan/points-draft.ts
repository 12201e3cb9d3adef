import type { Point } from '../../basin/index.ts'
import type { LoopPoint } from './loop-through.ts'

/** An outline that is being placed point by point. */
export interface PointsDraft {
  readonly points: readonly LoopPoint[]
  /** Whether the next point will be smooth. */
  readonly isSmooth: boolean
}

export type DraftStep =
  | { readonly do: 'drop'; readonly at: Point }
  | { readonly do: 'remove-last' }
  | { readonly do: 'toggle' }
  | { readonly do: 'start-over' }

export const EMPTY_DRAFT: PointsDraft = { points: [], isSmooth: true }

/** One step of placing points. Two points on one spot would make a segment of no length: the second is not dropped. */
export function draftAfter(draft: PointsDraft, step: DraftStep): PointsDraft {
  if (step.do === 'start-over') return { ...EMPTY_DRAFT, isSmooth: draft.isSmooth }
  if (step.do === 'remove-last') return { ...draft, points: draft.points.slice(0, -1) }
  if (step.do === 'toggle') {
    const last = draft.points.at(-1)
    const isSmooth = !draft.isSmooth
    // The key is pressed on seeing the last point drawn the other way: it changes too.
    const points = last ? [...draft.points.slice(0, -1), { ...last, isSmooth }] : draft.points
    return { points, isSmooth }
  }
  const last = draft.points.at(-1)
  if (last && last.at[0] === step.at[0] && last.at[1] === step.at[1]) return draft
  return { ...draft, points: [...draft.points, { at: step.at, isSmooth: draft.isSmooth }] }
}

/** An outline needs three points. */
export function canClose(draft: PointsDraft): boolean {
  return draft.points.length >= 3
}
