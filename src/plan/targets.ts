import { REGIMES } from './regimes.ts'
import { surfaceOf } from './surfaces.ts'
import type { Band, SourcedBand, TargetKey, Targets } from './types.ts'

/** Every reading that can have a target: what it is called, and how it is asked for. */
export const TARGET_KEYS: readonly TargetKey[] = Object.freeze([
  'pH',
  'ta_mg_per_L_as_CaCO3',
  'fc_mg_per_L_as_Cl2',
  'ch_mg_per_L_as_CaCO3',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'salt_mg_per_L_as_NaCl',
])

export const TARGET_LABELS: { readonly [K in TargetKey]: string } = Object.freeze({
  pH: 'pH',
  ta_mg_per_L_as_CaCO3: 'Total alkalinity',
  fc_mg_per_L_as_Cl2: 'Free chlorine',
  ch_mg_per_L_as_CaCO3: 'Calcium hardness',
  cya_mg_per_L: 'Stabiliser',
  borate_mg_per_L_as_B: 'Borate',
  salt_mg_per_L_as_NaCl: 'Salt',
})

export type TargetOverrides = { readonly [K in TargetKey]?: Band | undefined }

/**
 * The bands to work to: calcium from the surface, the rest from the regime, the owner's own over both. A regime that is
 * not in the table leaves only the owner's own; the opening plan then says so.
 */
export function defaultTargets(
  surface: 'plaster' | 'vinyl' | 'fibreglass' | 'tile' | undefined,
  regimeId: string,
  overrides: TargetOverrides,
): Targets {
  const regime = REGIMES.get(regimeId)
  const defaults: Partial<Record<TargetKey, Band & { readonly source: string }>> = regime
    ? { ...regime.bands, ch_mg_per_L_as_CaCO3: surfaceOf(surface).calcium }
    : {}
  const targets: Partial<Record<TargetKey, SourcedBand>> = {}
  for (const key of TARGET_KEYS) {
    const own = overrides[key]
    const standard = defaults[key]
    if (own) targets[key] = { low: own.low, aim: own.aim, high: own.high, source: 'Your own band.', isOwn: true }
    else if (standard) targets[key] = { ...standard, isOwn: false }
  }
  return targets
}

/** Ends count as inside; the last bits of rounding don't decide. */
export function isInside(value: number, band: Band): boolean {
  const slack = 1e-9 * Math.max(1, Math.abs(band.high))
  return value >= band.low - slack && value <= band.high + slack
}
