import type { DoseLine } from '../../../plan/index.ts'
import { isoFromMs } from '../../fields/index.ts'

const HOUR_MS = 3_600_000

/** What the plan has for the first pour of a line, or for all of it [g]. */
export function plannedOf(line: Pick<DoseLine, 'pours' | 'amountG'>, part: 'one' | 'all'): number {
  return part === 'one' ? (line.pours[0]?.amountG ?? line.amountG) : line.amountG
}

/**
 * The doses that the log gets: one as it was given; all pours of a line each by itself, in the plan's shares, the last at
 * the moment that was said and the others as long before it as the plan has them.
 */
export function dosesOf(
  line: Pick<DoseLine, 'pours' | 'amountG'>,
  part: 'one' | 'all',
  given: { readonly amountG: number; readonly at: string },
): readonly { readonly amountG: number; readonly at: string }[] {
  const last = line.pours.at(-1)
  if (part === 'one' || line.pours.length < 2 || !last || !(line.amountG > 0)) return [given]
  return line.pours.map((pour) => ({
    amountG: (given.amountG * pour.amountG) / line.amountG,
    at:
      pour === last
        ? given.at
        : isoFromMs(Date.parse(given.at) - (last.hoursAfterStart - pour.hoursAfterStart) * HOUR_MS),
  }))
}
