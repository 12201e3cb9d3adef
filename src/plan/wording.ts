import type { Product } from '../chemicals/index.ts'
import { CAUTIONS } from '../chemicals/index.ts'
import type { Exception } from './moves.ts'
import type { Purpose } from './types.ts'

/** All that a dose line says, by purpose. */
export const TITLES: { readonly [P in Purpose]: string } = Object.freeze({
  alkalinity: 'Raise alkalinity',
  acid: 'Lower pH',
  base: 'Raise pH',
  openingChlorine: 'Chlorine residual',
  dailyChlorine: 'Chlorine',
  calcium: 'Raise calcium hardness',
  borate: 'Raise borate',
  stabiliser: 'Raise stabiliser',
  salt: 'Raise salt',
})

export const WHYS: { readonly [P in Purpose]: string } = Object.freeze({
  alkalinity: 'Alkalinity comes first: it is the buffer that keeps pH from jumping at everything that follows.',
  acid: 'pH belongs inside its band before anything that could fall out of the water goes in.',
  base: 'pH belongs inside its band; too low it eats metal, plaster and swimmers’ eyes.',
  openingChlorine: 'Water must not stand without chlorine: a residual the same day, however much is still to come.',
  dailyChlorine: 'The residual has to stay above its floor.',
  calcium: 'Calcium goes in well apart from carbonates, or chalk clouds the water.',
  borate:
    'Borate is a second buffer near pH 9; it goes in once pH stands. It is a choice, and the pool does without: set the lower end of its target to 0 and none is dosed.',
  stabiliser:
    'Stabiliser shields chlorine from the sun. It dissolves over days and comes late, since it cannot be taken out again.',
  salt: 'Salt comes last: it changes every other reading a little and none of them needs it.',
})

export const EXCEPTION_TEXT: { readonly [E in Exception]: string } = Object.freeze({
  'same-day':
    'Before alkalinity and pH this once: setting those right takes too long, and water must not stand without chlorine over night.',
  'before-exchange':
    'Before the exchange: that takes a day or more, and water must not stand without chlorine that long.',
  'ph-first': 'Before alkalinity this once: it makes room for chlorine, which has to be in as soon as can be.',
  'makes-room': 'Between the parts of the dose around it: without it that dose would take pH out of 7.0 to 8.2.',
  part: 'In parts: all at once it would take pH out of 7.0 to 8.2, or let chalk fall out.',
  afterwards: 'After the doses that pull pH along with them; correcting pH earlier would have to be done twice.',
  deferred: 'Later than usual: at its usual place it would have taken pH out of 7.0 to 8.2, or let chalk fall out.',
  step: 'In steps of at most 60 mg/L of alkalinity, each mixed in before the next.',
  'toward-floor':
    'Toward the floor and no further for now: what holds the rest back comes first, and water must not stand without chlorine meanwhile. Then measure.',
  lowering: 'In rounds with air between: all the acid at once would take pH far below 7.',
})

export const LOWERING_WHY =
  'Alkalinity above its band makes pH creep up and wastes acid; it does no harm by itself. You may leave this out: widen your band and the plan forgets it.'

export function cautionsFor(product: Product): string[] {
  const ids = [...product.cautions, 'label'] as const
  return [...new Set(ids)].map((id) => CAUTIONS.get(id)?.text ?? '').filter((text) => text !== '')
}

/** How a dose goes in; names the product with its strength. */
export function howTo(product: Product, pours: number, safeShare: number | undefined): string {
  const parts = [`${product.label} (${product.strength}).`, product.how]
  if (pours > 1) parts.push(`Give it in ${pours} pours, hours apart, the pump running all the while.`)
  if (safeShare !== undefined)
    parts.push(
      `Volume and reading are not sure enough: give ${Math.floor(safeShare * 100)} % first, measure, and only then what is really missing.`,
    )
  return parts.join(' ')
}

export const STEPS = Object.freeze({
  circulate: {
    title: 'Circulate and measure',
    how: 'Pump on, all valves and returns open, skimmers clear. After an hour take the sample from elbow depth, away from returns.',
    why: 'Every dose below is counted from these readings and needs moving water to be mixed in.',
  },
  measureFirst: {
    title: 'Measure again first',
    how: 'Pump on for an hour, then measure everything anew from elbow depth, away from returns, and enter the readings.',
  },
  measureBroken: {
    title: 'Measure again',
    how: 'All readings, free and total chlorine with them, pump running, sample from elbow depth away from returns; enter them.',
    why: 'That much chlorine moves pH and more, and how much of it is left only a reading tells: the plan goes on from there.',
  },
  metals: {
    title: 'Metals',
    how: 'Water from a well, or a green or brown tint: test iron and copper now. Where there is any, bind it (a sequestrant by its label) or filter the fill before going on.',
    why: 'Chlorine and a rising pH turn dissolved metal into stains; this is the last moment to catch it.',
  },
  aerate: {
    title: 'Let air take CO2 out',
    how: 'Returns turned up, fountains, slides and spillways on, cover off. Measure pH daily and go on when it is back.',
    why: 'Moving water loses CO2: pH comes back up while alkalinity stays down. No product is needed.',
  },
  measure: {
    title: 'Measure again',
    how: 'All readings, pump running, sample from elbow depth away from returns; enter them and the plan is made anew from what is really there.',
    why: 'Expected readings are sums, not measurements. Only measured ones count from here, and only they can let anyone bathe.',
  },
  measureExchanged: {
    title: 'Measure again',
    how: 'When the last refill is in, pump on for a turnover; then all readings from elbow depth away from returns. Enter them and the plan is made from the new water.',
    why: 'The new water is another one: no amount from before the exchange holds in it.',
  },
  chlorineHigh: {
    title: 'Wait for chlorine to fall',
    how: 'Cover off in daylight, nobody in the water, measure daily. Sodium thiosulfate only in small, counted doses if it has to be quick.',
    why: 'Free chlorine is above its band. Sun and time bring it down by themselves.',
  },
})

export function apartStep(first: Product, next: Product, reason: string) {
  return {
    title: 'Keep the two apart',
    how: `A whole turnover of the pump between ${first.label} and ${next.label}; then another place to put it in, another scoop or jug, both dry and clean.`,
    why: reason,
  }
}
