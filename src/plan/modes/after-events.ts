import { step } from './build.ts'
import { DRAINING } from './origins.ts'
import { drainFigures, rainFigures } from './rain-and-drain.ts'
import { balanceStep, FC_LOW, measureStep, restStep, USUAL_READINGS } from './shared-steps.ts'
import { START_INPUTS } from './start-inputs.ts'
import type { StartMode } from './types.ts'

const MIXED = 'After a turnover: rain and fresh water lie on top until then.'
export const HEAVY_RAIN: StartMode = {
  id: 'heavy-rain',
  label: 'After heavy rain',
  when: 'A storm or days of rain fell into the pool, or water ran in from the ground.',
  dayOne: 'the day the rain ends',
  lastDay: 2,
  whoRules: 'Your local code comes first; after a flood or sewage the health authority.',
  inputs: START_INPUTS['heavy-rain'],
  reads: USUAL_READINGS,
  targets: [],
  steps: [
    step(
      'safe',
      1,
      1,
      {
        title: 'Look before you touch',
        what: 'Wait until thunder is gone, look for a flooded pump or socket, keep everybody out of the water.',
        how: 'Where equipment stood in water, leave it off and call an electrician. Treat muddy water from a flood or a drain as sewage: keep out and ask the health authority.',
        why: 'Storm water and electricity hurt more people than chemicals do.',
      },
      { handles: ['electricity'], closesPool: true },
    ),
    step(
      'level',
      1,
      1,
      {
        title: 'Bring the level down',
        what: 'To the middle of the skimmer, not lower.',
        how: 'Slowly, to where waste water may go; not at all while groundwater stands high around the pool.',
        why: 'A skimmer under water does not skim. After rain groundwater pushes hardest against the shell.',
      },
      { ...DRAINING, handles: ['draining'], figures: ['inflow', 'overflow'] },
    ),
    step('clean', 1, 1, {
      title: 'Skim, brush, filter',
      what: 'Take out leaves and silt; leave the pump on for a whole turnover.',
      how: 'Clean baskets and filter before and after.',
      why: 'Dirt uses more chlorine than the rain took.',
    }),
    measureStep('read', 1, 1, 'Read the pool', MIXED),
    step(
      'chlorine',
      1,
      1,
      {
        title: 'Chlorine the same day',
        what: 'Bring it back into the upper half of its band.',
        how: 'Liquid or dissolved, cover off, pump on.',
        why: 'Rain thins it, and the dirt in it uses it up.',
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
  inputs: START_INPUTS['partial-drain'],
  reads: USUAL_READINGS,
  targets: [],
  steps: [
    step(
      'before',
      1,
      1,
      {
        title: 'If it is not done yet: in parts, slowly',
        what: 'Never take out all of it at once; refill between parts.',
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
        why: 'A pump or heater that runs dry is ruined within minutes.',
      },
      { handles: ['electricity'] },
    ),
    measureStep(
      'fill',
      1,
      1,
      'Read the fill water',
      'It is now a good part of your pool, and its hardness and metals came with it.',
    ),
    measureStep('read', 1, 1, 'Read the pool', MIXED),
    step(
      'chlorine',
      1,
      1,
      {
        title: 'Chlorine the same day',
        what: 'Bring it back into its band.',
        how: 'Liquid or dissolved, pump on.',
        why: 'Fresh water brought hardly any.',
      },
      { condition: FC_LOW, handles: ['chlorine'] },
    ),
    balanceStep(1, 2),
    restStep(2, 3),
    measureStep('done', 3, 3, 'Read everything again', 'Expected readings are sums; measured ones count.'),
  ],
  notes: [
    'The expected readings are a blend of pool and fill by their shares, as if the pool was well mixed when the water left.',
  ],
  figures: drainFigures,
}
