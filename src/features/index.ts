import { ok, type Result } from '../base/index.ts'
import type { Patch } from '../basin/index.ts'
import type { Feature, FeatureKind } from './types.ts'

export type { Feature, FeatureField, FeatureHandle, FeatureKind, Placement, RoundSteps, Shelf, Steps } from './types.ts'
export const FEATURES: {
  readonly rows: readonly FeatureKind<Feature>[]
  readonly get: (id: string) => FeatureKind<Feature> | undefined
} = { rows: [], get: () => undefined }
export const patchesOf = (_features: readonly Feature[]): Result<Patch[]> => ok([])
