import { deltaOf } from '../chemicals/index.ts'
import { addTotals, type Constants } from '../water/index.ts'
import { type Balance, type BalanceBands, type BalanceProducts, balanceTo } from './balance.ts'
import { lowerAlkalinity } from './lower-alkalinity.ts'
import { afterDose, type Exception, isPermitted, type Move, permittedPart } from './moves.ts'
import { doseToPH } from './single.ts'
import type { SolvedWater } from './solved.ts'
import { isInside } from './targets.ts'
import type { Want } from './wants.ts'

/** The usual order, and two others for when a residual would come too late. */
export type Order = 'usual' | 'chlorine-first' | 'ph-then-chlorine'

export interface ScheduleInput {
  readonly start: SolvedWater
  readonly fixed: readonly Want[]
  readonly balance: Balance
  readonly bands: BalanceBands
  readonly products: BalanceProducts
  readonly boundSI: number
  readonly constants: Constants
}

export interface Schedule {
  readonly moves: readonly Move[]
  /** What could not be placed within the limits. */
  readonly left: readonly Want[]
}

type Stage = 'alkalinity' | 'ph' | 'openingChlorine' | 'calcium' | 'borate' | 'stabiliser'

const ORDERS: { readonly [O in Order]: readonly Stage[] } = {
  usual: ['alkalinity', 'ph', 'openingChlorine', 'calcium', 'borate', 'stabiliser'],
  'chlorine-first': ['openingChlorine', 'alkalinity', 'ph', 'calcium', 'borate', 'stabiliser'],
  'ph-then-chlorine': ['ph', 'openingChlorine', 'alkalinity', 'calcium', 'borate', 'stabiliser'],
}
/** A part smaller than this share of a dose is not worth a line of its own. */
const WORTHWHILE = 0.05
const MOST_PARTS = 16
/** Where acid or base is taken to, to make room for the rest of a dose. */
const ROOM_PH = { down: 7.2, up: 7.8 } as const
/** pH that a first correction may reach when the doses after it pull it back. */
const ROOMY = { low: 7.1, high: 7.9 } as const

