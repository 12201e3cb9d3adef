import { READING_KEYS } from '../water/index.ts'
import type { ExpectedWater, OpeningLine, OpeningPlan, UnknownReading } from './types.ts'

/** What nobody read and no line can know: the sums go on with something, and it is no reading. */
export function unknownReadings(start: { readonly [K in UnknownReading]?: number | undefined }): UnknownReading[] {
  return READING_KEYS.filter((key) => start[key] === undefined)
}

/** The plan with each of its waters telling what in it is only assumed. */
export function withUnknown(plan: OpeningPlan, unknown: readonly UnknownReading[]): OpeningPlan {
  if (unknown.length === 0) return plan
  const marked = (water: ExpectedWater): ExpectedWater => ({ ...water, unknown })
  return {
    ...plan,
    lines: plan.lines.map(
      (line): OpeningLine => ('after' in line && line.after ? { ...line, after: marked(line.after) } : line),
    ),
    ...(plan.startWater ? { startWater: marked(plan.startWater) } : {}),
    ...(plan.endWater ? { endWater: marked(plan.endWater) } : {}),
  }
}
