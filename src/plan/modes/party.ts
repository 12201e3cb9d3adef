import { step } from './build.ts'
import { OURS } from './origins.ts'
import { partyFigures } from './party-figures.ts'
import { FC_LOW, measureStep } from './shared-steps.ts'
import { START_INPUTS } from './start-inputs.ts'
import type { StartMode } from './types.ts'

export const PARTY: StartMode = {
  id: 'party',
  label: 'After a party',
  when: 'Many more people than usual were in the water.',
  dayOne: 'the evening of the party',
  lastDay: 2,
  whoRules:
    'Your local code comes first. After vomit, blood or faeces, the incident advice in the Water chapter comes before this.',
  inputs: START_INPUTS['party'],
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
    step(
      'out',
      1,
      1,
      {
        title: 'Everybody out',
        what: 'Nobody goes back in before the readings allow it.',
        how: 'Cover off, pump on day and night.',
        why: 'Chlorine is lowest just when the water holds most of what bathers brought.',
      },
      { closesPool: true },
    ),
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
        why: 'The sum is good to a factor of two or three; only the reading tells.',
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
      how: 'Fresh water does more than chemistry here: WHO names 30 L for each bather (from memory).',
      why: 'Chlorine hardly burns off urea and sun cream; they leave with the water and by the filter.',
    }),
    step(
      'ph',
      2,
      2,
      {
        title: 'pH after it',
        what: 'Read and correct pH.',
        how: 'By the opening plan, a turnover after the chlorine, never together with it.',
        why: 'Much chlorine and much splashing both move it.',
      },
      {
        condition: { on: 'target', keys: ['pH'], is: 'outside', words: 'where pH is outside its band' },
        handles: ['acid', 'alkali'],
      },
    ),
    measureStep('done', 2, 2, 'Read again in the morning', 'Only these readings let anyone in.'),
  ],
  notes: [
    'Showers before, toilets used, little ones taken out often: that keeps much of the nitrogen out.',
    'Ozone, UV, minerals and the like do not lower the least chlorine.',
  ],
  figures: partyFigures,
}
