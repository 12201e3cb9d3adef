import { table } from '../base/index.ts'

/** A device that helps. What it lowers is a guess with a wide range, and never the chlorine floor. */
export interface Helper {
  readonly id: string
  readonly label: string
  /** Share of the bathers' demand that it takes over. */
  readonly bathers: { readonly value: number; readonly low: number; readonly high: number }
  /** Share of the demand of dust, leaves and walls that it takes over. */
  readonly base: { readonly value: number; readonly low: number; readonly high: number }
  /** Air that it draws into the water, as extra gas transfer while the pump runs [m/day]. */
  readonly airMPerDay: number
  readonly note: string
  readonly source: string
}

const NONE = { value: 0, low: 0, high: 0 } as const
const GUESS = 'from memory, no measurement behind it'

export const HELPERS = table<Helper>([
  {
    id: 'mineral-cartridge',
    label: 'mineral cartridge',
    bathers: NONE,
    base: { value: 0.2, low: 0, high: 0.5 },
    airMPerDay: 0,
    note: 'A mineral cartridge may spare some of the base demand (0 to 50 %, no measurement behind it). Copper and silver can stain; it disinfects too slowly to count.',
    source: GUESS,
  },
  {
    id: 'oxidation-unit',
    label: 'oxidation unit',
    bathers: { value: 0.3, low: 0, high: 0.6 },
    base: NONE,
    airMPerDay: 0.1,
    note: 'An oxidation unit may take over some of what bathers bring (0 to 60 %, no measurement behind it). The air it draws in drives CO2 out, so pH creeps faster.',
    source: GUESS,
  },
  {
    id: 'ozone',
    label: 'ozone',
    bathers: { value: 0.3, low: 0, high: 0.6 },
    base: NONE,
    airMPerDay: 0.1,
    note: 'Ozone oxidises some of what bathers bring (0 to 60 %, no measurement behind it) and leaves no residual in the pool. Its air drives CO2 out.',
    source: GUESS,
  },
  {
    id: 'uv',
    label: 'ultraviolet lamp',
    bathers: { value: 0.15, low: 0, high: 0.4 },
    base: NONE,
    airMPerDay: 0,
    note: 'An ultraviolet lamp breaks down combined chlorine (worth 0 to 40 % of the bathers’ demand, no measurement behind it) and leaves no residual in the pool.',
    source: GUESS,
  },
])

export const HELPER_FLOOR_NOTE =
  'None of them lowers the chlorine floor: they work where the water passes them, not where people are.'

/** Shares left after all helpers, each acting on what the ones before it leave: best guess, and the range. */
export function sharesLeft(helpers: readonly Helper[], what: 'bathers' | 'base') {
  const left = (pick: (share: Helper['bathers']) => number) =>
    helpers.reduce((share, helper) => share * (1 - pick(helper[what])), 1)
  return { value: left((s) => s.value), low: left((s) => s.high), high: left((s) => s.low) }
}
