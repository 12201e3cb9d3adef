import { step, withheld } from './build.ts'
import { MAKER, OURS } from './origins.ts'
import { ALL_READINGS, balanceStep, measureStep, metalsStep, restStep } from './shared-steps.ts'
import { BUCKET, springFigures, UNEXPLAINED_MG_PER_L } from './spring-figures.ts'
import { START_INPUTS } from './start-inputs.ts'
import type { StartMode } from './types.ts'

export const SPRING_OPENING: StartMode = {
  id: 'spring-opening',
  label: 'Spring opening after winter',
  when: 'The pool stood closed over winter with its water in.',
  dayOne: 'the day you uncover it',
  lastDay: 7,
  whoRules: 'The makers of cover, pump, heater and generator for their parts; your local code for the water.',
  inputs: START_INPUTS['spring-opening'],
  reads: ALL_READINGS,
  targets: [
    withheld('fc_mg_per_L_as_Cl2', 1, 1, 'Metals and ammonia have to be known before chlorine goes in.', OURS),
    withheld('ch_mg_per_L_as_CaCO3', 1, 2, 'Wait for readings of water that is mixed.', OURS),
    withheld('cya_mg_per_L', 1, 4, 'Chlorine has to hold overnight first; stabiliser stays in the water.', OURS),
    withheld('borate_mg_per_L_as_B', 1, 4, 'Chlorine has to hold overnight first.', OURS),
    withheld(
      'salt_mg_per_L_as_NaCl',
      1,
      4,
      'Read it once the water is mixed; a generator stays off in cold water anyway.',
      OURS,
    ),
  ],
  steps: [
    step(
      'level',
      1,
      1,
      {
        title: 'Measure the level',
        what: 'How far the water stands below its usual level, before you fill up.',
        how: 'From the same mark as at closing, as closely as you can read it.',
        why: 'It tells how far winter has diluted the water.',
      },
      { figures: ['exchanged'] },
    ),
    step(
      'uncover',
      1,
      1,
      {
        title: 'Uncover',
        what: 'Water off the cover first, then the leaves, then the cover itself; what lies on it stays out of the pool.',
        how: 'With two people. Clean and dry it before you fold it.',
        why: 'The brown water on it feeds algae and uses up chlorine.',
      },
      { handles: ['cover'] },
    ),
    step(
      'power',
      1,
      1,
      {
        title: 'Power and equipment',
        what: 'Winter plugs out, drain plugs in, seals of lids greased, unions tight; then fill to the middle of the skimmer and start the pump.',
        how: 'By the makers’ manuals. Air out of the filter before pressure comes on; look for leaks for an hour.',
        why: 'A pump that runs dry or against a closed valve breaks within minutes.',
      },
      { ...MAKER, handles: ['electricity'] },
    ),
    step(
      'mix',
      1,
      2,
      {
        title: 'Mix, skim, vacuum',
        what: 'Run the pump day and night; leaves out, dirt vacuumed to waste.',
        how: 'Brush walls and floor. Filter clean at the start and when its pressure has risen.',
        why: 'After winter the water lies in layers; before a full turnover you would read one of them only.',
      },
      { often: 'all day' },
    ),
    measureStep(
      'read',
      1,
      1,
      'Read everything, after a turnover',
      'What the sums expect is a guess; what you measure counts. Read metals too where copper was used or the fill is from a well.',
    ),
    metalsStep(1, 2, true),
    step(
      'ammonia',
      1,
      2,
      {
        title: 'Stabiliser gone: test for ammonia first',
        what: 'A bucket test, before any chlorine goes into the pool.',
        how: `1. Put ${BUCKET.litres} L of pool water into a clean white bucket, in the open air, out of the sun, and let it come to room temperature. 2. Stir in the chlorine named here; that makes ${BUCKET.chlorineMgPerL} mg/L. 3. Wait ten minutes and read free chlorine. 4. Nearly all still there: no ammonia to speak of; go on as usual. 5. Half or more gone: give the same again, wait half an hour, read, and count, until it holds. 6. What went in, less what it still holds, is what the pool asks for, in mg/L; enter it. 7. Where that is more than about 50 mg/L, exchange part of the water first. A colour that flashes up and fades is too much chlorine for the test, not none: thin the sample with bottled water and read again. A test kit for ammonia, as aquarium keepers have, says the same. Keep your face away from the bucket, and pour it away alone, with nothing else in it.`,
        why: 'Over winter bacteria can turn stabiliser into ammonia. Chlorine then vanishes within minutes, up to a hundred milligrams per litre and more, and nobody may bathe until it holds.',
      },
      {
        condition: {
          on: 'figure',
          key: 'stabiliserLost',
          above: UNEXPLAINED_MG_PER_L,
          words: `where stabiliser reads more than ${UNEXPLAINED_MG_PER_L} mg/L lower than dilution explains; to be safe also where nobody measured it before or now`,
        },
        handles: ['chlorine'],
        figures: ['stabiliserLost', 'ammoniaChlorine', 'bucketDose', 'bucketChlorine'],
      },
    ),
    balanceStep(2, 3),
    step(
      'chlorine',
      2,
      5,
      {
        title: 'Chlorine until it holds overnight',
        what: 'Raise it to the upper end of its band and keep it there.',
        how: 'Liquid or dissolved, cover off. Read at dusk and at dawn, with nothing dosed between. It holds when no more than 1 mg/L is lost, the water is clear and combined chlorine is inside its limit.',
        why: 'What is lost in the dark is not the sun’s doing: something in the water still uses it.',
      },
      {
        often: 'at dusk and dawn',
        condition: {
          on: 'target',
          keys: ['fc_mg_per_L_as_Cl2'],
          is: 'below',
          words: 'while free chlorine falls below its band',
        },
        handles: ['chlorine'],
      },
    ),
    step('drains', 2, 3, {
      title: 'Drain covers, ladders, rescue gear',
      what: 'See that all of them are there, whole and fixed, before anyone swims.',
      how: 'Try every screw by hand. Where a drain cover is loose, cracked or missing, nobody goes in.',
      why: 'Frost loosens them.',
    }),
    restStep(5, 7),
    measureStep('done', 7, 7, 'Read everything', 'From here on the ordinary plan and upkeep hold.'),
  ],
  notes: [
    'The readings expected after winter are there to plan and buy by. Dose only by measured ones.',
    'Tests go wrong in cold water: stabiliser reads low, chlorine reacts slowly. Warm the samples to room temperature.',
  ],
  figures: springFigures,
}
