import { type Constants, darkLossPerDay, sunHalfLives } from '../water/index.ts'
import type { PurposeProducts } from './check-input.ts'
import { effectPerGPerM3 } from './effect.ts'
import { namedAmount } from './named-amount.ts'
import type { SolvedWater } from './solved.ts'
import { stepLine } from './step-lines.ts'
import type { OpeningInput, OpeningLine, StepLine } from './types.ts'

/** A plan shorter than this ends before chlorine has to be looked at again [h]. */
const LEAST_HOURS = 24
const HOURS_PER_DAY = 24
const MIN_PER_HOUR = 60
/** Warmth's loss is known to this factor either way. */
const DARK_FACTOR = 2

/** Of 1 mg/L, what is left after an evening's day: kept dark at best, some hours of noon sun at worst [1]. */
function leftAfterADay(darkPerDay: number, noonHalfLifeMin: number, sunHours: number): readonly [number, number] {
  const most = Math.exp(-darkPerDay / DARK_FACTOR)
  const dark = Math.exp(-darkPerDay * DARK_FACTOR)
  const sun = Number.isFinite(noonHalfLifeMin) ? 2 ** ((-sunHours * MIN_PER_HOUR) / noonHalfLifeMin) : 1
  return [dark * sun, most]
}

/** A clear summer day counts as so many hours of noon sun at the surface (common practice, no source) [h]. */
const NOON_HOURS = 5

/**
 * A line to read chlorine each evening and bring it back, where the plan runs on for more than a day. No line's expected
 * water counts the loss: how much goes is weather, and the evening's reading knows it better.
 */
export function withKeptChlorine(
  lines: readonly OpeningLine[],
  water: SolvedWater,
  input: OpeningInput,
  products: PurposeProducts,
  constants: Constants,
  nextKey: () => string,
): readonly OpeningLine[] {
  const band = input.targets.fc_mg_per_L_as_Cl2
  const last = lines.at(-1)
  if (!band || input.start.fc_mg_per_L_as_Cl2 === undefined || !last) return lines
  const at = lines.findLastIndex((line) => line.kind === 'dose' && line.purpose === 'openingChlorine')
  const dose = lines[at]
  const from = dose?.startHours ?? lines[0]?.startHours ?? 0
  const exchanges = lines.some((line) => line.kind === 'exchange')
  if (!exchanges && last.startHours + last.waitHours - from < LEAST_HOURS) return lines
  const effect = effectPerGPerM3(products.openingChlorine, 'fc_mg_per_L_as_Cl2')
  if (!(effect > 0)) return lines
  const next = lines[at + 1]?.startHours ?? from
  const when = exchanges ? 'after every refill and every evening' : 'every evening'
  const line = topUp(nextKey(), when, dose ? next : from, water, input, products, constants, input.volumeM3 / effect)
  return [...lines.slice(0, at + 1), line, ...lines.slice(at + 1)]
}

function topUp(
  key: string,
  when: string,
  startHours: number,
  water: SolvedWater,
  input: OpeningInput,
  products: PurposeProducts,
  constants: Constants,
  gramsPerMgPerL: number,
): StepLine {
  const { aim, low } = input.targets.fc_mg_per_L_as_Cl2 ?? { aim: 0, low: 0 }
  const lives = sunHalfLives(water.totals, constants)
  const noon = lives.ok ? lives.value.hereMin : Number.POSITIVE_INFINITY
  const dark = darkLossPerDay(water.totals.temperatureC)
  const [least, most] = leftAfterADay(dark, noon, NOON_HOURS)
  const of = (left: number): string => (aim * left < 0.1 ? 'next to nothing' : `${(aim * left).toFixed(1)} mg/L`)
  const unknown = input.start.cya_mg_per_L === undefined ? ' if there is no stabiliser, which nobody read' : ''
  const sun = Number.isFinite(noon) ? ` Noon sun at the surface halves it in about ${few(noon)} min${unknown}.` : ''
  const perMgPerL = namedAmount(products.openingChlorine, gramsPerMgPerL)
  return stepLine(
    'measure',
    key,
    {
      title: 'Keep chlorine up each evening',
      how: `Read free chlorine ${when} until the plan is done and bring it back to ${aim} mg/L: about ${perMgPerL.text} of ${products.openingChlorine.label} (${products.openingChlorine.strength}) for each mg/L that is lacking, a turnover away from any acid. Write each dose down.`,
      why: `The plan takes days and the lines count no loss. Of ${aim} mg/L one day leaves between ${of(least)} in open summer sun${input.start.cya_mg_per_L === undefined ? ' without stabiliser' : ''} and ${of(most)} in the dark.${sun} Below ${low} mg/L nothing holds germs back.`,
    },
    startHours,
    0,
    { cautions: [`Look again after ${HOURS_PER_DAY} h at the latest.`], amounts: [perMgPerL] },
  )
}

const few = (value: number): string => String(Number(value.toPrecision(2)))
