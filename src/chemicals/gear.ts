import { table } from '../base/index.ts'
import type { SourceStatus } from '../water/index.ts'
import { type Match, matches } from './match.ts'
import { ECHA_2019, type Origin, PRACTICE } from './sources.ts'
import type { Product } from './types.ts'

/** What to wear or have at hand; the label and the safety data sheet rule. */
export interface Gear {
  readonly id: string
  readonly about: Match
  readonly wear: string
  readonly why: string
  readonly source: string
  readonly status: SourceStatus
}

const row = (id: string, about: Match, wear: string, why: string, from: Origin): Gear => ({
  id,
  about,
  wear,
  why,
  ...from,
})

const BURNS: Match = { groups: ['acid', 'alkali', 'hypochlorite', 'isocyanurate', 'oxidiser', 'chlorineGas'] }

export const GEAR = table<Gear>([
  row(
    'goggles',
    BURNS,
    'Goggles that close all round; glasses are not enough.',
    'One splash can cost an eye.',
    PRACTICE,
  ),
  row(
    'gloves',
    BURNS,
    'Gloves that keep chemicals out (nitrile or PVC), whole and dry inside.',
    'It burns skin.',
    PRACTICE,
  ),
  row('clothes', BURNS, 'Old long clothes and closed shoes.', 'It bleaches and burns.', PRACTICE),
  row(
    'gloves-others',
    { groups: ['carbonate', 'calcium', 'reducer', 'harmless'], forms: ['granular', 'solid', 'liquid', 'tablet'] },
    'Gloves and goggles.',
    'Salts dry and sting skin and eyes.',
    PRACTICE,
  ),
  row(
    'dust-mask',
    { ids: ['soda-ash', 'borax-10', 'borax-5', 'boric-acid', 'sodium-hydroxide', 'dry-acid', 'dry-acid-95'] },
    'A dust mask (P2 or N95) where it dusts; stand upwind.',
    'Its dust hurts nose and lungs.',
    PRACTICE,
  ),
  row(
    'borate-gloves',
    { ids: ['borax-10', 'borax-5', 'boric-acid'] },
    'Gloves and a dust mask every time; someone else handles it where anyone is pregnant or may be.',
    'Borates are classed as harmful to reproduction (EU Repr. 1B).',
    ECHA_2019,
  ),
  row(
    'outdoors',
    { groups: ['acid', 'chlorineGas'], forms: ['liquid', 'gas'] },
    'Open air, the wind from behind, the face away from the opening.',
    'Its fumes hurt the lungs.',
    PRACTICE,
  ),
  row(
    'water-at-hand',
    BURNS,
    'A running hose or much clean water within reach before you open it.',
    'Rinsing helps only in the first seconds.',
    PRACTICE,
  ),
])

/** What these products ask for, each once. */
export function gearFor(products: readonly Product[]): readonly Gear[] {
  const rows = GEAR.rows.filter((gear) => products.some((product) => matches(product, gear.about)))
  // full goggles and gloves make the light ones needless
  return rows.some(({ id }) => id === 'goggles') ? rows.filter(({ id }) => id !== 'gloves-others') : rows
}
