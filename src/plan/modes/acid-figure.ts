import { ok, type Result } from '../../base/index.ts'
import { deltaPerGram } from '../../chemicals/index.ts'
import { MG_CACO3_PER_EQ } from '../../water/index.ts'
import { amountOf } from './amount.ts'
import { productFor } from './handling.ts'
import { MASS_BALANCE } from './origins.ts'
import type { StartContext, StartFigure } from './types.ts'

const STEP_MG_PER_L = 10
const L_PER_M3 = 1000

/** Acid that takes 10 mg/L of alkalinity out of this pool, to weigh or to pour: a yardstick beside the daily reading. */
export function acidFigure(context: StartContext): Result<readonly StartFigure[]> {
  const product = productFor('acid', context)
  if (!product.ok) return product
  const perGram = -(deltaPerGram(product.value).alkalinityEq ?? 0)
  // carbon dioxide lowers pH and takes no alkalinity
  if (!(perGram > 0)) return ok([])
  const eq = (STEP_MG_PER_L / MG_CACO3_PER_EQ) * context.volumeM3 * L_PER_M3
  const { quantity, value } = amountOf(product.value, eq / perGram)
  return ok([
    {
      key: 'acidPerTen',
      label: `${product.value.label} (${product.value.strength}) for 10 mg/L of alkalinity`,
      quantity,
      value,
      low: value,
      high: value,
      how: 'A yardstick, not a dose: the opening plan has today’s amount and its pours.',
      ...MASS_BALANCE,
    },
  ])
}
