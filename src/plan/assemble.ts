import { keepApart, type Product } from '../chemicals/index.ts'
import type { Constants } from '../water/index.ts'
import { doseLine, lineHours } from './dose-line.ts'
import type { DoseMove, Move } from './moves.ts'
import { USE_OF } from './purposes.ts'
import { aerateLine, stepLine } from './step-lines.ts'
import { inSteps } from './steps.ts'
import type { OpeningInput, OpeningLine, StepLine } from './types.ts'
import { apartStep, STEPS } from './wording.ts'

/** Hands out keys that stay the same while a line stands for the same job: acid, acid-2, acid-3. */
export function keyMaker(taken: readonly string[]): (base: string) => string {
  const used = new Map<string, number>()
  const next = (base: string): string => {
    const count = (used.get(base) ?? 0) + 1
    used.set(base, count)
    const key = count === 1 ? base : `${base}-${count}`
    return taken.includes(key) ? next(base) : key
  }
  return next
}

/** A product that is in the water already, and when it went in, in hours of the plan. */
export interface Poured {
  readonly product: Product
  readonly atHours: number
}

/** Where the lines begin, and what they follow. */
export interface Follows {
  readonly startHours: number
  readonly nowHours: number
  readonly poured: readonly Poured[]
}

const SLACK_HOURS = 1e-9

/** The product that went in last and must not meet this one yet, and until when they stay apart. */
function stillApart(product: Product, poured: readonly Poured[], turnoverHours: number, hours: number) {
  return poured
    .flatMap((before) => {
      const meets = keepApart(before.product, product)
      if (!meets) return []
      const untilHours = before.atHours + Math.max(turnoverHours, meets.hoursApart)
      return untilHours > hours + SLACK_HOURS ? [{ product: before.product, reason: meets.reason, untilHours }] : []
    })
    .reduce<{ product: Product; reason: string; untilHours: number } | undefined>(
      (last, each) => (last && last.untilHours >= each.untilHours ? last : each),
      undefined,
    )
}

/** A line that keeps a product apart from what went in before, from `clockHours` on; undefined where nothing forbids it by `sinceHours`. */
export function apartLine(
  product: Product,
  poured: readonly Poured[],
  turnoverHours: number,
  sinceHours: number,
  clockHours: number,
  nextKey: (base: string) => string,
): StepLine | undefined {
  const before = stillApart(product, poured, turnoverHours, sinceHours)
  if (!before) return undefined
  const hours = Math.max(1, before.untilHours - clockHours)
  return stepLine('wait', nextKey('apart'), apartStep(before.product, product, before.reason), clockHours, hours)
}

/** A move's share of all that the plan gives for its purpose. */
function shareOf(move: DoseMove, moves: readonly Move[]): number {
  const all = moves.reduce(
    (sum, each) => sum + (each.kind === 'dose' && each.want.purpose === move.want.purpose ? each.want.gPerM3 : 0),
    0,
  )
  return all > 0 ? move.want.gPerM3 / all : 1
}

/** Moves as lines: times, and a turnover of its own between products that must not meet, next to each other or not. */
export function assemble(
  given: readonly Move[],
  input: OpeningInput,
  turnoverHours: number,
  follows: Follows,
  nextKey: (base: string) => string,
  constants: Constants,
): readonly OpeningLine[] {
  const moves = inSteps(given, constants)
  const lines: OpeningLine[] = []
  const poured: Poured[] = [...follows.poured]
  let clock = follows.startHours
  let isFirst = true
  moves.forEach((move, at) => {
    if (move.kind === 'measure') {
      lines.push(stepLine('measure', nextKey('measure'), STEPS.measure, clock, 0))
      return
    }
    if (move.kind === 'aerate') {
      const optional = moves[at - 1]?.kind === 'dose' && (moves[at - 1] as DoseMove).exception === 'lowering'
      const line = aerateLine(nextKey('aerate'), move.before, move.after, input, clock, optional)
      lines.push(line)
      clock += line.waitHours
      isFirst = false
      return
    }
    const { product, purpose } = move.want
    // the first dose after ticked ones may have waited them out by the clock, yet not by now: it is still told apart
    const since = isFirst ? Math.min(clock, follows.nowHours) : clock
    isFirst = false
    const apart = apartLine(product, poured, turnoverHours, since, clock, nextKey)
    if (apart) {
      lines.push(apart)
      clock += apart.waitHours
    }
    const next = moves.slice(at + 1).find((later) => later.kind !== 'measure')
    const meets = next?.kind === 'dose' ? keepApart(product, next.want.product) : undefined
    const place = {
      key: nextKey(USE_OF[purpose]),
      startHours: clock,
      turnoverHours,
      waitsApart: meets !== undefined,
      jobShare: shareOf(move, moves),
    }
    const line = doseLine(move, place, input, constants)
    lines.push(line)
    poured.push({ product, atHours: clock + (line.pours.at(-1)?.hoursAfterStart ?? 0) })
    clock += lineHours(line)
    if (meets && next?.kind === 'dose') {
      // the line's own wait counts toward it
      const hours = Math.max(1, Math.max(turnoverHours, meets.hoursApart) - line.waitHours)
      lines.push(stepLine('wait', nextKey('apart'), apartStep(product, next.want.product, meets.reason), clock, hours))
      clock += hours
    }
  })
  return lines.map((line) => (isSplit(line, lines) ? { ...line, packages: undefined } : line))
}

/** Whether a product is given in several lines, so that packages are the shopping list's to count: each line would buy anew. */
function isSplit(line: OpeningLine, lines: readonly OpeningLine[]): boolean {
  if (line.kind !== 'dose' || line.packages?.isWhole) return false
  return lines.some((other) => other !== line && other.kind === 'dose' && other.productId === line.productId)
}
