import type { Problem } from '../base/index.ts'
import { momentMs, type Spec } from '../document/index.ts'
import { targetWarnings } from '../plan/index.ts'
import { latestReadings } from './latest.ts'
import { memoLast } from './memo.ts'
import { deriveProducts } from './products.ts'
import { localRules } from './rules.ts'
import { noneDoubted } from './stabiliser.ts'
import { deriveTargets } from './targets.ts'
import { systemById } from './volume.ts'

/** Bands of ordinary times that reach outside the rules in force or a maker's range, each with its path `targets.…`. */
export const deriveTargetWarnings = memoLast((spec: Spec, systemId: string): readonly Problem[] => {
  const system = systemById(spec, systemId)
  if (!system) return []
  const read = latestReadings(system)
  const latest = read ?? system.water.fill
  const isNoneDoubted =
    read !== undefined && noneDoubted(system, read, deriveProducts(spec, systemId, momentMs(read.at))) !== undefined
  return targetWarnings({
    targets: deriveTargets(spec, systemId),
    start: latest ? (isNoneDoubted ? { ...latest.values, cya_mg_per_L: undefined } : latest.values) : {},
    regimeId: system.regime.id,
    surface: spec.site.surface,
    ...localRules(spec.site),
  })
})
