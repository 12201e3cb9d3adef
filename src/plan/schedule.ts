import { deltaOf } from '../chemicals/index.ts'
import { addTotals } from '../water/index.ts'
import { aerated } from './aeration.ts'
import { type Balance, type BalanceBands, type BalanceProducts, balanceTo } from './balance.ts'
import { effectPerGPerM3 } from './effect.ts'
import { LIMITS } from './limits.ts'
import { lowerAlkalinity } from './lower-alkalinity.ts'
import { afterDose, boundSIFrom, type Exception, isPermitted, type Move, permittedPart, type Rules } from './moves.ts'
import { doseToPH } from './single.ts'
import type { SolvedWater } from './solved.ts'
import { isInside } from './targets.ts'
import type { Want } from './wants.ts'

/** The usual order, and three others for when a residual would come too late. */
export type Order = 'usual' | 'chlorine-first' | 'little-first' | 'ph-then-chlorine'

export interface ScheduleInput extends Rules {
  readonly start: SolvedWater
  readonly fixed: readonly Want[]
  readonly balance: Balance
  readonly bands: BalanceBands
  readonly products: BalanceProducts
  /** What goes in first of chlorine that has no room as a whole, in the order that asks for it [g/m³]. */
  readonly littleGPerM3?: number | undefined
}

export interface Schedule {
  readonly moves: readonly Move[]
  /** What could not be placed within the limits. */
  readonly left: readonly Want[]
}

type Stage = 'alkalinity' | 'ph' | 'littleChlorine' | 'openingChlorine' | 'calcium' | 'borate' | 'stabiliser'

const ORDERS: { readonly [O in Order]: readonly Stage[] } = {
  usual: ['alkalinity', 'ph', 'openingChlorine', 'calcium', 'borate', 'stabiliser'],
  'chlorine-first': ['openingChlorine', 'alkalinity', 'ph', 'calcium', 'borate', 'stabiliser'],
  'little-first': ['littleChlorine', 'ph', 'openingChlorine', 'alkalinity', 'calcium', 'borate', 'stabiliser'],
  'ph-then-chlorine': ['ph', 'openingChlorine', 'alkalinity', 'calcium', 'borate', 'stabiliser'],
}
/** A part smaller than this share of a dose is not worth a line of its own. */
const WORTHWHILE = 0.05
const MOST_PARTS = 16
/** Where acid or base is taken to, to make room for the rest of a dose. */
const ROOM_PH = {
  lowest: 7.2,
  down: 7.8,
  stepDown: 0.25,
  up: 7.8,
  inHurry: [8.1, 8.0, 7.9, 7.8, 7.7, 7.6, 7.5, 7.4, 7.3, 7.2, 7.1],
} as const
/** pH that a first correction may reach when the doses after it pull it back. */
const ROOMY = { low: 7.1, high: 7.9 } as const
const NOTHING_G_PER_M3 = 1e-6

