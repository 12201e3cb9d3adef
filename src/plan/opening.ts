import { ok, type Problem, type Result } from '../base/index.ts'
import { type Constants, excessChlorine } from '../water/index.ts'
import { assemble, type Follows, keyMaker } from './assemble.ts'
import { bathingVerdict, readingAgeHours } from './bathing.ts'
import { unmixedWords } from './bathing-waits.ts'
import { checkOpening, type PurposeProducts } from './check-input.ts'
import { combinedLine } from './combined-line.ts'
import { combinedPart } from './combined-part.ts'
import { doneLines } from './done-lines.ts'
import { endState } from './end-state.ts'
import { exchangePart } from './exchange-part.ts'
import { withinRules } from './floor.ts'
import { asBought, freshWords } from './fresh.ts'
import { afterGiven, MS_PER_HOUR, pouredBefore } from './given.ts'
import { inTime, residualByHours } from './in-time.ts'
import { withKeptChlorine } from './keep-chlorine.ts'
import { keptWords } from './kept.ts'
import { LIMITS } from './limits.ts'
import { measureFirstLine, measureMissingLine, tooOldWords } from './measure-first.ts'
import { missingReadings } from './missing.ts'
import type { Move } from './moves.ts'
import {
  believedTurnover,
  broughtAlong,
  endRemarks,
  lateChlorine,
  metalsLine,
  swapRemarks,
  turnoverWords,
  withStates,
} from './opening-marks.ts'
import { alkalinityStays, noBalance, notPlaced } from './problems.ts'
import { pendingDoses, purchasesFor, sumOf } from './purchases.ts'
import { quickChlorine } from './quick-chlorine.ts'
import type { ScheduleInput } from './schedule.ts'
import { withoutSlow } from './slow-doses.ts'
import { constantsOf, expectedOf, type SolvedWater } from './solved.ts'
import { startWater } from './start.ts'
import { FALLS_HOURS, fallLine, stepLine } from './step-lines.ts'
import { targetWarnings } from './target-warnings.ts'
import { isInside } from './targets.ts'
import type { OpeningInput, OpeningLine, OpeningPlan } from './types.ts'
import { unknownReadings, withUnknown } from './unknown-readings.ts'
import { STEPS } from './wording.ts'

/**
 * The ordered list of what to do from these readings to these targets. The end is solved first, all doses together; then
 * they are put in the order of dosing, each line within the limits, each with the water it should leave behind.
 */
export function openingPlan(asked: OpeningInput): Result<OpeningPlan> {
  const plan = planOf(asked)
  return plan.ok ? ok(withUnknown(plan.value, unknownReadings(asked.start))) : plan
}

