import { momentMs, type Spec } from '../document/index.ts'
import { defaultTargets, startDay, type TargetPhase, type Targets, targetPhasesAt, targetsAt } from '../plan/index.ts'
import { memoLast } from './memo.ts'
import { systemById } from './volume.ts'

/** The bands that this pool aims for in ordinary times: its surface's and regime's defaults with the owner's own over them. */
export const deriveTargets = memoLast((spec: Spec, systemId: string): Targets => {
  const system = systemById(spec, systemId)
  if (!system) return {}
  return defaultTargets(spec.site.surface, system.regime.id, system.water.targets)
})

/** The bands of a day, and what of them a start that is under way changes or withholds. */
export interface TargetsOfDay {
  readonly targets: Targets
  readonly phases: readonly TargetPhase[]
}

const ofDay = memoLast((spec: Spec, systemId: string, day: number): TargetsOfDay => {
  const usual = deriveTargets(spec, systemId)
  const mode = systemById(spec, systemId)?.start?.mode
  return {
    targets: targetsAt(mode, day, usual),
    phases: targetPhasesAt(mode, day).filter(({ key, change }) => {
      const band = usual[key]
      return band !== undefined && (change.kind === 'withheld' || !band.isOwn)
    }),
  }
})

/** The bands that this pool aims for at a moment: the ordinary ones, as the start that is under way has them on that day. */
export function deriveTargetsAt(spec: Spec, systemId: string, nowMs: number): TargetsOfDay {
  const start = systemById(spec, systemId)?.start
  return ofDay(spec, systemId, start ? startDay(momentMs(start.at), nowMs) : 0)
}
