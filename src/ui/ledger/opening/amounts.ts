import { PRODUCTS, type Product, type ProductList, productById } from '../../../chemicals/index.ts'
import { formatQuantity, parseQuantity, type UnitSystem } from '../../../units/index.ts'

const G_PER_KG = 1000
const ML_PER_M3 = 1_000_000

/** The product of a plan's line or the log; undefined where neither the table nor `list`, the owner's, knows it. */
export function productOf(id: string, list?: ProductList): Product | undefined {
  const found = productById(id, list)
  return found.ok ? found.value.product : undefined
}

/** How it is called wherever only its id is at hand. */
export function productLabel(id: string, list?: ProductList): string {
  return productOf(id, list)?.label ?? id
}

/** What a person measures it out in: liquids are poured, everything else is weighed. */
export function measureOf(productId: string, list?: ProductList): 'liquid' | 'mass' {
  return productOf(productId, list)?.form === 'liquid' ? 'liquid' : 'mass'
}

/** Grams → the canonical unit of `measureOf`: m³ of a liquid, kg of anything else. */
export function amountFromG(productId: string, amountG: number, list?: ProductList): number {
  const product = productOf(productId, list)
  return product?.form === 'liquid' ? amountG / product.densityGPerML / ML_PER_M3 : amountG / G_PER_KG
}

/** The way back: m³ or kg → grams. */
export function gFromAmount(productId: string, amount: number, list?: ProductList): number {
  const product = productOf(productId, list)
  return product?.form === 'liquid' ? amount * product.densityGPerML * ML_PER_M3 : amount * G_PER_KG
}

/** An amount as it is weighed or poured, never in bare ounces. */
export function formatAmount(productId: string, amountG: number, units: UnitSystem, list?: ProductList): string {
  return formatQuantity(measureOf(productId, list), amountFromG(productId, amountG, list), units)
}

/** The amount that `formatAmount` says, in grams: what a person weighs or pours by it. */
export function saidG(productId: string, amountG: number, units: UnitSystem, list?: ProductList): number {
  const said = parseQuantity(measureOf(productId, list), formatAmount(productId, amountG, units, list), units)
  return said.ok ? gFromAmount(productId, said.value, list) : amountG
}

/** Parts of one amount as they are weighed or poured, rounded so that together they are what the whole is said to be. */
export function formatParts(
  productId: string,
  partsG: readonly number[],
  units: UnitSystem,
  list?: ProductList,
): readonly string[] {
  let sumG = 0
  let saidSumG = 0
  return partsG.map((partG) => {
    sumG += partG
    const upToG = saidG(productId, sumG, units, list)
    const text = formatAmount(productId, upToG - saidSumG, units, list)
    saidSumG = upToG
    return text
  })
}

/** "1½ tablets of 200 g" for what comes in pieces; undefined for everything else. */
export function piecesWords(
  productId: string,
  amountG: number,
  units: UnitSystem,
  list?: ProductList,
): string | undefined {
  const pieceG = productOf(productId, list)?.pieceG
  if (!pieceG) return undefined
  const count = amountG / pieceG
  const shown = formatQuantity('number', count, units, { digits: count < 10 ? 1 : 0 })
  return `${shown} ${shown === '1' || shown === '1.0' ? 'tablet' : 'tablets'} of ${formatQuantity('mass', pieceG / G_PER_KG, 'metric')}`
}

/** A name and the strength at its end: "Muriatic acid", "31.45 %". */
export function splitStrength(title: string): { readonly name: string; readonly strength: string | undefined } {
  const found = /^(.*\S)\s+(\d[\d.,–-]*\s*%)$/.exec(title)
  return found ? { name: found[1] ?? title, strength: found[2] } : { name: title, strength: undefined }
}

/** The products that can be bought for a use. */
export function productsFor(use: Product['uses'][number], list?: ProductList): readonly Product[] {
  return (list ?? PRODUCTS).rows.filter((product) => product.uses.includes(use) && !product.isAccounting)
}
