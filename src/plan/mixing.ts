import type { Product } from '../chemicals/index.ts'

/** What takes this long dissolves over days [h]. */
const SLOW_HOURS = 72

/** Whether it goes in by itself over days, hung up in a sock, rather than in pours. */
export const isSlow = (product: Product): boolean => product.wait.hoursAtLeast >= SLOW_HOURS

/** How long a product mixes before the next reading, product or bather [h]; one that nobody knows takes a turnover. */
export function mixingHours(product: Product | undefined, turnoverHours: number): number {
  return product ? Math.max(product.wait.hoursAtLeast, product.wait.turnovers * turnoverHours) : turnoverHours
}
