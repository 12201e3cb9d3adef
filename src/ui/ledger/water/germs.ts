import type { Problem } from '../../../base/index.ts'
import type { ReadingValues } from '../../../document/index.ts'
import { contactTime, giardiaContactTime, NO_STABILISER_MG_PER_L, ORGANISMS } from '../../../water/index.ts'

/** One germ and how long this chlorine needs for it. */
export interface GermLine {
  readonly id: string
  readonly name: string
  readonly minutes: number
  readonly source: string
}

export interface Germs {
  readonly lines: readonly GermLine[]
  /** Why the usual times can't be given for this water. */
  readonly problem: Problem | undefined
}

const UNKNOWN: Problem = {
  code: 'contact-readings-missing',
  path: '',
  what: 'How long chlorine needs can’t be told yet.',
  why: 'The times hold for one chlorine, pH and warmth, and only without stabiliser.',
  hint: 'Measure free chlorine, stabiliser, pH and temperature.',
}

/** The times that hold at pH 7.5 and 25 °C, and where colder or less acid water allows it, the one for Giardia. */
export function germsIn(known: ReadingValues): Germs {
  const { fc_mg_per_L_as_Cl2: free, cya_mg_per_L: stabiliser, pH, temperature_C: temperatureC } = known
  if (free === undefined || stabiliser === undefined || pH === undefined || temperatureC === undefined)
    return { lines: [], problem: UNKNOWN }
  const cyanurateMgPerL = stabiliser < NO_STABILISER_MG_PER_L ? 0 : stabiliser
  // Toward the careful side, and in figures that a person reads.
  const water = {
    freeChlorineMgPerL: free,
    pH: Math.ceil(100 * pH - 1e-9) / 100,
    temperatureC: Math.floor(10 * temperatureC + 1e-9) / 10,
    cyanurateMgPerL,
  }
  const lines: GermLine[] = []
  let problem: Problem | undefined
  for (const organism of ORGANISMS.rows) {
    const time = contactTime(organism.id, water)
    if (time.ok)
      lines.push({ id: organism.id, name: organism.name, minutes: time.value.minutes, source: time.value.source })
    else problem ??= time.problem
  }
  const isInRule = pH >= 6 && pH <= 9 && temperatureC >= 0.5 && temperatureC <= 25 && free > 0 && free <= 4
  if (cyanurateMgPerL === 0 && isInRule)
    lines.push({
      id: 'giardia-epa',
      name: 'Giardia, 99.9 %, at this pH and warmth',
      minutes: giardiaContactTime(pH, free, temperatureC, 3) / free,
      source: 'regression of Smith, Clark et al. for the US EPA surface-water rule (seen)',
    })
  return { lines, problem }
}
