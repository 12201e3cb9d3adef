import { step, withheld } from './build.ts'
import { MAKER, OURS } from './origins.ts'
import {
  ALL_READINGS,
  balanceStep,
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

const DRY = 'Dry grains bleach and weaken a liner and stain a shell where they lie.'

export const LINER_OR_SHELL: StartMode = {
  id: 'liner-or-shell',
  label: 'Vinyl or fibreglass, first filling',
  when: 'A new liner or shell is filled for the first time.',
  dayOne: 'the day the water reached its level',
  lastDay: 7,
  whoRules:
    'The installer of the liner or shell comes first, and the maker’s limits for pH, chlorine and level with them.',
  inputs: START_INPUTS['liner-or-shell'],
  reads: ALL_READINGS,
  targets: [
    withheld('ch_mg_per_L_as_CaCO3', 1, 2, 'Neither needs calcium at once; heater and fittings like some.', OURS),
    withheld('cya_mg_per_L', 1, 1, 'Chlorine and pH first; then it is known how much is wanted.', OURS),
    withheld('borate_mg_per_L_as_B', 1, 3, 'pH has to hold first.', OURS),
    withheld('salt_mg_per_L_as_NaCl', 1, 3, 'It changes every other reading a little; last.', OURS),
  ],
  steps: [
    step(
      'liner',
      1,
      1,
      {
        title: 'Fill slowly at first',
        what: 'The first of the water, no deeper than a hand is broad, goes in with the installer there.',
        how: 'Smooth out folds towards the walls while the water is shallow; openings are cut only when the water stands just below them.',
        why: 'A fold under deep water stays.',
      },
      { ...MAKER, surfaces: ['vinyl', 'unknown'] },
    ),
    step(
      'backfill',
      1,
      1,
      {
        title: 'Water and backfill rise together',
        what: 'Neither gets far ahead of the other.',
        how: 'The installer sets how far; check level and straightness as it rises.',
        why: 'A shell filled alone bulges out, one backfilled alone bulges in.',
      },
      { ...MAKER, surfaces: ['fibreglass', 'unknown'] },
    ),
    readFillStep('Metals show now or as stains later.'),
    metalsStep(1, 2, true),
    step(
      'pump',
      1,
      2,
      {
        title: 'Pump on, heater off',
        what: 'Run the pump day and night until everything is balanced.',
        how: 'Air out, all returns open; look for leaks at every fitting.',
        why: 'Doses need moving water.',
      },
      { often: 'all day', handles: ['electricity'] },
    ),
    balanceStep(1, 3),
    step(
      'chlorine',
      1,
      7,
      {
        title: 'Chlorine on the first day',
        what: 'Bring free chlorine into its band.',
        how: `Liquid, or dissolved in a bucket of water first; never thrown in dry. ${DRY}`,
        why: 'Water must not stand without chlorine.',
      },
      {
        often: 'by the daily reading',
        condition: FC_LOW,
        handles: ['chlorine'],
      },
    ),
    stabiliserStep(2, 5, {
      what: 'Raise it into its band, the safe share first.',
      how: `In a sock hung in front of a return, touching neither wall nor floor. ${DRY}`,
      why: 'It dissolves over days and stays in the water.',
    }),
    calciumStep(3, 6, {
      what: 'Raise calcium hardness where it is below its band.',
      how: 'Stir it a little at a time into a bucket of water, which gets hot; keep it half a day apart from any alkalinity product.',
      why: 'For heater and fittings, not for the surface; the maker of a shell may want less.',
    }),
    saltStep(4, 7, {
      what: 'Raise salt into the generator’s band.',
      how: 'Spread it over the deep end, pump on, generator off; brush until no grain is left. Wait a day, read, and only then start the generator.',
      why: 'It comes last, and the maker of shell or liner may set limits to it.',
    }),
    step(
      'heater',
      3,
      7,
      {
        title: 'Heater may come',
        what: 'Switch it on once pH and alkalinity are inside their bands.',
        how: 'By its manual, and no warmer than the liner’s or shell’s maker allows.',
        why: 'Water out of balance eats a heater, or coats it with scale.',
      },
      { ...MAKER, handles: ['electricity'] },
    ),
    measureStep('done', 7, 7, 'Read everything', 'From here on the ordinary plan and upkeep hold.'),
  ],
  notes: [
    'Strong chlorine, and pH below 7, bleach and wrinkle liners: hold the bands, and never leave a floater to rest at one place.',
    'Never empty a liner or a shell without its installer.',
  ],
}
