import type { SourcedBand, TargetKey, Targets } from '../types.ts'
import { START_MODES } from './start-modes.ts'
import type { StartMode, TargetPhase } from './types.ts'

/** The row, by itself or by its id; an unknown id is none. */
function modeOf(mode: StartMode | string | undefined): StartMode | undefined {
  return typeof mode === 'string' ? START_MODES.get(mode) : mode
}

/** The changes that hold on a day, 1 for the first. */
export function targetPhasesAt(mode: StartMode | string | undefined, day: number): readonly TargetPhase[] {
  return (modeOf(mode)?.targets ?? []).filter(({ fromDay, toDay }) => day >= fromDay && day <= toDay)
}

/**
 * The targets that the opening plan works to on a day of a start. A withheld one is absent, so nothing is dosed for it; the
 * owner's own band stands over a start's band, but nobody's over withholding.
 */
export function targetsAt(mode: StartMode | string | undefined, day: number, defaults: Targets): Targets {
  const targets: { [K in TargetKey]?: SourcedBand | undefined } = { ...defaults }
  for (const { key, change, source, why } of targetPhasesAt(mode, day)) {
    const standard = targets[key]
    if (!standard) continue
    if (change.kind === 'withheld') delete targets[key]
    else if (standard.isOwn) {
      if (change.kind === 'band' && change.isHighLeft) targets[key] = { ...standard, isHighLeft: true }
    } else if (change.kind === 'upper-end')
      targets[key] = { ...standard, aim: standard.high, source: `${standard.source}. ${why}` }
    else {
      const left = change.isHighLeft ? { isHighLeft: true } : {}
      targets[key] = { ...change.band, source: `${source}. ${why}`, isOwn: false, ...left }
    }
  }
  return targets
}

const MS_PER_DAY = 86_400_000

/** Which day of a start it is: 1 from its moment on; 0 and below before it. */
export function startDay(atMs: number, nowMs: number): number {
  return Math.floor((nowMs - atMs) / MS_PER_DAY) + 1
}
