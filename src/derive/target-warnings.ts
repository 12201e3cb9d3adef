import type { Problem } from '../base/index.ts'
import type { Spec } from '../document/index.ts'
import { targetWarnings } from '../plan/index.ts'
import { latestReadings } from './latest.ts'
import { memoLast } from './memo.ts'
import { localRules } from './rules.ts'
import { deriveTargets } from './targets.ts'
import { systemById } from './volume.ts'

/** Bands of ordinary times that reach outside the rules in force or a maker's range, each with its path `targets.…`. */
export const deriveTargetWarnings = memoLast((spec: Spec, systemId: string): readonly Problem[] => {
  const system = systemById(spec, systemId)
  if (!system) return []
  return targetWarnings({
    targets: deriveTargets(spec, systemId),
    start: latestReadings(system)?.values ?? system.water.fill?.values ?? {},
    regimeId: system.regime.id,
    surface: spec.site.surface,
    ...localRules(spec.site),
  })
})
