import { startWater } from '../plan/index.ts'
import type { Constants, Equilibrium } from '../water/index.ts'
import type { DerivedWater } from './types.ts'

/** What would hold alkalinity if it were there, and that nobody read: what an amount of it would do to this water. */
export interface UnknownPart {
  readonly key: 'cya_mg_per_L' | 'borate_mg_per_L_as_B'
  /** The amount that is looked at [mg/L]: where pools are kept that have it at all (common practice, no source). */
  readonly atMgPerL: number
  /** What it would hold of the alkalinity [mg/L as CaCO3], and how much lower calcite SI would be. */
  readonly holdsMgPerL: number
  readonly lowersSI: number
}

const LOOKED_AT = [
  { key: 'cya_mg_per_L', atMgPerL: 50 },
  { key: 'borate_mg_per_L_as_B', atMgPerL: 45 },
] as const

/** The parts of alkalinity that can't be told, since the reading behind each was not taken. */
export function unknownParts(
  { known, told, solved }: Pick<DerivedWater, 'known' | 'told' | 'solved'>,
  constants: Constants,
): readonly UnknownPart[] {
  if (!solved?.ok) return []
  const { equilibrium: now } = solved.value
  return LOOKED_AT.filter(({ key }) => known[key] === undefined).flatMap(({ key, atMgPerL }) => {
    const reading = {
      ...known,
      ...Object.fromEntries(told.map((each) => [each.key, each.likely.best])),
      [key]: atMgPerL,
    }
    const { pH, ta_mg_per_L_as_CaCO3 } = reading
    if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return []
    const made = startWater({ ...reading, pH, ta_mg_per_L_as_CaCO3 }, constants)
    if (!made.ok) return []
    const { equilibrium } = made.value.water
    const lowersSI = now.calciteSI - equilibrium.calciteSI
    return [{ key, atMgPerL, holdsMgPerL: heldBy(key, equilibrium), lowersSI }]
  })
}

function heldBy(key: UnknownPart['key'], { alkalinity }: Equilibrium): number {
  return key === 'borate_mg_per_L_as_B' ? alkalinity.borate : alkalinity.cyanurate + alkalinity.chlorinatedCyanurate
}
