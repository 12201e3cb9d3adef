import {
  addTotals,
  alkalinityAtPH,
  type Constants,
  type Delta,
  MG_CACO3_PER_EQ,
  scaleDelta,
  sumDeltas,
  type Totals,
} from '../water/index.ts'
import { type LinearKey, readingChange, TOTAL_OF } from './effect.ts'
import { type Column, dot, missedBy, nearestAmounts, subsets } from './linear.ts'
import type { TargetKey } from './types.ts'

export type ExactTarget = { readonly [K in TargetKey]?: number | undefined }

/** What amounts are worth; the least is taken, fewest products where equal. */
export type AmountScore = (amounts: readonly number[]) => number

/** How a search goes about it. */
interface Search {
  /** How exactly rows are met, and below what a dose counts as none [mg/L]. */
  readonly mgPerL: number
  /** How exactly pH is met, besides. */
  readonly pH: number
  /** The least step over which the slopes of pH are taken [units of a dose]. */
  readonly stride: number
}

/**
 * The second where the first finds nothing: for doses that differ in nothing but their salt, which rounding can't tell
 * apart, and for a pH that turns round on its way.
 */
const SEARCHES: readonly Search[] = [
  { mgPerL: 1e-7, pH: 0, stride: 1 },
  { mgPerL: 1e-3, pH: 0.004, stride: 40 },
]
const CHLORINE = 'fc_mg_per_L_as_Cl2'
const ROUNDS = 40
/** What a straight step may miss or owe before a set of products is given up, as a share of what is wanted. */
const MISS = 0.2
const MISS_MG_PER_L = 5
/** The first step starts from the undosed water, whose slopes may be far off: it is never given up after that. */
const FAIR_ROUND = 1
/** Slopes are taken anew in these rounds, and kept in between. */
const isNewSlope = (round: number): boolean => round === 1 || round === 2 || round % 4 === 0
/** What counts as chlorine used up: a trace, so that rounding never takes it below zero [mg/L]. */
const SPENT_MG_PER_L = 1e-6
/** Over which the slope at no chlorine is taken [mol/kg]. */
const TRACE_MOL = 1e-6

/** The sum of doses in amounts of their units. */
export function dosesSum(means: readonly Delta[], amounts: readonly number[]): Delta {
  return sumDeltas(means.map((mean, index) => scaleDelta(mean, amounts[index] ?? 0)))
}

/**
 * Amounts, none below zero, of as few doses as possible that bring a closed water exactly to a target; earlier ones are
 * preferred. With a score, the least of it among all sets of doses that fit. Undefined where none does.
 * Equation: Σ x_j δ_j,k = T*_k − T_k for every k with a conserved total; A(x) − A_pH*(T(x)) = 0 where pH is wanted;
 *   chlorine never below zero.
 * Symbols: x amounts; δ change of totals by one unit; A alkalinity; A_pH* alkalinity of the same totals at the wanted pH.
 * Valid for: any doses; the row of pH is a plane in the totals at one ionic strength, so that the cone of the doses is
 *   searched by its basic sets (as many doses as rows, or fewer), exhaustively. Where a reducer is among them and no
 *   chlorine is asked for, used-up chlorine is one row more.
 * Source: conservation of mass; Carathéodory's theorem for the number of doses; Newton's rounds for ionic strength.
 * Accuracy: 1e-7 mg/L in every row, pH counted as the alkalinity it takes to get there; where that finds nothing,
 *   1e-3 mg/L and pH 0.004.
 */
