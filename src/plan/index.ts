export { HELPERS } from './helpers.ts'
export { LIMITS } from './limits.ts'
export { openingPlan } from './opening.ts'
export { REGIMES } from './regimes.ts'
export { startWater } from './start.ts'
export { SURFACES } from './surfaces.ts'
export { type ExactTarget, targetDoses } from './target-doses.ts'
export { defaultTargets, isInside, TARGET_KEYS } from './targets.ts'
export type {
  Band,
  DemandTerm,
  DoseLine,
  ExchangeLine,
  ExpectedWater,
  GivenDose,
  KnownReading,
  Movement,
  OpeningInput,
  OpeningLine,
  OpeningPlan,
  PurchaseItem,
  Purpose,
  SourcedBand,
  StepLine,
  Targets,
  Upkeep,
  UpkeepInput,
} from './types.ts'
export { upkeep } from './upkeep.ts'