/** Puts the solved amounts into the order of dosing, each line within the limits. */
export function schedule(input: ScheduleInput, order: Order): Schedule {
  const { constants, products, boundSI, bands } = input
  const moves: Move[] = []
  let water = input.start
  let deferred: Want[] = []

  const give = (want: Want, gPerM3: number, exception?: Exception): boolean => {
    const after = afterDose(water.totals, deltaOf(want.product, gPerM3), constants)
    if (!after) return false
    moves.push({ kind: 'dose', want: { ...want, gPerM3 }, before: water, after, exception })
    water = after
    return true
  }
  const correction = (purpose: 'acid' | 'base', pH: number): Want | undefined => {
    const product = products[purpose]
    const gPerM3 = doseToPH(water.totals, deltaOf(product, 1), pH, constants)
    return gPerM3 !== undefined && gPerM3 > 0 ? { purpose, product, gPerM3 } : undefined
  }
  /** Acid or base where the next part of a dose would leave the limits. */
  const makeRoom = (next: Want): boolean => {
    const after = afterDose(water.totals, deltaOf(next.product, next.gPerM3), constants)
    if (!after) return false
    const up = after.equilibrium.pH < water.equilibrium.pH
    const there = water.equilibrium.pH
    const aim = up ? ROOM_PH.up : ROOM_PH.down
    if (up ? there > aim - 0.1 : there < aim + 0.1) return false
    const want = correction(up ? 'base' : 'acid', aim)
    if (!want) return false
    const part = permittedPart(water, want, boundSI, constants)
    return part > 0 && give(want, part, 'makes-room')
  }
  /** Places a dose, in parts where it must be; what is left is returned. */
  const place = (want: Want, mayMakeRoom: boolean, exception?: Exception): number => {
    let left = want.gPerM3
    for (let part = 0; part < MOST_PARTS && left > 0; part++) {
      const now = permittedPart(water, { ...want, gPerM3: left }, boundSI, constants)
      if (now >= left * (1 - 1e-9)) {
        give(want, left, part > 0 ? 'part' : exception)
        return 0
      }
      if (!mayMakeRoom) return left
      if (now > WORTHWHILE * want.gPerM3 && give(want, now, 'part')) left -= now
      if (!makeRoom({ ...want, gPerM3: left })) return left
    }
    return left
  }
  const placeOrDefer = (want: Want, exception?: Exception): void => {
    const bringsPH = want.purpose === 'borate'
    const left = place(want, bringsPH, exception)
    if (left > 0) deferred.push({ ...want, gPerM3: left })
  }
  const retry = (mayMakeRoom: boolean): void => {
    const again = deferred
    deferred = []
    for (const want of again) {
      const left = place(want, mayMakeRoom, 'deferred')
      if (left > 1e-9 * want.gPerM3) deferred.push({ ...want, gPerM3: left })
    }
  }
  /** Whether everything still to come keeps the limits by itself. */
  const restHolds = (from: SolvedWater, rest: readonly Want[]): boolean => {
    let at = from
    for (const want of rest) {
      const after = afterDose(at.totals, deltaOf(want.product, want.gPerM3), constants)
      if (!after || !isPermitted(at, after, boundSI)) return false
      at = after
    }
    return true
  }
  const correctPH = (rest: readonly Want[], exception?: Exception): void => {
    const { acidGPerM3, baseGPerM3, aerationMol } = input.balance
    if (acidGPerM3 > 0 && aerationMol > 0) return
    const purpose = acidGPerM3 > 0 ? 'acid' : 'base'
    const budget: Want = { purpose, product: products[purpose], gPerM3: Math.max(acidGPerM3, baseGPerM3) }
    if (budget.gPerM3 <= 0) return
    const whole = afterDose(water.totals, deltaOf(budget.product, budget.gPerM3), constants)
    const pH = whole?.equilibrium.pH ?? 0
    if (whole && pH >= ROOMY.low && pH <= ROOMY.high && isPermitted(water, whole, boundSI) && restHolds(whole, rest)) {
      give(budget, budget.gPerM3, exception)
      return
    }
    // a pH inside its band gets no line here; what later doses do to it is put right after them
    const isOutside = !bands.pH || !isInside(water.equilibrium.pH, bands.pH)
    const toAim = isOutside ? correction(purpose, bands.pH?.aim ?? 7.5) : undefined
    if (!toAim) return
    const part = permittedPart(water, { ...toAim, gPerM3: Math.min(toAim.gPerM3, budget.gPerM3) }, boundSI, constants)
    if (part > WORTHWHILE * budget.gPerM3) give(budget, part, exception)
  }

  const stages = ORDERS[order]
  const fixedOf = (stage: Stage) => input.fixed.find((want) => want.purpose === stage)
  stages.forEach((stage, at) => {
    if (stage === 'alkalinity') {
      const { alkalinityGPerM3, acidGPerM3, aerationMol } = input.balance
      if (alkalinityGPerM3 > 0)
        placeOrDefer({ purpose: 'alkalinity', product: products.alkalinity, gPerM3: alkalinityGPerM3 })
      if (acidGPerM3 > 0 && aerationMol > 0) {
        const lowered = lowerAlkalinity(water, input, acidGPerM3)
        moves.push(...lowered)
        water = lowered.at(-1)?.after ?? water
      }
      return
    }
    if (stage === 'ph') {
      const rest = stages.slice(at + 1).flatMap((later) => fixedOf(later) ?? [])
      correctPH(rest, order === 'ph-then-chlorine' ? 'ph-first' : undefined)
    } else {
      const want = fixedOf(stage)
      const early = stage === 'openingChlorine' && order !== 'usual'
      if (want) placeOrDefer(want, early ? 'same-day' : undefined)
    }
    if (deferred.length > 0) retry(false)
  })
  if (deferred.length > 0) retry(true)

  const salt = input.fixed.find((want) => want.purpose === 'salt')
  const saltDelta = salt ? deltaOf(salt.product, salt.gPerM3) : {}
  for (let round = 0; round < MOST_PARTS; round++) {
    const rest = balanceTo(addTotals(water.totals, saltDelta), bands, products, constants)
    if (!rest) break
    const wants: Want[] = [
      { purpose: 'alkalinity', product: products.alkalinity, gPerM3: rest.alkalinityGPerM3 },
      { purpose: 'acid', product: products.acid, gPerM3: rest.acidGPerM3 },
      { purpose: 'base', product: products.base, gPerM3: rest.baseGPerM3 },
    ]
    const doses = wants.filter((want) => want.gPerM3 > 1e-6)
    if (rest.aerationMol > 0 && doses.length === 0) {
      const after = afterDose(water.totals, { carbonMol: -rest.aerationMol }, constants)
      if (!after || !isPermitted(water, after, boundSI)) break
      moves.push({ kind: 'aerate', before: water, after })
      water = after
      continue
    }
    const want = doses[0]
    if (!want) break
    const part = permittedPart(water, want, boundSI, constants)
    if (part < WORTHWHILE * want.gPerM3 || !give(want, part, 'afterwards')) break
  }

  if (moves.length > 0) moves.push({ kind: 'measure', before: water, after: water })
  if (salt) {
    const left = place(salt, false)
    if (left > 0) deferred.push({ ...salt, gPerM3: left })
    else moves.push({ kind: 'measure', before: water, after: water })
  }
  return { moves, left: deferred }
}
