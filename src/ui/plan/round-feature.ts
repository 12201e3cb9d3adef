import { type Axis, type Path, transformPath } from '../../basin/index.ts'
import { FEATURES, type Feature } from '../../features/index.ts'
import { snapLength, type UnitSystem } from '../../units/index.ts'

/**
 * A new feature with its usual measures whole in the units that people measure in.
 * @param referenceM what its depths as written have in front of those from the datum [m]
 */
export function roundFeature(feature: Feature, units: UnitSystem, referenceM: number): Feature {
  const fields = FEATURES.get(feature.kind)?.fields ?? []
  const round = fields.reduce((made, field) => {
    if (field.unit !== 'm' || field.belongsTo?.(made) === false) return made
    const before = field.isDepth ? referenceM : 0
    return field.set(made, snapLength(field.get(made) + before, units) - before)
  }, feature)
  if (round.kind !== 'steps' || feature.kind !== 'steps') return round
  // The footprint grows with its treads, or the last would be shorter than the others.
  const [was, now] = [goingOf(feature), goingOf(round)]
  if (!(was > 0 && now > 0)) return round
  return { ...round, ...drawnOut(feature.path, feature.axis, now / was) }
}

function goingOf({ treads }: { readonly treads: readonly (readonly [number, number])[] }): number {
  return (treads[1]?.[0] ?? 0) - (treads[0]?.[0] ?? 0)
}

/** A footprint and its axis, longer along the axis by a factor; where the axis begins stays. */
function drawnOut(path: Path, { from, to }: Axis, factor: number): { readonly path: Path; readonly axis: Axis } {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const square = dx * dx + dy * dy
  const k = square > 0 ? (factor - 1) / square : 0
  const [a, b, d] = [1 + k * dx * dx, k * dx * dy, 1 + k * dy * dy]
  const e = from[0] - a * from[0] - b * from[1]
  const f = from[1] - b * from[0] - d * from[1]
  return {
    path: transformPath(path, { a, b, c: b, d, e, f }),
    axis: { from, to: [from[0] + factor * dx, from[1] + factor * dy] },
  }
}
