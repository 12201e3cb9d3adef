import type { Problem } from '../base/index.ts'
import { mayHold, PRODUCTS, type Product, type ProductList, productById, type Verdict } from '../chemicals/index.ts'
import type { DeviceEntry, Spec, System } from '../document/index.ts'
import { REGIMES } from '../plan/index.ts'
import { memoLast } from './memo.ts'
import { systemById } from './volume.ts'

/**
 * Products by their substance alone: an owner's own are what they are like, however old they are and whatever their label
 * says of their strength, so that a device remembers one that nothing can be reckoned with.
 */
function substancesOf(system: System): ProductList {
  return {
    rows: PRODUCTS.rows,
    problems: [],
    find: (id) => {
      const own = system.ownProducts?.find((each) => each.id === id)
      const like = own && PRODUCTS.get(own.like)
      if (!own || !like) return productById(id)
      return { ok: true, value: { product: { ...like, id, label: own.label, likeId: like.id }, basis: 'g' } }
    },
  }
}

/** Whether a device may hold a product, by its kind and all that it has held; undefined where there is no such device. */
export function deriveMayHold(spec: Spec, systemId: string, deviceId: string, product: string): Verdict | undefined {
  const system = systemById(spec, systemId)
  const device = system?.equipment.devices?.find(({ id }) => id === deviceId)
  return system && device && mayHold(device, product, substancesOf(system))
}

/**
 * A warning for each device that is known to have held what must never meet in it, or what is never for such a device,
 * however that came into the document. Paths start at the document.
 */
export const deriveDevices = memoLast((spec: Spec, systemId: string): readonly Problem[] => {
  const index = spec.systems.findIndex(({ id }) => id === systemId)
  const system = spec.systems[index]
  if (!system) return []
  const products = substancesOf(system)
  return (system.equipment.devices ?? []).flatMap((device, i) => {
    const against = objectionTo(device, products)
    if (!against) return []
    return {
      code: 'device-has-held',
      path: `systems[${index}].equipment.devices[${i}].held`,
      what: `${device.name} has held what must never be in it: ${against.product}.`,
      why: against.reason,
      hint: `Put nothing more into it; keep it dry, open and away from others, and ask the makers of both how to get rid of it. ${against.instead}`,
    }
  })
})

/** Which devices a product goes through: tablets lie in something, what is dissolved first goes through a bucket. */
function isFor(kind: DeviceEntry['kind'], { form }: Product): boolean {
  if (form === 'gas') return false
  return form === 'tablet' ? kind !== 'bucket' : kind === 'bucket'
}

/**
 * What the history of the devices that a product would go into has against it, a sentence a device; none where each may
 * hold it. What a kind of device is never for is not said here: nobody is told to put it there.
 */
export function againstDevices(system: System, productId: string): readonly string[] {
  const products = substancesOf(system)
  const found = productById(productId, products)
  if (!found.ok) return []
  const { product } = found.value
  return (system.equipment.devices ?? []).flatMap((device) => {
    if (!isFor(device.kind, product)) return []
    const verdict = mayHold(device, productId, products)
    if (verdict.answer === 'may' || (verdict.answer === 'never' && verdict.because === undefined)) return []
    const { answer, reason, instead } = verdict
    const first =
      answer === 'never'
        ? `Put no ${product.label} into ${device.name}.`
        : `Before ${product.label} goes into ${device.name}, find out.`
    return [`${first} ${reason} ${instead}`]
  })
}

/** What stands against the daily chlorine in the devices that would feed it: before a feed or a week's amount is named. */
export function againstDailyChlorine(system: System): readonly string[] {
  const regime = REGIMES.get(system.regime.id)
  const productId = system.regime.products.dailyChlorine ?? regime?.products.dailyChlorine
  return productId === undefined ? [] : againstDevices(system, productId)
}

/** The first of what it has held that its kind or its other contents forbid; two that must not meet come before the rest. */
function objectionTo(device: DeviceEntry, products: ProductList) {
  const found = device.held.flatMap(({ product }) => {
    const others = device.held.filter((each) => each.product !== product)
    const verdict = mayHold({ ...device, held: others }, product, products)
    const known = productById(product, products)
    return verdict.answer === 'never' && known.ok ? [{ ...verdict, product: known.value.product.label }] : []
  })
  return found.find(({ because }) => because !== undefined) ?? found[0]
}
