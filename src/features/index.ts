export { FEATURES, patchesOf } from './features.ts'
export type { Feature, FeatureField, FeatureHandle, FeatureKind, Placement, RoundSteps, Shelf, Steps } from './types.ts'
