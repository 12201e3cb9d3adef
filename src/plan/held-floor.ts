import { contactTime, ORGANISMS } from '../water/index.ts'
import { chlorineFloor } from './floor.ts'
import type { Upkeep, UpkeepInput } from './types.ts'

/** The floor, whether readings and regime hold it, and what is lacking [mg/L]. */
export function heldFloor(input: UpkeepInput): Upkeep['floor'] {
  const floor = chlorineFloor(input.water.cya_mg_per_L, input.chlorineFloorMgPerL)
  const present = input.water.fc_mg_per_L_as_Cl2
  const band = input.targets.fc_mg_per_L_as_Cl2
  // a regime that aims below the floor fails whatever today's reading is
  const aimed = Math.min(present ?? Number.POSITIVE_INFINITY, band?.aim ?? Number.POSITIVE_INFINITY)
  const residual = Number.isFinite(aimed) ? aimed : 0
  const isAimLow = band !== undefined && band.aim < floor.mgPerL
  const isHeld = present !== undefined && residual >= floor.mgPerL
  const because = isHeld
    ? ''
    : isAimLow
      ? ` The band aims at ${band.aim} mg/L, below it.`
      : present === undefined
        ? ' Free chlorine is not measured, so it is not known to be held.'
        : ` The last reading is ${present} mg/L.`
  return {
    mgPerL: floor.mgPerL,
    ...(floor.adviceMgPerL === undefined ? {} : { adviceMgPerL: floor.adviceMgPerL }),
    reason: `${floor.reason}${because}`,
    isHeld,
    lackingMgPerL: isHeld ? 0 : Math.max(0, floor.mgPerL - residual),
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
