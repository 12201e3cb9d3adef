import type { Spec } from '../document/index.ts'
import { againstDailyChlorine, deriveDevices } from './devices.ts'
import { deriveProducts } from './products.ts'
import { systemById } from './volume.ts'

/** What has to be said of the shed before any dose: devices that held what must not meet, a daily chlorine that its feeder must not hold, labels and prices that can't be. */
export function shedWarnings(spec: Spec, systemId: string, nowMs: number): readonly string[] {
  const devices = deriveDevices(spec, systemId).map(({ what, why, hint }) => `${what} ${why} ${hint}`)
  const system = systemById(spec, systemId)
  const own = system?.ownProducts ?? []
  const labels = deriveProducts(spec, systemId, nowMs).problems.map(({ path, what, hint }) => {
    const index = /^ownProducts\[(\d+)\]/.exec(path)?.[1]
    const name = index === undefined ? undefined : own[Number(index)]?.label
    return name === undefined ? `${what} ${hint}` : `“${name}” is left out: ${what} ${hint}`
  })
  return [...devices, ...(system ? againstDailyChlorine(system) : []), ...labels]
}
