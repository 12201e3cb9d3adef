import type { SourceStatus } from '../water/index.ts'
import { keepApart } from './incompatible.ts'
import { EPA_AND_CSB, MEMORY, type Origin, PRACTICE } from './sources.ts'
import type { HazardGroup } from './types.ts'

/** Something that chemicals go through. `held` is all it has ever held, as far as anyone knows. */
export interface Device {
  readonly kind: 'feeder' | 'skimmer' | 'floater' | 'bucket'
  readonly name: string
  /** Bought new for this pool, so that `held` is its whole history. */
  readonly isNew: boolean
  readonly held: readonly { readonly product: string }[]
}

/** Why not, or what somebody has to find out first. */
export interface Objection {
  readonly answer: 'ask' | 'never'
  readonly reason: string
  readonly instead: string
  readonly source: string
  readonly status: SourceStatus
  /** Id of what it held that rules this out. */
  readonly because?: string | undefined
}

/** What of a product its neighbours need to know. */
export interface Substance {
  readonly label: string
  readonly groups: readonly HazardGroup[]
}

const REACTIVE: readonly HazardGroup[] = ['acid', 'alkali', 'hypochlorite', 'isocyanurate', 'oxidiser', 'reducer']

interface Bar extends Origin {
  readonly a: HazardGroup
  readonly b: HazardGroup
  readonly reason: string
  readonly instead: string
}

/** What a device remembers for good, beyond what the table of pairs says; looked at in both directions. */
const BARS: readonly Bar[] = Object.freeze([
  {
    a: 'hypochlorite',
    b: 'isocyanurate',
    reason:
      'Stabilised and unstabilised chlorine must never meet: traces of the other are enough for fire, gas and explosion.',
    instead:
      'Take a new one, never used before, for this product alone, and mark it. Washing does not make the old one safe.',
    ...EPA_AND_CSB,
  },
  {
    a: 'isocyanurate',
    b: 'alkali',
    reason: 'Stabilised chlorine and strong alkali, damp, heat up and can form nitrogen trichloride.',
    instead: 'Take one of its own for this product, and mark it.',
    ...MEMORY,
  },
])

/** What a device's history has against a product; undefined where nothing. `substanceOf` knows the products by their ids. */
export function objection(
  device: Device,
  next: Substance,
  substanceOf: (id: string) => Substance | undefined,
): Objection | undefined {
  const held = device.held.map(({ product: id }) => ({ id, substance: substanceOf(id) }))
  for (const { id, substance } of held) {
    const bar = substance && barred(device, substance, next)
    if (bar) return { ...bar, because: id }
  }
  if (!REACTIVE.some((group) => next.groups.includes(group))) return undefined
  const unknown = held.find(({ substance }) => !substance)
  if (unknown)
    return ask(
      `It has held "${unknown.id}", and what that was is not known any more.`,
      'Find out, or take a new one for this product alone.',
      unknown.id,
    )
  if (held.length === 0 && !device.isNew)
    return ask(
      'What it held before is not known, and it is not new.',
      'Say what it has held. Where nobody knows, take a new one for this product alone.',
    )
  return undefined
}

/** Words for a product whose substance nobody knows. */
export function unknownSubstance(id: string): Objection {
  return ask(`What "${id}" is made of is not known.`, 'Describe it as an own product first.')
}

function barred(device: Device, before: Substance, next: Substance): Objection | undefined {
  const held = `${device.name} has held ${before.label}.`
  const has = ({ groups }: Substance, group: HazardGroup) => groups.includes(group)
  const bar = BARS.find(({ a, b }) => (has(before, a) && has(next, b)) || (has(before, b) && has(next, a)))
  if (bar) {
    const { reason, instead, source, status } = bar
    return { answer: 'never', reason: `${held} ${reason}`, instead, source, status }
  }
  const row = keepApart(before, next)
  if (row?.kind !== 'danger') return undefined
  return {
    answer: 'never',
    reason: `${held} ${row.reason}`,
    instead: 'Take one of its own for this product, and mark it.',
    source: row.source,
    status: row.status,
  }
}

function ask(reason: string, instead: string, because?: string): Objection {
  return { answer: 'ask', reason, instead, ...PRACTICE, because }
}
