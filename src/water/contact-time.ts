import { fail, ok, type Problem, type Result, type Table, table } from '../base/index.ts'

export interface Organism {
  readonly id: string
  readonly name: string
  /** Free chlorine × minutes [mg·min/L] at pH ≤ 7.5 and ≥ 25 °C, no stabiliser. */
  readonly ctMgMinPerL: number
  /** What that product achieves. */
  readonly effect: string
  readonly source: string
}

const CDC_TABLE = 'US CDC disinfection-time table for 1 mg/L, pH 7.5, 25 C, no stabiliser (from memory)'

/** Contact times of chlorine with named organisms. */
export const ORGANISMS: Table<Organism> = table<Organism>([
  {
    id: 'e-coli-o157',
    name: 'E. coli O157:H7',
    ctMgMinPerL: 1,
    effect: 'under one minute at 1 mg/L',
    source: CDC_TABLE,
  },
  {
    id: 'hepatitis-a',
    name: 'Hepatitis A virus',
    ctMgMinPerL: 16,
    effect: 'about 16 minutes at 1 mg/L',
    source: CDC_TABLE,
  },
  { id: 'giardia', name: 'Giardia', ctMgMinPerL: 45, effect: 'about 45 minutes at 1 mg/L', source: CDC_TABLE },
  {
    id: 'cryptosporidium',
    name: 'Cryptosporidium',
    ctMgMinPerL: 15300,
    effect: '99.9 % inactivation',
    source:
      'US CDC faecal-incident response after Shields et al. 2008 (value from memory); 20 mg/L for 12.75 h seen in a secondary report',
  },
])

export interface ContactTime {
  readonly organism: string
  readonly ctMgMinPerL: number
  readonly minutes: number
  readonly source: string
}

export interface ContactWater {
  readonly freeChlorineMgPerL: number
  readonly pH: number
  readonly temperatureC: number
  readonly cyanurateMgPerL: number
}

const HIGHEST_PH = 7.5
const LOWEST_C = 25
const DEFER = 'Follow the response your health authority lays down; it rules over this figure.'

/**
 * Minutes a free chlorine must be held to reach an organism's contact time [min].
 * Equation: minutes = CT / free chlorine.
 * Symbols: CT contact time [mg·min/L].
 * Valid for: pH ≤ 7.5, ≥ 25 °C and no stabiliser whatever: with stabiliser most free chlorine is bound and the product of
 *   free chlorine and minutes says nothing, so a Problem is returned instead.
 * Source: see each organism's row.
 * Accuracy: laboratory values; faecal matter and cold water make real times longer.
 */
export function contactTime(organismId: string, water: ContactWater): Result<ContactTime> {
  const organism = ORGANISMS.get(organismId)
  if (!organism) {
    return fail(
      problem(
        'contact-organism-unknown',
        `No contact time is known here for ${organismId}.`,
        'Each organism resists chlorine differently.',
        DEFER,
      ),
    )
  }
  if (!(water.cyanurateMgPerL === 0)) {
    return fail(
      problem(
        'contact-stabiliser-present',
        `Contact times do not apply: the water holds ${water.cyanurateMgPerL} mg/L of stabiliser.`,
        'Stabiliser binds most of the free chlorine, so free chlorine times minutes overstates what was killed.',
        `Replace water until stabiliser is gone, or treat by another licensed method. ${DEFER}`,
      ),
    )
  }
  if (!(water.pH <= HIGHEST_PH) || !(water.temperatureC >= LOWEST_C)) {
    return fail(
      problem(
        'contact-outside-conditions',
        `Contact times hold at pH ${HIGHEST_PH} or below and at ${LOWEST_C} °C or above; this water is at pH ${water.pH} and ${water.temperatureC} °C.`,
        'Higher pH or colder water makes chlorine slower.',
        `Lower the pH or warm the water first. ${DEFER}`,
      ),
    )
  }
  if (!(water.freeChlorineMgPerL > 0)) {
    return fail(
      problem(
        'contact-no-chlorine',
        'The water holds no free chlorine.',
        'Nothing is disinfected.',
        'Dose chlorine first.',
      ),
    )
  }
  return ok({
    organism: organism.name,
    ctMgMinPerL: organism.ctMgMinPerL,
    minutes: organism.ctMgMinPerL / water.freeChlorineMgPerL,
    source: organism.source,
  })
}

/**
 * Contact time for Giardia cysts [mg·min/L].
 * Equation: 0.2828 pH^2.69 Cl^0.15 0.933^(T−5) L.
 * Symbols: Cl free chlorine [mg/L]; T [°C]; L logs of inactivation.
 * Valid for: pH 6–9, 0.5–25 °C, up to 4 mg/L, no stabiliser.
 * Source: regression of Smith, Clark et al. for the US EPA surface-water rule.
 * Accuracy: 8 % of the rule's own tables.
 */
export function giardiaContactTime(pH: number, freeChlorineMgPerL: number, temperatureC: number, logs: number): number {
  return 0.2828 * pH ** 2.69 * freeChlorineMgPerL ** 0.15 * 0.933 ** (temperatureC - 5) * logs
}

function problem(code: string, what: string, why: string, hint: string): Problem {
  return { code, path: '', what, why, hint }
}
