import { deltaOf, productById } from '../chemicals/index.ts'
import type { Constants } from '../water/index.ts'
import { apartLine, assemble, type Follows } from './assemble.ts'
import type { PurposeProducts } from './check-input.ts'
import { withoutStabiliser } from './combined-line.ts'
import { lineHours } from './dose-line.ts'
import { effectPerGPerM3 } from './effect.ts'
import { chlorineFloor } from './floor.ts'
import { LIMITS } from './limits.ts'
import { afterDose, type DoseMove, permittedPart } from './moves.ts'
import { hasHighMetals } from './opening-marks.ts'
import { METAL_POUR_MG_PER_L } from './pours.ts'
import type { SolvedWater } from './solved.ts'
import { stepLine } from './step-lines.ts'
import type { OpeningInput, OpeningLine, StepLine } from './types.ts'
import type { Want } from './wants.ts'
import { STEPS } from './wording.ts'

export interface CombinedPart {
  readonly lines: readonly OpeningLine[]
  readonly end: SolvedWater
}

/**
 * What is done about combined chlorine, and the reading after it. Where nothing can be done about it yet and free chlorine
 * stands below its floor, a little chlorine goes in all the same: the pool must not stand without.
 */
export function combinedPart(
  combined: StepLine,
  now: SolvedWater,
  input: OpeningInput,
  products: PurposeProducts,
  constants: Constants,
  place: Follows & { readonly nextKey: (base: string) => string },
): CombinedPart {
  const move = combined.amounts === undefined ? towardFloor(now, input, products, constants) : undefined
  const turnoverHours = input.turnoverHours ?? LIMITS.turnoverHours
  const little = move ? assemble([move], input, turnoverHours, place, place.nextKey, constants) : []
  const product = combined.amounts?.[0] && productById(combined.amounts[0].productId, input.productList)
  const sinceHours = Math.min(combined.startHours, place.nowHours)
  // chlorine all the same: as far from what went in before as any other dose
  const apart = product?.ok
    ? apartLine(product.value.product, place.poured, turnoverHours, sinceHours, combined.startHours, place.nextKey)
    : undefined
  const startHours = combined.startHours + (apart?.waitHours ?? 0)
  const endHours = little.reduce(
    (hours, line) => Math.max(hours, line.startHours + (line.kind === 'dose' ? lineHours(line) : line.waitHours)),
    startHours + (move ? 0 : combined.waitHours),
  )
  const again = stepLine('measure', 'measure-after-combined', STEPS.measureBroken, endHours, 0)
  return {
    lines: [
      ...(apart ? [apart] : []),
      { ...combined, startHours, ...(move ? { waitHours: 0 } : {}) },
      ...little,
      again,
    ],
    end: move?.after ?? now,
  }
}

/** Chlorine to its floor, at most one small pour of it where metals read high; undefined where it has no room. */
function towardFloor(
  now: SolvedWater,
  input: OpeningInput,
  products: PurposeProducts,
  constants: Constants,
): DoseMove | undefined {
  const product = withoutStabiliser(products, input)
  const effect = product ? effectPerGPerM3(product, 'fc_mg_per_L_as_Cl2') : 0
  const lacking = chlorineFloor(input.start.cya_mg_per_L, input).mgPerL - (now.reading.fc_mg_per_L_as_Cl2 ?? 0)
  const most = hasHighMetals(input) ? METAL_POUR_MG_PER_L : Number.POSITIVE_INFINITY
  if (!product || !(effect > 0) || !input.targets.fc_mg_per_L_as_Cl2 || lacking <= 1e-9) return undefined
  const want: Want = { purpose: 'openingChlorine', product, gPerM3: Math.min(lacking, most) / effect }
  const gPerM3 = permittedPart(now, want, { boundSI: LIMITS.calciteSI, constants })
  const part = { ...want, gPerM3 }
  const after = afterDose(now.totals, deltaOf(product, gPerM3), constants)
  if (!after || gPerM3 * effect < Math.min(lacking, LIMITS.leastChlorineMgPerL) - 1e-9) return undefined
  return { kind: 'dose', want: part, before: now, after, exception: 'toward-floor' }
}
