import { type Product, productById } from '../chemicals/index.ts'
import { limitsFor, superchlorination } from '../water/index.ts'
import type { PurposeProducts } from './check-input.ts'
import { effectPerGPerM3 } from './effect.ts'
import { namedAmount } from './named-amount.ts'
import { hasHighMetals } from './opening-marks.ts'
import { REGIMES } from './regimes.ts'
import { stepLine } from './step-lines.ts'
import type { OpeningInput, StepLine } from './types.ts'
import { cautionsFor } from './wording.ts'

const WAIT_HOURS = 24

/** What breaks combined chlorine down, or why it can't be; undefined where it is inside its limit or not known. */
export function combinedLine(input: OpeningInput, products: PurposeProducts): StepLine | undefined {
  const { combinedMgPerL } = input
  const { fc_mg_per_L_as_Cl2: freeMgPerL, cya_mg_per_L: stabiliserMgPerL } = input.start
  if (combinedMgPerL === undefined || freeMgPerL === undefined) return undefined
  const limit = limitsFor(input.rulesId, stabiliserMgPerL, input, input.isIndoor).combinedHighMgPerL
  if (!(combinedMgPerL > limit)) return undefined
  const why = `Combined chlorine is ${Number(combinedMgPerL.toPrecision(2))} mg/L, above ${limit}: it stings, smells and disinfects badly. Nobody bathes until it is gone.`
  const { chlorineFloorMgPerL, chlorineCeilingMgPerL } = input
  const rules = { profile: input.rulesId, chlorineFloorMgPerL, chlorineCeilingMgPerL }
  const answer = superchlorination({ freeMgPerL, combinedMgPerL, stabiliserMgPerL, rules, isIndoor: input.isIndoor })
  const title = 'Break combined chlorine down first'
  if (!answer.ok) {
    const { what, hint } = answer.problem
    return stepLine('wait', 'combined', { title, how: [what, hint].filter(Boolean).join(' '), why }, 0, 0)
  }
  const { doseMgPerL, notes } = answer.value
  const product = withoutStabiliser(products, input)
  const effect = product ? effectPerGPerM3(product, 'fc_mg_per_L_as_Cl2') : 0
  const isHeld = hasHighMetals(input)
  const dose = product && effect > 0 ? namedAmount(product, (doseMgPerL / effect) * input.volumeM3) : undefined
  const amount =
    product && dose
      ? `about ${dose.text} of ${product.label} (${product.strength})`
      : 'with a chlorine that holds no stabiliser'
  const how = isHeld
    ? 'Not yet: metals read high, and that much chlorine at once would stain with them. Deal with them first; until then only small doses, each read afterwards, free and total chlorine both.'
    : `Raise free chlorine by ${doseMgPerL.toPrecision(2)} mg/L, ${amount}, once, in the evening, the pump running, a turnover away from any acid. Read free and total chlorine in the morning, enter both, and go on from there.`
  const cautions = [...(product ? cautionsFor(product) : []), ...notes]
  return stepLine('wait', 'combined', { title, how, why }, 0, WAIT_HOURS, {
    cautions,
    ...(dose && !isHeld ? { amounts: [dose] } : {}),
  })
}

/** The chosen first chlorine, else the regime's own, that brings no stabiliser along. */
export function withoutStabiliser(products: PurposeProducts, input: OpeningInput): Product | undefined {
  const usual = REGIMES.get(input.regimeId)?.products.openingChlorine
  const found = usual === undefined ? undefined : productById(usual, input.productList)
  const candidates = [products.openingChlorine, ...(found?.ok ? [found.value.product] : [])]
  return candidates.find((product) => effectPerGPerM3(product, 'cya_mg_per_L') === 0)
}
