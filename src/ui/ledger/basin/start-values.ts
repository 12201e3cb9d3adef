import type { StartingOutline } from '../../../basin/index.ts'
import { fromDisplay, toDisplay, type UnitSystem } from '../../../units/index.ts'

export type OutlineValues = Readonly<Record<string, number>>

/** The numbers that a starting outline begins with: its own, or whole feet where people measure in feet and that works. */
export function startValues(outline: StartingOutline, units: UnitSystem): OutlineValues {
  const own = Object.fromEntries(outline.parameters.map(({ id, defaultM }) => [id, defaultM]))
  if (units === 'metric') return own
  const whole = Object.fromEntries(
    outline.parameters.map(({ id, defaultM, minM, maxM }) => {
      const feet = fromDisplay('length', Math.round(toDisplay('length', defaultM, units)), units)
      return [id, Math.min(maxM, Math.max(minM, feet))]
    }),
  )
  return outline.make(whole).ok ? whole : own
}
