import type { Measures } from '../../../basin/index.ts'
import type { DerivedBody, RuleOfThumb } from '../../../derive/index.ts'
import type { Body } from '../../../document/index.ts'
import { formatPlusMinus, formatQuantity, type Quantity, type UnitSystem } from '../../../units/index.ts'
import { offWords, TWO_SIDED_95 } from './volume-words.ts'

/** A rule of thumb deserves no more digits than this share of it. */
const RULE_DIGITS = 0.01
/** A rule that is this many times out, either way, is none for this pool: our own judgement, no source. */
const RULE_MOST_OFF = 3

/** The figures of a body in words, none with more digits than are known: a sketch's follow the scale that is guessed. */
export interface BodyFigures {
  readonly volume: string
  /** "± 390 gal (95 %)", or "up to about 32,000 gal (95 %)" where it may be hardly any. */
  readonly spread: string
  readonly area: (m2: number) => string
  readonly length: (m: number) => string
  readonly perLevel: string
  /** What the rule of thumb says, and by how much that is off as shown: "17 % more", "the same". */
  readonly rule: { readonly volume: string; readonly off: string } | undefined
  /** Why the rule of thumb can't be used here, where it can't. */
  readonly noRule: string | undefined
}

/** A rule that takes its mean depth from the shallowest and the deepest floor makes nonsense of many a pool. */
function noRuleOf({ shallowM, deepM, relativeError }: RuleOfThumb): string | undefined {
  if (!(shallowM + deepM > 0)) return 'the mean of its two depths isn’t under water'
  const times = 1 + relativeError
  return times > RULE_MOST_OFF || times < 1 / RULE_MOST_OFF
    ? `it is more than ${RULE_MOST_OFF} times ${times > 1 ? 'too much' : 'too little'}`
    : undefined
}

export function figuresOf(
  body: Pick<Body, 'sketch'>,
  { sigmaM3, rule: thumb }: Pick<DerivedBody, 'sigmaM3' | 'rule'>,
  measures: Measures,
  units: UnitSystem,
): BodyFigures {
  const scale = body.sketch?.scaleSigma ?? 0
  const show = (quantity: Quantity, si: number, relative: number) =>
    formatQuantity(quantity, si, units, { style: 'short', ...(relative > 0 ? { sigma: relative * Math.abs(si) } : {}) })
  const volume = formatQuantity('volume', measures.volumeM3, units, { sigma: sigmaM3 })
  const perLevelSigma = scale > 0 ? { sigma: 2 * scale * measures.volumePerLevelM2 } : {}
  const noRule = thumb && noRuleOf(thumb)
  const rule = noRule === undefined ? thumb : undefined
  const ruleVolume =
    rule && formatQuantity('volume', rule.volumeM3, units, { sigma: Math.max(RULE_DIGITS * rule.volumeM3, sigmaM3) })
  return {
    volume,
    spread: `${spreadWords(measures.volumeM3, sigmaM3, units)} (95 %)`,
    area: (m2) => show('area', m2, 2 * scale),
    length: (m) => show('length', m, scale),
    perLevel: formatQuantity('volumePerLevel', measures.volumePerLevelM2, units, { style: 'long', ...perLevelSigma }),
    rule:
      rule && ruleVolume
        ? { volume: ruleVolume, off: ruleVolume === volume ? 'the same' : offWords(rule.relativeError, units) }
        : undefined,
    noRule,
  }
}

/** The 95 % interval of a volume: no volume is below nothing, so where it may be hardly any only its upper end is said. */
export function spreadWords(m3: number, sigmaM3: number, units: UnitSystem): string {
  return isHardlyKnown({ m3, sigmaM3 })
    ? `up to about ${formatQuantity('volume', m3 + TWO_SIDED_95 * sigmaM3, units, { sigma: sigmaM3 })}`
    : formatPlusMinus('volume', m3, sigmaM3, units)
}

/** Whether the interval reaches below nothing. */
export function isHardlyKnown({ m3, sigmaM3 }: { readonly m3: number; readonly sigmaM3: number }): boolean {
  return TWO_SIDED_95 * sigmaM3 >= m3
}
