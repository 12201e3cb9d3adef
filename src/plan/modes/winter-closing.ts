import { step, withheld } from './build.ts'
import { DRAINING, MAKER, OURS } from './origins.ts'
import { balanceStep, measureStep, USUAL_READINGS } from './shared-steps.ts'
import { START_INPUTS } from './start-inputs.ts'
import type { StartMode } from './types.ts'
import { CLOSING_PH, winterFigures } from './winter-figures.ts'

const STAYS = 'It stays in the water over winter; rain thins it. Wait for spring’s reading.'

export const WINTER_CLOSING: StartMode = {
  id: 'winter-closing',
  label: 'Closing for winter',
  when: 'The water is colder than about 12 °C and nobody bathes any more.',
  dayOne: 'a week before the cover goes on',
  lastDay: 7,
  whoRules:
    'The makers of cover, liner or shell, pump, heater and generator for their parts; where frost is hard, a licensed trade.',
  inputs: START_INPUTS['winter-closing'],
  reads: [...USUAL_READINGS, 'borate_mg_per_L_as_B', 'salt_mg_per_L_as_NaCl'],
  targets: [
    {
      key: 'pH',
      fromDay: 1,
      toDay: 7,
      change: { kind: 'band', band: CLOSING_PH },
      why: 'Cold water dissolves more chalk: the upper half of the band protects plaster, grout and metal.',
      ...OURS,
    },
    {
      key: 'fc_mg_per_L_as_Cl2',
      fromDay: 1,
      toDay: 7,
      change: { kind: 'upper-end' },
      why: 'It has to last into the cold, when next to nothing uses it.',
      ...OURS,
    },
    withheld('cya_mg_per_L', 1, 7, STAYS),
    withheld('borate_mg_per_L_as_B', 1, 7, STAYS),
    withheld('salt_mg_per_L_as_NaCl', 1, 7, STAYS),
  ],
  steps: [
    measureStep(
      'read',
      1,
      1,
      'Read everything',
      'A week is enough to correct and mix; under a cover nothing can be corrected.',
    ),
    balanceStep(1, 3),
    step(
      'cold',
      1,
      3,
      {
        title: 'Balance for the cold',
        what: 'See the calcite SI that this water will have at 2 to 5 °C; on plaster and tile it should not fall below −0.3.',
        how: 'By the plan: pH inside its band first, then alkalinity, then calcium. Nothing above its band.',
        why: 'Cold water dissolves more chalk out of plaster and grout, and a winter is long.',
      },
      { ...OURS, figures: ['coldSI', 'coldPH', 'balancedPH', 'refilledSI'], handles: ['acid', 'alkali', 'calcium'] },
    ),
    step('clean', 2, 5, {
      title: 'Clean everything',
      what: 'Skim, brush and vacuum, and clean the filter; leaves are out before chlorine goes in.',
      how: 'Run the pump day and night on these days.',
      why: 'What is in the water now will still be there in spring, and rotten.',
    }),
    step(
      'chlorine',
      3,
      4,
      {
        title: 'Chlorine to the upper end',
        what: 'Raise it to the upper end of its band, cover off, and let it work two or three days.',
        how: 'Liquid or dissolved, pump on. If combined chlorine is above its limit, break that down first.',
        why: 'The water has to go into winter clean; once the pump is off nothing stirs chlorine in.',
      },
      { handles: ['chlorine'] },
    ),
    step(
      'feeders',
      5,
      6,
      {
        title: 'Chemicals out of everything',
        what: 'Feeder, floater and skimmer empty; no tablet stays in a skimmer or under a cover.',
        how: 'Gloves and goggles; each product back into its own container or used up. A feeder is opened in fresh air, and never filled with another chlorine.',
        why: 'In still water a tablet makes acid and gas, and eats liner, metal and cover.',
      },
      { handles: ['chlorine'] },
    ),
    step(
      'equipment',
      6,
      6,
      {
        title: 'Equipment, by its makers',
        what: 'Pump, filter, heater, generator cell and pipes emptied and protected against frost.',
        how: 'Each by its manual. Pipes are blown out and plugged; antifreeze only a kind made for pools and drinking water, never a car’s.',
        why: 'Freezing water breaks what holds it.',
      },
      { ...MAKER, handles: ['electricity'] },
    ),
    step(
      'level',
      6,
      6,
      {
        title: 'Lower the level, not more than needed',
        what: 'As far as cover and skimmer ask; write down by how much.',
        how: 'Slowly, to where water may go, chlorine inside its band or below. A liner or shell stays as full as its maker says; nobody empties a pool for winter.',
        why: 'Water holds shell and liner in place against ground and frost. The figure tells next spring how far winter diluted it.',
      },
      { ...DRAINING, handles: ['draining'], figures: ['exchanged'] },
    ),
    measureStep(
      'last',
      7,
      7,
      'Last readings, into the logbook',
      'Spring’s sums start from these, stabiliser above all.',
    ),
    step(
      'cover',
      7,
      7,
      {
        title: 'Cover on, once chlorine is inside its band',
        what: 'Closed only when free chlorine reads inside its band again.',
        how: 'Fixed all round as its maker says, safe for children and animals, checked after each storm.',
        why: 'Strong chlorine under a closed cover eats it and goes nowhere.',
      },
      {
        handles: ['cover'],
      },
    ),
  ],
  notes: [
    'Stabiliser and borate stay in the water. In a mild winter bacteria can turn stabiliser into ammonia: read it again in spring.',
    'Through winter look once a month: level, cover, leaves, water on the cover. In mild spells read chlorine where you can.',
    'Where it does not freeze, leave the pump running a few hours a day and keep the usual bands.',
  ],
  staysClosed: {
    title: 'The pool is closed for winter',
    how: 'Nothing is dosed and nobody bathes. Look once a month: level, cover, leaves, water on the cover. When winter is over, begin “Spring opening after winter”, or another start that fits; the plan goes on from the readings you take then.',
    why: 'Under a cover with the pump off nothing mixes, and what a winter leaves of each reading is another water.',
  },
  figures: winterFigures,
}
