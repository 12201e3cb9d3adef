import type { Product } from '../chemicals/index.ts'
import { contactTime, ORGANISMS } from '../water/index.ts'
import { chlorineFloor } from './floor.ts'
import { type Losses, lossesAt, lowestResidual } from './residual.ts'
import type { DemandTerm, Upkeep, UpkeepInput } from './upkeep-types.ts'

const DAYS_PER_WEEK = 7

/** What the floor is judged by. */
export interface Keeping {
  readonly terms: readonly DemandTerm[]
  /** The residual that the terms are reckoned at [mg/L]. */
  readonly residualMgPerL: number
  readonly product: Product
}

/**
 * The floor, whether it is held, and what is lacking [mg/L]. It is held where the last reading, the band's aim and the
 * lowest residual between doses all reach it.
 */
export function heldFloor(input: UpkeepInput, keeping: Keeping): Upkeep['floor'] {
  const floor = chlorineFloor(input.water.cya_mg_per_L, input)
  const present = input.water.fc_mg_per_L_as_Cl2
  const band = input.targets.fc_mg_per_L_as_Cl2
  const losses = lossesAt(keeping.terms, keeping.residualMgPerL)
  const fed = input.feed && fedResidual(input, input.feed, keeping.product, losses, floor.mgPerL)
  const judged = fed ?? onceADay(input, keeping, losses, floor.mgPerL)
  const aim = band?.aim ?? Number.POSITIVE_INFINITY
  const least = Math.min(present ?? Number.POSITIVE_INFINITY, aim, judged.lowestMgPerL)
  const isHeld = present !== undefined && least >= floor.mgPerL
  const because = [
    ...(aim < floor.mgPerL ? [`The band aims at ${aim} mg/L, below it.`] : []),
    ...(present === undefined ? ['Free chlorine is not measured, so it is not known to be held.'] : []),
    ...(present !== undefined && present < floor.mgPerL ? [`The last reading is ${present} mg/L.`] : []),
    ...(fed || judged.lowestMgPerL < floor.mgPerL ? [judged.said] : []),
  ]
  return {
    mgPerL: floor.mgPerL,
    ...(floor.adviceMgPerL === undefined ? {} : { adviceMgPerL: floor.adviceMgPerL }),
    reason: [floor.reason, ...because].join(' '),
    isHeld,
    lackingMgPerL: isHeld ? 0 : Math.max(0, floor.mgPerL - least),
    lowestMgPerL: judged.lowestMgPerL,
    ...(fed ? { shortOfSupplyMgPerLDay: fed.shortMgPerLDay } : {}),
  }
}

/** Rounded down, so that what is below the floor never reads as the floor. */
const shown = (mgPerL: number): string => (Math.floor(mgPerL * 100 + 1e-9) / 100).toFixed(2)

/** What is fed now, and how low the residual gets by it. */
function fedResidual(
  input: UpkeepInput,
  feed: NonNullable<UpkeepInput['feed']>,
  product: Product,
  losses: Losses,
  floorMgPerL: number,
) {
  const doseMgPerL = (feed.gPerDose * product.availableChlorine) / input.volumeM3
  const supplyMgPerLDay = (doseMgPerL * feed.dosesPerWeek) / DAYS_PER_WEEK
  const demandMgPerLDay = losses.perDay * floorMgPerL + losses.steadyMgPerLDay
  const shortMgPerLDay = Math.max(0, demandMgPerLDay - supplyMgPerLDay)
  // a tablet dissolves all the way to the next one; everything else is in at once
  const everyDays = product.form === 'tablet' || feed.dosesPerWeek <= 0 ? 0 : DAYS_PER_WEEK / feed.dosesPerWeek
  const lowestMgPerL = lowestResidual(supplyMgPerLDay, everyDays, losses)
  const brings = `What is fed brings ${supplyMgPerLDay.toFixed(2)} mg/L a day`
  const between = everyDays > 0 ? 'falls to' : 'stands at'
  const short =
    shortMgPerLDay > 0
      ? `; holding the floor uses ${demandMgPerLDay.toFixed(2)}, so ${shortMgPerLDay.toFixed(2)} mg/L a day are short`
      : lowestMgPerL < floorMgPerL
        ? '; that would do if it came evenly: dose smaller and oftener'
        : ''
  return {
    lowestMgPerL,
    shortMgPerLDay,
    said: `${brings}, and by the sums the residual ${between} ${shown(lowestMgPerL)} mg/L${short}.`,
  }
}

/** Without a known feed: the residual a day after a dose has lifted it to the band's upper end. */
function onceADay(input: UpkeepInput, { product, residualMgPerL }: Keeping, losses: Losses, floorMgPerL: number) {
  const high = Math.max(input.targets.fc_mg_per_L_as_Cl2?.high ?? residualMgPerL, residualMgPerL)
  const lowestMgPerL = Math.max(0, (high + losses.ratioMgPerL) * Math.exp(-losses.perDay) - losses.ratioMgPerL)
  const other =
    product.form === 'tablet'
      ? 'Tablets that dissolve evenly may do better'
      : 'A pump or a generator that feeds evenly may do better'
  return {
    lowestMgPerL,
    shortMgPerLDay: undefined,
    said: `Dosed once a day to ${high} mg/L, the residual falls to ${shown(lowestMgPerL)} before the next dose, below ${floorMgPerL}. ${other}: enter what is fed now.`,
  }
}

/** Contact times of the present reading; only where stabiliser is measured to be none. */
export function contactTimesOf(input: UpkeepInput): Upkeep['contactTimes'] {
  const { pH, fc_mg_per_L_as_Cl2: chlorine, cya_mg_per_L: stabiliser } = input.water
  if (stabiliser !== 0 || pH === undefined || chlorine === undefined) return undefined
  const times = ORGANISMS.rows.flatMap((organism) => {
    const answer = contactTime(organism.id, {
      freeChlorineMgPerL: chlorine,
      pH,
      temperatureC: input.waterC,
      cyanurateMgPerL: stabiliser,
    })
    // a water outside the table's conditions has no times to show; that is an answer, not trouble
    return answer.ok
      ? [{ organism: answer.value.organism, minutes: answer.value.minutes, source: answer.value.source }]
      : []
  })
  return times.length > 0 ? times : undefined
}
