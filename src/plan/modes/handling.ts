import { fail, ok, type Result } from '../../base/index.ts'
import { cautionsOf, type Product, productById } from '../../chemicals/index.ts'
import { unknownRegime } from '../problems.ts'
import { REGIMES } from '../regimes.ts'
import { DRAIN_CAUTIONS } from '../step-lines.ts'
import type { Purpose, TargetKey } from '../types.ts'
import type { Handling, StartContext } from './types.ts'

const PURPOSES: { readonly [H in Handling]?: readonly Purpose[] } = {
  acid: ['acid'],
  alkali: ['alkalinity', 'base'],
  chlorine: ['openingChlorine', 'dailyChlorine'],
  calcium: ['calcium'],
  stabiliser: ['stabiliser'],
  salt: ['salt'],
  borate: ['borate'],
}

/** Handled only where the pool has a target for it. */
const TARGET_OF: { readonly [H in Handling]?: TargetKey } = {
  calcium: 'ch_mg_per_L_as_CaCO3',
  stabiliser: 'cya_mg_per_L',
  salt: 'salt_mg_per_L_as_NaCl',
  borate: 'borate_mg_per_L_as_B',
}

/** Common practice, no source. */
const TEXTS: { readonly [H in Handling]?: readonly string[] } = {
  draining: DRAIN_CAUTIONS,
  electricity: [
    'Electric work near a pool is for a licensed electrician. Switch off at the breaker before you open a pump, heater, light or generator.',
    'Test the residual-current breaker (RCD, GFCI) before anyone touches the water; if it does not trip, nobody goes in.',
  ],
  cover: [
    'Nobody stands or walks on a cover, and no puddle stays on it: children drown in a hand’s depth of water.',
    'No closed cover right after much chlorine: it gathers there and eats the cover.',
  ],
}

/** The product that a purpose is done with: the owner's, else the regime's. */
export function productFor(purpose: Purpose, context: StartContext): Result<Product> {
  const regime = REGIMES.get(context.regimeId)
  if (!regime) {
    const known = REGIMES.rows.map(({ id }) => id)
    return fail(unknownRegime(context.regimeId, known))
  }
  const found = productById(context.products[purpose] ?? regime.products[purpose], context.productList)
  return found.ok ? ok(found.value.product) : found
}

/** What has to be heeded where these are handled, each once; what this pool has no target for is not handled. */
export function cautionsFor(handled: readonly Handling[], context: StartContext): Result<readonly string[]> {
  const handles = handled.filter((handling) => {
    const key = TARGET_OF[handling]
    return key === undefined || context.targets[key] !== undefined
  })
  const products: Product[] = []
  for (const purpose of handles.flatMap((handling) => PURPOSES[handling] ?? [])) {
    const product = productFor(purpose, context)
    if (!product.ok) return product
    products.push(product.value)
  }
  const ofProducts = products.length > 0 ? cautionsOf(products).map(({ text }) => text) : []
  return ok([...new Set([...ofProducts, ...handles.flatMap((handling) => TEXTS[handling] ?? [])])])
}