export function amountsFor(
  start: Totals,
  target: ExactTarget,
  means: readonly Delta[],
  constants: Constants,
  score?: AmountScore,
): readonly number[] | undefined {
  const keys = (Object.keys(TOTAL_OF) as LinearKey[]).filter((key) => target[key] !== undefined)
  const reading = (key: LinearKey): Row => ({
    need:
      (key === CHLORINE && target[key] === undefined ? SPENT_MG_PER_L : (target[key] ?? 0)) - readingChange(start, key),
    column: means.map((mean) => readingChange(mean, key)),
  })
  const asked = keys.map(reading)
  const spent = reading(CHLORINE)
  const { pH } = target

  const excess = (amounts: readonly number[], off = 0): number =>
    pH === undefined ? 0 : excessAt(addTotals(start, dosesSum(means, amounts)), pH + off, constants)
  const isThere = (amounts: readonly number[], over: number, search: Search): boolean =>
    Math.abs(over) <= search.mgPerL ||
    (search.pH > 0 && excess(amounts, -search.pH) >= 0 && excess(amounts, search.pH) <= 0)
  type Slopes = ReadonlyMap<number, number>
  const slopes = (amounts: readonly number[], at: number, used: readonly number[], stride: number): Slopes =>
    new Map(
      used.map((index) => {
        const step = Math.max(stride, 0.01 * (amounts[index] ?? 0))
        return [index, (excess(amounts.map((x, j) => (j === index ? x + step : x))) - at) / step]
      }),
    )
  const spread = (used: readonly number[], found: readonly number[]): readonly number[] =>
    means.map((_, index) => (used.includes(index) ? Math.max(0, found[used.indexOf(index)]!) : 0))
  const none = means.map(() => 0)
  const excessAtStart = excess(none)
  if (Number.isNaN(excessAtStart)) return undefined

  /** Amounts that the rows without pH settle by themselves: whether they will do, or undefined where they don't settle. */
  const settled = (used: readonly number[], linear: readonly Row[], search: Search) => {
    const columns = used.map((index): Column => linear.map((row) => row.column[index]!))
    const need = linear.map((row) => row.need)
    const found = nearestAmounts(columns, need)
    if (!found) return undefined
    if (isOwed(columns, found, need, search.mgPerL)) return { amounts: undefined }
    const amounts = spread(used, found)
    return { amounts: isThere(amounts, excess(amounts), search) ? amounts : undefined }
  }
  /** Newton's rounds with one set of doses, which also uses the chlorine up where that is asked. */
  const attempt = (used: readonly number[], usesUp: boolean, search: Search): readonly number[] | undefined => {
    const linear = usesUp ? [...asked, spent] : asked
    const known = used.length <= linear.length ? settled(used, linear, search) : undefined
    if (known) return known.amounts
    if (pH === undefined) return undefined
    let amounts: readonly number[] = none
    let over = excessAtStart
    let slope = slopes(none, over, used, search.stride)
    for (let round = 0; round < ROUNDS; round++) {
      if (round > 0 && isNewSlope(round)) slope = slopes(amounts, over, used, round < 3 ? search.stride : 1)
      const columns = used.map((index): Column => [...linear.map((row) => row.column[index]!), slope.get(index)!])
      // the straight line through the present point, as rows for whole amounts
      const here = used.reduce((sum, index) => sum + slope.get(index)! * amounts[index]!, 0)
      const rows = [...linear.map((row) => row.need), here - over]
      const found = nearestAmounts(columns, rows)
      if (!found) return undefined
      const fair = MISS * Math.sqrt(dot(rows, rows)) + MISS_MG_PER_L
      if (round >= FAIR_ROUND && isOwed(columns, found, rows, fair)) return undefined
      amounts = spread(used, found)
      over = excess(amounts)
      if (Number.isNaN(over)) return undefined
      if (
        isThere(amounts, over, search) &&
        !isOwed(
          columns.map((column) => column.slice(0, -1)),
          found,
          rows.slice(0, -1),
          search.mgPerL,
        )
      )
        return amounts
    }
    return undefined
  }

  const reducers = target[CHLORINE] === undefined ? [...means.keys()].filter((index) => spent.column[index]! < 0) : []
  const chlorineLeft = (amounts: readonly number[]): number =>
    amounts.reduce((left, x, index) => left + x * spent.column[index]!, readingChange(start, CHLORINE))
  const attempts = function* (size: number, search: Search) {
    for (const used of subsets(means.length, size)) {
      yield attempt(used, false, search)
      if (used.some((index) => reducers.includes(index))) yield attempt(used, true, search)
    }
  }
  const rows = asked.length + (pH === undefined ? 0 : 1) + (reducers.length > 0 ? 1 : 0)
  for (const search of SEARCHES) {
    let best: { readonly amounts: readonly number[]; readonly worth: number } | undefined
    for (let size = 0; size <= Math.min(means.length, rows); size++)
      for (const amounts of attempts(size, search)) {
        if (!amounts || chlorineLeft(amounts) < 0) continue
        if (!score) return amounts
        const worth = score(amounts)
        if (worth < (best?.worth ?? Number.POSITIVE_INFINITY)) best = { amounts, worth }
      }
    if (best) return best.amounts
  }
  return undefined
}

/** What is still to come of a reading, and what a unit of each dose brings of it [mg/L]. */
interface Row {
  readonly need: number
  readonly column: Column
}

/** Whether a row is missed, or a dose would have to be taken back, by more than a limit. */
function isOwed(columns: readonly Column[], amounts: readonly number[], rows: Column, limit: number): boolean {
  return (
    amounts.some((x, j) => x * Math.sqrt(dot(columns[j]!, columns[j]!)) < -limit) ||
    missedBy(columns, amounts, rows).some((missed) => Math.abs(missed) > limit)
  )
}

/**
 * Alkalinity above that of the same totals at a pH [mg/L as CaCO3]. Below no chlorine it goes on straight, so that the
 * rounds can pass through waters that cannot be.
 */
function excessAt(totals: Totals, pH: number, constants: Constants): number {
  const at = (chlorineMol: number): number => {
    const there = alkalinityAtPH({ ...totals, chlorineMol }, pH, constants)
    return there.ok ? (totals.alkalinityEq - there.value) * MG_CACO3_PER_EQ : Number.NaN
  }
  if (totals.chlorineMol >= 0) return at(totals.chlorineMol)
  const none = at(0)
  return none + ((at(TRACE_MOL) - none) / TRACE_MOL) * totals.chlorineMol
}
