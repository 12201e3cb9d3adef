import type { PeopleReadingKey } from '../../water/index.ts'
import { step } from './build.ts'
import { OURS } from './origins.ts'
import type { StartStep } from './types.ts'

/** Everything that a test can tell. */
export const ALL_READINGS: readonly PeopleReadingKey[] = [
  'pH',
  'ta_mg_per_L_as_CaCO3',
  'ch_mg_per_L_as_CaCO3',
  'fc_mg_per_L_as_Cl2',
  'tc_mg_per_L_as_Cl2',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'salt_mg_per_L_as_NaCl',
  'temperature_C',
  'iron_mg_per_L',
  'copper_mg_per_L',
  'manganese_mg_per_L',
]

/** What an ordinary correction starts from. */
export const USUAL_READINGS: readonly PeopleReadingKey[] = [
  'pH',
  'ta_mg_per_L_as_CaCO3',
  'ch_mg_per_L_as_CaCO3',
  'fc_mg_per_L_as_Cl2',
  'cya_mg_per_L',
  'temperature_C',
]

/** A step that waits for too little free chlorine. */
export const FC_LOW = {
  on: 'target',
  keys: ['fc_mg_per_L_as_Cl2'],
  is: 'below',
  words: 'where free chlorine is below its band',
} as const

export function metalsStep(fromDay: number, toDay: number): StartStep {
  return step(
    'metals',
    fromDay,
    toDay,
    {
      title: 'Metals before chlorine',
      what: 'Deal with iron, copper or manganese where one reads too high.',
      how: 'Find the source, filter or exchange what can be; bind the rest with a sequestrant by its label. No strong oxidiser and no mineral cartridge until then; after that chlorine in small steps.',
      why: 'Chlorine and a rising pH turn dissolved metal into stains.',
    },
    { condition: { on: 'metals', words: 'only where a metal reads above its limit' } },
  )
}

export function measureStep(key: string, fromDay: number, toDay: number, title: string, why: string): StartStep {
  return step(key, fromDay, toDay, {
    title,
    what: 'Take all readings and enter them.',
    how: 'Pump running for an hour, the sample from elbow depth, away from returns; warm a cold sample to room temperature before the stabiliser test.',
    why,
  })
}

export function balanceStep(fromDay: number, toDay: number): StartStep {
  return step(
    'balance',
    fromDay,
    toDay,
    {
      title: 'Alkalinity, then pH',
      what: 'Follow the opening plan’s lines for alkalinity and pH; it has the amounts for this pool.',
      how: 'Alkalinity first, then acid or base, in the pours that the plan names, with a turnover between products.',
      why: 'All that follows is counted on an alkalinity and a pH that hold.',
    },
    {
      condition: {
        on: 'target',
        keys: ['pH', 'ta_mg_per_L_as_CaCO3'],
        is: 'outside',
        words: 'where pH or alkalinity is outside its band',
      },
      handles: ['acid', 'alkali'],
    },
  )
}

export function restStep(fromDay: number, toDay: number): StartStep {
  return step(
    'rest',
    fromDay,
    toDay,
    {
      title: 'Calcium, borate, stabiliser, salt',
      what: 'Follow the opening plan for what is still below its band.',
      how: 'One product at a time, in the order and with the waits of the plan; the safe share first where it can’t be taken out again.',
      why: 'These stay in the water. They come last, when the readings can be trusted.',
    },
    { ...OURS, handles: ['calcium', 'borate', 'stabiliser', 'salt'] },
  )
}
