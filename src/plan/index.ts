export { deckCard } from './deck-card.ts'
export type { DeckCard, DeckDose, DeckRow } from './deck-types.ts'
export { effectPerGPerM3 } from './effect.ts'
export { BASIC_READINGS, closedHold, type Doubted, doubtedHold, type Hold, heldOpening } from './held.ts'
export { HELPERS } from './helpers.ts'
export { keptReadings, keptWords, type ReadAt } from './kept.ts'
export { LIMITS } from './limits.ts'
export { closedAfter, closedOn } from './modes/closed-on.ts'
export { START_INPUTS } from './modes/start-inputs.ts'
export { START_MODES } from './modes/start-modes.ts'
export { startSchedule, stepsOn } from './modes/start-schedule.ts'
export { startDay, targetPhasesAt, targetsAt } from './modes/targets-at.ts'
export type {
  ExpectedReading,
  ScheduledStep,
  StartContext,
  StartFigure,
  StartInput,
  StartMode,
  StartSchedule,
  TargetPhase,
} from './modes/types.ts'
export { openingPlan } from './opening.ts'
export { REGIMES } from './regimes.ts'
export { startWater } from './start.ts'
export { SURFACES } from './surfaces.ts'
export { type TargetObjective, targetDoses } from './target-doses.ts'
export type { ExactTarget } from './target-solve.ts'
export { targetWarnings } from './target-warnings.ts'
export { defaultTargets, isInside, TARGET_KEYS } from './targets.ts'
export type {
  Band,
  DoseLine,
  ExchangeLine,
  ExpectedWater,
  GivenDose,
  Holding,
  KeptReading,
  KnownReading,
  LastStabiliser,
  LocalRules,
  MetalReadings,
  Movement,
  OpeningInput,
  OpeningLine,
  OpeningPlan,
  PurchaseItem,
  PurchaseSum,
  Purpose,
  SourcedBand,
  StepLine,
  Targets,
} from './types.ts'
export { chlorineHolding, upkeep } from './upkeep.ts'
export type { DemandTerm, Upkeep, UpkeepInput } from './upkeep-types.ts'
