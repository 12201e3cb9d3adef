import type { SourceStatus } from '../water/index.ts'
import { keepApart } from './incompatible.ts'
import { type Match, matches } from './match.ts'
import { type ProductList, productById } from './products.ts'
import { CSB, EPA_AND_CSB, MEMORY, type Origin, PRACTICE } from './sources.ts'
import type { Product } from './types.ts'

/** Something that chemicals go through. `held` is all it has ever held, as far as anyone knows. */
export interface Device {
  readonly kind: 'feeder' | 'skimmer' | 'floater' | 'bucket'
  readonly name: string
  /** Bought new for this pool, so that `held` is its whole history. */
  readonly isNew: boolean
  readonly held: readonly { readonly product: string }[]
}

/** May it, must somebody find out first, or never. */
export type Verdict =
  | { readonly answer: 'may'; readonly notes: readonly string[] }
  | {
      readonly answer: 'ask' | 'never'
      readonly reason: string
      readonly instead: string
      readonly source: string
      readonly status: SourceStatus
      /** Id of what it held that rules this out. */
      readonly because?: string | undefined
    }

interface Misfit extends Origin {
  readonly kinds: readonly Device['kind'][]
  readonly about: Match
  readonly reason: string
  readonly instead: string
}

/** What a kind of device is never for, whatever it has held. */
const MISFITS: readonly Misfit[] = Object.freeze([
  {
    kinds: ['feeder', 'skimmer', 'floater', 'bucket'],
    about: { forms: ['gas'] },
    reason: 'A gas has its own injector.',
    instead: 'Leave it to the plant that is made for it.',
    ...PRACTICE,
  },
  {
    kinds: ['skimmer', 'floater'],
    about: { groups: ['hypochlorite'] },
    reason:
      'Hypochlorite does not belong into a skimmer or floater: tablets of stabilised chlorine have been in most of them, and the two together burn and explode.',
    instead:
      'Liquid: pour it in front of a return. Calcium hypochlorite: a feeder made for it, or dissolved in a clean bucket.',
    ...EPA_AND_CSB,
  },
  {
    kinds: ['skimmer', 'floater'],
    about: { groups: ['acid'] },
    reason: 'Acid from there runs undiluted through pump and heater, or stands where people swim.',
    instead: 'Pour it in front of a return at the deep end, or feed it by an acid pump of its own.',
    ...PRACTICE,
  },
  {
    kinds: ['skimmer', 'floater'],
    about: {
      groups: ['alkali', 'carbonate', 'calcium', 'isocyanurate', 'oxidiser', 'reducer'],
      forms: ['granular', 'liquid'],
    },
    reason: 'Grains and liquids from there run nearly undiluted through pump, filter and heater.',
    instead:
      'Dissolve it in a clean bucket of water and pour it round the deep end, or scatter it there, whichever its label says.',
    ...PRACTICE,
  },
  {
    kinds: ['bucket'],
    about: { groups: ['isocyanurate'], forms: ['tablet'] },
    reason: 'Trichlor with a little water heats up, gives off chlorine and can explode.',
    instead: 'Only a feeder or floater of its own, with much water flowing.',
    ...CSB,
  },
])

const REACTIVE: Match = { groups: ['acid', 'alkali', 'hypochlorite', 'isocyanurate', 'oxidiser', 'reducer'] }

interface Bar extends Origin {
  readonly a: Match
  readonly b: Match
  readonly reason: string
  readonly instead: string
}

/** What a device remembers for good, beyond what the table of pairs says; looked at in both directions. */
const BARS: readonly Bar[] = Object.freeze([
  {
    a: { groups: ['hypochlorite'] },
    b: { groups: ['isocyanurate'] },
    reason:
      'Stabilised and unstabilised chlorine must never meet: traces of the other are enough for fire, gas and explosion.',
    instead:
      'Take a new one, never used before, for this product alone, and mark it. Washing does not make the old one safe.',
    ...EPA_AND_CSB,
  },
  {
    a: { groups: ['isocyanurate'] },
    b: { groups: ['alkali'] },
    reason: 'Stabilised chlorine and strong alkali, damp, heat up and can form nitrogen trichloride.',
    instead: 'Take one of its own for this product, and mark it.',
    ...MEMORY,
  },
])

/** Whether a device may hold a product, by what it is and by all that it has held before. */
export function mayHold(device: Device, productId: string, products?: ProductList): Verdict {
  const found = productById(productId, products)
  if (!found.ok)
    return ask(`What "${productId}" is made of is not known.`, 'Describe it as an own product first.', PRACTICE)
  const { product } = found.value
  const misfit = MISFITS.find(({ kinds, about }) => kinds.includes(device.kind) && matches(product, about))
  if (misfit) {
    const { reason, instead, source, status } = misfit
    return { answer: 'never', reason, instead, source, status }
  }
  return byHistory(device, product, products)
}

function byHistory(device: Device, product: Product, products: ProductList | undefined): Verdict {
  const held = device.held.map((each) => ({ id: each.product, found: productById(each.product, products) }))
  for (const { id, found } of held) {
    const bar = found.ok ? barred(device, found.value.product, product) : undefined
    if (bar) return { ...bar, because: id }
  }
  if (!matches(product, REACTIVE)) return { answer: 'may', notes: notesFor(device, product, held.length > 0) }
  const unknown = held.find(({ found }) => !found.ok)
  if (unknown)
    return ask(
      `It has held "${unknown.id}", and what that was is not known any more.`,
      'Find out, or take a new one for this product alone.',
      PRACTICE,
      unknown.id,
    )
  if (held.length === 0 && !device.isNew)
    return ask(
      'What it held before is not known, and it is not new.',
      'Say what it has held. Where nobody knows, take a new one for this product alone.',
      PRACTICE,
    )
  return { answer: 'may', notes: notesFor(device, product, held.length > 0) }
}

function barred(device: Device, before: Product, next: Product): Exclude<Verdict, { answer: 'may' }> | undefined {
  const held = `${device.name} has held ${before.label}.`
  const bar = BARS.find(
    ({ a, b }) => (matches(before, a) && matches(next, b)) || (matches(before, b) && matches(next, a)),
  )
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

function ask(reason: string, instead: string, { source, status }: Origin, because?: string): Verdict {
  return { answer: 'ask', reason, instead, source, status, because }
}

function notesFor(device: Device, product: Product, isUsed: boolean): readonly string[] {
  const notes: string[] = []
  if (device.kind === 'bucket' && isUsed) notes.push('Rinse it with much water and let it dry before another product.')
  if (device.kind === 'bucket') notes.push('Water first, then the product into the water.')
  if (device.kind === 'skimmer' && product.form === 'tablet')
    notes.push('Take the tablets out before the pump stops: what stands there is strong acid and chlorine.')
  if (device.kind === 'feeder' || device.kind === 'floater') notes.push('Mark it with this product’s name, for good.')
  return notes
}
