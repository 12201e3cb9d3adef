import type { Problem } from '../../base/index.ts'
import type { StartInput } from './types.ts'

/** Every complaint of the starts, worded in one place. */
const few = (value: number): string => String(Number(value.toPrecision(3)))

export function unknownMode(id: string, known: readonly string[]): Problem {
  return {
    code: 'unknown-start',
    path: 'mode',
    what: `There is no start called "${id}".`,
    why: 'The start sets the schedule and what may not be dosed yet.',
    hint: `Use one of: ${known.join(', ')}.`,
  }
}

const SIZES = { volumeM3: ['The volume', 'm³'], waterSurfaceM2: ['The water’s surface', 'm²'] } as const

export function sizeBad(path: keyof typeof SIZES, value: number): Problem {
  const [name, unit] = SIZES[path]
  return {
    code: 'start-size',
    path,
    what: `${name} is ${String(value)} ${unit}; it has to be a number above zero.`,
    why: 'Every share and every amount is counted from it.',
    hint: 'Draw the pool, or enter its size.',
  }
}

export function inputOutOfRange(input: StartInput, value: number): Problem {
  return {
    code: 'start-input-out-of-range',
    path: `values.${input.key}`,
    what: `${input.label} is ${String(value)}; it has to be between ${few(input.low)} and ${few(input.high)}.`,
    why: 'The figures of this start are counted from it.',
    hint: input.help,
  }
}

export function levelBelowFloor(key: string, label: string, loweredM3: number, volumeM3: number): Problem {
  return {
    code: 'start-level-below-floor',
    path: `values.${key}`,
    what: `${label} amounts to ${few(loweredM3)} m³ of the pool’s ${few(volumeM3)} m³.`,
    why: 'Less than a tenth of the water would be left: that is a new filling, not a dilution.',
    hint: 'Check the level, or choose the start for a filling.',
  }
}

export function drainTwice(): Problem {
  return {
    code: 'start-drain-twice',
    path: 'values.drainedPercent',
    what: 'The drain is given both as a level and as a share of the water, and the two disagree.',
    why: 'Only one of them can be right.',
    hint: 'Take one of them away.',
  }
}
