import { step, withheld } from './build.ts'
import { MAKER, OURS } from './origins.ts'
import {
  ALL_READINGS,
  calciumStep,
  FC_LOW,
  measureStep,
  metalsStep,
  readFillStep,
  saltStep,
  stabiliserStep,
} from './shared-steps.ts'
import { START_INPUTS } from './start-inputs.ts'
import type { StartMode } from './types.ts'

/** First days on which each may come; common practice differs by weeks, these are on the careful side. */
export const PLASTER_DAYS = Object.freeze({ chlorine: 3, calcium: 7, stabiliser: 14, heater: 28, salt: 30 })

/** Nobody bathes for so many days (common practice, no source; practice runs from days to a month, the week is our choice). */
const CLOSED_DAYS = 7

const LIME = 'Fresh plaster gives off lime: pH and alkalinity climb by themselves, fastest in the first two weeks.'
const band = (low: number, aim: number, high: number) => ({ kind: 'band', band: { low, aim, high } }) as const

export const NEW_PLASTER: StartMode = {
  id: 'new-plaster',
  label: 'New plaster, first filling',
  when: 'The shell was plastered, pebbled or quartzed in the last days, and is being filled or was just filled.',
  dayOne: 'the day the water reached its level',
  lastDay: 30,
  whoRules:
    'The plasterer’s written start-up comes before all of this, and the guarantee may hang on it. Where the two differ, follow the plasterer.',
  inputs: START_INPUTS['new-plaster'],
  reads: ALL_READINGS,
  targets: [
    {
      key: 'pH',
      fromDay: 1,
      toDay: 30,
      change: band(7.2, 7.4, 7.6),
      why: `${LIME} The lower half of the band gives a day’s room.`,
      ...OURS,
    },
    {
      key: 'ta_mg_per_L_as_CaCO3',
      fromDay: 1,
      toDay: 30,
      change: { ...band(70, 80, 100), isHighLeft: true },
      why: 'Lime raises it by itself, so start low; far below this band the water eats new plaster. Above it only pH is set right: rounds of acid and air are too much for young plaster.',
      ...OURS,
    },
    withheld(
      'fc_mg_per_L_as_Cl2',
      1,
      PLASTER_DAYS.chlorine - 1,
      'Common practice leaves the first two days without chlorine, so that colours set evenly.',
      OURS,
    ),
    withheld(
      'ch_mg_per_L_as_CaCO3',
      1,
      PLASTER_DAYS.calcium - 1,
      'The plaster gives calcium of its own; add what is missing once pH holds.',
      OURS,
    ),
    withheld(
      'cya_mg_per_L',
      1,
      PLASTER_DAYS.stabiliser - 1,
      'It is an acid and dissolves slowly: grains that lie on fresh plaster mark it.',
      OURS,
    ),
    withheld('borate_mg_per_L_as_B', 1, 29, 'It would hide how pH moves while the plaster cures.', OURS),
    withheld('salt_mg_per_L_as_NaCl', 1, PLASTER_DAYS.salt - 1, 'Salt on fresh plaster is said to mottle it.', OURS),
  ],
  steps: [
    step(
      'closed',
      1,
      CLOSED_DAYS,
      {
        title: 'Nobody bathes',
        what: 'Keep the pool closed for the first week, and longer where the plasterer says so; then the readings decide.',
        how: 'Fence and gate shut. Tell everyone in the house.',
        why: 'There is little or no chlorine at first, acid goes in every day, and feet mark soft plaster and stir its dust up.',
      },
      { ...OURS, closesPool: true },
    ),
    step('fill', 1, 1, {
      title: 'Fill in one go',
      what: 'Fill to the middle of the skimmer without stopping.',
      how: 'Lay the hose at the deepest place, its end wrapped in clean cloth; nobody walks in the pool, nothing falls in. Write down the meter before and after.',
      why: 'Each stop leaves a ring, and running water scours what is still soft. The meter gives you the true volume.',
    }),
    readFillStep('The first acid and every target start from it; metals stain new plaster for good.'),
    metalsStep(1, 3, true),
    step(
      'pump',
      1,
      7,
      {
        title: 'Pump day and night',
        what: 'Run the filter pump without a break; heater, generator and blower stay off.',
        how: 'Start it as soon as the water is at its level and all air is out. Read the pressure twice a day.',
        why: 'Plaster dust has to leave by the filter before it settles.',
      },
      { often: 'all day', handles: ['electricity'] },
    ),
    step(
      'brush',
      1,
      7,
      {
        title: 'Brush everything, twice a day',
        what: 'Walls, floor, steps and corners, all of the plaster.',
        how: 'A soft nylon brush, from the shallow end to the main drain, until no more cloud rises.',
        why: 'The white dust is lime; where it stays it hardens into a crust.',
      },
      { often: 'twice a day' },
    ),
    step(
      'brush-on',
      8,
      28,
      {
        title: 'Brush once a day',
        what: 'All of the plaster, until brushing raises no more dust.',
        how: 'As before. Watch corners and steps.',
        why: 'There is less dust now, but not none.',
      },
      { often: 'once a day' },
    ),
    step(
      'acid',
      1,
      14,
      {
        title: 'Acid daily, by the reading',
        what: 'Read pH and alkalinity every morning; where pH stands above its band, bring it back to its aim.',
        how: 'The amount is the opening plan’s for today’s reading, never yesterday’s. Small pours an hour apart, walking along the deep end, in front of returns; never into a skimmer, never all on one spot.',
        why: `${LIME} Too little acid leaves scale, too much eats the surface: only the reading tells.`,
      },
      {
        often: 'every morning',
        condition: { on: 'target', keys: ['pH'], is: 'above', words: 'only where pH reads above 7.6' },
        handles: ['acid'],
        figures: ['acidPerTen'],
      },
    ),
    step(
      'acid-on',
      15,
      30,
      {
        title: 'Acid every second or third day, by the reading',
        what: 'Go on reading; dose only what the reading asks for.',
        how: 'As before, in small pours.',
        why: 'The climb slows down over weeks, and may go on for months.',
      },
      {
        often: 'every second day',
        condition: { on: 'target', keys: ['pH'], is: 'above', words: 'only where pH reads above 7.6' },
        handles: ['acid'],
        figures: ['acidPerTen'],
      },
    ),
    step(
      'filter',
      2,
      14,
      {
        title: 'Clean the filter early',
        what: 'Wash it when its pressure has risen as its maker says.',
        how: 'Pump off, air out, lid and clamp by the manual. Rinse plaster dust off a cartridge with water only.',
        why: 'The dust sets in it like cement.',
      },
      { ...MAKER, handles: ['electricity'] },
    ),
    step(
      'chlorine',
      PLASTER_DAYS.chlorine,
      30,
      {
        title: 'Chlorine may come',
        what: 'Bring free chlorine into its band and hold it there.',
        how: 'Liquid, stirred into a bucket of pool water and walked around; no granules, no tablets, no floater on new plaster. The plasterer may want it sooner, above all in warm water.',
        why: 'Water must not stand without chlorine for long; undissolved chlorine bleaches new plaster.',
      },
      {
        ...OURS,
        often: 'by the daily reading',
        condition: FC_LOW,
        handles: ['chlorine'],
      },
    ),
    step(
      'wheels',
      1,
      28,
      {
        title: 'No wheels, no robot, no toys',
        what: 'Keep cleaners, vacuum heads on wheels and ladders’ feet off the plaster.',
        how: 'Vacuum with a brush head only, and not in the first two days.',
        why: 'Wheels press tracks into young plaster, and they stay.',
      },
      OURS,
    ),
    calciumStep(PLASTER_DAYS.calcium, 28, {
      what: 'Raise calcium hardness into its band, in parts over days.',
      how: 'Stir it a little at a time into a big bucket of water, which gets hot; pour that in front of a return, half a day apart from any alkalinity product.',
      why: 'Soft water takes calcium out of the plaster.',
    }),
    stabiliserStep(PLASTER_DAYS.stabiliser, 30, {
      what: 'Raise it into its band, the safe share first.',
      how: 'In a sock hung in front of a return, off the wall; squeeze it daily, with gloves, until it is gone. Never loose on plaster, never in tablets with chlorine yet.',
      why: 'It shields chlorine from the sun. It stays in the water, so it waits until the rest holds.',
    }),
    step(
      'heater',
      PLASTER_DAYS.heater,
      30,
      {
        title: 'Heater may come',
        what: 'Warm the water slowly, once brushing raises no dust and pH holds for some days.',
        how: 'Follow the heater’s manual; a few degrees a day.',
        why: 'Dust bakes onto its tubes, and warm water cures plaster unevenly.',
      },
      { ...OURS, handles: ['electricity'] },
    ),
    measureStep('measure', 28, 28, 'Read everything', 'Before salt and borate go in, the water has to hold by itself.'),
    saltStep(PLASTER_DAYS.salt, 30, {
      what: 'Raise salt into the generator’s band, in two parts a day apart.',
      how: 'Spread it over the deep end, pump on, generator off; brush until no grain is left, wait a day, read, then the rest and only then the generator.',
      why: 'Undissolved salt marks young plaster; the generator measures wrong until it is mixed.',
    }),
    measureStep('done', 30, 30, 'Read everything once more', 'From here on the ordinary plan and upkeep hold.'),
  ],
  notes: [
    'The days are common practice, no source; plasterers differ by weeks. White, coloured and pebble finishes are not alike.',
    'The plasterer says first when people may bathe; then the readings do.',
    'How much acid a day will need, nobody can tell beforehand: the morning’s reading does.',
  ],
}
