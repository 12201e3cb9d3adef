import { ok } from '../../base/index.ts'
import { deriveUpkeep } from '../../derive/index.ts'
import { specOfInput } from '../spec-input.ts'
import type { Verb } from '../verb.ts'

const DAY_MS = 86_400_000
const DAYS = 365

/** The upkeep of each day from the day of `--now`, with the water as it was measured last, and their sums. */
export const season: Verb = {
  id: 'season',
  summary:
    'SPEC → {"systems": [{"id", "days": [{"date", "chlorineMgPerL", …}], "totals"}]}: upkeep day by day for a year, water held',
  run: (input, options) => {
    const spec = specOfInput(input)
    if (!spec.ok) return spec
    const systems: unknown[] = []
    for (const { id } of spec.value.systems) {
      const days: {
        date: string
        chlorineMgPerL: number
        chlorineProductG: number
        acidG: number
        evaporationM3: number
      }[] = []
      for (let day = 0; day < DAYS; day++) {
        const atMs = options.nowMs + day * DAY_MS
        const result = deriveUpkeep(spec.value, id, atMs, options.constantsId)
        if (!result.ok) return result
        const { chlorineMgPerLDay, productGPerDay, acidGPerFortnight, evaporationM3PerWeek } = result.value
        days.push({
          date: new Date(atMs).toISOString().slice(0, 10),
          chlorineMgPerL: chlorineMgPerLDay,
          chlorineProductG: productGPerDay,
          acidG: acidGPerFortnight / 14,
          evaporationM3: evaporationM3PerWeek / 7,
        })
      }
      const sum = (key: 'chlorineProductG' | 'acidG' | 'evaporationM3') =>
        days.reduce((total, day) => total + day[key], 0)
      systems.push({
        id,
        days,
        totals: { chlorineProductG: sum('chlorineProductG'), acidG: sum('acidG'), evaporationM3: sum('evaporationM3') },
      })
    }
    return ok({ systems })
  },
}
