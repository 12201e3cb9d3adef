import { fail, ok, type Problem, under } from '../../base/index.ts'
import { deriveUpkeep } from '../../derive/index.ts'
import type { Spec } from '../../document/index.ts'
import { specNotices, specOfInput } from '../spec-input.ts'
import type { Options, Verb } from '../verb.ts'

const DAY_MS = 86_400_000
const DAYS = 365

interface SeasonDay {
  readonly date: string
  readonly chlorineMgPerL: number
  /** Absent, in the sums too, where stabiliser is unknown and no single amount can be named. */
  readonly chlorineProductG?: number | undefined
  readonly chlorineProductLowG: number
  readonly chlorineProductHighG: number
  readonly acidG: number
  readonly evaporationM3: number
}

/** The upkeep of each day from the day of `--now`, with the water as it was measured last, and their sums. */
export const season: Verb = {
  id: 'season',
  summary:
    'SPEC → {"systems": [{"id", "days": [{"date", "chlorineMgPerL", …}], "totals", "warnings", "blocked"?}]}: upkeep day by day for a year, water held; a system that can’t be reckoned has {"id", "problem"}',
  run: (input, options) => {
    const spec = specOfInput(input)
    if (!spec.ok) return spec
    const problems: Problem[] = []
    const systems = spec.value.systems.map(({ id }, i) => {
      const year = yearOf(spec.value, id, options)
      if (year.ok) return { id, ...year.value }
      problems.push(under(`systems[${i}]`, { ...year.problem, path: '' }))
      return { id, problem: year.problem }
    })
    return problems.length > 0 && problems.length === systems.length
      ? fail(problems)
      : ok({ systems, ...specNotices(spec.value) })
  },
}

function yearOf(spec: Spec, systemId: string, options: Options) {
  const days: SeasonDay[] = []
  let [warnings, blocked]: [readonly string[], readonly string[] | undefined] = [[], undefined]
  for (let day = 0; day < DAYS; day++) {
    const atMs = options.nowMs + day * DAY_MS
    const result = dayOf(spec, systemId, atMs, options)
    if (!result.ok) return result
    const { warnings: said, blocked: by, ...rest } = result.value
    if (day === 0) [warnings, blocked] = [said, by]
    days.push(rest)
  }
  const sum = (pick: (day: SeasonDay) => number) => days.reduce((total, day) => total + pick(day), 0)
  const isNamed = days.every(({ chlorineProductG }) => chlorineProductG !== undefined)
  return ok({
    days,
    totals: {
      ...(isNamed ? { chlorineProductG: sum((day) => day.chlorineProductG ?? 0) } : {}),
      chlorineProductLowG: sum((day) => day.chlorineProductLowG),
      chlorineProductHighG: sum((day) => day.chlorineProductHighG),
      acidG: sum((day) => day.acidG),
      evaporationM3: sum((day) => day.evaporationM3),
    },
    warnings,
    ...(blocked ? { blocked } : {}),
  })
}

function dayOf(spec: Spec, systemId: string, atMs: number, options: Options) {
  const result = deriveUpkeep(spec, systemId, atMs, options.constantsId)
  if (!result.ok) return result
  const { value } = result
  return ok({
    date: new Date(atMs).toISOString().slice(0, 10),
    chlorineMgPerL: value.chlorineMgPerLDay,
    chlorineProductG: value.productGPerDay,
    chlorineProductLowG: value.productLowGPerDay,
    chlorineProductHighG: value.productHighGPerDay,
    acidG: value.acidGPerFortnight / 14,
    evaporationM3: value.evaporationM3PerWeek / 7,
    warnings: value.warnings,
    blocked: value.blocked,
  })
}
