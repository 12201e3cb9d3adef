import type { Path } from '../../basin/index.ts'
import { FEATURES, type Feature } from '../../features/index.ts'

/** The footprints of a feature in an outline: several of a bench that goes round corners, one of any other. */
export function featureShapes(feature: Feature, outline: Path): readonly Path[] {
  const patches = FEATURES.get(feature.kind)?.patchesOf(feature, 0, outline)
  if (!patches?.ok) return 'path' in feature ? [feature.path] : []
  if ('along' in feature) return patches.value.map((patch) => patch.path)
  // Of concentric treads the last is the widest; of a flight or a ramp each piece has the whole footprint.
  const widest = patches.value.at(-1)?.path
  return widest ? [widest] : []
}
