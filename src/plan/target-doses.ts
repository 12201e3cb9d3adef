import { bracketedRoot, fail, ok, type Result, under } from '../base/index.ts'
import { doseDelta, productById } from '../chemicals/index.ts'
import {
  addTotals,
  type Constants,
  type Delta,
  equilibrate,
  equilibrateAtPH,
  MG_CACO3_PER_EQ,
  scaleDelta,
  sumDeltas,
  type Totals,
  totalsOf,
  type WaterReading,
} from '../water/index.ts'
import { type LinearKey, readingChange, TOTAL_OF } from './effect.ts'
import { fewestAmounts } from './linear.ts'
import { badNumber, targetUnreachable } from './problems.ts'
import { type SolvedWater, solvedWater } from './solved.ts'
import { TARGET_LABELS } from './targets.ts'
import type { TargetKey } from './types.ts'

export type ExactTarget = { readonly [K in TargetKey]?: number | undefined }

interface TargetDose {
  readonly product: string
  readonly gPerM3?: number | undefined
  readonly mLPerM3?: number | undefined
}

export interface TargetAnswer {
  readonly doses: readonly TargetDose[]
  readonly after: SolvedWater
}

/** A product by the name it was asked for, with what one unit of its basis changes [mol/kg per g/m³ or mL/m³]. */
interface Means {
  readonly name: string
  readonly basis: 'g' | 'mL'
  readonly perUnit: Delta
}

const TOLERANCE_MG_PER_L = 1e-7
const ROUNDS = 40
const SETTLED = 1e-12
const MOST_DOUBLINGS = 18
const PH_TOLERANCE = 1e-9

/**
 * The doses that bring a water exactly to a target with these products: fewest products, earlier ones preferred, none
 * below zero. What has a conserved total is linear; pH with alkalinity fixes carbon; pH alone is one root.
 */
export function targetDoses(
  start: WaterReading,
  target: ExactTarget,
  productIds: readonly string[],
  constants: Constants,
): Result<TargetAnswer> {
  const totals = totalsOf(start, constants)
  if (!totals.ok) return fail(under('start', totals.problem))
  for (const [key, value] of Object.entries(target))
    if (value !== undefined && !(Number.isFinite(value) && value >= 0))
      return fail(badNumber(`target.${key}`, value, 'zero or more'))
  const means: Means[] = []
  for (const [index, name] of productIds.entries()) {
    const found = productById(name)
    if (!found.ok) return fail(under(`products[${index}]`, { ...found.problem, path: '' }))
    const { basis } = found.value
    const perUnit = doseDelta(name, basis === 'mL' ? { mLPerM3: 1 } : { gPerM3: 1 })
    if (!perUnit.ok) return fail(under(`products[${index}]`, perUnit.problem))
    means.push({ name, basis, perUnit: perUnit.value })
  }
  const amounts = solve(totals.value, target, means, constants)
  if (!amounts) return fail(targetUnreachable(whatIsMissing(totals.value, target, means, constants)))
  const after = solvedWater(addTotals(totals.value, total(means, amounts)), constants)
  if (!after.ok) return after
  const doses = means.flatMap((mean, index): TargetDose[] => {
    const amount = amounts[index] ?? 0
    if (amount <= 0) return []
    return [mean.basis === 'mL' ? { product: mean.name, mLPerM3: amount } : { product: mean.name, gPerM3: amount }]
  })
  return ok({ doses, after: after.value })
}

function total(means: readonly Means[], amounts: readonly number[]): Delta {
  return sumDeltas(means.map((mean, index) => scaleDelta(mean.perUnit, amounts[index] ?? 0)))
}

function solve(
  start: Totals,
  target: ExactTarget,
  means: readonly Means[],
  constants: Constants,
): readonly number[] | undefined {
  const { pH } = target
  if (pH === undefined) return linearAmounts(start, target, means)?.amounts
  if (target.ta_mg_per_L_as_CaCO3 !== undefined) return withCarbon(start, target, pH, means, constants)
  return withPHOnly(start, target, pH, means, constants)
}

