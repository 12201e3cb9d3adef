import type { Product } from '../../../chemicals/index.ts'
import { effectPerGPerM3 } from '../../../plan/index.ts'
import { formatQuantity, type UnitSystem } from '../../../units/index.ts'

/** Up to here more than planned may well have been poured [times]. */
const MORE_THAN_PLANNED = 1.5

type Moved = Parameters<typeof effectPerGPerM3>[1]

/** By how much one dose may move a reading before it is asked after [mg/L]: more than a plan has in one day (ours). */
const MOST: readonly { readonly key: Moved; readonly name: string; readonly mgPerL: number }[] = [
  { key: 'fc_mg_per_L_as_Cl2', name: 'free chlorine', mgPerL: 20 },
  { key: 'ta_mg_per_L_as_CaCO3', name: 'alkalinity', mgPerL: 120 },
  { key: 'cya_mg_per_L', name: 'stabiliser', mgPerL: 100 },
  { key: 'borate_mg_per_L_as_B', name: 'borate', mgPerL: 60 },
  { key: 'ch_mg_per_L_as_CaCO3', name: 'calcium hardness', mgPerL: 400 },
  { key: 'salt_mg_per_L_as_NaCl', name: 'salt', mgPerL: 6000 },
]

export interface DoubtedDose {
  readonly product: Product | undefined
  readonly amountG: number | undefined
  /** What the plan's line asks for, and how it is written; absent for a dose that no line asked for. */
  readonly planned?: { readonly amountG: number; readonly highG: number; readonly text: string } | undefined
  readonly volumeM3: number | undefined
}

/** Why an amount is hard to believe, by the plan and by what it would do; undefined where it is not. */
export function doubtOf(dose: DoubtedDose, units: UnitSystem): string | undefined {
  const { product, amountG, planned, volumeM3 } = dose
  if (amountG === undefined || !(amountG > 0)) return undefined
  const times =
    planned && planned.amountG > 0 && amountG > MORE_THAN_PLANNED * Math.max(planned.amountG, planned.highG)
      ? amountG / planned.amountG
      : undefined
  const moved =
    product && volumeM3 !== undefined && volumeM3 > 0
      ? MOST.map((row) => ({ ...row, by: effectPerGPerM3(product, row.key) * (amountG / volumeM3) })).find(
          ({ by, mgPerL }) => Math.abs(by) > mgPerL,
        )
      : undefined
  const words = [
    ...(times !== undefined && planned
      ? [`${timesWords(times, units)} the ${planned.text} that the plan asks for`]
      : []),
    ...(moved
      ? [
          `enough to ${moved.by > 0 ? 'raise' : 'lower'} ${moved.name} by ${formatQuantity('concentration', Number(Math.abs(moved.by).toPrecision(2)), units, { digits: 0 })}`,
        ]
      : []),
  ]
  return words.length === 0 ? undefined : `This is ${words.join(', ')}. Is it really what went in?`
}

function timesWords(times: number, units: UnitSystem): string {
  return `${formatQuantity('number', times, units, { digits: times < 10 ? 1 : 0 })} times`
}
