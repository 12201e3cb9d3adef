import { ok, type Result } from '../../base/index.ts'
import {
  batherDemandG,
  breakpointRatio,
  combinedChlorine,
  NITROGEN_G_PER_BATHER_HOUR,
  superchlorination,
} from '../../water/index.ts'
import { HIGH_RATIO, LEAN_NITROGEN_G } from '../demand-terms.ts'
import { amountOf } from './amount.ts'
import { productFor } from './handling.ts'
import type { Origin, StartContext, StartFigure, StartFigures, StartValues } from './types.ts'

const BATHERS: Origin = {
  source:
    'nitrogen 0.85 g per bather and hour from memory, 0.57 g by WHO 2006 table 4.1 (from memory); 10 to 15 g of chlorine for each gram in practice: CRC handbook, chapter 40 (excerpt seen), 12 is our middle; 7.6 by theory',
  status: 'from memory',
}

/** What guests brought into the water, and the chlorine that it asks for. */
export function partyFigures(values: StartValues, context: StartContext): Result<StartFigures> {
  const { bathers, hours } = values
  const combined = combinedFigures(context)
  if (!combined.ok) return combined
  if (bathers === undefined || hours === undefined) return ok({ ...combined.value, expected: [] })
  const { volumeM3, before, now } = context
  const product = productFor('openingChlorine', context)
  if (!product.ok) return product
  const batherHours = bathers * hours
  const g = {
    value: batherDemandG(batherHours),
    low: batherDemandG(batherHours, LEAN_NITROGEN_G, breakpointRatio),
    high: batherDemandG(batherHours, NITROGEN_G_PER_BATHER_HOUR, HIGH_RATIO),
  }
  const each = (of: (demandG: number) => number) => ({ value: of(g.value), low: of(g.low), high: of(g.high) })
  const was = before?.fc_mg_per_L_as_Cl2
  const is = now?.fc_mg_per_L_as_Cl2
  const spent = was === undefined || is === undefined ? 0 : Math.max(0, was - is)
  const left = each((demandG) => Math.max(0, demandG / volumeM3 - spent))
  const { availableChlorine } = product.value
  const amount = (mgPerL: number) => amountOf(product.value, (mgPerL * volumeM3) / availableChlorine)
  const figures: StartFigure[] = [
    {
      key: 'nitrogen',
      label: 'Nitrogen brought in',
      quantity: 'mass',
      value: (batherHours * NITROGEN_G_PER_BATHER_HOUR) / 1000,
      low: (batherHours * LEAN_NITROGEN_G) / 1000,
      high: (batherHours * NITROGEN_G_PER_BATHER_HOUR) / 1000,
      how: 'Bathers times hours times what one brings in an hour, by sweat and urine.',
      ...BATHERS,
    },
    {
      key: 'demand',
      label: 'Chlorine it asks for',
      quantity: 'concentration',
      ...each((demandG) => demandG / volumeM3),
      how: `${batherHours} bather-hours, 12 g of chlorine for each gram of nitrogen, over the pool’s volume.`,
      ...BATHERS,
    },
    {
      key: 'demandLeft',
      label: 'Still to be met',
      quantity: 'concentration',
      ...left,
      how:
        spent > 0
          ? 'Less what free chlorine has fallen since the reading before; sun took a part of that, so it may be more.'
          : 'Nothing is taken off: there is no reading from before and since, or chlorine has not fallen.',
      ...BATHERS,
    },
    {
      key: 'partyDose',
      label: `${product.value.label}, all together`,
      quantity: amount(0).quantity,
      value: amount(left.value).value,
      low: amount(left.low).value,
      high: amount(left.high).value,
      how: 'To meet that and no more. Give the low end first, measure after an hour, go on by readings.',
      ...BATHERS,
    },
  ]
  return ok({ figures: [...figures, ...combined.value.figures], expected: [], warnings: combined.value.warnings })
}

/** Combined chlorine as read since, and the dose that breaks it down. */
function combinedFigures(context: StartContext): Result<Omit<StartFigures, 'expected'>> {
  const { now, method } = context
  if (now?.fc_mg_per_L_as_Cl2 === undefined) return ok({ figures: [], warnings: [] })
  const free = now.fc_mg_per_L_as_Cl2
  const read = combinedChlorine({ ...now, fc_mg_per_L_as_Cl2: free }, method ?? 'unknown')
  if (!read.ok) return ok({ figures: [], warnings: [`${read.problem.what} ${read.problem.hint}`] })
  if (!read.value) return ok({ figures: [], warnings: [] })
  const { combinedMgPerL, sigmaMgPerL } = read.value
  const answer = superchlorination({
    freeMgPerL: free,
    combinedMgPerL,
    stabiliserMgPerL: now.cya_mg_per_L,
    isIndoor: context.isIndoor,
    rules: context.rules,
  })
  const figure: StartFigure = {
    key: 'combined',
    label: 'Combined chlorine',
    quantity: 'concentration',
    value: combinedMgPerL,
    low: Math.max(0, combinedMgPerL - 2 * sigmaMgPerL),
    high: combinedMgPerL + 2 * sigmaMgPerL,
    how: 'Total less free chlorine, or as read; two standard deviations of the test either way.',
    source: 'definition',
    status: 'derived',
  }
  if (!answer.ok) return ok({ figures: [figure], warnings: [`${answer.problem.what} ${answer.problem.hint}`] })
  if (!answer.value.isNeeded) return ok({ figures: [figure], warnings: [] })
  const practice = answer.value.doses.find(({ id }) => id === 'practice')
  return ok({
    figures: [
      figure,
      {
        key: 'breakpointDose',
        label: 'Chlorine that breaks it down',
        quantity: 'concentration',
        value: answer.value.doseMgPerL,
        low: answer.value.doses.find(({ id }) => id === 'theory')?.lowMgPerL ?? 0,
        high: answer.value.doseMgPerL,
        how: 'The upper end of practice; measure after an hour, and repeat while it is still there.',
        source: practice?.source ?? '',
        status: practice?.status ?? 'from memory',
      },
    ],
    warnings: answer.value.notes,
  })
}
