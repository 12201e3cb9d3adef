import type { UnitSystem } from '../units/index.ts'
import type { Settings, Theme } from './types.ts'

const SYSTEMS: readonly UnitSystem[] = ['us', 'metric', 'imperial']
const THEMES: readonly Theme[] = ['system', 'light', 'dark']

export const DEFAULT_SETTINGS: Settings = { units: 'us', theme: 'system' }

/** Settings from what storage held: what is not understood falls back to the default. */
export function settingsFrom(stored: unknown): Settings {
  const raw: Record<string, unknown> = typeof stored === 'object' && stored !== null ? { ...stored } : {}
  return {
    units: SYSTEMS.find((system) => system === raw['units']) ?? DEFAULT_SETTINGS.units,
    theme: THEMES.find((theme) => theme === raw['theme']) ?? DEFAULT_SETTINGS.theme,
  }
}
