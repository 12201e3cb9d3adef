import type { Product } from '../../chemicals/index.ts'
import type { StartFigure } from './types.ts'

const G_PER_KG = 1000
const ML_PER_M3 = 1e6

/** An amount as people take it: a liquid is poured [m³], all else is weighed [kg]. */
export function amountOf(product: Product, grams: number): Pick<StartFigure, 'quantity' | 'value'> {
  return product.form === 'liquid'
    ? { quantity: 'liquid', value: grams / product.densityGPerML / ML_PER_M3 }
    : { quantity: 'mass', value: grams / G_PER_KG }
}
