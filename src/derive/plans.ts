import { fail, type Result } from '../base/index.ts'
import { momentMs, type Spec, type System } from '../document/index.ts'
import {
  closedOn,
  type DeckCard,
  deckCard,
  heldOpening,
  type OpeningInput,
  type OpeningPlan,
  openingPlan,
  startDay,
} from '../plan/index.ts'
import { lastCombined } from './combined.ts'
import { type ConstantsId, constantsOf } from './constants.ts'
import { againstDevices } from './devices.ts'
import { holdOf, targetsForDosing } from './hold.ts'
import { holdingOf } from './holding.ts'
import { givenDoses, readingsForDosing } from './kept.ts'
import { isCopyOf, latestReadings } from './latest.ts'
import { memoLast } from './memo.ts'
import { noVolume } from './problems.ts'
import { deriveProducts, stockOf } from './products.ts'
import { localRules } from './rules.ts'
import { shedWarnings } from './shed-warnings.ts'
import { lastStabiliser } from './stabiliser.ts'
import { isStartLine } from './start.ts'
import { deriveTargetsAt } from './targets.ts'
import { deriveVolume, systemById } from './volume.ts'
import { dosableReading } from './water.ts'

/** Which sizes of packages are on the shelf where the owner buys. */
export type PackageSystem = NonNullable<OpeningInput['packageSystem']>

/** Lines of the plan that dose nothing and were ticked off; the plan tells which of them still count. */
function tickedLines(system: System): NonNullable<OpeningInput['doneKeys']> {
  return system.log.flatMap((entry) =>
    entry.kind === 'note' && entry.line !== undefined && !isStartLine(entry.line)
      ? [{ key: entry.line, atMs: momentMs(entry.at) }]
      : [],
  )
}

/** What a start that has begun takes back of the readings' word. */
function startUnderWay(system: System, nowMs: number): Pick<OpeningInput, 'closedBecause' | 'startedAtMs'> {
  const { start } = system
  const startedAtMs = start && momentMs(start.at)
  if (!start || startedAtMs === undefined || startedAtMs > nowMs) return {}
  return { startedAtMs, closedBecause: closedOn(start.mode, startDay(startedAtMs, nowMs)) }
}

/** What the opening plan is computed from, or what is lacking. */
function openingInputOf(
  spec: Spec,
  systemId: string,
  nowMs: number,
  packageSystem: PackageSystem | undefined,
  asked: ConstantsId | undefined,
): Result<OpeningInput> {
  const system = systemById(spec, systemId)
  const volume = deriveVolume(spec, systemId)
  if (!system || !volume) return fail(noVolume(systemId))
  const constants = constantsOf(system, asked)
  const productList = deriveProducts(spec, systemId, nowMs)
  const { fill } = system.water
  const own = latestReadings(system)
  const readings = own ?? fill
  const isFill = own === undefined || (fill !== undefined && isCopyOf(own, fill))
  const read = readingsForDosing(spec, system, nowMs, constants)
  const dosed = read ?? (fill && { values: dosableReading(fill, constants) })
  const measuredAtMs = readings && momentMs(readings.at)
  const flow = system.equipment.pumpM3PerH
  return {
    ok: true,
    value: {
      volumeM3: volume.m3,
      volumeSigmaM3: volume.sigmaM3,
      surface: spec.site.surface,
      regimeId: system.regime.id,
      targets: targetsForDosing(deriveTargetsAt(spec, systemId, nowMs).targets, own),
      products: system.regime.products,
      start: dosed?.values ?? {},
      kept: read?.kept,
      startIs: readings && (isFill ? 'fill' : 'pool'),
      method: readings?.method,
      fill: fill && dosableReading(fill, constants),
      measuredAtMs,
      nowMs,
      turnoverHours: flow !== undefined && flow > 0 ? volume.m3 / flow : undefined,
      given: givenDoses(system),
      stockG: stockOf(system),
      constants,
      packageSystem: packageSystem ?? system.regime.packages ?? 'metric',
      ...localRules(spec.site),
      dosing: system.regime.dosing,
      objective: system.regime.objective,
      productList,
      metals: dosed?.values,
      helpers: system.equipment.helpers,
      doneKeys: tickedLines(system),
      ...lastCombined(system, readings),
      lastStabiliser: lastStabiliser(system, nowMs, volume.m3, productList),
      holding: holdingOf(spec, systemId, nowMs),
      remarks: read?.remarks,
      ...startUnderWay(system, nowMs),
    },
  }
}

/** Each dose still to give says first which of the owner's devices must not hold it. */
function withDeviceCautions(lines: OpeningPlan['lines'], system: System): OpeningPlan['lines'] {
  return lines.map((line) => {
    if (line.kind !== 'dose' || line.state === 'done') return line
    const against = againstDevices(system, line.productId)
    return against.length > 0 ? { ...line, cautions: [...against, ...line.cautions] } : line
  })
}

/** The opening plan of a system, from its newest readings and what was given since. */
export const deriveOpening = memoLast(
  (
    spec: Spec,
    systemId: string,
    nowMs: number,
    packageSystem?: PackageSystem,
    constants?: ConstantsId,
  ): Result<OpeningPlan> => {
    const input = openingInputOf(spec, systemId, nowMs, packageSystem, constants)
    if (!input.ok) return input
    const system = systemById(spec, systemId)
    const hold = system && holdOf(spec, system, nowMs)
    const plan = hold ? heldOpening(input.value, hold) : openingPlan(input.value)
    if (!plan.ok || !system) return plan
    const warnings = shedWarnings(spec, systemId, nowMs)
    const lines = withDeviceCautions(plan.value.lines, system)
    // why nothing is dosed comes before all that is said of what would be
    const said = hold ? [...plan.value.warnings, ...warnings] : [...warnings, ...plan.value.warnings]
    return { ok: true, value: { ...plan.value, lines, warnings: said } }
  },
)

/** The card for the pool's edge: reading → dose in this pool's own volume, with the products that serve it. */
export const deriveDeckCard = memoLast(
  (
    spec: Spec,
    systemId: string,
    nowMs: number,
    packageSystem?: PackageSystem,
    constants?: ConstantsId,
  ): Result<DeckCard> => {
    const input = openingInputOf(spec, systemId, nowMs, packageSystem, constants)
    return input.ok ? deckCard(input.value) : input
  },
)
