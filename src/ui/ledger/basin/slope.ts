import { formatSlope } from '../../../units/index.ts'
import { runsOf } from '../../section/slopes.ts'

export interface SlopeRemark {
  /** "1 : 7", or "flat". */
  readonly words: string
  /** Set where it is steeper than usual. */
  readonly hint: string | undefined
}

/** Below this a floor counts as level [fall per run]. */
const LEVEL = 1e-6

/** The fall between two stations in words, with a hint where it is steeper than usually built; limits as in the section. */
export function slopeRemark(
  from: readonly [sM: number, depthM: number],
  to: readonly [sM: number, depthM: number],
): SlopeRemark | undefined {
  const [run] = runsOf([from, to])
  if (!run) return undefined
  const { slope, usualLimit } = run
  const limit = usualLimit === undefined ? undefined : formatSlope(1 / usualLimit)
  return {
    words: slope < LEVEL ? 'flat' : formatSlope(slope),
    hint: limit && `Steeper than ${limit}, the usual limit ${usualLimit === 7 ? 'in shallow water' : 'in deep water'}.`,
  }
}