function planOf(asked: OpeningInput): Result<OpeningPlan> {
  const given: OpeningInput = { ...asked, productList: asBought(asked), turnoverHours: believedTurnover(asked) }
  const checked = checkOpening(given)
  if (!checked.ok) return checked
  const slow = withoutSlow(given)
  const input: OpeningInput = {
    ...given,
    targets: withinRules(slow.targets, given.start, given),
  }
  const constants = constantsOf(input.constants)
  const missing = missingReadings(input)
  const because = unmixedWords(input) ?? tooOldWords(readingAgeHours(input.measuredAtMs, input.nowMs))
  const measureAgain = because !== undefined
  const said = [...(input.remarks ?? []), ...slow.words, ...keptWords(input)]
  const bathing = bathingVerdict(input)
  const { pH, ta_mg_per_L_as_CaCO3 } = input.start
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) {
    const line = { ...measureMissingLine(), state: 'next' as const }
    const warnings = [...said, 'Without pH and total alkalinity no dose can be checked on its way, so none is named.']
    return ok({
      lines: [line],
      purchases: [],
      purchaseSum: sumOf([]),
      targetWarnings: targetWarnings(given),
      missing,
      unreachable: [],
      measureAgain: true,
      warnings,
      bathing,
    })
  }
  const start = startWater({ ...input.start, pH, ta_mg_per_L_as_CaCO3 }, constants)
  if (!start.ok) return start
  const since = input.given.filter((dose) => input.measuredAtMs === undefined || dose.atMs >= input.measuredAtMs)
  const steps = afterGiven(start.value.water, since, input.volumeM3, constants, input.productList)
  if (!steps.ok) return steps
  const done = doneLines(steps.value, input)
  const now = steps.value.at(-1)?.after ?? start.value.water
  const quick = quickChlorine(checked.value, input)
  const excess = excessChlorine(now.reading.fc_mg_per_L_as_Cl2, since.length === 0)
  const combined = excess
    ? undefined
    : combinedLine(input, quick.products, since.length === 0 ? 0 : done.nextStartHours)
  const place = {
    startHours: done.nextStartHours,
    nowHours: (input.nowMs - done.originMs) / MS_PER_HOUR,
    poured: pouredBefore(input.given, done.originMs, input.productList),
    nextKey: keyMaker(done.lines.map((line) => line.key)),
  }
  if (combined) {
    // no dose is counted through that day's chlorine: the plan goes on from the readings after it
    const part = combinedPart(combined, now, input, quick.products, constants, place)
    const stated = withStates([...firstLines(because, true, input), ...done.lines, ...part.lines], input)
    const fresh = freshWords(stated, asked)
    const { lines } = fresh
    const isDone = lines.some(({ key, state }) => key === combined.key && state === 'done')
    const purchases = purchasesFor([...pendingDoses(lines), ...(isDone ? [] : (combined.amounts ?? []))], input)
    return ok({
      lines,
      purchases,
      purchaseSum: sumOf(purchases),
      targetWarnings: targetWarnings(given),
      missing,
      unreachable: [],
      measureAgain,
      startWater: expectedOf(start.value.water),
      endWater: expectedOf(part.end),
      warnings: [...said, ...start.value.assumptions, ...turnoverWords(lines, asked), ...fresh.warnings],
      bathing,
    })
  }
  const ahead = excess ? waitForChlorine(now, place) : planAhead(now, input, quick.products, constants, place)
  if (!ahead.ok) return ahead
  const isChlorinated = ahead.value.lines.some((line) => line.kind === 'dose' && line.purpose === 'openingChlorine')
  const opening = firstLines(because, ahead.value.lines.length > 0 || since.length > 0, input)
  const fresh = freshWords(withStates([...opening, ...done.lines, ...ahead.value.lines], input), asked)
  const { lines } = fresh
  const purchases = purchasesFor(pendingDoses(lines), input)
  return ok({
    lines,
    purchases,
    purchaseSum: sumOf(purchases),
    targetWarnings: targetWarnings(given),
    missing,
    unreachable: ahead.value.problems,
    measureAgain,
    startWater: expectedOf(start.value.water),
    endWater: expectedOf(ahead.value.end),
    warnings: [
      ...said,
      ...start.value.assumptions,
      ...(isChlorinated ? quick.warnings : []),
      ...ahead.value.warnings,
      ...turnoverWords(lines, asked),
      ...fresh.warnings,
      ...broughtAlong(ahead.value.lines, input),
    ],
    bathing,
  })
}

interface Ahead {
  readonly lines: readonly OpeningLine[]
  readonly problems: readonly Problem[]
  readonly warnings: readonly string[]
  readonly end: SolvedWater
}

/** Far too much chlorine: nothing goes in, above all no acid, until it has fallen and was read again. */
function waitForChlorine(
  now: SolvedWater,
  place: Follows & { readonly nextKey: (base: string) => string },
): Result<Ahead> {
  const wait = fallLine(place.nextKey('chlorine-high'), place.startHours)
  const again = stepLine('measure', place.nextKey('measure'), STEPS.measure, place.startHours + FALLS_HOURS, 0)
  return ok({ lines: [wait, again], problems: [], warnings: [], end: now })
}

