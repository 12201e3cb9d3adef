import type { Match } from './match.ts'
import type { PlaceRule } from './places.ts'
import type { Origin } from './sources.ts'

export const ANY: Match = {}
export const ACID: Match = { groups: ['acid'] }
export const HYPOCHLORITE: Match = { groups: ['hypochlorite'] }
export const STABILISED: Match = { groups: ['isocyanurate'] }
export const CHLORINE: Match = { groups: ['hypochlorite', 'isocyanurate'] }
export const OXIDISER: Match = { groups: ['hypochlorite', 'isocyanurate', 'oxidiser'] }
export const TRICHLOR: Match = { ids: ['trichlor-tablet'] }
export const LIQUID: Match = { forms: ['liquid'] }
export const SOLID: Match = { forms: ['solid', 'granular', 'tablet'] }
export const CAL_HYPO: Match = { groups: ['hypochlorite'], forms: ['granular', 'tablet'] }

type Given = Omit<PlaceRule, 'source' | 'status'>
export const rule = (given: Given, from: Origin): PlaceRule => ({ ...given, ...from })
