import type { Site } from '../document/index.ts'
import type { LocalRules } from '../plan/index.ts'

/** What the place lays down for bathing, as the plans take it. */
export function localRules({ rules, indoor }: Site): LocalRules {
  return {
    rulesId: rules?.profile,
    chlorineFloorMgPerL: rules?.chlorineFloorMgPerL,
    chlorineCeilingMgPerL: rules?.chlorineCeilingMgPerL,
    isIndoor: indoor,
  }
}
