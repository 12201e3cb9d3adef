import { fail, ok, type Result } from '../../base/index.ts'
import { GENERIC_GROUPS, isGeneric, type Substance } from '../../chemicals/index.ts'
import { problem } from '../problems.ts'
import type { DeviceEntry, PackagePrice, Spec, System } from '../types.ts'
import { changed, editSystem, replaced } from './places.ts'

/** What is known of a product without its strength: the owner's own are what they are like. */
export function substanceOf(system: System, id: string): Substance | undefined {
  const own = system.ownProducts?.find((each) => each.id === id)
  const generic = own?.like ?? id
  const groups = isGeneric(generic) ? GENERIC_GROUPS[generic] : undefined
  return groups && { label: own?.label ?? id, groups }
}

/** The list, or nothing where it would be empty: an absent list stays out of the saved text. */
export function orAbsent<T>(list: readonly T[]): readonly T[] | undefined {
  return list.length === 0 ? undefined : list
}

/** The system with the prices that are to stay. */
export function withPrices(system: System, stays: (price: PackagePrice) => boolean): System {
  return system.prices ? changed(system, { prices: orAbsent(system.prices.filter(stays)) }) : system
}

/** The system without an own product and what only it made sense of. */
export function withoutOwnProduct(system: System, id: string): System {
  const chosen = Object.entries(system.regime.products).filter(([, product]) => product !== id)
  const edited = changed(system, {
    ownProducts: orAbsent((system.ownProducts ?? []).filter((each) => each.id !== id)),
    stock: system.stock.filter(({ product }) => product !== id),
    regime: { ...system.regime, products: Object.fromEntries(chosen) },
  })
  return withPrices(edited, ({ product }) => product !== id)
}

/** The spec with one device edited. */
export function editDevice(
  spec: Spec,
  systemId: string,
  deviceId: string,
  edit: (device: DeviceEntry, system: System) => Result<DeviceEntry>,
): Result<Spec> {
  return editSystem(spec, systemId, (system) => {
    const devices = system.equipment.devices ?? []
    const index = devices.findIndex(({ id }) => id === deviceId)
    const device = devices[index]
    if (!device) return fail(problem('no-such-part', 'deviceId', { detail: 'such device' }))
    const edited = edit(device, system)
    return edited.ok
      ? ok({ ...system, equipment: { ...system.equipment, devices: replaced(devices, index, edited.value) } })
      : edited
  })
}
