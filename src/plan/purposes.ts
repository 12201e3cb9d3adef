import type { Product } from '../chemicals/index.ts'
import type { Purpose } from './types.ts'

/** What a product has to be good for to serve a purpose; it also begins the keys of that purpose's lines. */
export const USE_OF: { readonly [P in Purpose]: Product['uses'][number] } = Object.freeze({
  acid: 'acid',
  alkalinity: 'alkalinity',
  base: 'base',
  openingChlorine: 'chlorine',
  dailyChlorine: 'chlorine',
  calcium: 'calcium',
  borate: 'borate',
  stabiliser: 'stabiliser',
  salt: 'salt',
})
