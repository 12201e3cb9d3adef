import type { Product } from '../chemicals/index.ts'
import { type GivenStep, MS_PER_HOUR } from './given.ts'
import { LIMITS } from './limits.ts'
import { mixingHours } from './mixing.ts'
import { movementsBetween } from './movements.ts'
import { expectedOf } from './solved.ts'
import type { DoseLine, OpeningInput, Purpose } from './types.ts'
import { cautionsFor, howTo, TITLES } from './wording.ts'

const PURPOSE_OF_USE: { readonly [U in Product['uses'][number]]?: Purpose } = {
  acid: 'acid',
  alkalinity: 'alkalinity',
  base: 'base',
  chlorine: 'openingChlorine',
  calcium: 'calcium',
  borate: 'borate',
  stabiliser: 'stabiliser',
  salt: 'salt',
}

export interface DoneLines {
  readonly lines: readonly DoseLine[]
  /** The moment from which hours are counted. */
  readonly originMs: number
  /** When the next line may start, in hours from the first dose. */
  readonly nextStartHours: number
}

/** Doses that were given, as lines: what they were and what they did by the sums. */
export function doneLines(steps: readonly GivenStep[], input: OpeningInput): DoneLines {
  const origin = steps[0]?.dose.atMs ?? input.nowMs
  const taken = new Set<string>()
  let next = 0
  const lines = steps.map((step, index): DoseLine => {
    const { dose, product } = step
    let key = dose.line ?? `given-${index + 1}`
    while (taken.has(key)) key = `${key}-again`
    taken.add(key)
    const purpose = PURPOSE_OF_USE[product.uses[0] ?? 'acid'] ?? 'acid'
    const startHours = (dose.atMs - origin) / MS_PER_HOUR
    const turnoverHours = input.turnoverHours ?? LIMITS.turnoverHours
    const waitHours = mixingHours(product, turnoverHours)
    next = Math.max(next, startHours + waitHours)
    return {
      kind: 'dose',
      key,
      title: TITLES[purpose],
      how: howTo(product, 1, undefined),
      why: 'Given; the rest of the plan counts on from it.',
      startHours,
      waitHours,
      state: 'done',
      cautions: cautionsFor(product),
      purpose,
      productId: product.id,
      amountG: dose.amountG,
      lowG: dose.amountG,
      highG: dose.amountG,
      pours: [{ index: 1, amountG: dose.amountG, hoursAfterStart: 0 }],
      movements: movementsBetween(step.before, step.after, input.start, input.targets),
      after: expectedOf(step.after),
      given: dose,
    }
  })
  const nowHours = Math.max(0, (input.nowMs - origin) / MS_PER_HOUR)
  return { lines, originMs: origin, nextStartHours: steps.length === 0 ? 1 : Math.max(next, nowHours) }
}
