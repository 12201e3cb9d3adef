import type { HazardGroup } from './types.ts'

/**
 * What each generic product does to its neighbours, by id: enough to check a document by, without the whole table of
 * products. The table's own rows say the same.
 */
export const GENERIC_GROUPS: { readonly [id: string]: readonly HazardGroup[] } = {
  'muriatic-acid-31': ['acid'],
  'muriatic-acid-14': ['acid'],
  'dry-acid': ['acid'],
  'dry-acid-95': ['acid'],
  'carbon-dioxide': ['harmless'],
  'sodium-bicarbonate': ['carbonate'],
  'soda-ash': ['alkali', 'carbonate'],
  'borax-10': ['alkali'],
  'borax-5': ['alkali'],
  'boric-acid': ['harmless'],
  'sodium-hydroxide': ['alkali'],
  'liquid-chlorine-12': ['hypochlorite'],
  'liquid-chlorine-10': ['hypochlorite'],
  'cal-hypo-65': ['hypochlorite'],
  'cal-hypo-68': ['hypochlorite'],
  'cal-hypo-73': ['hypochlorite'],
  'cal-hypo-tablet': ['hypochlorite'],
  'lithium-hypochlorite': ['hypochlorite'],
  'trichlor-tablet': ['isocyanurate'],
  dichlor: ['isocyanurate'],
  'dichlor-anhydrous': ['isocyanurate'],
  'sodium-thiosulfate': ['reducer'],
  'sodium-thiosulfate-tetrathionate': ['reducer'],
  'sodium-sulfite': ['reducer'],
  'potassium-monopersulfate': ['oxidiser', 'acid'],
  'chlorine-gas': ['chlorineGas', 'hypochlorite'],
  'chlorine-used': ['harmless'],
  'calcium-chloride-flake': ['calcium'],
  'calcium-chloride-anhydrous': ['calcium'],
  'magnesium-sulfate-7': ['harmless'],
  'magnesium-chloride-6': ['harmless'],
  'cyanuric-acid': ['harmless'],
  salt: ['harmless'],
}

/** Gases and ways of accounting: no label gives them a strength. */
const WITHOUT_STRENGTH = ['carbon-dioxide', 'sodium-thiosulfate-tetrathionate', 'chlorine-gas', 'chlorine-used']

/** Whether there is a generic product of that id. */
export function isGeneric(id: string): boolean {
  return Object.hasOwn(GENERIC_GROUPS, id)
}

/** Ids that an own product can be like. */
export const LIKE_IDS: readonly string[] = Object.keys(GENERIC_GROUPS).filter((id) => !WITHOUT_STRENGTH.includes(id))
