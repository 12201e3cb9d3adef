import { ok, type Problem, type Result } from '../base/index.ts'
import type { Constants } from '../water/index.ts'
import { assemble, type Follows, type Poured } from './assemble.ts'
import type { PurposeProducts } from './check-input.ts'
import { exchangeFor } from './exchange.ts'
import { littleChlorine } from './in-time.ts'
import { withKeptChlorine } from './keep-chlorine.ts'
import { LIMITS } from './limits.ts'
import type { Move } from './moves.ts'
import { notPlaced } from './problems.ts'
import { type Schedule, type ScheduleInput, schedule } from './schedule.ts'
import type { SolvedWater } from './solved.ts'
import { exchangeLine, stepLine } from './step-lines.ts'
import { surfaceOf } from './surfaces.ts'
import type { OpeningInput, OpeningLine } from './types.ts'
import { fixedWants } from './wants.ts'
import { STEPS } from './wording.ts'

export interface ExchangePart {
  /** None where nothing has to be exchanged. */
  readonly lines: readonly OpeningLine[]
  readonly problems: readonly Problem[]
  readonly warnings: readonly string[]
  /** What the rest of the plan starts from, and when. */
  readonly water: SolvedWater
  readonly clock: number
  readonly poured: readonly Poured[]
  /** Whether nothing can be reckoned beyond it: the water after it is not known. */
  readonly isEnd: boolean
}

/**
 * A partial exchange of water, where one is needed, with all that belongs around it: chlorine first where there is too
 * little, since the exchange takes days, and its upkeep meanwhile. Without a known fill the plan ends with a new measurement.
 */
export function exchangePart(
  now: SolvedWater,
  input: OpeningInput,
  products: PurposeProducts,
  constants: Constants,
  place: Follows & { readonly turnoverHours: number; readonly nextKey: (base: string) => string },
): Result<ExchangePart> {
  const answer = (from: SolvedWater) =>
    exchangeFor(from, input.start, input.fill, input.targets, surfaceOf(input.surface), constants)
  const first = answer(now)
  if (!first.ok) return first
  const { problems } = first.value
  const clock = place.startHours
  if (!first.value.exchange)
    return ok({ lines: [], problems, warnings: [], water: now, clock, poured: place.poured, isEnd: false })

  const early = chlorineFirst(now, input, products, constants)
  const doses = assemble(early.moves, input, place.turnoverHours, place, place.nextKey, constants)
  const water = early.moves.at(-1)?.after ?? now
  const begins = doses.reduce((hours, line) => Math.max(hours, endOf(line)), clock)
  // chlorine can bring stabiliser and calcium along
  const again = answer(water)
  if (!again.ok) return again
  const exchange = again.value.exchange ?? first.value.exchange
  const line = exchangeLine(exchange, water, input, begins)
  const ends = begins + line.waitHours
  const kept = withKeptChlorine([...doses, line], water, input, products, constants, () =>
    place.nextKey('keep-chlorine'),
  )
  const isEnd = exchange.after === undefined
  const measure = stepLine('measure', place.nextKey('measure'), STEPS.measureExchanged, ends, 0)
  return ok({
    lines: [...kept, measure],
    problems: [...problems, ...early.left],
    warnings: isEnd
      ? ['The plan ends with the exchange: what has to be dosed after it hangs on water that nobody has measured yet.']
      : [],
    water: exchange.after ?? water,
    clock: ends,
    poured: [...place.poured, ...pouredIn(early.moves, doses)],
    isEnd,
  })
}

/** A residual before the exchange begins, with acid before it where pH or scale leave no room. */
function chlorineFirst(
  start: SolvedWater,
  input: OpeningInput,
  products: PurposeProducts,
  constants: Constants,
): { readonly moves: readonly Move[]; readonly left: readonly Problem[] } {
  const band = input.targets.fc_mg_per_L_as_Cl2
  const { wants } = fixedWants(
    start.totals,
    input.start,
    { fc_mg_per_L_as_Cl2: band },
    products,
    input.volumeM3,
    undefined,
  )
  const job: ScheduleInput = {
    start,
    fixed: wants,
    balance: { acidGPerM3: 0, alkalinityGPerM3: 0, baseGPerM3: 0, aerationMol: 0 },
    bands: { pH: undefined, alkalinity: undefined },
    products,
    boundSI: LIMITS.calciteSI,
    constants,
  }
  const whole = schedule(job, 'chlorine-first')
  // where acid would have to make room for all of it, a part that has room at once comes before the night
  const parts = schedule({ ...job, littleGPerM3: littleChlorine(job, input) }, 'little-first')
  const isSooner = !beginsWithChlorine(whole) && beginsWithChlorine(parts) && parts.left.length <= whole.left.length
  const { moves, left } = isSooner ? parts : whole
  return {
    moves: moves
      .filter((move) => move.kind !== 'measure')
      .map((move) =>
        move.kind === 'dose' && move.exception === 'same-day' ? { ...move, exception: 'before-exchange' } : move,
      ),
    left: left.map((want) => notPlaced(want.product.label)),
  }
}

const beginsWithChlorine = ({ moves: [first] }: Schedule): boolean =>
  first?.kind === 'dose' && first.want.purpose === 'openingChlorine'

const endOf = (line: OpeningLine): number =>
  line.startHours + line.waitHours + (line.kind === 'dose' ? (line.pours.at(-1)?.hoursAfterStart ?? 0) : 0)

function pouredIn(moves: readonly Move[], lines: readonly OpeningLine[]): Poured[] {
  const products = new Map(
    moves.flatMap((move) => (move.kind === 'dose' ? [[move.want.product.id, move.want.product]] : [])),
  )
  return lines.flatMap((line) => {
    const product = line.kind === 'dose' ? products.get(line.productId) : undefined
    return product ? [{ product, atHours: endOf(line) - line.waitHours }] : []
  })
}
