export { movedFloor, movedPath, scaledPlan } from './affine.ts'
export { areAllAssumed, assumedDepths } from './assumed-depths.ts'
export { blankSpec } from './blank.ts'
export { applyCommand, commandLabel } from './commands/apply.ts'
export { COMMANDS, type Command, type CommandArgs, type CommandId, command } from './commands/index.ts'
export { STATION_GAP_M } from './commands/move-station.ts'
export type { RingRef } from './commands/places.ts'
export { demoSpec, demoSpecAt } from './demo.ts'
export { depthFromReference, depthToReference } from './depths.ts'
export { deepenedFloor, depthsOfFloor, firstPointOf } from './floor-depths.ts'
export { type FloorKindId, floorAs, isLineAssumed } from './floor-kinds.ts'
export {
  type History,
  type HistoryStep,
  MOST_STEPS,
  record,
  redo,
  redoLabel,
  startHistory,
  undo,
  undoLabel,
} from './history.ts'
export { insetRing, isInside } from './inset.ts'
export { fromJson, toJson } from './json.ts'
export { fitsInLink, linkOf, specFromLink } from './link.ts'
export { migrate, NEWEST_VERSION } from './migrations.ts'
export { momentMs } from './moment.ts'
export { ownProductsFrom } from './own-products.ts'
export { closed, isSmooth } from './path-edit.ts'
export { LIMITS } from './schema/numbers.ts'
export { SpecSchema } from './schema/spec.ts'
export { kindOf, type SegmentKind } from './segment-kinds.ts'
export type {
  Body,
  ChosenProducts,
  ClimateMonth,
  DepthReference,
  DeviceEntry,
  DoseEntry,
  Equipment,
  HelperId,
  LabelledPackage,
  LabelledProduct,
  LogEntry,
  NoteEntry,
  PackagePrice,
  ReadingKey,
  ReadingMethod,
  ReadingSet,
  ReadingValues,
  Regime,
  Site,
  SiteRules,
  Sketch,
  Spec,
  Start,
  StockItem,
  SurfaceKind,
  System,
  TargetBand,
  TargetKey,
  TargetOverrides,
  VolumeEstimate,
  Water,
} from './types.ts'
export { validateSpec } from './validate.ts'
