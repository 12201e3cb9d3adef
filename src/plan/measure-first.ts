import { LIMITS } from './limits.ts'
import { stepLine } from './step-lines.ts'
import type { StepLine } from './types.ts'
import { STEPS } from './wording.ts'

const HOURS_PER_DAY = 24

/** Why readings don't carry a plan by their age, or undefined where they do. */
export function tooOldWords(ageHours: number): string | undefined {
  if (!Number.isFinite(ageHours)) return 'Nobody wrote down when these readings were taken.'
  if (ageHours <= LIMITS.readingHours) return undefined
  return `The readings are ${Math.floor(ageHours / HOURS_PER_DAY)} days old, and after ${LIMITS.readingHours} hours they no longer say what is in the water.`
}

/** The line that asks for new readings before anything else, with the reason why these don't do. */
export function measureFirstLine(because: string): StepLine {
  const why = `${because} What follows is only what they would have asked for.`
  return stepLine('measure', 'measure-first', { ...STEPS.measureFirst, why }, 0, 0)
}

/** The same where pH or alkalinity is lacking and nothing follows. */
export function measureMissingLine(): StepLine {
  const why = 'pH or total alkalinity was not read, and without both no dose can be checked on its way.'
  return stepLine('measure', 'measure-first', { ...STEPS.measureFirst, title: 'Measure first', why }, 0, 0)
}
