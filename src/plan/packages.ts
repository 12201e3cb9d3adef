import type { Product } from '../chemicals/index.ts'
import type { PackageAdvice } from './types.ts'

/** More containers than this are no longer "whole packages" a person carries. */
const MOST_PACKAGES = 12
/** One container more weighs as much as being this share off the wanted amount. */
const CONTAINER_COST = 0.03
const GRAM = 1e-6

export type PackageSystem = 'metric' | 'us'

interface Choice {
  readonly label: string
  readonly massG: number
  readonly count: number
}

function sizes(product: Product, system: PackageSystem): readonly { readonly label: string; readonly massG: number }[] {
  const own = product.packages.filter((pack) => pack.system === system)
  return own.length > 0 ? own : product.packages
}

/**
 * Whole packages that land inside the band, near the wanted amount and few; undefined where none does or the
 * product comes as a liquid that is poured anyway.
 */
export function wholePackages(
  product: Product,
  wantedG: number,
  lowG: number,
  highG: number,
  system: PackageSystem,
): Choice | undefined {
  const choices = sizes(product, system).flatMap((size) => {
    const nearest = Math.round(wantedG / size.massG)
    return [nearest, nearest + 1, nearest - 1]
      .filter((count) => count >= 1 && count <= MOST_PACKAGES)
      .map((count) => ({ label: size.label, massG: size.massG, count }))
      .filter((choice) => choice.count * choice.massG >= lowG - GRAM && choice.count * choice.massG <= highG + GRAM)
  })
  const cost = (choice: Choice) =>
    Math.abs(choice.count * choice.massG - wantedG) / wantedG + CONTAINER_COST * choice.count
  return choices.toSorted((a, b) => cost(a) - cost(b))[0]
}

/**
 * The size to buy for an amount: the cheapest of those that the owner knows a price of, where few of one will do; else
 * fewest containers whose left-over is small against the amount.
 */
export function buyingSize(product: Product, amountG: number, system: PackageSystem): Choice | undefined {
  const countOf = (massG: number) => Math.max(1, Math.ceil(amountG / massG - 1e-9))
  const priced = product.packages.flatMap(({ label, massG, price }) =>
    price === undefined ? [] : [{ label, massG, count: countOf(massG), cost: countOf(massG) * price }],
  )
  const [cheapest] = priced
    .filter(({ count }) => count <= MOST_PACKAGES)
    .toSorted((a, b) => a.cost - b.cost || a.count * a.massG - b.count * b.massG)
  if (cheapest) return { label: cheapest.label, massG: cheapest.massG, count: cheapest.count }
  const choices = sizes(product, system).map(({ label, massG }) => ({ label, massG, count: countOf(massG) }))
  // a container counts as much as a twentieth of the need thrown away
  const cost = (choice: Choice) => choice.count * choice.massG + choice.count * 0.05 * amountG
  return choices.toSorted((a, b) => cost(a) - cost(b))[0]
}

/** What to say about containers for a line's amount. */
export function packageAdvice(product: Product, amountG: number, system: PackageSystem): PackageAdvice | undefined {
  const whole = wholePackages(product, amountG, amountG * (1 - 1e-9), amountG * (1 + 1e-9), system)
  if (whole) return { label: whole.label, count: whole.count, isWhole: true, leftoverG: 0 }
  const buy = buyingSize(product, amountG, system)
  if (!buy) return undefined
  return { label: buy.label, count: buy.count, isWhole: false, leftoverG: buy.count * buy.massG - amountG }
}
