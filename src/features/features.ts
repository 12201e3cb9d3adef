import { fail, invariant, ok, type Result, type Table, table } from '../base/index.ts'
import type { Patch, Path } from '../basin/index.ts'
import { BENCH } from './bench.ts'
import { RAMP } from './ramp.ts'
import { ROUND_STEPS } from './round-steps.ts'
import { SHELF } from './shelf.ts'
import { STEPS } from './steps.ts'
import type { Feature, FeatureKind } from './types.ts'

/** All kinds of features. A row is only handed features of its own kind, which `kind` tells. */
export const FEATURES: Table<FeatureKind<Feature>> = table([
  row(SHELF),
  row(BENCH),
  row(RAMP),
  row(STEPS),
  row(ROUND_STEPS),
])

function row<F extends Feature>(kind: FeatureKind<F>): FeatureKind<Feature> {
  return kind as unknown as FeatureKind<Feature>
}

/** The patches of all features in a basin of this outline, in order; the first complaint stops it. */
export function patchesOf(features: readonly Feature[], outline: Path): Result<Patch[]> {
  const all: Patch[] = []
  for (let i = 0; i < features.length; i++) {
    const feature = features[i]!
    const kind = FEATURES.get(feature.kind)
    invariant(kind, `no such feature: ${feature.kind}`)
    const patches = kind.patchesOf(feature, i, outline)
    if (!patches.ok) return fail(patches.problem)
    all.push(...patches.value)
  }
  return ok(all)
}
