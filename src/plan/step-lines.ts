import type { Exchange } from './exchange.ts'
import { movementsBetween } from './movements.ts'
import { expectedOf, type SolvedWater } from './solved.ts'
import type { ExchangeLine, OpeningInput, StepLine } from './types.ts'
import { STEPS } from './wording.ts'

type Wording = { readonly title: string; readonly how: string; readonly why: string }

/** A line on which nothing is dosed. */
export function stepLine(
  kind: StepLine['kind'],
  key: string,
  wording: Wording,
  startHours: number,
  waitHours: number,
  extra: Partial<Pick<StepLine, 'movements' | 'after' | 'cautions' | 'isOptional' | 'amounts'>> = {},
): StepLine {
  return { kind, key, ...wording, startHours, waitHours, state: 'later', cautions: [], movements: [], ...extra }
}

/** Chlorine that stands too high is read again after this [h] (ours). */
export const FALLS_HOURS = 24

/** Waiting for chlorine that stands too high. */
export function fallLine(key: string, startHours: number): StepLine {
  return stepLine('wait', key, STEPS.chlorineHigh, startHours, FALLS_HOURS)
}

/** Air taking CO2 out: pH up, alkalinity unmoved. */
export function aerateLine(
  key: string,
  before: SolvedWater,
  after: SolvedWater,
  input: OpeningInput,
  startHours: number,
  isOptional: boolean,
): StepLine {
  return stepLine('aerate', key, STEPS.aerate, startHours, AERATION_HOURS, {
    movements: movementsBetween(before, after, input.start, input.targets),
    after: expectedOf(after),
    ...(isOptional ? { isOptional } : {}),
  })
}

/** One to three days by experience, from memory; pH says when it is over. */
const AERATION_HOURS = 48

export const DRAIN_CAUTIONS = [
  'High groundwater can lift an empty shell out of the ground: never empty it, lower it slowly, and ask a licensed trade where groundwater stands high.',
  'What leaves must hold no chlorine: neutralise it on its way out, or ask whether the foul sewer takes it as it is. It kills what lives in a stream or a garden. What stays in the pool keeps its chlorine.',
  'Where the water may go is a local rule: ask before you pump. Never into a neighbour’s ground or a storm drain.',
  'Pump and heater off before the level falls below the skimmer.',
] as const

/** The partial exchange that brings down what no product lowers. */
export function exchangeLine(
  exchange: Exchange,
  before: SolvedWater,
  input: OpeningInput,
  startHours: number,
): ExchangeLine {
  const percent = Math.ceil(exchange.fraction * 100 - 1e-9)
  const times = exchange.rounds === 1 ? 'once' : `${exchange.rounds} times, refilling in between`
  const how = exchange.isAllowed
    ? `Pump out ${percent} % of the water and refill, ${times}; then run the pump for a turnover and measure everything again.`
    : 'So much has to go that it amounts to a new filling. That is a job for a licensed trade, with the maker of the surface asked first.'
  const unknown =
    exchange.isAllowed && !exchange.after ? ' Enter pH and alkalinity of the fill water to see what comes of it.' : ''
  return {
    kind: 'exchange',
    key: 'exchange',
    title: 'Exchange part of the water',
    how: `${how}${unknown}`,
    why: `Something stands above its band that no product takes out. ${exchange.why}`,
    startHours,
    waitHours: exchange.isAllowed ? 24 * exchange.rounds : 0,
    state: 'later',
    cautions: DRAIN_CAUTIONS,
    fraction: exchange.fraction,
    volumeM3: exchange.fraction * input.volumeM3,
    isAllowed: exchange.isAllowed,
    rounds: exchange.rounds,
    movements: exchange.after ? movementsBetween(before, exchange.after, input.start, input.targets) : [],
    after: exchange.after ? expectedOf(exchange.after) : undefined,
  }
}
