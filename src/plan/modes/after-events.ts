import { input, step } from './build.ts'
import { DRAINING, OURS } from './origins.ts'
import { partyFigures } from './party-figures.ts'
import { drainFigures, rainFigures } from './rain-and-drain.ts'
import { balanceStep, measureStep, restStep, USUAL_READINGS } from './shared-steps.ts'
import type { StartMode } from './types.ts'

const MIXED = 'After a turnover: rain and fresh water lie on top until then.'
const FC_LOW = {
  on: 'target',
  keys: ['fc_mg_per_L_as_Cl2'],
  is: 'below',
  words: 'where free chlorine is below its band',
} as const

export const HEAVY_RAIN: StartMode = {
  id: 'heavy-rain',
  label: 'After heavy rain',
  when: 'A storm or days of rain fell into the pool, or water ran in from the ground.',
  dayOne: 'the day the rain ends',
  lastDay: 2,
  whoRules: 'Your local code comes first; after a flood or sewage the health authority.',
  inputs: [
    input('rainM', 'Rain', 'length', [0, 1], 'As a height of water: 25 mm is an inch.', { isNeeded: true }),
    input(
      'catchmentM2',
      'Ground and roofs that drain into the pool',
      'area',
      [0, 2000],
      'Zero where the deck falls away from the pool, as it should.',
      { usual: 0 },
    ),
    input(
      'runoffPercent',
      'Of it runs off',
      'percent',
      [0, 100],
      'Stone and roofs nearly all, lawn a third or less (from memory).',
      { usual: 90 },
    ),
    input(
      'roomM',
      'Room up to the overflow',
      'length',
      [0, 1],
      'How far below the overflow the water stood before the rain.',
      { usual: 0.05 },
    ),
  ],
  reads: USUAL_READINGS,
  targets: [],
  steps: [
    step(
      'safe',
      1,
      1,
      {
        title: 'Look before you touch',
        what: 'No thunder, no flooded pump or socket, nobody in the water.',
        how: 'Where the equipment stood in water, leave it off and call an electrician. Muddy water from a flood or a drain: treat it as sewage and ask the health authority.',
        why: 'Storm water and electricity hurt more people than chemicals do.',
      },
      { handles: ['electricity'] },
    ),
    step(
      'level',
      1,
      1,
      {
        title: 'Bring the level down',
        what: 'To the middle of the skimmer, not lower.',
        how: 'To where waste water may go; slowly, and not at all while groundwater stands high around the pool.',
        why: 'Skimmers do not skim under water. After rain groundwater pushes hardest.',
      },
      { ...DRAINING, handles: ['draining'], figures: ['inflow', 'overflow'] },
    ),
    step('clean', 1, 1, {
      title: 'Skim, brush, filter',
      what: 'Leaves and silt out; pump on for a whole turnover.',
      how: 'Baskets and filter clean before and after.',
      why: 'Dirt uses more chlorine than the rain took.',
    }),
    measureStep('read', 1, 1, 'Read the pool', MIXED),
    step(
      'chlorine',
      1,
      1,
      {
        title: 'Chlorine the same day',
        what: 'Back into its band, upper half.',
        how: 'Liquid or dissolved, cover off, pump on.',
        why: 'Rain thins it and its dirt uses it up.',
      },
      { condition: FC_LOW, handles: ['chlorine'] },
    ),
    balanceStep(1, 2),
    restStep(2, 2),
    measureStep('done', 2, 2, 'Read again', 'To see that chlorine held overnight.'),
  ],
  notes: [
    'An ordinary shower of 10 mm changes hardly anything: look at the share before you dose.',
    'Rain is a little acid, but so weakly buffered that it hardly moves pH; what it washes in may.',
  ],
  figures: rainFigures,
}