/** The rows of every target but pH, and of carbon where it is wanted. */
function linearAmounts(
  start: Totals,
  target: ExactTarget,
  means: readonly Means[],
  carbonMol?: number,
  hint?: readonly number[],
): ReturnType<typeof fewestAmounts> {
  const keys = (Object.keys(TOTAL_OF) as LinearKey[]).filter((key) => target[key] !== undefined)
  const need = keys.map((key) => (target[key] ?? 0) - readingChange(start, key))
  const columns = means.map((mean) => keys.map((key) => readingChange(mean.perUnit, key)))
  if (carbonMol !== undefined) {
    need.push((carbonMol - start.carbonMol) * MG_CACO3_PER_EQ)
    means.forEach((mean, index) => {
      columns[index]?.push((mean.perUnit.carbonMol ?? 0) * MG_CACO3_PER_EQ)
    })
  }
  return fewestAmounts(columns, need, TOLERANCE_MG_PER_L, hint)
}

/** pH and alkalinity together: carbon follows, and shifts a little with the other ions of the doses. */
function withCarbon(
  start: Totals,
  target: ExactTarget,
  pH: number,
  means: readonly Means[],
  constants: Constants,
): readonly number[] | undefined {
  const alkalinityEq = (target.ta_mg_per_L_as_CaCO3 ?? 0) / MG_CACO3_PER_EQ
  // what the target fixes is in the water from the first round on: it decides how much carbon pH needs
  let dosed: Totals = { ...start, ...fixedTotals(target) }
  let before = Number.NaN
  let hint: readonly number[] | undefined
  for (let round = 0; round < ROUNDS; round++) {
    const wanted = equilibrateAtPH({ ...dosed, alkalinityEq, carbonMol: 0 }, pH, constants)
    if (!wanted.ok) return undefined
    const { carbonMol } = wanted.value.totals
    const found = linearAmounts(start, target, means, carbonMol, hint)
    if (!found) return undefined
    if (Math.abs(carbonMol - before) < SETTLED) return found.amounts
    before = carbonMol
    hint = found.used
    dosed = addTotals(start, total(means, found.amounts))
  }
  return undefined
}

function fixedTotals(target: ExactTarget): Partial<Totals> {
  const keys = (Object.keys(TOTAL_OF) as LinearKey[]).filter((key) => target[key] !== undefined)
  return Object.fromEntries(keys.map((key) => [TOTAL_OF[key].total, (target[key] ?? 0) / TOTAL_OF[key].mgPerMol]))
}

/** pH with alkalinity left free: one product moves pH, the others meet the rest around it. */
function withPHOnly(
  start: Totals,
  target: ExactTarget,
  pH: number,
  means: readonly Means[],
  constants: Constants,
): readonly number[] | undefined {
  const amountsAt = (mover: number, amount: number): readonly number[] | undefined => {
    const mean = means[mover]
    const moved = mean ? addTotals(start, scaleDelta(mean.perUnit, amount)) : start
    const others = means.map((each, index) => (index === mover ? { ...each, perUnit: {} } : each))
    const found = linearAmounts(moved, target, others)
    return found?.amounts.map((value, index) => (index === mover ? amount : value))
  }
  const distance =
    (mover: number) =>
    (amount: number): number => {
      const amounts = amountsAt(mover, amount)
      if (!amounts) return Number.NaN
      const solved = equilibrate(addTotals(start, total(means, amounts)), constants)
      return solved.ok ? solved.value.pH - pH : Number.NaN
    }
  for (let mover = 0; mover < Math.max(1, means.length); mover++) {
    const off = distance(mover)
    const atZero = off(0)
    if (Number.isNaN(atZero)) continue
    if (Math.abs(atZero) <= PH_TOLERANCE) return amountsAt(mover, 0)
    let lo = 0
    let hi = 0.25
    for (let i = 0; i < MOST_DOUBLINGS; i++) {
      const there = off(hi)
      if (Number.isNaN(there)) break
      if (there > 0 !== atZero > 0) {
        const root = bracketedRoot(off, lo, hi, 1e-10)
        if (root.ok) return amountsAt(mover, root.value.x)
        break
      }
      lo = hi
      hi *= 2
    }
  }
  return undefined
}

function whatIsMissing(start: Totals, target: ExactTarget, means: readonly Means[], constants: Constants): string {
  const keys = (Object.keys(target) as TargetKey[]).filter((key) => target[key] !== undefined)
  const alone = keys.filter((key) => !solve(start, { [key]: target[key] }, means, constants))
  const named = (alone.length > 0 ? alone : keys).map((key) =>
    TARGET_LABELS[key].replace(/^[A-Z](?![A-Z])/, (c) => c.toLowerCase()),
  )
  return alone.length > 0 ? named.join(', ') : `${named.join(', ')} all at once`
}
