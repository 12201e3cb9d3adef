import type { ReadingValues } from '../../../document/index.ts'
import { formatQuantity, type UnitSystem } from '../../../units/index.ts'
import { type CombinedChlorine, DEFAULT_RULES, type WaterLimits } from '../../../water/index.ts'
import { formatMeasured, readingRow } from '../scale/index.ts'
import { rangeWords } from './reading-words.ts'

/** One thing that rules lay down, with what was measured of it. */
export interface RuleLine {
  readonly id: string
  readonly label: string
  /** "2 to 4 mg/L", "≤ 90 mg/L" */
  readonly rule: string
  /** Undefined where it was not measured. */
  readonly measured: string | undefined
  /** On which side of the rule it lies; undefined inside. */
  readonly outside: 'below' | 'above' | undefined
  /** How sure the figure is, and whose where these rules are silent. */
  readonly status: string
}

type Figure =
  | 'floorWithStabiliserMgPerL'
  | 'floorWithoutStabiliserMgPerL'
  | 'pHLow'
  | 'combinedHighMgPerL'
  | 'stabiliserHighMgPerL'
  | 'alkalinityLowMgPerL'

interface Ruled {
  readonly figure: Figure
  readonly id: 'fc_mg_per_L_as_Cl2' | 'pH' | 'cc_mg_per_L_as_Cl2' | 'cya_mg_per_L' | 'ta_mg_per_L_as_CaCO3'
  readonly low?: number | undefined
  readonly high: number
  readonly value: number | undefined
}

/** What the rules come to in this water, and how it stands to each. */
export function ruleLines(
  limits: WaterLimits,
  values: ReadingValues,
  combined: CombinedChlorine | undefined,
  units: UnitSystem,
): readonly RuleLine[] {
  const ruled: readonly Ruled[] = [
    {
      id: 'fc_mg_per_L_as_Cl2',
      figure: limits.stabiliser === 'none' ? 'floorWithoutStabiliserMgPerL' : 'floorWithStabiliserMgPerL',
      low: limits.floorMgPerL,
      high: limits.ceilingMgPerL,
      value: values.fc_mg_per_L_as_Cl2,
    },
    { id: 'pH', figure: 'pHLow', low: limits.pHLow, high: limits.pHHigh, value: values.pH },
    {
      id: 'cc_mg_per_L_as_Cl2',
      figure: 'combinedHighMgPerL',
      high: limits.combinedHighMgPerL,
      value: combined?.combinedMgPerL,
    },
    {
      id: 'cya_mg_per_L',
      figure: 'stabiliserHighMgPerL',
      high: limits.stabiliserHighMgPerL,
      value: values.cya_mg_per_L,
    },
    {
      id: 'ta_mg_per_L_as_CaCO3',
      figure: 'alkalinityLowMgPerL',
      low: limits.alkalinityLowMgPerL,
      high: limits.alkalinityHighMgPerL,
      value: values.ta_mg_per_L_as_CaCO3,
    },
  ]
  return ruled.map(({ id, figure, low, high, value }): RuleLine => {
    const row = readingRow(id)
    const say = (limit: number) =>
      formatQuantity(row?.quantity ?? 'number', limit, units, {
        digits: Number.isInteger(limit) && id !== 'pH' ? 0 : 1,
      })
    return {
      id,
      label: row?.label ?? id,
      rule: low === undefined ? `≤\u00a0${say(high)}` : rangeWords(say(low), say(high)),
      measured: value === undefined ? undefined : formatMeasured(id, value, units),
      outside:
        value === undefined
          ? undefined
          : low !== undefined && value < low
            ? 'below'
            : value > high
              ? 'above'
              : undefined,
      status: statusWords(limits, figure),
    }
  })
}

/** How sure a figure is; one that these rules don't lay down is the default's. */
function statusWords({ profile }: WaterLimits, figure: Figure): string {
  if (profile[figure] !== undefined) return profile.statuses?.[figure] ?? profile.status
  return `not laid down: the default’s; ${DEFAULT_RULES.statuses?.[figure] ?? DEFAULT_RULES.status}`
}
