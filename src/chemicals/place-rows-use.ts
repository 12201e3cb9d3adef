import { ACID, ANY, CAL_HYPO, CHLORINE, HYPOCHLORITE, OXIDISER, rule, STABILISED, TRICHLOR } from './place-matches.ts'
import type { PlaceRule } from './places.ts'
import { CSB, EPA_ALERT, EPA_AND_CSB, MARYLAND, MEMORY, MMWR_2017, PRACTICE } from './sources.ts'

/** In feeders, baskets and buckets, and in the pool itself. */
export const USE_RULES: readonly PlaceRule[] = [
  rule(
    {
      id: 'feeder-two-chlorines',
      where: 'feeder',
      kind: 'danger',
      about: HYPOCHLORITE,
      meets: STABILISED,
      text: 'Calcium or other hypochlorite and stabilised chlorine in one feeder or floater burn, explode and give off toxic gas; traces are enough.',
      instead: 'One feeder for one kind, marked, for its whole life. Washing does not make it safe for the other.',
    },
    EPA_AND_CSB,
  ),
  rule(
    {
      id: 'feeder-acid-and-chlorine',
      where: 'feeder',
      kind: 'danger',
      about: ACID,
      meets: CHLORINE,
      text: 'Acid and chlorine in one dosing line or feeder, or fed while no water flows, make chlorine gas that comes out of the returns when the pump starts again.',
      instead: 'Own pumps, lines and injection points, and a switch that stops both when the flow stops.',
    },
    MMWR_2017,
  ),
  rule(
    {
      id: 'feeder-no-flow',
      where: 'feeder',
      kind: 'danger',
      about: CHLORINE,
      text: 'A feeder that goes on without flow fills the pipe with strong chlorine.',
      instead:
        'Let it run only while the circulation truly moves; after a stop, nobody in the water for the first minutes.',
    },
    MMWR_2017,
  ),
  rule(
    {
      id: 'basket-cal-hypo',
      where: 'basket',
      kind: 'danger',
      about: CAL_HYPO,
      text: 'Calcium hypochlorite in a skimmer or pump basket may meet what a tablet of trichlor left there: fire and gas.',
      instead: 'Dissolve it in a clean bucket of water and pour it in, or use a feeder made for it.',
    },
    EPA_AND_CSB,
  ),
  rule(
    {
      id: 'basket-tablets-pump-off',
      where: 'basket',
      kind: 'danger',
      about: TRICHLOR,
      text: 'Tablets in a skimmer go on dissolving while the pump is off: strong acid and chlorine stand there, then go through pump and heater.',
      instead:
        'A feeder behind the heater or a floater; if the skimmer after all, take the tablets out before the pump stops.',
    },
    PRACTICE,
  ),
  rule(
    {
      id: 'basket-acid',
      where: 'basket',
      kind: 'spoils',
      about: { groups: ['acid'] },
      text: 'Acid poured into a skimmer eats pump seal and heater, and gasses where a tablet lies.',
      instead: 'In front of a return at the deep end, pump running.',
    },
    PRACTICE,
  ),
  rule(
    {
      id: 'bucket-one-product',
      where: 'bucket',
      kind: 'danger',
      about: OXIDISER,
      meets: ANY,
      text: 'Two products in one bucket, scoop or jug, even one after the other and damp, can burn or give off gas.',
      instead: 'A bucket and a scoop for each, marked, dry and clean.',
    },
    EPA_ALERT,
  ),
  rule(
    {
      id: 'bucket-acid-and-chlorine',
      where: 'bucket',
      kind: 'danger',
      about: ACID,
      meets: CHLORINE,
      text: 'Acid and chlorine in one bucket give off chlorine gas at once.',
      instead: 'Never the same bucket, never side by side.',
    },
    MMWR_2017,
  ),
  rule(
    {
      id: 'bucket-acid-and-alkali',
      where: 'bucket',
      kind: 'danger',
      about: ACID,
      meets: { groups: ['alkali', 'carbonate', 'reducer'] },
      text: 'Undiluted they boil, foam and spatter; sulphite and thiosulphate give off sulphur dioxide.',
      instead: 'A bucket for acid alone.',
    },
    MEMORY,
  ),
  rule(
    {
      id: 'bucket-water-first',
      where: 'bucket',
      kind: 'danger',
      about: { groups: ['acid', 'alkali', 'calcium', 'hypochlorite', 'isocyanurate', 'oxidiser'] },
      text: 'Water poured onto a chemical boils and spatters; on dry chlorine it can start a fire.',
      instead: 'Fill the bucket with water first, then the chemical into the water, a little at a time.',
    },
    MARYLAND,
  ),
  rule(
    {
      id: 'bucket-tablets',
      where: 'bucket',
      kind: 'danger',
      about: TRICHLOR,
      text: 'Trichlor with a little water heats up, gives off chlorine and can form explosive nitrogen trichloride.',
      instead: 'Never crush it, never dissolve it by hand, and keep its tub dry.',
    },
    CSB,
  ),
  rule(
    {
      id: 'pool-pump-off',
      where: 'pool',
      kind: 'danger',
      about: ANY,
      text: 'What is dosed without flow stays where it is, strong enough to burn, and acid and chlorine meet in the pipe.',
      instead: 'Pump on, water truly moving, nobody in the water.',
    },
    MMWR_2017,
  ),
  rule(
    {
      id: 'pool-acid-and-chlorine',
      where: 'pool',
      kind: 'danger',
      about: ACID,
      meets: CHLORINE,
      text: 'Acid poured where chlorine has just gone in sets chlorine gas free above the water.',
      instead: 'A whole turnover between them, and another place to pour.',
    },
    MMWR_2017,
  ),
  rule(
    {
      id: 'pool-closed-cover',
      where: 'pool',
      kind: 'spoils',
      about: OXIDISER,
      text: 'Under a closed cover a big dose of oxidiser gasses, bleaches and rots the cover and does not get rid of what it oxidised.',
      instead: 'Cover off until chlorine is back in its band.',
    },
    PRACTICE,
  ),
  rule(
    {
      id: 'pool-calcium-and-carbonate',
      where: 'pool',
      kind: 'spoils',
      about: { groups: ['calcium'] },
      meets: { groups: ['carbonate'] },
      text: 'Where calcium and carbonate meet strong, chalk falls out and clouds the water.',
      instead: 'Half a day and a turnover between them.',
    },
    PRACTICE,
  ),
]
