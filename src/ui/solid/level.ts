import { displayStep, formatQuantity, type UnitSystem } from '../../units/index.ts'

/** Ticks of the level slider: whole display steps from empty to the rim. */
export interface LevelScale {
  readonly stepM: number
  readonly lowTick: number
  readonly highTick: number
  /** Lowest and highest level [m above the datum]. */
  readonly lowM: number
  readonly highM: number
}

export function levelScale(deepestM: number, freeboardM: number, system: UnitSystem): LevelScale {
  const stepM = displayStep('length', system)
  const lowM = -Math.max(deepestM, 0)
  const highM = Math.max(freeboardM, 0)
  return { stepM, lowM, highM, lowTick: Math.floor(lowM / stepM), highTick: Math.ceil(highM / stepM) }
}

export function levelOfTick(scale: LevelScale, tick: number): number {
  // 0 · step may be −0, which prints with a sign.
  return Math.min(scale.highM, Math.max(scale.lowM, tick * scale.stepM)) + 0
}

export function tickOfLevel(scale: LevelScale, levelM: number): number {
  return Math.min(scale.highTick, Math.max(scale.lowTick, Math.round(levelM / scale.stepM)))
}

/** How far along the track a level lies, 0 at empty and 1 at the rim. */
export function placeOfLevel(scale: LevelScale, levelM: number): number {
  const range = scale.highTick - scale.lowTick
  return range > 0 ? Math.min(1, Math.max(0, (levelM / scale.stepM - scale.lowTick) / range)) : 0
}

/** Whether two levels are the same to a person [m]. */
export function isSameLevel(a: number, b: number): boolean {
  return Math.abs(a - b) < 5e-4
}

/** Less than this is none [m³]: half a litre. */
const LEAST_M3 = 5e-4

/** How much water stands there, in words: none is said so, since no figure of a dry basin is known. */
export function waterWords(volumeM3: number, sigmaM3: number, units: UnitSystem): string {
  if (!(volumeM3 >= LEAST_M3)) return 'no water'
  return formatQuantity('volume', volumeM3, units, { sigma: sigmaM3 })
}

/** The share of today's water that stands there, in words; nothing where there is none today or there. */
export function shareWords(volumeM3: number, todayM3: number, units: UnitSystem): string | undefined {
  if (!(volumeM3 >= LEAST_M3 && todayM3 >= LEAST_M3)) return undefined
  return formatQuantity('percent', (100 * volumeM3) / todayM3, units, { digits: 0 })
}
