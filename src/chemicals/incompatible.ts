import type { SourceStatus } from '../water/index.ts'
import { EPA_ALERT, EPA_AND_CSB, MEMORY, MMWR_2017, type Origin, PRACTICE } from './sources.ts'
import type { HazardGroup, Product } from './types.ts'

/** Two groups that must not meet, and how hard that is meant. */
export interface Incompatibility {
  readonly a: HazardGroup
  readonly b: HazardGroup
  /** `danger` hurts people; `clouds` spoils the water or wastes the dose. */
  readonly kind: 'danger' | 'clouds'
  readonly reason: string
  readonly source: string
  readonly status: SourceStatus
  /** Least hours between them in the pool, besides a whole turnover. */
  readonly hoursApart: number
}

const pair = (
  a: HazardGroup,
  b: HazardGroup,
  kind: Incompatibility['kind'],
  hoursApart: number,
  reason: string,
  from: Origin,
): Incompatibility => ({ a, b, kind, reason, hoursApart, ...from })

export const INCOMPATIBLE: readonly Incompatibility[] = Object.freeze([
  pair('acid', 'hypochlorite', 'danger', 4, 'Acid on hypochlorite sets chlorine gas free.', MMWR_2017),
  pair('acid', 'isocyanurate', 'danger', 4, 'Acid on chlorinated stabiliser sets chlorine gas free.', EPA_ALERT),
  pair(
    'hypochlorite',
    'isocyanurate',
    'danger',
    4,
    'Together, and above all damp, they burn, explode and give off toxic gas.',
    EPA_AND_CSB,
  ),
  pair('hypochlorite', 'oxidiser', 'danger', 4, 'Two strong oxidisers heat each other up.', MEMORY),
  pair('isocyanurate', 'oxidiser', 'danger', 4, 'Two strong oxidisers heat each other up.', MEMORY),
  pair('hypochlorite', 'reducer', 'danger', 4, 'A strong oxidiser and a reducer react hot when undiluted.', MEMORY),
  pair('isocyanurate', 'reducer', 'danger', 4, 'A strong oxidiser and a reducer react hot when undiluted.', MEMORY),
  pair('oxidiser', 'reducer', 'danger', 4, 'A strong oxidiser and a reducer react hot when undiluted.', MEMORY),
  pair('acid', 'reducer', 'danger', 4, 'Acid drives sulphur dioxide out of sulphite and thiosulphate.', MEMORY),
  pair('acid', 'alkali', 'danger', 4, 'Undiluted, acid and alkali boil and spatter.', MEMORY),
  pair('acid', 'carbonate', 'clouds', 4, 'Acid on carbonate foams, and each undoes the other.', MEMORY),
  pair(
    'calcium',
    'carbonate',
    'clouds',
    12,
    'Where calcium and carbonate meet strong, chalk falls out and clouds the water.',
    PRACTICE,
  ),
  pair('chlorineGas', 'alkali', 'danger', 4, 'They react hot.', MEMORY),
  pair('chlorineGas', 'reducer', 'danger', 4, 'They react hot.', MEMORY),
])

/** The reason why two groups must not meet, or undefined where nothing is known against it. */
export function mustNotMeet(groupA: HazardGroup, groupB: HazardGroup): Incompatibility | undefined {
  return INCOMPATIBLE.find((row) => (row.a === groupA && row.b === groupB) || (row.a === groupB && row.b === groupA))
}

/** The gravest reason why two products must not follow each other directly. */
export function keepApart(
  first: Pick<Product, 'groups'>,
  second: Pick<Product, 'groups'>,
): Incompatibility | undefined {
  const found = first.groups.flatMap((a) => second.groups.flatMap((b) => mustNotMeet(a, b) ?? []))
  return found.find((row) => row.kind === 'danger') ?? found[0]
}
