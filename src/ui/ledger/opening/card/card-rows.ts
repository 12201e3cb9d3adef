import { CAUTIONS, FIRST_AID, type ProductList } from '../../../../chemicals/index.ts'
import type { DeckCard, DeckDose, DeckRow } from '../../../../plan/index.ts'
import { parseQuantity, type UnitSystem } from '../../../../units/index.ts'
import { andList, inSentence } from '../../water/reading-words.ts'
import { amountFromG, formatAmount, gFromAmount, measureOf, productOf, splitStrength } from '../amounts.ts'

/** A reading's part of the card: the readings across, the products down. */
export interface CardGroup {
  readonly key: string
  readonly label: string
  readonly readings: readonly string[]
  readonly products: readonly CardProduct[]
}

interface CardProduct {
  readonly id: string
  readonly label: string
  /** One for each reading; absent where this product has no dose for it. */
  readonly doses: readonly (string | undefined)[]
}

/** The card as it is set: each reading once, and under it what to give of each product. */
export function cardGroups(card: DeckCard, units: UnitSystem, list?: ProductList): readonly CardGroup[] {
  return card.rows.map((row) => groupOf(row, units, list))
}

function groupOf({ key, label, doses }: DeckRow, units: UnitSystem, list: ProductList | undefined): CardGroup {
  const readings = [...new Set(doses.map(({ readingText }) => readingText))]
  const ids = [...new Set(doses.map(({ productId }) => productId))]
  return {
    key,
    label,
    readings,
    products: ids.map((id) => ({
      id,
      label: doses.find(({ productId }) => productId === id)?.productLabel ?? id,
      doses: readings.map((reading) => {
        const dose = doses.find((each) => each.productId === id && each.readingText === reading)
        return dose && doseWords(dose, units, list)
      }),
    })),
  }
}

export interface CardCaution {
  /** The products it is about; undefined where it holds for all on the card. */
  readonly of: string | undefined
  readonly text: string
}

/** The card's cautions, each with the products that carry it. */
export function cardCautions(card: DeckCard, list?: ProductList): readonly CardCaution[] {
  const ids = [...new Set(card.rows.flatMap((row) => row.doses.map(({ productId }) => productId)))]
  const products = ids.flatMap((id) => productOf(id, list) ?? [])
  return card.cautions.map((text) => {
    const id = CAUTIONS.rows.find((caution) => caution.text === text && caution.topic !== 'label')?.id
    const names = id === undefined ? [] : products.filter(({ cautions }) => cautions.includes(id))
    const isOfSome = names.length > 0 && names.length < products.length
    const said = [...new Set(names.map(({ label }) => splitStrength(label).name))]
    return { of: isOfSome ? andList([said[0] ?? '', ...said.slice(1).map(inSentence)]) : undefined, text }
  })
}

function twoDigitsDown(amount: number): number {
  const unit = 10 ** (Math.floor(Math.log10(amount)) - 1)
  return Math.floor(amount / unit + 1e-9) * unit
}

/** "490 g", "1.4 kg in 2 pours"; in any units never more than the exact amount. */
export function doseWords(dose: DeckDose, units: UnitSystem, list?: ProductList): string {
  const { productId, exactG, pours } = dose
  const measure = measureOf(productId, list)
  // two digits of what is shown, so that a row reads evenly; ounces are shown whole
  let given =
    units === 'metric' ? gFromAmount(productId, twoDigitsDown(amountFromG(productId, exactG, list)), list) : exactG
  let text = formatAmount(productId, given, units, list)
  // ounces and cups round to the nearest: step down until what is written is no more than what is lacking
  for (let step = 0; step < 100; step++) {
    const read = parseQuantity(measure, text, units)
    if (!read.ok || gFromAmount(productId, read.value, list) <= exactG * (1 + 1e-9)) break
    given *= 0.995
    text = formatAmount(productId, given, units, list)
  }
  return pours > 1 ? `${text} in\u00a0${pours}\u00a0pours` : text
}

/** What the card says of accidents: the first lines of help, whole. */
export const CARD_AID = ['whom-to-ask', 'eyes', 'breathed'].flatMap((id) => FIRST_AID.get(id) ?? [])