export const PARTIAL_DRAIN: StartMode = {
  id: 'partial-drain',
  label: 'After a partial drain and refill',
  when: 'Part of the water was taken out and replaced, for a repair, a leak, or to lower stabiliser, calcium or salt.',
  dayOne: 'the day it is full again',
  lastDay: 3,
  whoRules: 'The maker of liner or shell on how far; your water authority on where the water may go.',
  inputs: [
    input(
      'drainedM',
      'Level lowered by',
      'length',
      [0, 5],
      'From the usual level down to where it stood, before refilling. Holds while walls are upright; else give the share.',
    ),
    input(
      'drainedPercent',
      'Or share of the water taken out',
      'percent',
      [0, 100],
      'From a meter or a drawn level curve.',
    ),
  ],
  reads: USUAL_READINGS,
  targets: [],
  steps: [
    step(
      'before',
      1,
      1,
      {
        title: 'If it is not done yet: in parts, slowly',
        what: 'Never the whole of it at once; refill between parts.',
        how: 'Ask where groundwater stands. Open the relief valve where there is one. A liner or shell: by its maker only.',
        why: 'An empty shell floats, cracks or bulges.',
      },
      { ...DRAINING, handles: ['draining'] },
    ),
    step(
      'restart',
      1,
      1,
      {
        title: 'Start up again',
        what: 'Air out of pump, filter and heater before anything runs.',
        how: 'Heater and generator stay off for a turnover.',
        why: 'They burn dry.',
      },
      { handles: ['electricity'] },
    ),
    measureStep(
      'fill',
      1,
      1,
      'Read the fill water',
      'It is now a good part of your pool; its hardness and metals came along.',
    ),
    measureStep('read', 1, 1, 'Read the pool', MIXED),
    step(
      'chlorine',
      1,
      1,
      {
        title: 'Chlorine the same day',
        what: 'Back into its band.',
        how: 'Liquid or dissolved, pump on.',
        why: 'Fresh water brought none to speak of.',
      },
      { condition: FC_LOW, handles: ['chlorine'] },
    ),
    balanceStep(1, 2),
    restStep(2, 3),
    measureStep('done', 3, 3, 'Read everything again', 'Expected readings are sums; measured ones count.'),
  ],
  notes: [
    'The expected readings are a blend of pool and fill by their shares; where you mixed before draining or drained from the bottom, that is what holds.',
  ],
  figures: drainFigures,
}

export const PARTY: StartMode = {
  id: 'party',
  label: 'After a party',
  when: 'Many more people than usual were in the water.',
  dayOne: 'the evening of the party',
  lastDay: 2,
  whoRules:
    'Your local code comes first. After vomit, blood or faeces, the incident advice in the Water chapter comes before this.',
  inputs: [
    input('bathers', 'People who bathed', 'number', [0, 1000], 'Counted or guessed; small children count in full.', {
      isNeeded: true,
    }),
    input('hours', 'Hours each was in', 'duration', [0, 24], 'On average.', { isNeeded: true }),
  ],
  reads: ['pH', 'fc_mg_per_L_as_Cl2', 'tc_mg_per_L_as_Cl2', 'cya_mg_per_L'],
  targets: [
    {
      key: 'fc_mg_per_L_as_Cl2',
      fromDay: 1,
      toDay: 1,
      change: { kind: 'upper-end' },
      why: 'What guests brought goes on using chlorine through the night.',
      ...OURS,
    },
  ],
  steps: [
    step('out', 1, 1, {
      title: 'Everybody out',
      what: 'Nobody goes back in before the readings allow it.',
      how: 'Cover off, pump on day and night.',
      why: 'Chlorine is at its lowest when the water holds the most.',
    }),
    measureStep(
      'read',
      1,
      1,
      'Read free and total chlorine, and pH',
      'Their difference is combined chlorine: what guests left behind.',
    ),
    step(
      'raise',
      1,
      1,
      {
        title: 'Chlorine for what they brought',
        what: 'In the evening, the low end of the amount first; an hour later read and go on until free chlorine stays at the upper end of its band.',
        how: 'A chlorine without stabiliser, liquid or dissolved, walked around the deep end. Never more than the readings ask for.',
        why: 'The sum is good to a factor of two or three; only the reading knows.',
      },
      {
        often: 'each hour until it holds',
        condition: FC_LOW,
        handles: ['chlorine'],
        figures: ['demand', 'demandLeft', 'partyDose'],
      },
    ),
    step(
      'combined',
      1,
      2,
      {
        title: 'Combined chlorine above its limit',
        what: 'Raise free chlorine by the dose named here, once, in the evening.',
        how: 'Cover off, indoors all ventilation on. Read after an hour and in the morning; repeat only while it is still there.',
        why: 'It stings, smells, and disinfects badly.',
      },
      {
        condition: { on: 'combined', words: 'only where combined chlorine is above its limit' },
        handles: ['chlorine'],
        figures: ['combined', 'breakpointDose'],
      },
    ),
    step('filter', 2, 2, {
      title: 'Filter, skim, level',
      what: 'Clean baskets and filter, skim oils, fill up what was splashed out.',
      how: 'Fresh water for each guest does more than chemistry: WHO names 30 L (from memory).',
      why: 'Urea and sun cream don’t burn off; they leave with water and filter.',
    }),
    step(
      'ph',
      2,
      2,
      {
        title: 'pH after it',
        what: 'Read and correct pH.',
        how: 'By the opening plan, a turnover after the chlorine.',
        why: 'Much chlorine and much splashing both move it.',
      },
      {
        condition: { on: 'target', keys: ['pH'], is: 'outside', words: 'where pH is outside its band' },
        handles: ['acid'],
      },
    ),
    measureStep('done', 2, 2, 'Read again in the morning', 'Only these readings let anyone in.'),
  ],
  notes: [
    'Showers before, toilets used, little ones taken out often: that halves the nitrogen.',
    'Ozone, UV, minerals and the like lower no chlorine floor.',
  ],
  figures: partyFigures,
}
