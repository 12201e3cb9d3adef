import type { Problem } from '../../../base/index.ts'
import { boundsOf } from '../../../basin/index.ts'
import { FIT_LIMITS, type RuleOfThumb, type VolumeFit, type VolumeMeans } from '../../../derive/index.ts'
import { type Body, depthsOfFloor, depthToReference } from '../../../document/index.ts'
import { formatQuantity, type UnitSystem } from '../../../units/index.ts'

/** 95 % of a normal error lies within this many standard deviations. */
export const TWO_SIDED_95 = 1.96

/** A percentage typed as "± 10 %" → one standard deviation [m³]: what people mean by it is nearly all cases. */
export function sigmaFromPercent(m3: number, plusMinusPercent: number): number {
  return (m3 * plusMinusPercent) / 100 / TWO_SIDED_95
}

/** And back, for the field. */
export function percentFromSigma(m3: number, sigmaM3: number): number {
  return m3 > 0 ? (100 * TWO_SIDED_95 * sigmaM3) / m3 : 0
}

/** "17 % more", "4 % less", "the same". */
export function offWords(relative: number, units: UnitSystem): string {
  const percent = Math.abs(relative) * 100
  const shown = formatQuantity('percent', percent, units, { digits: percent < 2 ? 1 : 0 })
  if (percent < 0.05) return 'the same'
  return `${shown} ${relative > 0 ? 'more' : 'less'}`
}

/** What the rule of thumb did, in words: "12 ft × 24 ft × mean of 3 ft and 5 ft, × 0.79". */
export function ruleWords(
  rule: RuleOfThumb,
  units: UnitSystem,
  inPlan: (m: number) => string = (m) => formatQuantity('length', m, units),
): string {
  const length = (m: number) => formatQuantity('length', m, units)
  const factor = rule.factor === 1 ? '' : `, × ${formatQuantity('number', rule.factor, units, { digits: 2 })}`
  return `${inPlan(rule.lengthM)} × ${inPlan(rule.widthM)} × the mean of ${length(rule.shallowM)} and ${length(rule.deepM)}${factor}`
}

/** What has to change for a wanted volume, with what it comes to: "Every depth 3″ more, the deepest then 7′ 6″." */
export function fitWords(body: Body, means: VolumeMeans, fit: VolumeFit, units: UnitSystem): string {
  const length = (m: number) => formatQuantity('length', m, units)
  if (means === 'depths') {
    const depths = depthsOfFloor(body.floor).map((depthM) => depthM + fit.value)
    const deepest = Math.max(...depths)
    const isDry = Math.min(...depths) + body.levelM < 0
    const way = fit.value >= 0 ? 'more' : 'less'
    return `Every depth of the floor ${length(Math.abs(fit.value))} ${way}, the deepest then ${length(depthToReference(body, deepest))}. Steps and shelves stay.${isDry ? ' A part of the floor then stands above the water.' : ''}`
  }
  const box = boundsOf(body.outline)
  const [width, height] = [(box.maxX - box.minX) * fit.value, (box.maxY - box.minY) * fit.value]
  const percent = Math.abs(fit.value - 1) * 100
  const shown = formatQuantity('percent', percent, units, { digits: percent < 2 ? 1 : 0 })
  return `The plan and all in it ${shown} ${fit.value >= 1 ? 'larger' : 'smaller'}, overall then ${length(width)} by ${length(height)}. Depths stay.`
}

/** Why a wanted volume can't be had by one means, with how far it was looked for and what else to try. */
export function unmetProblem(means: VolumeMeans, problem: Problem, units: UnitSystem): Problem {
  if (problem.code !== 'volume-not-met') return problem
  const { mostDeeperM, mostFactor } = FIT_LIMITS
  const deeper = formatQuantity('length', mostDeeperM, units)
  return means === 'depths'
    ? {
        ...problem,
        what: 'No change of the depths alone gives this volume.',
        why: `All depths together were looked at from nearly dry to at most ${deeper} deeper, or as far as walls and steps allow.`,
        hint: 'Ask for another volume, or change the size of the plan.',
      }
    : {
        ...problem,
        what: 'No change of the plan’s size alone gives this volume.',
        why: `The plan was looked at from a quarter of its lengths to at most ${mostFactor} times as long, or as far as walls and steps allow.`,
        hint: 'Ask for another volume, or change the depths.',
      }
}

/** Less than this is no surface but rounding [m²]: a square centimetre. */
const LEAST_M2 = 1e-4

/** Whether there is any surface to speak of. */
export function isSurface(m2: number): boolean {
  return m2 > LEAST_M2
}

/** How much water two bodies that lie on one another count twice; it is known to about a hundredth. */
export function twiceWords(twiceM3: number | undefined, units: UnitSystem): string {
  if (twiceM3 === undefined) return 'How much that is can’t be said until both can be measured.'
  return `Counted twice: about ${formatQuantity('volume', twiceM3, units, { sigma: twiceM3 * 0.02 })}.`
}

/** How well the computation itself is known, apart from the tape. */
export function boundWords(errorBoundM3: number, units: UnitSystem): string {
  const litres = errorBoundM3 * 1000
  if (litres < 0.001) return 'less than a drop'
  if (litres < 1) return units === 'metric' ? 'less than a litre' : 'less than a quart'
  return formatQuantity('volume', errorBoundM3, units, { digits: 1 })
}
