import { fail, ok, type Result, under } from '../base/index.ts'
import { momentMs, type ReadingSet, type Spec, type System } from '../document/index.ts'
import { type ScheduledStep, type StartSchedule, startDay, startSchedule, stepsOn } from '../plan/index.ts'
import { type ConstantsId, constantsOf } from './constants.ts'
import { memoLast } from './memo.ts'
import { noVolume } from './problems.ts'
import { deriveProducts } from './products.ts'
import { deriveTargets } from './targets.ts'
import { deriveVolume, systemById } from './volume.ts'

/** Taken where nothing is drawn [m]; named as assumed. */
const ASSUMED_DEPTH_M = 1.4

/** A step with when it was ticked off. */
export interface StartStepToday extends ScheduledStep {
  /** The name by which the log ticks it off. */
  readonly line: string
  /** Days of this start on which it was ticked, in order. */
  readonly doneDays: readonly number[]
  /** Whether its turn is today: its days hold today and the readings don't speak against it. */
  readonly isToday: boolean
  /** Done for today; a step that is due once is done for all its days. */
  readonly isDone: boolean
}

export interface DerivedStart {
  /** 1 on the first day; 0 and below before it. */
  readonly day: number
  readonly schedule: StartSchedule
  /** All of the schedule's steps, in its order. */
  readonly steps: readonly StartStepToday[]
  /** What had to be taken for what nobody gave, in plain words. */
  readonly assumed: readonly string[]
}

/** The name by which a step of a start is ticked off in the log. */
export function startLine(modeId: string, stepKey: string): string {
  return `${START}${modeId}/${stepKey}`
}

const START = 'start/'

/** Whether a ticked line is a step of a start, and none of the opening plan. */
export function isStartLine(line: string): boolean {
  return line.startsWith(START)
}

/** The last set up to a moment, and the last from it on. */
function around(system: System, startMs: number, nowMs: number) {
  const newest = (isIn: (ms: number) => boolean): ReadingSet | undefined =>
    system.water.readings
      .filter(({ at }) => isIn(momentMs(at)))
      .toSorted((a, b) => momentMs(a.at) - momentMs(b.at))
      .at(-1)
  return {
    before: newest((ms) => ms < startMs),
    since: newest((ms) => ms >= startMs && ms <= nowMs),
  }
}

/** The start that is under way, as it stands on the day of `nowMs`; undefined where none was chosen. */
export const deriveStart = memoLast(
  (spec: Spec, systemId: string, nowMs: number, asked?: ConstantsId): Result<DerivedStart> | undefined => {
    const system = systemById(spec, systemId)
    const start = system?.start
    if (!system || !start) return undefined
    const volume = deriveVolume(spec, systemId)
    if (!volume) return fail(noVolume(systemId))
    const startMs = momentMs(start.at)
    const day = startDay(startMs, nowMs)
    const { before, since } = around(system, startMs, nowMs)
    const schedule = startSchedule(start.mode, start.values ?? {}, {
      volumeM3: volume.m3,
      waterSurfaceM2: volume.waterSurfaceM2 ?? volume.m3 / ASSUMED_DEPTH_M,
      surface: spec.site.surface,
      targets: deriveTargets(spec, systemId),
      before: before?.values,
      now: since?.values,
      fill: system.water.fill?.values,
      method: since?.method,
      rules: spec.site.rules,
      isIndoor: spec.site.indoor,
      regimeId: system.regime.id,
      products: system.regime.products,
      productList: deriveProducts(spec, systemId, nowMs),
      constants: constantsOf(system, asked),
    })
    if (!schedule.ok) return fail(under(`systems.${systemId}.start`, schedule.problem))
    const ticks = ticksOf(system, startMs)
    return ok({
      day,
      schedule: schedule.value,
      steps: stepsToday(schedule.value, start.mode, day, ticks),
      assumed: volume.waterSurfaceM2 === undefined ? [`mean depth ${ASSUMED_DEPTH_M} m, since nothing is drawn`] : [],
    })
  },
)

/** The days of a start on which each line was ticked off. */
function ticksOf(system: System, startMs: number): ReadonlyMap<string, readonly number[]> {
  const days = new Map<string, number[]>()
  for (const entry of system.log) {
    if (entry.kind !== 'note' || entry.line === undefined) continue
    const day = startDay(startMs, momentMs(entry.at))
    if (day < 1) continue
    days.set(entry.line, [...(days.get(entry.line) ?? []), day])
  }
  return days
}

function stepsToday(
  schedule: StartSchedule,
  modeId: string,
  day: number,
  ticks: ReadonlyMap<string, readonly number[]>,
): readonly StartStepToday[] {
  const due = new Set(stepsOn(schedule, day))
  return schedule.steps.map((step): StartStepToday => {
    const line = startLine(modeId, step.key)
    const doneDays = ticks.get(line) ?? []
    const isDaily = step.often !== undefined
    return {
      ...step,
      line,
      doneDays,
      isToday: due.has(step),
      isDone: isDaily ? doneDays.includes(day) : doneDays.length > 0,
    }
  })
}
