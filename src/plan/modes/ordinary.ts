import { step, withheld } from './build.ts'
import { OURS } from './origins.ts'
import { ALL_READINGS, balanceStep, FC_LOW, measureStep, metalsStep, restStep, USUAL_READINGS } from './shared-steps.ts'
import { START_INPUTS } from './start-inputs.ts'
import type { StartMode, StartStep } from './types.ts'

const chlorineStep = (fromDay: number, toDay: number): StartStep =>
  step(
    'chlorine',
    fromDay,
    toDay,
    {
      title: 'Chlorine into its band',
      what: 'Follow the opening plan’s line for chlorine.',
      how: 'Before the night, by the plan ahead of acid where it has room; pump on, a turnover apart from any acid.',
      why: 'Water must not stand without chlorine.',
    },
    {
      condition: FC_LOW,
      handles: ['chlorine'],
    },
  )

export const FILLED_POOL: StartMode = {
  id: 'filled-pool',
  label: 'Filled pool, check and correct',
  when: 'The pool is full and running, and you know it.',
  dayOne: 'the day you measure',
  lastDay: 3,
  whoRules: 'Your local code comes first, then the labels.',
  inputs: START_INPUTS['filled-pool'],
  reads: USUAL_READINGS,
  targets: [],
  steps: [
    measureStep('read', 1, 1, 'Read the pool', 'Only what is measured is corrected.'),
    metalsStep(1, 1),
    balanceStep(1, 2),
    chlorineStep(1, 1),
    restStep(2, 3),
    measureStep('done', 3, 3, 'Read everything again', 'Expected readings are sums; measured ones count.'),
  ],
  notes: ['What stands inside its band is left alone.'],
}

export const MID_SEASON: StartMode = {
  id: 'mid-season',
  label: 'Correction in mid-season',
  when: 'The pool ran well and some reading has drifted, or the water looks dull.',
  dayOne: 'the day you measure',
  lastDay: 3,
  whoRules: 'Your local code comes first, then the labels.',
  inputs: START_INPUTS['mid-season'],
  reads: [...USUAL_READINGS, 'tc_mg_per_L_as_Cl2', 'salt_mg_per_L_as_NaCl'],
  targets: [],
  steps: [
    measureStep(
      'read',
      1,
      1,
      'Read the pool twice',
      'A reading far from last week’s is more often a wrong test than a changed water. Read it again, with fresh reagents, before you dose.',
    ),
    step('cause', 1, 1, {
      title: 'Look for the cause',
      what: 'Feeder, pump hours, filter pressure, a leak, a new product, many bathers.',
      how: 'Compare with the logbook: which reading moved first?',
      why: 'A correction without the cause comes back next week.',
    }),
    balanceStep(1, 2),
    step(
      'chlorine-first',
      1,
      1,
      {
        title: 'Chlorine the same day',
        what: 'Bring free chlorine back into its band; nobody bathes meanwhile.',
        how: 'Liquid or dissolved, pump on, cover off, a turnover apart from any acid.',
        why: 'A low residual is the one drift that can’t wait.',
      },
      {
        condition: FC_LOW,
        handles: ['chlorine'],
      },
    ),
    step(
      'combined',
      1,
      2,
      {
        title: 'Combined chlorine above its limit',
        what: 'Raise chlorine as the Water chapter says.',
        how: 'A chlorine without stabiliser, cover off, all at once towards evening; nobody bathes until both readings are back.',
        why: 'It stings eyes, smells, and disinfects badly.',
      },
      {
        condition: { on: 'combined', words: 'only where combined chlorine is above its limit' },
        handles: ['chlorine'],
      },
    ),
    restStep(2, 3),
    measureStep('done', 3, 3, 'Read everything again', 'To see that it holds.'),
  ],
  notes: ['Correct one thing at a time, and give it a turnover.', 'What stands inside its band is left alone.'],
}

