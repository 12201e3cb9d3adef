export { FEATURES, patchesOf } from './features.ts'
export type {
  Along,
  Bench,
  Feature,
  FeatureField,
  FeatureHandle,
  FeatureKind,
  FreeBench,
  Placement,
  Ramp,
  RoundSteps,
  Shelf,
  Steps,
  WallBench,
} from './types.ts'
