import { fail, ok, type Result } from '../base/index.ts'
import type { ClimateMonth, Spec } from '../document/index.ts'
import { keptWords, REGIMES, type Upkeep, type UpkeepInput, upkeep } from '../plan/index.ts'
import { type ConstantsId, constantsOf } from './constants.ts'
import { againstDailyChlorine } from './devices.ts'
import { holdOf } from './hold.ts'
import { readingsForDosing } from './kept.ts'
import { memoLast } from './memo.ts'
import { noVolume } from './problems.ts'
import { deriveProducts, stockOf } from './products.ts'
import { localRules } from './rules.ts'
import { shedWarnings } from './shed-warnings.ts'
import { deriveTargets } from './targets.ts'
import { deriveVolume, systemById } from './volume.ts'
import { deriveWater, dosableReading } from './water.ts'

const DAY_MS = 86_400_000
/** A mild summer day, used until the owner says better, and named as assumed wherever it is. */
const ASSUMED_MONTH: ClimateMonth = { airC: 22, humidityPercent: 60, windMPerS: 1.5, sunshine: 0.55 }
const ASSUMED = { latitudeDeg: 45, waterC: 26, meanDepthM: 1.4, pumpHoursPerDay: 12 } as const

export interface UpkeepBasis {
  readonly input: UpkeepInput
  /** Inputs that nobody gave, in plain words. */
  readonly assumed: readonly string[]
  /** Readings that the newest lack and earlier ones tell, and those that aren't taken as entered, in sentences. */
  readonly kept: readonly string[]
}

/** Day of the year of a moment, 1 to 366, in UTC. */
function dayOfYearOf(ms: number): number {
  const year = new Date(ms).getUTCFullYear()
  return 1 + Math.floor((ms - Date.UTC(year, 0, 1)) / DAY_MS)
}

/** What the upkeep is computed from, with every assumption named. */
export function upkeepBasisOf(spec: Spec, systemId: string, nowMs: number): Result<UpkeepBasis> {
  const system = systemById(spec, systemId)
  const volume = deriveVolume(spec, systemId)
  if (!system || !volume) return fail(noVolume(systemId))
  const regime = REGIMES.get(system.regime.id)
  if (!regime) {
    return fail({
      code: 'unknown-regime',
      path: `systems.${systemId}.regime.id`,
      what: `There is no regime of sanitation named “${system.regime.id}”.`,
      why: 'It says which products keep the water.',
      hint: `Choose one of: ${REGIMES.rows.map(({ label }) => label).join('; ')}.`,
    })
  }
  const constants = constantsOf(system)
  const assumed: string[] = []
  const given = <T>(value: T | undefined, fallback: T, words: string): T => {
    if (value === undefined) assumed.push(words)
    return value ?? fallback
  }
  const water = deriveWater(spec, systemId, nowMs)
  // a season goes by the water as it was read, however long ago: what is kept is as old as it was then
  const read = readingsForDosing(spec, system, water.measuredAtMs ?? nowMs, constants)
  const ofMonth = spec.site.climate?.[new Date(nowMs).getUTCMonth()]
  const month = given(
    // under a roof no weather comes into it
    ofMonth ?? (spec.site.indoor ? ASSUMED_MONTH : undefined),
    ASSUMED_MONTH,
    `the weather of a mild summer day, whatever the month, since the month’s own is not given: air ${ASSUMED_MONTH.airC} °C, humidity ${ASSUMED_MONTH.humidityPercent} %, wind ${ASSUMED_MONTH.windMPerS} m/s, ${Math.round(ASSUMED_MONTH.sunshine * 100)} % of the possible sunshine`,
  )
  const meanDepthM = given(
    volume.meanDepthM,
    ASSUMED.meanDepthM,
    `mean depth ${ASSUMED.meanDepthM} m, since nothing is drawn`,
  )
  return ok({
    input: {
      volumeM3: volume.m3,
      waterSurfaceM2: volume.waterSurfaceM2 ?? volume.m3 / meanDepthM,
      meanDepthM,
      latitudeDeg: given(spec.site.latitudeDeg, ASSUMED.latitudeDeg, `latitude ${ASSUMED.latitudeDeg}° north`),
      elevationM: spec.site.elevationM ?? 0,
      dayOfYear: dayOfYearOf(nowMs),
      airC: month.airC,
      waterC: given(
        month.waterC ?? read?.values.temperature_C ?? water.known.temperature_C,
        ASSUMED.waterC,
        `water at ${ASSUMED.waterC} °C`,
      ),
      humidityPercent: month.humidityPercent,
      windMPerS: month.windMPerS,
      sunshine: month.sunshine,
      bathersPerDay: given(system.regime.bathersPerDay, 0, 'no bathers'),
      bathingHours: system.regime.bathingHours ?? 1,
      coverHoursPerDay: system.equipment.coverHoursPerDay ?? 0,
      coverKind: system.equipment.coverKind ?? 'none',
      helpers: system.equipment.helpers,
      water: read?.values ?? (water.latest ? dosableReading(water.latest, constants) : {}),
      fill: system.water.fill && dosableReading(system.water.fill, constants),
      targets: deriveTargets(spec, systemId),
      chlorineProductId: system.regime.products.dailyChlorine ?? regime.products.dailyChlorine,
      feed: system.regime.feed && {
        gPerDose: system.regime.feed.amountG,
        dosesPerWeek: system.regime.feed.perWeek,
      },
      acidProductId: system.regime.products.acid ?? regime.products.acid,
      productList: deriveProducts(spec, systemId, nowMs),
      pumpHoursPerDay: system.equipment.pumpHoursPerDay ?? ASSUMED.pumpHoursPerDay,
      ...localRules(spec.site),
      stockG: stockOf(system),
      constants,
    },
    assumed,
    kept: [...(read?.remarks ?? []), ...keptWords({ kept: read?.kept, measuredAtMs: water.measuredAtMs })],
  })
}

/** The ongoing doses of a system on the day of `nowMs`; its warnings begin with those of the shed and of what is unknown. */
export const deriveUpkeep = memoLast(
  (spec: Spec, systemId: string, nowMs: number, asked?: ConstantsId): Result<Upkeep> => {
    const basis = upkeepBasisOf(spec, systemId, nowMs)
    if (!basis.ok) return basis
    const result = upkeep(asked ? { ...basis.value.input, constants: asked } : basis.value.input)
    if (!result.ok) return result
    const { assumed, kept } = basis.value
    const said = assumed.length === 0 ? [] : [`Assumed, since it was not given: ${assumed.join('; ')}.`]
    const system = systemById(spec, systemId)
    const held = system && holdOf(spec, system, nowMs)?.words
    const first = held === undefined ? [] : [held]
    const blocked = [...first, ...(system ? againstDailyChlorine(system) : [])]
    return ok({
      ...result.value,
      ...(blocked.length > 0 ? { blocked } : {}),
      warnings: [...first, ...shedWarnings(spec, systemId, nowMs), ...kept, ...result.value.warnings, ...said],
    })
  },
)
