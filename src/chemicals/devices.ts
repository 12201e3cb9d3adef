import { type Device, type Objection, objection, unknownSubstance } from './device-history.ts'
import { type Match, matches } from './match.ts'
import { type ProductList, productById } from './products.ts'
import { CSB, EPA_AND_CSB, type Origin, PRACTICE } from './sources.ts'
import type { Product } from './types.ts'

/** May it, must somebody find out first, or never. */
export type Verdict = { readonly answer: 'may'; readonly notes: readonly string[] } | Objection

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

/** Whether a device may hold a product, by what it is and by all that it has held before. */
export function mayHold(device: Device, productId: string, products?: ProductList): Verdict {
  const substanceOf = (id: string) => {
    const found = productById(id, products)
    return found.ok ? found.value.product : undefined
  }
  const product = substanceOf(productId)
  if (!product) return unknownSubstance(productId)
  const misfit = MISFITS.find(({ kinds, about }) => kinds.includes(device.kind) && matches(product, about))
  if (misfit) {
    const { reason, instead, source, status } = misfit
    return { answer: 'never', reason, instead, source, status }
  }
  return (
    objection(device, product, substanceOf) ?? {
      answer: 'may',
      notes: notesFor(device, product, device.held.length > 0),
    }
  )
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
