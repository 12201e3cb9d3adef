import { deltaOf, PRODUCTS, type Product } from '../chemicals/index.ts'
import { sumDeltas } from '../water/index.ts'
import type { Balance } from './balance.ts'
import type { PurposeProducts } from './check-input.ts'
import { effectPerGPerM3, saltChange } from './effect.ts'
import { agedPerFresh } from './fresh.ts'
import { buyingSize } from './packages.ts'
import { USE_OF } from './purposes.ts'
import { SIDES } from './target-sides.ts'
import { TARGET_LABELS } from './targets.ts'
import type { OpeningInput, Purpose } from './types.ts'
import type { Wants } from './wants.ts'

/** What may stand in for each other; no gas and no lye is offered to anyone who did not ask for it. */
const STAND_INS: { readonly [P in Purpose]?: readonly string[] } = {
  acid: ['muriatic-acid-31', 'dry-acid'],
  base: ['soda-ash', 'borax-10'],
  borate: ['boric-acid', 'borax-10', 'borax-5'],
  calcium: ['calcium-chloride-flake', 'calcium-chloride-anhydrous'],
}
/** One product to buy whose price is not known: never the cheap way while another one has a price, however little of it. */
const UNPRICED = 1e6
/** A need below this share of the amount is rounding [1]. */
const ROUNDING = 1e-6

/** Every choice of products for the purposes that the owner left open: generic stand-ins, and what is in stock. */
export function* productSets(chosen: PurposeProducts, input: OpeningInput): Generator<PurposeProducts> {
  const { rows } = input.productList ?? PRODUCTS
  const offered = (purpose: Purpose): readonly Product[] => {
    const mine = chosen[purpose]
    if (input.products[purpose] !== undefined) return [mine]
    const use = USE_OF[purpose]
    const others = rows.filter(
      ({ id, uses }) =>
        id !== mine.id &&
        uses.includes(use) &&
        ((STAND_INS[purpose] ?? []).includes(id) || (uses[0] === use && (input.stockG[id] ?? 0) > 0)),
    )
    return [mine, ...others]
  }
  const borates = input.targets.borate_mg_per_L_as_B ? offered('borate') : [chosen.borate]
  for (const acid of offered('acid'))
    for (const base of offered('base'))
      for (const borate of borates)
        for (const calcium of offered('calcium')) yield { ...chosen, acid, base, borate, calcium }
}

/** Purposes whose products give pH and alkalinity, where nothing else is asked of them. */
const CORRECTIONS = ['acid', 'base', 'alkalinity'] as const

/** What products that only correct pH and alkalinity move besides and nobody asked for: borax brings borate, say. */
export function movesBesides(
  products: PurposeProducts,
  balance: Balance | undefined,
  { targets }: Pick<OpeningInput, 'targets'>,
): readonly { readonly product: Product; readonly label: string; readonly mgPerL: number }[] {
  return CORRECTIONS.flatMap((purpose) => {
    const product = products[purpose]
    const gPerM3 = balance?.[`${purpose}GPerM3`] ?? 0
    if (gPerM3 <= 0) return []
    return SIDES.flatMap((key) => {
      const mgPerL = effectPerGPerM3(product, key) * gPerM3
      return targets[key] === undefined && mgPerL !== 0 ? [{ product, label: TARGET_LABELS[key], mgPerL }] : []
    })
  })
}

/** What a way to the end comes to by the plan's objective; less is better. */
export function worthOf(
  way: { readonly fixed: Wants; readonly balance: Balance | undefined; readonly products: PurposeProducts },
  input: OpeningInput,
): number {
  const { balance, products } = way
  const grams = new Map<Product, number>()
  const add = (product: Product, gPerM3: number): void => {
    if (gPerM3 > 0) grams.set(product, (grams.get(product) ?? 0) + gPerM3 * input.volumeM3)
  }
  for (const want of way.fixed.wants) add(want.product, want.gPerM3)
  add(products.acid, balance?.acidGPerM3 ?? 0)
  add(products.alkalinity, balance?.alkalinityGPerM3 ?? 0)
  add(products.base, balance?.baseGPerM3 ?? 0)
  const used = [...grams]
  if (input.objective === 'cheapest')
    return used.reduce((sum, [product, needG]) => sum + toPay(product, needG, input), 0)
  if (input.objective === 'least-salt')
    return saltChange(sumDeltas(used.map(([product, needG]) => deltaOf(product, needG / input.volumeM3))))
  return used.length + ((balance?.aerationMol ?? 0) > 0 ? 1 : 0)
}

/** What the packages cost that have to be bought; what stands in the shed is paid for. */
function toPay(product: Product, needG: number, input: OpeningInput): number {
  const missingG = Math.max(0, needG - (input.stockG[product.id] ?? 0)) / agedPerFresh(product)
  if (missingG <= ROUNDING * needG) return 0
  const size = buyingSize(product, missingG, input.packageSystem ?? 'metric')
  const price = product.packages.find(({ label }) => label === size?.label)?.price
  return size && price !== undefined ? size.count * price : UNPRICED
}