/** Puts the solved amounts into the order of dosing, each line within the limits. */
export function schedule(input: ScheduleInput, order: Order): Schedule {
  const { products, bands } = input
  const isPHFirst = order === 'ph-then-chlorine' || order === 'little-first'
  const aimPH = bands.pH?.aim ?? 7.5
  const moves: Move[] = []
  let water = input.start
  let deferred: Want[] = []
  let isLowered = false
  let acidSpent = 0

  const push = (more: readonly Move[]): boolean => {
    moves.push(...more)
    water = more.at(-1)?.after ?? water
    return more.length > 0
  }
  const dosed = (want: Want): SolvedWater | undefined =>
    afterDose(water.totals, deltaOf(want.product, want.gPerM3), input.constants)
  const give = (want: Want, gPerM3: number, exception?: Exception): boolean => {
    const part = { ...want, gPerM3 }
    const after = dosed(part)
    return after !== undefined && push([{ kind: 'dose', want: part, before: water, after, exception }])
  }
  const aerate = (pH: number): boolean => {
    const after = aerated(water, pH, input)
    return after !== undefined && push([{ kind: 'aerate', before: water, after }])
  }
  const correction = (purpose: 'acid' | 'base', pH: number): Want | undefined => {
    const product = products[purpose]
    const gPerM3 = doseToPH(water.totals, deltaOf(product, 1), pH, input.constants)
    return gPerM3 !== undefined && gPerM3 > NOTHING_G_PER_M3 ? { purpose, product, gPerM3 } : undefined
  }
  /** Acid, base or air where the next part of a dose would leave the limits. */
  const roomFor = (next: Want): Move | undefined => {
    const after = dosed(next)
    if (!after) return undefined
    const scales = after.equilibrium.calciteSI > boundSIFrom(water, input)
    const up = !scales && after.equilibrium.pH < Math.max(LIMITS.lowestPH, water.equilibrium.pH)
    const down = Math.max(ROOM_PH.lowest, Math.min(ROOM_PH.down, water.equilibrium.pH - ROOM_PH.stepDown))
    const aim = up ? ROOM_PH.up : next.purpose === 'borate' ? ROOM_PH.lowest : down
    // a residual is in a hurry: no further down than it needs
    const aims = next.purpose === 'openingChlorine' && !up ? [...ROOM_PH.inHurry, aim] : [aim]
    let way: Move | undefined
    for (const pH of aims) {
      way = roomAt(pH, up) ?? way
      if (way && permittedPart(way.after, next, input) >= next.gPerM3 * (1 - 1e-9)) return way
    }
    return way
  }
  const roomAt = (aim: number, up: boolean): Move | undefined => {
    const isFar = Math.abs(water.equilibrium.pH - aim) > 0.1 && water.equilibrium.pH > aim !== up
    if (!isFar) return undefined
    if (up && input.balance.aerationMol > 0) {
      const aired = aerated(water, aim, input)
      if (aired) return { kind: 'aerate', before: water, after: aired }
    }
    const want = correction(up ? 'base' : 'acid', aim)
    const part = want ? permittedPart(water, want, input) : 0
    if (!want || part <= WORTHWHILE * want.gPerM3) return undefined
    const given = { ...want, gPerM3: part }
    const there = dosed(given)
    return there && { kind: 'dose', want: given, before: water, after: there, exception: 'makes-room' }
  }
  /** Places a dose, in parts where it must be; what is left is returned. */
  const place = (want: Want, mayMakeRoom: boolean, exception?: Exception): number => {
    let left = want.gPerM3
    for (let part = 0; part < MOST_PARTS; part++) {
      const now = permittedPart(water, { ...want, gPerM3: left }, input)
      if (now >= left * (1 - 1e-9)) return give(want, left, left < want.gPerM3 ? 'part' : exception) ? 0 : left
      if (!mayMakeRoom) return left
      const whole = { ...want, gPerM3: left }
      const first = roomFor(whole)
      const roomy = first && permittedPart(first.after, whole, input) >= left * (1 - 1e-9)
      // two even parts rather than nearly all and a crumb
      const share = Math.min(now, 0.5 * left)
      if (!roomy && share > WORTHWHILE * want.gPerM3 && give(want, share, 'part')) left -= share
      const room = roomy ? first : roomFor({ ...want, gPerM3: left })
      if (!room) return left
      push([room])
      if (room.kind === 'dose' && room.want.purpose === 'acid') acidSpent += room.want.gPerM3
    }
    return left
  }
  const placeOrDefer = (want: Want, mayMakeRoom: boolean, exception?: Exception): void => {
    const left = place(want, mayMakeRoom, exception)
    if (left > 0) deferred.push({ ...want, gPerM3: left })
  }
  const retry = (mayMakeRoom: boolean): void => {
    const again = deferred
    deferred = []
    for (const want of again) placeOrDefer(want, mayMakeRoom, 'deferred')
  }
  /** Whether everything still to come keeps the limits by itself. */
  const restHolds = (from: SolvedWater, rest: readonly Want[]): boolean => {
    let at = from
    for (const want of rest) {
      const after = afterDose(at.totals, deltaOf(want.product, want.gPerM3), input.constants)
      if (!after || !isPermitted(at, after, input)) return false
      at = after
    }
    return true
  }
  const correctPH = (rest: readonly Want[], exception?: Exception): void => {
    const { acidGPerM3, baseGPerM3, aerationMol } = input.balance
    // a pH inside its band gets no line here; what later doses do to it is put right after them
    const isOutside = !bands.pH || !isInside(water.equilibrium.pH, bands.pH)
    if (aerationMol > 0) {
      const isHigh = water.equilibrium.pH > ROOM_PH.up
      if (acidGPerM3 === 0 && isOutside) aerate(aimPH)
      else if (acidGPerM3 > 0 && isHigh && isPHFirst) {
        const first = correction('acid', ROOM_PH.up)
        const part = first ? permittedPart(water, { ...first, gPerM3: Math.min(first.gPerM3, acidGPerM3) }, input) : 0
        if (first && part > NOTHING_G_PER_M3 && give(first, part, exception)) acidSpent += part
      }
      return
    }
    const purpose = acidGPerM3 > 0 ? 'acid' : 'base'
    const total = Math.max(acidGPerM3 - acidSpent, baseGPerM3)
    const budget: Want = { purpose, product: products[purpose], gPerM3: total }
    if (budget.gPerM3 <= NOTHING_G_PER_M3) return
    const whole = dosed(budget)
    const pH = whole?.equilibrium.pH ?? 0
    if (whole && pH >= ROOMY.low && pH <= ROOMY.high && isPermitted(water, whole, input) && restHolds(whole, rest)) {
      give(budget, budget.gPerM3, exception)
      return
    }
    const toAim = isOutside ? correction(purpose, aimPH) : undefined
    if (!toAim) return
    const part = permittedPart(water, { ...toAim, gPerM3: Math.min(toAim.gPerM3, budget.gPerM3) }, input)
    if (part > WORTHWHILE * budget.gPerM3) give(budget, part, exception)
  }
  /** Rounds of acid and air, once in a plan. */
  const lower = (acidGPerM3: number): boolean => {
    if (isLowered) return false
    isLowered = true
    return push(lowerAlkalinity(water, products.acid, acidGPerM3, acidSpent > 0, bands.alkalinity, input))
  }
  /** What a balance asks for next, in one step; false where nothing more can be done. */
  const follow = (rest: Balance): boolean => {
    if (rest.acidGPerM3 > NOTHING_G_PER_M3 && rest.aerationMol > 0) return lower(rest.acidGPerM3)
    const wants: Want[] = [
      { purpose: 'alkalinity', product: products.alkalinity, gPerM3: rest.alkalinityGPerM3 },
      { purpose: 'acid', product: products.acid, gPerM3: rest.acidGPerM3 },
      { purpose: 'base', product: products.base, gPerM3: rest.baseGPerM3 },
    ]
    for (const want of wants.filter((each) => each.gPerM3 > NOTHING_G_PER_M3)) {
      const part = permittedPart(water, want, input)
      if (part > WORTHWHILE * want.gPerM3) return give(want, part, 'afterwards')
    }
    return rest.aerationMol > 0 && aerate(aimPH)
  }

  const stages = ORDERS[order]
  let littleGPerM3 = 0
  const fixedOf = (stage: Stage): Want | undefined => {
    const want = input.fixed.find((each) => each.purpose === stage)
    return want && stage === 'openingChlorine' ? { ...want, gPerM3: want.gPerM3 - littleGPerM3 } : want
  }
  /** As much chlorine as has room, up to its floor; a trace is no line. */
  const giveLittle = (): void => {
    const want = fixedOf('openingChlorine')
    if (!want || !input.littleGPerM3) return
    const part = permittedPart(water, { ...want, gPerM3: input.littleGPerM3 }, input)
    const raises = part * effectPerGPerM3(want.product, 'fc_mg_per_L_as_Cl2')
    if (raises >= LIMITS.leastChlorineMgPerL && give(want, part, 'same-day')) littleGPerM3 = part
  }
  stages.forEach((stage, at) => {
    if (stage === 'littleChlorine') giveLittle()
    else if (stage === 'alkalinity') {
      const { alkalinityGPerM3, acidGPerM3, aerationMol } = input.balance
      const want: Want = { purpose: 'alkalinity', product: products.alkalinity, gPerM3: alkalinityGPerM3 }
      if (alkalinityGPerM3 > NOTHING_G_PER_M3) placeOrDefer(want, false)
      if (acidGPerM3 > 0 && aerationMol > 0) lower(acidGPerM3 - acidSpent)
    } else if (stage === 'ph') {
      const rest = stages.slice(at + 1).flatMap((later) => fixedOf(later) ?? [])
      correctPH(rest, isPHFirst ? 'ph-first' : undefined)
    } else {
      const want = fixedOf(stage)
      const early = stage === 'openingChlorine' && order !== 'usual'
      // borax raises pH so far that acid has to go between its parts
      const exception = littleGPerM3 > 0 && early ? 'part' : early ? 'same-day' : undefined
      if (want && want.gPerM3 > NOTHING_G_PER_M3) placeOrDefer(want, want.purpose === 'borate' || early, exception)
    }
    if (deferred.length > 0) retry(false)
  })
  if (deferred.length > 0) retry(true)

  const salt = input.fixed.find((want) => want.purpose === 'salt')
  const saltDelta = salt ? deltaOf(salt.product, salt.gPerM3) : {}
  for (let round = 0; round < MOST_PARTS; round++) {
    const end = addTotals(water.totals, saltDelta)
    const rest = balanceTo(end, bands, products, input.constants)
    // where air was at work already, air lifts pH
    if (isLowered && rest && rest.acidGPerM3 === 0 && rest.baseGPerM3 > NOTHING_G_PER_M3 && aerate(aimPH)) continue
    if (rest && follow(rest)) continue
    // alkalinity that the rounds did not bring down stays; pH is set right without it
    const pHOnly = balanceTo(end, { pH: bands.pH, alkalinity: undefined }, products, input.constants)
    // base would raise it further still: air first
    if (isLowered && pHOnly && pHOnly.baseGPerM3 > NOTHING_G_PER_M3 && aerate(aimPH)) continue
    if (!isLowered || !pHOnly || !follow(pHOnly)) break
  }

  if (moves.length > 0) moves.push({ kind: 'measure', before: water, after: water })
  if (salt) {
    placeOrDefer(salt, false)
    if (moves.at(-1)?.kind === 'dose') moves.push({ kind: 'measure', before: water, after: water })
  }
  return { moves, left: deferred }
}
