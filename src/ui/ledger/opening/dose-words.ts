import type { DoseLine } from '../../../plan/index.ts'

/** "13 lb to 15 lb, as sure as the volume is"; nothing where both ends read the same. */
export function intervalWords(low: string, high: string): string | undefined {
  return low === high ? undefined : `Between ${low} and ${high}, as sure as the volume is`
}

/** What to do with the packages that a dose comes from. */
export function packageWords(
  line: Pick<DoseLine, 'packages'>,
  format: (amountG: number) => string,
): string | undefined {
  const advice = line.packages
  if (!advice || advice.count === 0) return undefined
  const packages = advice.count === 1 ? `one package of ${advice.label}` : `${advice.count} packages of ${advice.label}`
  if (advice.isWhole) return `Exactly ${packages}, which stays inside the band`
  return advice.leftoverG > 0 ? `From ${packages}; ${format(advice.leftoverG)} left over` : `From ${packages}`
}
