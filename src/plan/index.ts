export { COVERS, type Cover } from './covers.ts'
export { type ChlorineFloor, chlorineFloor } from './floor.ts'
export { HELPERS, type Helper } from './helpers.ts'
export { CHLORINE_FLOOR, LIMITS } from './limits.ts'
export { openingPlan } from './opening.ts'
export { REGIMES, type Regime } from './regimes.ts'
export { type StartWater, startWater } from './start.ts'
export { SURFACES, type Surface } from './surfaces.ts'
export { type ExactTarget, type TargetAnswer, type TargetDose, targetDoses } from './target-doses.ts'
export { defaultTargets, isInside, TARGET_KEYS, TARGET_LABELS, type TargetOverrides } from './targets.ts'
export type {
  Band,
  DemandTerm,
  DoseLine,
  ExchangeLine,
  ExpectedWater,
  GivenDose,
  KnownReading,
  LineState,
  Movement,
  OpeningInput,
  OpeningLine,
  OpeningPlan,
  PackageAdvice,
  Pour,
  PurchaseItem,
  Purpose,
  ReadingKey,
  SourcedBand,
  StepLine,
  TargetKey,
  Targets,
  Upkeep,
  UpkeepInput,
} from './types.ts'
export { upkeep } from './upkeep.ts'
