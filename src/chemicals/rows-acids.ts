import { active, derived, gallons, kg, lb, litres, memory, part, practice, product, seen } from './row.ts'
import type { Product } from './types.ts'

const HCL = 36.4609
// 42 %: about what cold water holds, from memory
const HCL_ACTIVE = active(
  'hydrogen chloride',
  HCL,
  42,
  'More than 42 % hydrogen chloride does not stay in water; pool acid is 10 to 35 %.',
)
const DENSITIES = 'hydrochloric acid density table at 20 °C (handbook copy)'
const ACID_HOW =
  'Pour it slowly in front of a return at the deep end, pump running; or thin it first in a big bucket of pool water, acid into water.'

const wait = {
  turnovers: 1,
  hoursAtLeast: 4,
  why: 'so that the acid is mixed through before the next reading or product',
}

export const ACIDS: readonly Product[] = [
  product({
    id: 'muriatic-acid-31',
    label: 'Muriatic acid 31.45 %',
    strength: '31.45 % HCl by weight',
    form: 'liquid',
    densityGPerML: 1.16,
    contains: [part('HCl', 31.45, HCL)],
    active: HCL_ACTIVE,
    groups: ['acid'],
    uses: ['acid'],
    packages: [...litres(1.16, 5, 10, 20), ...gallons(1.16, 1, 2.5)],
    how: ACID_HOW,
    wait,
    cautions: ['acid-burns', 'into-water', 'never-mix', 'pump-running', 'wait-to-bathe'],
    sources: [
      seen('density 1.16 kg/L at 31.45 %', `${DENSITIES}; table interpolation gives 1.156`),
      derived('8.6257 mmol of acid per gram'),
    ],
    aliases: [{ name: 'muriatic acid 31.45 % w/w HCl', basis: 'g' }],
  }),
  product({
    id: 'muriatic-acid-14',
    label: 'Muriatic acid 14.5 %',
    strength: '14.5 % HCl by weight ("half strength")',
    form: 'liquid',
    densityGPerML: 1.071,
    contains: [part('HCl', 14.5, HCL)],
    active: HCL_ACTIVE,
    groups: ['acid'],
    uses: ['acid'],
    packages: [...litres(1.071, 5, 10, 20), ...gallons(1.071, 1, 2.5)],
    how: ACID_HOW,
    wait,
    cautions: ['acid-burns', 'into-water', 'never-mix', 'pump-running', 'wait-to-bathe'],
    sources: [seen('density 1.071 kg/L at 14.5 %, interpolated', DENSITIES), derived('3.9769 mmol of acid per gram')],
  }),
  product({
    id: 'dry-acid',
    label: 'Dry acid 93.2 %',
    strength: '93.2 % sodium bisulfate by weight',
    form: 'granular',
    densityGPerML: 1.4,
    contains: [part('NaHSO4', 93.2, 120.06), part('Na2SO4', 6.8, 142.042)],
    active: active('sodium bisulfate', 120.06),
    groups: ['acid'],
    uses: ['acid'],
    packages: [...kg(1.5, 5, 15, 25), ...lb(5, 25, 50)],
    how: 'Dissolve it in a bucket of pool water, the grains into the water, and pour that slowly in front of a return.',
    wait,
    cautions: ['acid-burns', 'into-water', 'never-mix', 'pump-running', 'wait-to-bathe'],
    sources: [memory('93.2 % NaHSO4, the rest sodium sulfate'), memory('bulk density 1.4 g/mL')],
    aliases: [{ name: 'sodium bisulfate 93.2 % w/w NaHSO4', basis: 'g' }],
  }),
  product({
    id: 'dry-acid-95',
    label: 'Dry acid 95 %',
    strength: '95 % sodium bisulfate by weight',
    form: 'granular',
    densityGPerML: 1.4,
    contains: [part('NaHSO4', 95, 120.06), part('Na2SO4', 5, 142.042)],
    active: active('sodium bisulfate', 120.06),
    groups: ['acid'],
    uses: ['acid'],
    packages: [...kg(1.5, 5, 15, 25), ...lb(5, 25, 50)],
    how: 'Dissolve it in a bucket of pool water, the grains into the water, and pour that slowly in front of a return.',
    wait,
    cautions: ['acid-burns', 'into-water', 'never-mix', 'pump-running', 'wait-to-bathe'],
    sources: [
      seen(
        '95 %: the strength behind 2.1 lb per 10 mg/L per 10,000 US gal',
        'operator course worksheet (63 lb example)',
      ),
      memory('bulk density 1.4 g/mL'),
    ],
  }),
  product({
    id: 'carbon-dioxide',
    label: 'Carbon dioxide',
    strength: '100 %, all absorbed',
    form: 'gas',
    densityGPerML: 0.00184,
    contains: [part('CO2', 100, 44.0095)],
    groups: ['harmless'],
    uses: ['acid'],
    packages: [...kg(10, 30), ...lb(20, 50)],
    how: 'Through its own injector into the return line, metered; it lowers pH and leaves alkalinity alone.',
    wait: { turnovers: 1, hoursAtLeast: 2, why: 'so that it is mixed through before the next reading' },
    cautions: ['label', 'pump-running'],
    sources: [derived('22.722 mmol per gram'), practice('needs an injector and an alarm in a closed room')],
    aliases: [{ name: 'carbon dioxide 100 %', basis: 'g' }],
  }),
]
