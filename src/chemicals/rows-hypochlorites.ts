import { active, derived, gallons, kg, lb, litres, memory, part, partPerL, practice, product } from './row.ts'
import type { Part, Product } from './types.ts'

const CL2 = 70.906
const NACL = 58.4428
const CA_OCL2 = 142.982

const wait = { turnovers: 1, hoursAtLeast: 4, why: 'so that it is mixed through; measure before anyone bathes' }

// 20 trade %, the strongest that keeps its salt dissolved at all, is about 17 % by mass; from memory
const NAOCL_ACTIVE = active(
  'sodium hypochlorite',
  74.4422,
  17,
  'Liquid chlorine stronger than 20 trade % is not sold: its salt falls out. Most is 10 to 15 trade %.',
)

/** NaOCl made from chlorine and lye: as much salt as hypochlorite, and 4 g/L of lye left over. */
const bleach = (availableGPerL: number, densityGPerML: number): Part[] => [
  partPerL('NaXcO', availableGPerL, densityGPerML, CL2),
  partPerL('NaCl', availableGPerL, densityGPerML, CL2),
  partPerL('NaOH', 4, densityGPerML, 39.9971),
]

/** Calcium hypochlorite of a nominal strength; salt, lime and chalk as in the usual grade. */
const calHypo = (availablePercent: number, saltPercent: number): Part[] => [
  part('CaXc2O2', (availablePercent * CA_OCL2) / (2 * CL2), CA_OCL2),
  part('NaCl', saltPercent, NACL),
  part('Ca(OH)2', 3, 74.0927),
  part('CaCO3', 2, 100.0869),
]

const liquid = (tradePercent: number, densityGPerML: number, id: string, aliases: Product['aliases']): Product =>
  product({
    id,
    label: `Liquid chlorine ${tradePercent} %`,
    strength: `${tradePercent} trade % sodium hypochlorite: ${tradePercent * 10} g of chlorine per litre`,
    form: 'liquid',
    densityGPerML,
    contains: bleach(tradePercent * 10, densityGPerML),
    active: NAOCL_ACTIVE,
    availableChlorine: tradePercent / 100 / densityGPerML,
    groups: ['hypochlorite'],
    uses: ['chlorine'],
    packages: [...litres(densityGPerML, 5, 10, 20), ...gallons(densityGPerML, 1, 2.5)],
    how: 'Pour it slowly in front of a return, low over the water, with the pump running.',
    wait,
    cautions: [
      'gear',
      'no-acid-near',
      'never-mix',
      'pump-running',
      'open-cover',
      'wait-to-bathe',
      'old-liquid',
      'label',
    ],
    sources: [
      memory(`trade % = grams of chlorine per 100 mL; density ${densityGPerML} kg/L`),
      memory('as much salt as hypochlorite, 4 g/L of lye'),
    ],
    aliases,
  })

const solid = (
  given: Pick<Product, 'id' | 'label' | 'form' | 'how' | 'packages' | 'aliases' | 'cautions' | 'wait'> & {
    readonly percent: number
    readonly saltPercent: number
    readonly pieceG?: number | undefined
  },
): Product =>
  product({
    id: given.id,
    label: given.label,
    strength: `${given.percent} % available chlorine`,
    form: given.form,
    densityGPerML: 0.95,
    contains: calHypo(given.percent, given.saltPercent),
    active: active('calcium hypochlorite', CA_OCL2),
    availableChlorine: given.percent / 100,
    groups: ['hypochlorite'],
    uses: ['chlorine'],
    packages: given.packages,
    pieceG: given.pieceG,
    how: given.how,
    wait: given.wait,
    cautions: given.cautions,
    sources: [
      derived('available chlorine = 2 × 70.906 / 142.98 of the calcium hypochlorite in it'),
      memory(`${given.saltPercent} % salt, 3 % lime, 2 % chalk, the rest water`),
      memory('bulk density about 0.95 g/mL'),
    ],
    aliases: given.aliases,
  })

