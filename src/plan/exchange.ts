import { ok, type Problem, type Result } from '../base/index.ts'
import { type Constants, mix } from '../water/index.ts'
import { readingChange } from './effect.ts'
import { tooHigh } from './problems.ts'
import { type SolvedWater, solvedWater } from './solved.ts'
import { startWater } from './start.ts'
import type { Surface } from './surfaces.ts'
import { isInside } from './targets.ts'
import type { KnownReading, Targets } from './types.ts'

/** Readings that no product lowers. */
const ONLY_BY_EXCHANGE = [
  'cya_mg_per_L',
  'ch_mg_per_L_as_CaCO3',
  'salt_mg_per_L_as_NaCl',
  'borate_mg_per_L_as_B',
] as const
/** Lands this share of the band inside its upper end, so that rounding doesn't miss it. */
const INSIDE = 0.02
const MOST_ROUNDS = 5

export interface Exchange {
  /** Share of the water taken out each time. */
  readonly fraction: number
  readonly rounds: number
  readonly isAllowed: boolean
  readonly why: string
  /** The water after it, where the fill is known. */
  readonly after?: SolvedWater | undefined
}

export interface ExchangeAnswer {
  readonly exchange?: Exchange | undefined
  readonly problems: readonly Problem[]
}

/** What stands too high to be dosed away, and the partial exchange that would bring it down. */
export function exchangeFor(
  water: SolvedWater,
  known: KnownReading,
  fill: KnownReading | undefined,
  targets: Targets,
  surface: Surface,
  constants: Constants,
): Result<ExchangeAnswer> {
  const problems: Problem[] = []
  let share = 0
  for (const key of ONLY_BY_EXCHANGE) {
    const band = targets[key]
    if (!band || known[key] === undefined) continue
    const value = readingChange(water.totals, key)
    if (isInside(value, band) || value < band.high) continue
    const target = band.high - INSIDE * (band.high - band.low)
    // tap water has no stabiliser and hardly any borate; hardness and salt of an unknown fill are hoped to be low
    const inFill = fill?.[key] ?? 0
    if (inFill >= target) {
      problems.push(tooHigh(key, value, band.high, 'The fill water has as much: find softer water, or widen the band.'))
      continue
    }
    const needed = (value - target) / (value - inFill)
    share = Math.max(share, needed)
    const least = fill?.[key] === undefined ? 'at least ' : ''
    problems.push(
      tooHigh(
        key,
        value,
        band.high,
        `Exchange ${least}${Math.ceil(needed * 100)} % of the water, in parts where the surface asks for it.`,
      ),
    )
  }
  if (share === 0) return ok({ problems })
  const rounds = Math.max(1, Math.ceil(Math.log(1 - share) / Math.log(1 - surface.exchangeShare) - 1e-9))
  const fraction = 1 - (1 - share) ** (1 / rounds)
  const isAllowed = rounds <= MOST_ROUNDS
  const base = { fraction, rounds, isAllowed, why: surface.exchangeWhy }
  if (!isAllowed || fill?.pH === undefined || fill.ta_mg_per_L_as_CaCO3 === undefined)
    return ok({ problems, exchange: base })
  const fresh = startWater(
    { ...fill, pH: fill.pH, ta_mg_per_L_as_CaCO3: fill.ta_mg_per_L_as_CaCO3, cya_mg_per_L: fill.cya_mg_per_L ?? 0 },
    constants,
  )
  if (!fresh.ok) return fresh
  let totals = water.totals
  for (let round = 0; round < rounds; round++) totals = mix(totals, fresh.value.water.totals, fraction)
  const after = solvedWater({ ...totals, temperatureC: water.totals.temperatureC }, constants)
  return after.ok ? ok({ problems, exchange: { ...base, after: after.value } }) : after
}
