import { ACID, HYPOCHLORITE, LIQUID, OXIDISER, rule, SOLID, STABILISED } from './place-matches.ts'
import type { PlaceRule } from './places.ts'
import { EPA_ALERT, EPA_AND_CSB, FIRE_PRESS, FIRE_SHEET, MEMORY, PRACTICE } from './sources.ts'

/** Where the products stand. */
export const SHED_RULES: readonly PlaceRule[] = [
  rule(
    {
      id: 'shed-acid-and-oxidiser',
      where: 'shed',
      kind: 'danger',
      about: ACID,
      meets: OXIDISER,
      text: 'Fumes and spills of acid reach chlorine and other oxidisers: gas and corrosion.',
      instead: 'Acid in another place, low, closed, on a tray of its own.',
    },
    FIRE_SHEET,
  ),
  rule(
    {
      id: 'shed-two-chlorines',
      where: 'shed',
      kind: 'danger',
      about: HYPOCHLORITE,
      meets: STABILISED,
      text: 'A torn bag or a shared scoop brings hypochlorite and stabilised chlorine together: fire and gas.',
      instead: 'Apart from each other, each in its own closed container with its own dry scoop.',
    },
    EPA_AND_CSB,
  ),
  rule(
    {
      id: 'shed-oxidiser-and-reducer',
      where: 'shed',
      kind: 'danger',
      about: OXIDISER,
      meets: { groups: ['reducer'] },
      text: 'An oxidiser and a reducer react hot when they mix undiluted.',
      instead: 'Not on the same shelf.',
    },
    MEMORY,
  ),
  rule(
    {
      id: 'shed-stabilised-and-alkali',
      where: 'shed',
      kind: 'danger',
      about: STABILISED,
      meets: { groups: ['alkali'] },
      text: 'Stabilised chlorine and strong alkali, damp, heat up and can form nitrogen trichloride.',
      instead: 'Not on the same shelf.',
    },
    MEMORY,
  ),
  rule(
    {
      id: 'shed-liquid-above-solid',
      where: 'shed',
      kind: 'danger',
      about: LIQUID,
      meets: SOLID,
      text: 'What drips from a leaking liquid starts a reaction in the dry products below.',
      instead: 'Liquids at the bottom, in a tray; never above solids.',
    },
    FIRE_SHEET,
  ),
  rule(
    {
      id: 'shed-burnables',
      where: 'shed',
      kind: 'danger',
      about: OXIDISER,
      text: 'Chlorine and other oxidisers set oil, fuel, paint, paper, cleaners with ammonia and many algicides on fire or make gas with them.',
      instead: 'Keep them alone, and sweepings and rags out of the bin.',
    },
    FIRE_PRESS,
  ),
  rule(
    {
      id: 'shed-dry-and-open',
      where: 'shed',
      kind: 'danger',
      about: OXIDISER,
      text: 'Damp, heat and closed rooms turn stored chlorine into gas.',
      instead: 'Dry, cool, ventilated, in the original container, locked, out of the sun.',
    },
    EPA_ALERT,
  ),
  rule(
    {
      id: 'shed-carbon-dioxide',
      where: 'shed',
      kind: 'danger',
      about: { ids: ['carbon-dioxide'] },
      text: 'Carbon dioxide that leaks into a closed room stifles people before they notice.',
      instead: 'Cylinders outdoors or in a ventilated room with an alarm, chained upright.',
    },
    PRACTICE,
  ),
]