function planAhead(
  now: SolvedWater,
  input: OpeningInput,
  products: PurposeProducts,
  constants: Constants,
  place: Follows & { readonly nextKey: (base: string) => string },
): Result<Ahead> {
  const turnoverHours = input.turnoverHours ?? LIMITS.turnoverHours
  const part = exchangePart(now, input, products, constants, { ...place, turnoverHours })
  if (!part.ok) return part
  const { water, clock } = part.value
  const problems: Problem[] = [...part.value.problems]
  const lines: OpeningLine[] = [...part.value.lines]
  const warnings: string[] = [...part.value.warnings]
  if (part.value.isEnd)
    return ok({
      lines,
      problems,
      warnings: [...warnings, ...lateChlorine(lines, place.startHours, residualByHours(now, input))],
      end: water,
    })
  const isExchanged = lines.length > 0
  const end = endState(water, input.start, input, products, constants)
  warnings.push(...end.fixed.warnings)
  if (!end.balance) problems.push(noBalance(water.equilibrium.pH, water.reading.ta_mg_per_L_as_CaCO3))
  const job: ScheduleInput = {
    start: water,
    fixed: end.fixed.wants,
    balance: end.balance ?? { acidGPerM3: 0, alkalinityGPerM3: 0, baseGPerM3: 0, aerationMol: 0 },
    bands: end.bands,
    products: end.products,
    boundSI: Math.max(LIMITS.calciteSI, end.water?.equilibrium.calciteSI ?? Number.NEGATIVE_INFINITY),
    constants,
  }
  const assembled = (moves: readonly Move[], nextKey: (base: string) => string) =>
    assemble(
      moves,
      input,
      turnoverHours,
      {
        startHours: clock,
        nowHours: isExchanged ? clock : place.nowHours,
        poured: part.value.poured,
      },
      nextKey,
      constants,
    )
  const best = inTime(job, (moves) => assembled(moves, keyMaker([])), clock, input)
  const doses = assembled(best.moves, place.nextKey)
  const chlorinated = best.moves.findLast((move) => move.kind === 'dose' && move.want.purpose === 'openingChlorine')
  const keepKey = () => place.nextKey('keep-chlorine')
  // where water is exchanged the line stands before that already
  const kept = isExchanged
    ? doses
    : withKeptChlorine(doses, chlorinated?.after ?? water, input, end.products, constants, keepKey)
  lines.push(...kept)
  problems.push(...best.left.map((want) => notPlaced(want.product.label)))
  const last = best.moves.at(-1)?.after ?? water
  if (end.balance && best.left.length === 0) problems.push(...unbalanced(last, input))
  warnings.push(
    ...lateChlorine(lines, place.startHours, residualByHours(now, input)),
    ...endRemarks(last, input),
    ...swapRemarks(products, end, lines, input),
  )
  const chlorine = input.start.fc_mg_per_L_as_Cl2
  const band = input.targets.fc_mg_per_L_as_Cl2
  if (band && chlorine !== undefined && water.reading.fc_mg_per_L_as_Cl2! > band.high + 1e-9)
    lines.unshift(fallLine(place.nextKey('chlorine-high'), place.startHours))
  return ok({ lines, problems, warnings, end: last })
}

/** What pH and alkalinity still lack at the end, where the limits let no more be done. */
function unbalanced(last: SolvedWater, input: OpeningInput): Problem[] {
  const { pH, ta_mg_per_L_as_CaCO3: alkalinity } = input.targets
  const value = last.reading.ta_mg_per_L_as_CaCO3
  if (pH && !isInside(last.reading.pH, pH)) return [notPlaced('The rest of the pH correction')]
  if (!alkalinity || isInside(value, alkalinity) || (alkalinity.isHighLeft && value > alkalinity.high)) return []
  return [value > alkalinity.high ? alkalinityStays(value, alkalinity.high) : notPlaced('The rest of the alkalinity')]
}

/** What stands before any dose. */
function firstLines(because: string | undefined, hasDoses: boolean, input: OpeningInput): OpeningLine[] {
  const lines: OpeningLine[] = []
  if (because !== undefined) lines.push(measureFirstLine(because))
  lines.push(stepLine('circulate', 'circulate', STEPS.circulate, 0, 1))
  const metals = metalsLine(input, hasDoses)
  if (metals) lines.push(metals)
  return lines
}
