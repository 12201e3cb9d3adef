import { type Product, productById } from '../chemicals/index.ts'
import { limitsFor, NO_STABILISER_MG_PER_L, superchlorination } from '../water/index.ts'
import type { PurposeProducts } from './check-input.ts'
import { effectPerGPerM3 } from './effect.ts'
import { namedAmount } from './named-amount.ts'
import { hasHighMetals } from './opening-marks.ts'
import { REGIMES } from './regimes.ts'
import { stepLine } from './step-lines.ts'
import type { OpeningInput, StepLine } from './types.ts'
import { cautionsFor } from './wording.ts'

const WAIT_HOURS = 24

/** A dose this near to what is wanted is that dose [1] (ours). */
const NEARLY = 0.9

/**
 * What breaks combined chlorine down, or why it can't be; undefined where it is inside its limit or not known. It stands
 * until combined chlorine is read again: chlorine given since is taken off the dose, and once that is all of it, only the
 * reading is left to do.
 */
export function combinedLine(input: OpeningInput, products: PurposeProducts, startHours: number): StepLine | undefined {
  const { combinedMgPerL, measuredAtMs = input.nowMs } = input
  const { fc_mg_per_L_as_Cl2: freeMgPerL, cya_mg_per_L: stabiliserMgPerL } = input.start
  if (combinedMgPerL === undefined || freeMgPerL === undefined) return undefined
  const limit = limitsFor(input.rulesId, stabiliserMgPerL, input, input.isIndoor).combinedHighMgPerL
  if (!(combinedMgPerL > limit)) return undefined
  const isOld = input.combinedAtMs !== undefined && input.combinedAtMs < measuredAtMs
  const is = isOld ? 'was read last at' : 'is'
  const why = `Combined chlorine ${is} ${Number(combinedMgPerL.toPrecision(2))} mg/L, above ${limit}: it stings, smells and disinfects badly. Nobody bathes until it is gone.`
  const { chlorineFloorMgPerL, chlorineCeilingMgPerL } = input
  const rules = { profile: input.rulesId, chlorineFloorMgPerL, chlorineCeilingMgPerL }
  const answer = superchlorination({
    freeMgPerL,
    combinedMgPerL,
    stabiliserMgPerL: stabiliserMgPerL ?? someStabiliser(input),
    rules,
    isIndoor: input.isIndoor,
  })
  const title = 'Break combined chlorine down first'
  if (!answer.ok) {
    const { what, hint } = answer.problem
    return stepLine('wait', 'combined', { title, how: [what, hint].filter(Boolean).join(' '), why }, startHours, 0)
  }
  const { doseMgPerL: wholeMgPerL, notes } = answer.value
  const givenMgPerL = chlorineSince(input)
  if (givenMgPerL >= NEARLY * wholeMgPerL || isTickedBetween(input)) {
    const how =
      'Enough chlorine to break it down was given since. Let the pump run through the night, then read free and total chlorine and enter both: only that reading tells whether it is gone.'
    return stepLine(
      'wait',
      'combined',
      { title: 'Read free and total chlorine again', how, why },
      startHours,
      WAIT_HOURS,
    )
  }
  const doseMgPerL = wholeMgPerL - givenMgPerL
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
    : `Raise free chlorine by ${doseMgPerL.toPrecision(2)} mg/L${givenMgPerL > 0 ? ' more' : ''}, ${amount}, once, in the evening, the pump running, a turnover away from any acid. Read free and total chlorine in the morning, enter both, and go on from there.`
  const cautions = [...(product ? cautionsFor(product) : []), ...notes]
  return stepLine('wait', 'combined', { title, how, why }, startHours, WAIT_HOURS, {
    cautions,
    ...(dose && !isHeld ? { amounts: [dose] } : {}),
  })
}

/** Stabiliser as it was read last, where that was some: too much of it stands against this, however long ago it was read. */
function someStabiliser({ lastStabiliser }: OpeningInput): number | undefined {
  return lastStabiliser && lastStabiliser.mgPerL >= NO_STABILISER_MG_PER_L ? lastStabiliser.mgPerL : undefined
}

/** Whether it was ticked off after combined chlorine was read, and readings since then lack it: it isn't given twice. */
function isTickedBetween({ doneKeys = [], combinedAtMs, measuredAtMs }: OpeningInput): boolean {
  return doneKeys.some(
    ({ key, atMs }) =>
      key === 'combined' && combinedAtMs !== undefined && atMs >= combinedAtMs && atMs < (measuredAtMs ?? 0),
  )
}

/** Chlorine that was given since combined chlorine was read [mg/L]. */
function chlorineSince(input: OpeningInput): number {
  const sinceMs = input.combinedAtMs ?? input.measuredAtMs ?? input.nowMs
  return input.given.reduce((sum, { product, amountG, atMs }) => {
    const found = atMs >= sinceMs ? productById(product, input.productList) : undefined
    return found?.ok
      ? sum + (amountG / input.volumeM3) * effectPerGPerM3(found.value.product, 'fc_mg_per_L_as_Cl2')
      : sum
  }, 0)
}

/** The chosen first chlorine, else the regime's own, that brings no stabiliser along. */
export function withoutStabiliser(products: PurposeProducts, input: OpeningInput): Product | undefined {
  const usual = REGIMES.get(input.regimeId)?.products.openingChlorine
  const found = usual === undefined ? undefined : productById(usual, input.productList)
  const candidates = [products.openingChlorine, ...(found?.ok ? [found.value.product] : [])]
  return candidates.find((product) => effectPerGPerM3(product, 'cya_mg_per_L') === 0)
}