export const UNKNOWN_POOL: StartMode = {
  id: 'unknown-pool',
  label: 'Taking over an unknown pool',
  when: 'You have bought, rented or inherited a pool and know neither its water nor what went in.',
  dayOne: 'the day you take over',
  lastDay: 7,
  whoRules: 'Your local code comes first; where a public or shared pool is taken over, its authority too.',
  inputs: START_INPUTS['unknown-pool'],
  reads: ALL_READINGS,
  targets: [
    withheld('pH', 1, 1, 'Measure before anything goes in.', OURS),
    withheld('ta_mg_per_L_as_CaCO3', 1, 1, 'Measure before anything goes in.', OURS),
    withheld('fc_mg_per_L_as_Cl2', 1, 1, 'Metals have to be known before anything oxidises them.', OURS),
    withheld('ch_mg_per_L_as_CaCO3', 1, 3, 'Wait until two readings agree.', OURS),
    withheld('cya_mg_per_L', 1, 3, 'Wait until two readings agree; it does not leave again.', OURS),
    withheld('borate_mg_per_L_as_B', 1, 3, 'Wait until two readings agree; it does not leave again.', OURS),
    withheld('salt_mg_per_L_as_NaCl', 1, 3, 'Wait until two readings agree; it does not leave again.', OURS),
  ],
  steps: [
    step(
      'closed',
      1,
      4,
      {
        title: 'Nobody bathes',
        what: 'Keep the pool closed until it has been measured twice and the water is clear to the drain.',
        how: 'Look at drain covers, ladders, rails and lights. Where a drain cover is loose, cracked or missing, or there is a single drain that a body can cover, nobody goes in until a licensed trade has seen to it.',
        why: 'You do not know what is in it, nor what is broken.',
      },
      { closesPool: true },
    ),
    step(
      'power',
      1,
      1,
      {
        title: 'Electricity checked first',
        what: 'Have bonding, breaker, pump, lights and heater checked.',
        how: 'By a licensed electrician, before anyone puts a hand in the water.',
        why: 'It is the one fault that kills without warning.',
      },
      { handles: ['electricity'] },
    ),
    step(
      'shed',
      1,
      1,
      {
        title: 'Trust no tub, no feeder',
        what: 'Use none of the chemicals and none of the feeders you find.',
        how: 'Leave unmarked, wet or caked ones shut, where they stand, and ask your waste service. One that bulges, is warm or smells sharp: go away from it and call the fire service. A feeder or floater that may have held another chlorine is never filled again.',
        why: 'Different chlorines that meet burn and explode; nobody knows what these have held.',
      },
      { handles: ['chlorine'] },
    ),
    measureStep(
      'read',
      1,
      1,
      'Read everything, metals too',
      'Take a second test of another kind, or a laboratory, for what decides: stabiliser, calcium, metals.',
    ),
    step(
      'filter',
      1,
      3,
      {
        title: 'Filter first',
        what: 'Run the pump day and night, skim, vacuum to waste, clean the filter.',
        how: 'Pump off and pressure off before you open it. Look at sand or cartridge; write down the pressure when clean.',
        why: 'Dirt uses chlorine that is then missing for germs, and spoils the readings.',
      },
      { often: 'all day', handles: ['electricity'] },
    ),
    metalsStep(1, 2),
    balanceStep(2, 3),
    step(
      'chlorine',
      2,
      4,
      {
        title: 'Chlorine, in small steps',
        what: 'Raise it into its band; watch the colour after each step.',
        how: 'Use a fresh liquid of your own without stabiliser, a third at a time, an hour between. Brown or green at once: stop, that is metal.',
        why: 'It shows what the water still hides.',
      },
      {
        condition: FC_LOW,
        handles: ['chlorine'],
      },
    ),
    measureStep(
      'again',
      4,
      4,
      'Read everything a second time',
      'One reading may be wrong; two that agree can be built on.',
    ),
    step(
      'stabiliser-high',
      4,
      7,
      {
        title: 'Too much stabiliser: exchange water',
        what: 'Where stabiliser stands above its band, exchange water as the opening plan says, before more chlorine is spent on it.',
        how: 'In parts: lower it slowly, refill, and measure in between.',
        why: 'Years of stabilised tablets leave it behind, and much of it slows chlorine down.',
      },
      {
        condition: {
          on: 'target',
          keys: ['cya_mg_per_L'],
          is: 'above',
          words: 'only where stabiliser is above its band',
        },
        handles: ['draining'],
      },
    ),
    restStep(4, 7),
    measureStep('done', 7, 7, 'Read everything', 'From here on the ordinary plan and upkeep hold.'),
  ],
  notes: [
    'Find the volume yourself: what drawings and sellers say is often rounded.',
    'Write down what you find: it is the first page of the logbook.',
  ],
}
