import { fail, ok, type Result } from '../../base/index.ts'
import { combinedChlorine, limitsFor, metalsAdvice, type PeopleReading } from '../../water/index.ts'
import { isInside } from '../targets.ts'
import type { Targets } from '../types.ts'
import { acidFigure } from './acid-figure.ts'
import { cautionsFor } from './handling.ts'
import { inputOutOfRange, sizeBad, unknownMode } from './problems.ts'
import { START_MODES } from './start-modes.ts'
import { targetsAt } from './targets-at.ts'
import type {
  ScheduledStep,
  StartContext,
  StartFigure,
  StartFigures,
  StartMode,
  StartSchedule,
  StartStep,
  StartValues,
  TargetPhase,
} from './types.ts'

const NO_FIGURES: StartFigures = { figures: [], expected: [], warnings: [] }

/**
 * What to do on which day of a start, with what it asks of this pool's readings: steps in the order of their days, figures
 * reckoned from the inputs, targets that wait, and when people may go in again. Values that no input of this start asks for
 * are another start's, and left alone.
 */
export function startSchedule(modeId: string, given: StartValues, context: StartContext): Result<StartSchedule> {
  const mode = START_MODES.get(modeId)
  if (!mode)
    return fail(
      unknownMode(
        modeId,
        START_MODES.rows.map(({ id }) => id),
      ),
    )
  for (const key of ['volumeM3', 'waterSurfaceM2'] as const)
    if (!(context[key] > 0 && Number.isFinite(context[key]))) return fail(sizeBad(key, context[key]))
  const values = checkedValues(mode, given)
  if (!values.ok) return values
  const figured = mode.figures?.(values.value, context) ?? ok(NO_FIGURES)
  if (!figured.ok) return figured
  const acid = acidFigure(context)
  if (!acid.ok) return acid
  const figures = [...figured.value.figures, ...acid.value]
  const steps: ScheduledStep[] = []
  for (const step of mode.steps) {
    if (step.surfaces && !step.surfaces.includes(context.surface ?? 'unknown')) continue
    if (step.needsTarget && !context.targets[step.needsTarget]) continue
    const cautions = cautionsFor(step.handles, context)
    if (!cautions.ok) return cautions
    steps.push({ ...step, applies: appliesTo(step, mode, figures, context), cautions: cautions.value })
  }
  const shown = new Set(steps.flatMap((step) => step.figures ?? []))
  return ok({
    mode,
    steps: steps.toSorted((a, b) => a.fromDay - b.fromDay),
    targetPhases: mode.targets.filter((phase) => isChanged(phase, context.targets)),
    unread: mode.reads.filter((key) => context.now?.[key] === undefined),
    missing: mode.inputs.filter((input) => input.isNeeded && values.value[input.key] === undefined),
    figures: figures.filter(({ key }) => figured.value.figures.some((own) => own.key === key) || shown.has(key)),
    expected: figured.value.expected,
    ...(figured.value.expectedWater ? { expectedWater: figured.value.expectedWater } : {}),
    warnings: figured.value.warnings,
    bathing: bathingWords(context),
    notes: [mode.whoRules, ...mode.notes],
  })
}

/** Steps that a day asks for, in order. */
export function stepsOn(schedule: StartSchedule, day: number): readonly ScheduledStep[] {
  return schedule.steps.filter(({ fromDay, toDay, applies }) => day >= fromDay && day <= toDay && applies !== 'no')
}

/** A phase tells something where the pool has that target, and not an own band that stands over it. */
function isChanged({ key, change }: TargetPhase, targets: Targets): boolean {
  const band = targets[key]
  return band !== undefined && (change.kind === 'withheld' || !band.isOwn)
}

function checkedValues(mode: StartMode, given: StartValues): Result<StartValues> {
  const values: Record<string, number> = {}
  for (const input of mode.inputs) {
    const value = given[input.key] ?? input.usual
    if (value === undefined) continue
    if (!(value >= input.low && value <= input.high)) return fail(inputOutOfRange(input, value))
    values[input.key] = value
  }
  return ok(values)
}

/** Whether the readings since the start ask for a step. */
function appliesTo(
  step: StartStep,
  mode: StartMode,
  figures: readonly StartFigure[],
  context: StartContext,
): ScheduledStep['applies'] {
  const { condition } = step
  const { now } = context
  if (!condition) return 'yes'
  const answer = (yes: boolean | undefined) => (yes === undefined ? 'measure' : yes ? 'yes' : 'no')
  switch (condition.on) {
    case 'reading': {
      const value = now?.[condition.key]
      return answer(
        value === undefined ? undefined : condition.is === 'above' ? value > condition.value : value < condition.value,
      )
    }
    case 'target': {
      const targets = targetsAt(mode, step.fromDay, context.targets)
      const sides = condition.keys.map((key): boolean | undefined => {
        const band = targets[key]
        const value = now?.[key]
        if (!band) return false
        if (value === undefined) return undefined
        const isOut = !isInside(value, band)
        return (
          isOut && (condition.is === 'outside' || (condition.is === 'above' ? value > band.high : value < band.low))
        )
      })
      return answer(sides.includes(true) ? true : sides.includes(undefined) ? undefined : false)
    }
    case 'figure': {
      const figure = figures.find(({ key }) => key === condition.key)
      return answer(figure ? figure.value > condition.above : undefined)
    }
    case 'metals': {
      const { findings } = metalsAdvice({ ...(condition.inFill ? metalsOf(context.fill) : {}), ...now })
      return answer(findings.some(({ isTooHigh }) => isTooHigh) ? true : findings.length > 1 ? false : undefined)
    }
    case 'combined': {
      const free = now?.fc_mg_per_L_as_Cl2
      const read =
        free === undefined
          ? undefined
          : combinedChlorine({ ...now, fc_mg_per_L_as_Cl2: free }, context.method ?? 'unknown')
      const combined = read?.ok ? read.value?.combinedMgPerL : undefined
      return answer(combined === undefined ? undefined : combined > limitsOf(context).combinedHighMgPerL)
    }
  }
}

function metalsOf({ iron_mg_per_L, copper_mg_per_L, manganese_mg_per_L }: PeopleReading = {}): PeopleReading {
  return { iron_mg_per_L, copper_mg_per_L, manganese_mg_per_L }
}

function limitsOf({ now, rules, isIndoor }: StartContext) {
  return limitsFor(rules?.profile, now?.cya_mg_per_L, rules, isIndoor)
}

/** Devices that help have no place here: they lower no floor. */
function bathingWords(context: StartContext): string {
  const limits = limitsOf(context)
  if (limits.floorMgPerL > limits.ceilingMgPerL)
    return `Nobody bathes: the least free chlorine, ${limits.floorMgPerL} mg/L, is above the most, ${limits.ceilingMgPerL} mg/L. Check your own limits. Your local code comes first.`
  return `Nobody bathes until readings of the pool itself, taken after the last dose is mixed in, show free chlorine from ${limits.floorMgPerL} to ${limits.ceilingMgPerL} mg/L, pH from ${limits.pHLow.toFixed(1)} to ${limits.pHHigh.toFixed(1)} and combined chlorine of ${limits.combinedHighMgPerL} or less, and the water is clear to the drain. Devices that help lower none of it. Your local code comes first.`
}
