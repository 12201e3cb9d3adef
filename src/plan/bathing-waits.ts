import { productById } from '../chemicals/index.ts'
import { LIMITS } from './limits.ts'
import { isSlow, mixingHours } from './mixing.ts'
import { hoursBetween, spanWords } from './spans.ts'
import type { GivenDose, OpeningInput } from './types.ts'

interface MixingDose {
  readonly dose: GivenDose
  readonly label: string
  /** Until it is in the water, and until the water that it touched is mixed: what dissolves over days mixes as it goes. */
  readonly hours: number
  readonly mixedHours: number
  readonly isSlow: boolean
}

type Doses = Pick<OpeningInput, 'given' | 'productList' | 'turnoverHours'>

function mixingDoses({ given, productList, turnoverHours = LIMITS.turnoverHours }: Doses): MixingDose[] {
  return given.flatMap((dose) => {
    const found = productById(dose.product, productList)
    const product = found.ok ? found.value.product : undefined
    // nothing was put in where nothing was given
    if (!(dose.amountG > 0)) return []
    const hours = mixingHours(product, turnoverHours)
    const slow = product !== undefined && isSlow(product)
    const mixedHours = slow ? turnoverHours : hours
    return [{ dose, label: product?.label ?? dose.product, hours, mixedHours, isSlow: slow }]
  })
}

/** The dose that was given by `atMs` and takes longest from there, with what is left of that [h]. */
function stillRunning(
  input: Doses,
  atMs: number,
  until: 'hours' | 'mixedHours',
): (MixingDose & { readonly leftHours: number }) | undefined {
  const running = mixingDoses(input).flatMap((each) => {
    const leftHours = each[until] - hoursBetween(each.dose.atMs, atMs)
    return each.dose.atMs <= atMs && leftHours > 0 ? [{ ...each, leftHours }] : []
  })
  return running.toSorted((a, b) => b.leftHours - a.leftHours)[0]
}

/** Why nobody bathes while a dose's own wait runs, or undefined. */
export function waitWords(input: OpeningInput): string | undefined {
  const mixing = stillRunning(input, input.nowMs, 'hours')
  if (!mixing) return undefined
  const since = spanWords(hoursBetween(mixing.dose.atMs, input.nowMs))
  return `${mixing.label} went in ${since} ago and needs ${spanWords(mixing.hours)} to ${mixing.isSlow ? 'dissolve' : 'mix in'}: nobody bathes for another ${spanWords(mixing.leftHours)}. Measure again after that.`
}

/** How the newest readings are of water that was not mixed yet, or undefined. */
export function unmixedWords(input: OpeningInput): string | undefined {
  const { measuredAtMs } = input
  const mixing = measuredAtMs === undefined ? undefined : stillRunning(input, measuredAtMs, 'mixedHours')
  if (!mixing || measuredAtMs === undefined) return undefined
  const after = spanWords(hoursBetween(mixing.dose.atMs, measuredAtMs))
  return `The readings were taken ${after} after ${mixing.label} went in, within its ${spanWords(mixing.mixedHours)} of mixing: they are of water that was not mixed.`
}