const CAL_HYPO_CAUTIONS: Product['cautions'] = [
  'gear',
  'no-acid-near',
  'never-mix',
  'keep-dry',
  'not-on-surface',
  'pump-running',
  'into-water',
  'open-cover',
  'wait-to-bathe',
]
const GRANULAR_HOW =
  'Dissolve it in a bucket of pool water, grains into water, let it settle and pour the clear part round the deep end.'
const TABLET_HOW =
  'Only in a feeder made for calcium hypochlorite, pump running; never in a feeder that has held trichlor.'
const CAL_HYPO_PACKAGES = [...kg(1, 5, 10, 25), ...lb(5, 25, 50)]

export const HYPOCHLORITES: readonly Product[] = [
  liquid(12.5, 1.168, 'liquid-chlorine-12', [{ name: 'sodium hypochlorite 12.5 trade % (per mL)', basis: 'mL' }]),
  liquid(10, 1.14, 'liquid-chlorine-10', []),
  solid({
    id: 'cal-hypo-65',
    label: 'Calcium hypochlorite 65 %',
    percent: 65,
    saltPercent: 15,
    form: 'granular',
    how: GRANULAR_HOW,
    wait,
    packages: CAL_HYPO_PACKAGES,
    cautions: CAL_HYPO_CAUTIONS,
    aliases: [],
  }),
  solid({
    id: 'cal-hypo-68',
    label: 'Calcium hypochlorite 68 %',
    percent: 68,
    saltPercent: 15,
    form: 'granular',
    how: GRANULAR_HOW,
    wait,
    packages: CAL_HYPO_PACKAGES,
    cautions: CAL_HYPO_CAUTIONS,
    aliases: [{ name: 'calcium hypochlorite 68 % available chlorine', basis: 'g' }],
  }),
  solid({
    id: 'cal-hypo-73',
    label: 'Calcium hypochlorite 73 %',
    percent: 73,
    saltPercent: 10,
    form: 'granular',
    how: GRANULAR_HOW,
    wait,
    packages: CAL_HYPO_PACKAGES,
    cautions: CAL_HYPO_CAUTIONS,
    aliases: [],
  }),
  solid({
    id: 'cal-hypo-tablet',
    label: 'Calcium hypochlorite tablet 65 %',
    percent: 65,
    saltPercent: 15,
    form: 'tablet',
    how: TABLET_HOW,
    wait: { turnovers: 1, hoursAtLeast: 4, why: 'it feeds over days; measure before anyone bathes' },
    packages: [...kg(5, 10), ...lb(25, 50)],
    pieceG: 200,
    cautions: ['gear', 'no-acid-near', 'own-feeder', 'never-mix', 'keep-dry', 'pump-running'],
    aliases: [],
  }),
  product({
    id: 'lithium-hypochlorite',
    label: 'Lithium hypochlorite 35 %',
    strength: '35 % available chlorine',
    form: 'granular',
    densityGPerML: 0.9,
    contains: [
      // 35 g of chlorine needs one mol of LiOCl per mol of Cl2
      part('LiXcO', 35, CL2),
      part('NaCl', 34, NACL),
      part('Na2SO4', 20, 142.042),
      part('LiOH', 1, 23.948),
    ],
    active: active('lithium hypochlorite', 58.392),
    availableChlorine: 0.35,
    groups: ['hypochlorite'],
    uses: ['chlorine'],
    packages: [...kg(1), ...lb(25)],
    how: GRANULAR_HOW,
    wait,
    cautions: CAL_HYPO_CAUTIONS,
    sources: [memory('28.8 % LiOCl, 34 % salt, 20 % sodium sulfate, 1 % LiOH'), practice('hardly sold any more')],
    aliases: [{ name: 'lithium hypochlorite 35 % available chlorine', basis: 'g' }],
  }),
]
