import { fail, ok, type Result } from '../base/index.ts'
import { NO_STABILISER_MG_PER_L } from './chlorine-limits.ts'
import { ORGANISMS } from './contact-time.ts'
import { incidentStabiliserNotSeen, incidentStabiliserTooHigh, incidentStabiliserUnknown } from './problems-chlorine.ts'
import type { SourceStatus } from './sourcing.ts'

/** Above this no treatment with chlorine is advised [mg/L]: CDC, newer rule (seen second-hand); its study failed above 16. */
export const INCIDENT_STABILISER_LIMIT_MG_PER_L = 15

const HIGHEST_PH = 7.5
const LOWEST_C = 25
const MINUTES_PER_HOUR = 60

export interface IncidentWater {
  /** Formed stool, or diarrhoea (which may carry Cryptosporidium). */
  readonly kind: 'formed' | 'diarrhoea'
  readonly stabiliserMgPerL: number | undefined
  /** The least stabiliser that its test tells from none [mg/L]; infinite where it has no such test, absent where all is told. */
  readonly leastSeenMgPerL?: number | undefined
  readonly pH?: number | undefined
  readonly temperatureC?: number | undefined
}

/** Free chlorine held for a time; any one of those listed will do. */
export interface ChlorineHold {
  readonly freeMgPerL: number
  readonly hours: number
  readonly source: string
  readonly status: SourceStatus
}

export interface IncidentResponse {
  readonly holds: readonly ChlorineHold[]
  readonly steps: readonly string[]
  /** What else is laid down in other editions; never to be mixed with the holds. */
  readonly otherEdition?: string
}

const AUTHORITY = 'Your health authority’s response rules over this.'

/**
 * What to do after faeces in the water: chlorine and hours [mg/L, h], or a Problem that says what to do instead where
 * stabiliser makes them useless.
 * Equation: hours = CT / free chlorine / 60, without stabiliser.
 * Symbols: CT 15 300 mg·min/L for 99.9 % of Cryptosporidium.
 * Valid for: pH ≤ 7.5 and ≥ 25 °C; up to 15 mg/L of stabiliser.
 * Source: US CDC after Shields et al. 2008 (value from memory, 20 mg/L for 12.75 h seen second-hand); with stabiliser the
 *   newer CDC rule (≤ 15 mg/L seen second-hand, hours from memory); older edition MAHC 6.5.3.2.1 (seen).
 * Accuracy: laid down, not reckoned; cold water and organic matter make real times longer.
 */
export function faecalIncident(water: IncidentWater): Result<IncidentResponse> {
  const { kind, stabiliserMgPerL: stabiliser } = water
  if (stabiliser === undefined || !(stabiliser >= 0)) return fail(incidentStabiliserUnknown())
  if (stabiliser > INCIDENT_STABILISER_LIMIT_MG_PER_L)
    return fail(incidentStabiliserTooHigh(stabiliser, INCIDENT_STABILISER_LIMIT_MG_PER_L, kind === 'formed'))
  if ((water.leastSeenMgPerL ?? 0) > INCIDENT_STABILISER_LIMIT_MG_PER_L)
    return fail(incidentStabiliserNotSeen(water.leastSeenMgPerL ?? 0, INCIDENT_STABILISER_LIMIT_MG_PER_L))
  const hasStabiliser = stabiliser >= NO_STABILISER_MG_PER_L
  const holds = kind === 'formed' ? FORMED : hasStabiliser ? STABILISED : plain()
  const [first] = holds
  return ok({
    holds,
    steps: [
      'Close the pool, and any other that shares its filter.',
      'Take out what can be scooped, and throw it away hygienically; do not vacuum it up.',
      ...conditions(water),
      `Raise free chlorine to ${first?.freeMgPerL ?? 0} mg/L with a chlorine that brings no stabiliser and hold it for ${hoursWords(first?.hours ?? 0)}, pump running; measure it again and again.`,
      ...(kind === 'formed' && hasStabiliser
        ? [
            'These minutes are laid down for water without stabiliser; with some in it hold longer, as your health authority says.',
          ]
        : []),
      ...(kind === 'diarrhoea' ? ['Backwash the filter to waste, or change its element.'] : []),
      'Bring chlorine and pH back to where bathing is allowed, and only then open.',
      `Write down what was done and read. ${AUTHORITY}`,
    ],
    ...(kind === 'diarrhoea' && hasStabiliser
      ? {
          otherEdition:
            'An older edition (MAHC 6.5.3.2.1, seen; its tests were at 50 mg/L of stabiliser) has pH 6.5 and 40 mg/L for at least 30 h, or a secondary treatment, or draining.',
        }
      : {}),
  })
}

const FORMED: readonly ChlorineHold[] = [
  {
    freeMgPerL: 2,
    hours: 0.5,
    source: 'US CDC, formed stool: 2 mg/L at pH 7.5 or below for 25 to 30 minutes (Giardia)',
    status: 'from memory',
  },
]

const STABILISED: readonly ChlorineHold[] = (
  [
    [20, 28],
    [30, 18],
    [40, 8.5],
  ] as const
).map(([freeMgPerL, hours]) => ({
  freeMgPerL,
  hours,
  source: 'US CDC, diarrhoea in water with up to 15 mg/L of stabiliser',
  status: 'from memory',
}))

function plain(): readonly ChlorineHold[] {
  const cryptosporidium = ORGANISMS.get('cryptosporidium')
  if (!cryptosporidium) return []
  return [20, 10].map((freeMgPerL) => ({
    freeMgPerL,
    hours: cryptosporidium.ctMgMinPerL / freeMgPerL / MINUTES_PER_HOUR,
    source: cryptosporidium.source,
    status: freeMgPerL === 20 ? 'seen second-hand' : 'derived',
  }))
}

function conditions({ pH, temperatureC }: IncidentWater): string[] {
  const ph =
    pH === undefined
      ? `Measure pH; it has to be ${HIGHEST_PH} or below.`
      : pH > HIGHEST_PH
        ? `Lower pH from ${pH.toFixed(1)} to ${HIGHEST_PH} or below first: chlorine works slower above.`
        : `Keep pH at ${HIGHEST_PH} or below.`
  const warm =
    temperatureC === undefined
      ? `Measure the temperature; the times hold from ${LOWEST_C} °C.`
      : temperatureC < LOWEST_C
        ? `The water is at ${temperatureC.toFixed(0)} °C: warm it to ${LOWEST_C} °C, or ask how much longer to hold, since the times hold from there.`
        : `Keep the water at ${LOWEST_C} °C or above.`
  return [ph, warm]
}

function hoursWords(hours: number): string {
  return hours < 1 ? `${Math.round(hours * MINUTES_PER_HOUR)} minutes` : `${Number(hours.toFixed(2))} hours`
}
