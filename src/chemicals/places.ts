import { table } from '../base/index.ts'
import type { SourceStatus } from '../water/index.ts'
import { type Match, matches } from './match.ts'
import { SHED_RULES } from './place-rows-shed.ts'
import { USE_RULES } from './place-rows-use.ts'
import type { Product } from './types.ts'

/** Where chemicals meet by mistake. A floater and a dosing pump count as feeders, a skimmer as a basket. */
export type Place = 'feeder' | 'basket' | 'bucket' | 'shed' | 'pool'

export interface PlaceRule {
  readonly id: string
  readonly where: Place
  /** `danger` hurts people; `spoils` harms water, pool or equipment. */
  readonly kind: 'danger' | 'spoils'
  /** What it is about; with `meets`, only where something of that kind is there too. */
  readonly about: Match
  readonly meets?: Match | undefined
  /** What must not be, and what comes of it. */
  readonly text: string
  /** What to do. */
  readonly instead: string
  readonly source: string
  readonly status: SourceStatus
}

/** What must never meet what, and where. */
export const PLACE_RULES = table<PlaceRule>([...USE_RULES, ...SHED_RULES])

/** The rules that bear on these products, gravest first; only those of one place where it is named. */
export function placeRules(products: readonly Product[], where?: Place): readonly PlaceRule[] {
  const apply = PLACE_RULES.rows.filter(
    (each) => (where === undefined || each.where === where) && bears(each, products),
  )
  return [...apply.filter(({ kind }) => kind === 'danger'), ...apply.filter(({ kind }) => kind === 'spoils')]
}

function bears({ about, meets }: PlaceRule, products: readonly Product[]): boolean {
  const first = products.filter((product) => matches(product, about))
  if (!meets) return first.length > 0
  const second = products.filter((product) => matches(product, meets))
  return first.some((a) => second.some((b) => a.id !== b.id))
}
