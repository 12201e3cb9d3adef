import type { Spec, System } from '../document/index.ts'
import { BASIC_READINGS } from '../plan/index.ts'
import { PEOPLE_READING_NAMES } from '../water/index.ts'
import { againstDailyChlorine, deriveDevices } from './devices.ts'
import { doubtedReadings } from './hold.ts'
import { isPools, latestReadings } from './latest.ts'
import { deriveProducts } from './products.ts'
import { deriveTargets } from './targets.ts'
import { systemById } from './volume.ts'

/**
 * What has to be said before any dose: readings that are left out, devices that held what must not meet, a daily chlorine
 * that its feeder must not hold, labels and prices that can't be.
 */
export function shedWarnings(spec: Spec, systemId: string, nowMs: number): readonly string[] {
  const devices = deriveDevices(spec, systemId).map(({ what, why, hint }) => `${what} ${why} ${hint}`)
  const system = systemById(spec, systemId)
  const own = system?.ownProducts ?? []
  const wantsStabiliser = (deriveTargets(spec, systemId).cya_mg_per_L?.low ?? 0) > 0
  const labels = deriveProducts(spec, systemId, nowMs).problems.map(({ path, what, hint }) => {
    const index = /^ownProducts\[(\d+)\]/.exec(path)?.[1]
    const name = index === undefined ? undefined : own[Number(index)]?.label
    return name === undefined ? `${what} ${hint}` : `“${name}” is left out: ${what} ${hint}`
  })
  return [
    ...(system ? leftOut(system, wantsStabiliser) : []),
    ...devices,
    ...(system ? againstDailyChlorine(system) : []),
    ...labels,
  ]
}

/** Readings that the plan goes on without, since the test itself spoils them. */
function leftOut(system: System, wantsStabiliser: boolean): readonly string[] {
  const newest = latestReadings(system)
  if (!newest || !isPools(newest, system)) return []
  return (
    doubtedReadings(newest)
      .filter(({ key }) => !BASIC_READINGS.includes(key))
      // none by a spoilt test is dosed for by nobody who wants none
      .filter(({ key }) => key !== 'cya_mg_per_L' || (newest.values[key] ?? 0) > 0 || wantsStabiliser)
      .map(({ key, words }) => `${capital(PEOPLE_READING_NAMES[key])} as read is not dosed by. ${words}`)
  )
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
