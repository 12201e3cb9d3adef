import type { PeopleReadingKey } from '../../water/index.ts'
import type { TargetKey } from '../types.ts'
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

/** A step that waits for too little of something; `name` says of what. */
const below = (key: TargetKey, name: string) =>
  ({ on: 'target', keys: [key], is: 'below', words: `where ${name} is below its band` }) as const

/** A step that waits for too little free chlorine. */
export const FC_LOW = below('fc_mg_per_L_as_Cl2', 'free chlorine')

type Told = Pick<StartStep, 'what' | 'how' | 'why'>

export function calciumStep(fromDay: number, toDay: number, told: Told): StartStep {
  return step(
    'calcium',
    fromDay,
    toDay,
    { title: 'Calcium may come', ...told },
    { ...OURS, condition: below('ch_mg_per_L_as_CaCO3', 'calcium'), handles: ['calcium'] },
  )
}

export function stabiliserStep(fromDay: number, toDay: number, told: Told): StartStep {
  return step(
    'stabiliser',
    fromDay,
    toDay,
    { title: 'Stabiliser may come', ...told },
    {
      ...OURS,
      needsTarget: 'cya_mg_per_L',
      condition: below('cya_mg_per_L', 'stabiliser'),
      handles: ['stabiliser'],
    },
  )
}

export function saltStep(fromDay: number, toDay: number, told: Told): StartStep {
  return step(
    'salt',
    fromDay,
    toDay,
    { title: 'Salt may come', ...told },
    {
      ...OURS,
      needsTarget: 'salt_mg_per_L_as_NaCl',
      condition: below('salt_mg_per_L_as_NaCl', 'salt'),
      handles: ['salt', 'electricity'],
    },
  )
}

/** `inFill` where the pool is full of fresh fill water, so that its metals count until the pool's are read. */
export function metalsStep(fromDay: number, toDay: number, inFill = false): StartStep {
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
    {
      condition: {
        on: 'metals',
        inFill,
        words: inFill
          ? 'only where a metal reads above its limit, in the pool or, until that is read, in the fill water'
          : 'only where a metal reads above its limit',
      },
    },
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

/** The tap's water by itself, since the pool's has lime, dust and sun in it already. */
export function readFillStep(why: string): StartStep {
  return step('read', 1, 1, {
    title: 'Read the fill water',
    what: 'Take all readings of the water as it comes from the tap, metals too, and enter them as the fill water’s.',
    how: 'From the tap or the well, not from the pool: let it run for two minutes, then fill a clean bottle to the brim and read it at once. Then read the pool by itself: its doses go by its own readings.',
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
