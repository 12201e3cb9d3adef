import { limitsFor, superchlorination } from '../water/index.ts'
import type { PurposeProducts } from './check-input.ts'
import { effectPerGPerM3 } from './effect.ts'
import { hasHighMetals } from './opening-marks.ts'
import { stepLine } from './step-lines.ts'
import type { OpeningInput, StepLine } from './types.ts'

const WAIT_HOURS = 24

/** What breaks combined chlorine down, or why it can't be; undefined where it is inside its limit or not known. */
export function combinedLine(input: OpeningInput, products: PurposeProducts): StepLine | undefined {
  const { combinedMgPerL } = input
  const { fc_mg_per_L_as_Cl2: freeMgPerL, cya_mg_per_L: stabiliserMgPerL } = input.start
  if (combinedMgPerL === undefined || freeMgPerL === undefined) return undefined
  const limit = limitsFor(input.rulesId, stabiliserMgPerL, input).combinedHighMgPerL
  if (!(combinedMgPerL > limit)) return undefined
  const why = `Combined chlorine is ${Number(combinedMgPerL.toPrecision(2))} mg/L, above ${limit}: it stings, smells and disinfects badly. Nobody bathes until it is gone.`
  const { chlorineFloorMgPerL, chlorineCeilingMgPerL } = input
  const rules = { profile: input.rulesId, chlorineFloorMgPerL, chlorineCeilingMgPerL }
  const answer = superchlorination({ freeMgPerL, combinedMgPerL, stabiliserMgPerL, rules })
  const title = 'Break combined chlorine down first'
  if (!answer.ok) {
    const { what, hint } = answer.problem
    return stepLine('wait', 'combined', { title, how: [what, hint].filter(Boolean).join(' '), why }, 0, 0)
  }
  const { openingChlorine } = products
  const effect = effectPerGPerM3(openingChlorine, 'fc_mg_per_L_as_Cl2')
  const g = effect > 0 ? (answer.value.doseMgPerL / effect) * input.volumeM3 : 0
  const amount =
    g > 0
      ? `, about ${g >= 1000 ? `${(g / 1000).toPrecision(2)} kg` : `${g.toPrecision(2)} g`} of ${openingChlorine.label} (${openingChlorine.strength})`
      : ''
  const metals = hasHighMetals(input) ? 'Metals read high: deal with them before. ' : ''
  const how = `${metals}Raise free chlorine by ${answer.value.doseMgPerL.toPrecision(2)} mg/L${amount}, once, in the evening, the pump running, a turnover away from any acid. Read free and total chlorine in the morning, enter both, and go on from there.`
  return stepLine('wait', 'combined', { title, how, why }, 0, WAIT_HOURS, { cautions: answer.value.notes })
}
