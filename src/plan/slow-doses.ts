import { productById } from '../chemicals/index.ts'
import { effectPerGPerM3, type LinearKey } from './effect.ts'
import { LIMITS } from './limits.ts'
import { isSlow, mixingHours } from './mixing.ts'
import { hoursBetween, spanWords } from './spans.ts'
import { TARGET_LABELS } from './targets.ts'
import type { OpeningInput, Targets } from './types.ts'

/** What of it stays in the water, so that a second dose is hard to undo. */
const STAYS: readonly LinearKey[] = [
  'ch_mg_per_L_as_CaCO3',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'salt_mg_per_L_as_NaCl',
]

/**
 * The targets without those that a dose was given for which had not dissolved when the reading was taken: the reading lacks
 * it, and dosing by that would give it twice. With what to do, in words.
 */
export function withoutSlow(input: OpeningInput): { readonly targets: Targets; readonly words: readonly string[] } {
  const { given, measuredAtMs, nowMs, productList, turnoverHours = LIMITS.turnoverHours } = input
  const waits = new Map<LinearKey, string>()
  for (const { product: id, amountG, atMs } of given) {
    const found = productById(id, productList)
    if (!found.ok || !isSlow(found.value.product) || !(amountG > 0)) continue
    const { product } = found.value
    const hours = mixingHours(product, turnoverHours)
    for (const key of STAYS) {
      const readAtMs = input.kept?.find((each) => each.key === key)?.atMs ?? measuredAtMs
      const isIn = readAtMs === undefined || atMs >= readAtMs || hoursBetween(atMs, readAtMs) >= hours
      const mgPerL = (amountG / input.volumeM3) * effectPerGPerM3(product, key)
      if (isIn || !(mgPerL > 0)) continue
      const left = hours - hoursBetween(atMs, nowMs)
      const when = left > 0 ? `Read it again in ${spanWords(left)}` : 'Read it again now'
      waits.set(
        key,
        `${TARGET_LABELS[key]}: ${product.label} went in ${spanWords(hoursBetween(atMs, readAtMs))} before it was read and takes ${spanWords(hours)} to dissolve, so the reading lacks up to ${mgPerL.toPrecision(2)} mg/L of it. None is dosed until it can be read. ${when}.`,
      )
    }
  }
  const targets = Object.fromEntries(Object.entries(input.targets).filter(([key]) => !waits.has(key as LinearKey)))
  return waits.size === 0 ? { targets: input.targets, words: [] } : { targets, words: [...waits.values()] }
}
