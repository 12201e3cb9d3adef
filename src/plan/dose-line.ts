import type { Product } from '../chemicals/index.ts'
import type { Constants } from '../water/index.ts'
import { borateCaution } from './borate-caution.ts'
import { effectPerGPerM3, type LinearKey, readingChange } from './effect.ts'
import { amountInterval, readingSigma } from './interval.ts'
import { LIMITS } from './limits.ts'
import { isSlow } from './mixing.ts'
import { movementsBetween } from './movements.ts'
import type { DoseMove } from './moves.ts'
import { hasHighMetals } from './opening-marks.ts'
import { packageAdvice } from './packages.ts'
import { whyInside } from './ph-why.ts'
import { pourCount, pourSpacingHours, slowPourCount } from './pours.ts'
import { expectedOf } from './solved.ts'
import type { DoseLine, OpeningInput, Pour, Purpose } from './types.ts'
import { cautionsFor, EXCEPTION_TEXT, howTo, LOWERING_WHY, TITLES, WHYS } from './wording.ts'

/** Purposes whose overshoot only an exchange of water undoes. */
const HARD_TO_UNDO: { readonly [P in Purpose]?: LinearKey } = {
  calcium: 'ch_mg_per_L_as_CaCO3',
  borate: 'borate_mg_per_L_as_B',
  stabiliser: 'cya_mg_per_L',
  salt: 'salt_mg_per_L_as_NaCl',
}
const LEAST_SAFE_SHARE = 0.25
const MOST_SAFE_SHARE = 0.95
const LEAST_VOLUME_SHARE = 0.2

export interface LinePlace {
  readonly key: string
  readonly startHours: number
  readonly turnoverHours: number
  /** Whether the next dose must not meet this one: the turnover is then a line of its own. */
  readonly waitsApart: boolean
  /** This line's share of all that is given for its purpose. */
  readonly jobShare: number
}

/** Share of the amount that stays inside the band even where volume and reading err; undefined where all does. */
function safeShare(move: DoseMove, input: OpeningInput): number | undefined {
  const key = HARD_TO_UNDO[move.want.purpose]
  const band = key && input.targets[key]
  if (!key || !band) return undefined
  const from = readingChange(move.before.totals, key)
  const rise = move.want.gPerM3 * effectPerGPerM3(move.want.product, key)
  const least = Math.max(LEAST_VOLUME_SHARE, 1 - (LIMITS.z95 * input.volumeSigmaM3) / input.volumeM3)
  const byVolume = rise / least - rise
  const byReading = LIMITS.z95 * readingSigma(move, input) * effectPerGPerM3(move.want.product, key)
  if (!(rise > 0) || from + rise + Math.hypot(byVolume, byReading) <= band.high * (1 + 1e-9)) return undefined
  // what the reading may hide is there from the first gram on
  const room = band.high - from - byReading
  return Math.min(MOST_SAFE_SHARE, Math.max(LEAST_SAFE_SHARE, (room / rise) * least))
}

function waitHours(product: Product, place: LinePlace): number {
  const mixing = product.wait.hoursAtLeast
  return place.waitsApart ? mixing : Math.max(mixing, product.wait.turnovers * place.turnoverHours)
}

/** One dose of the plan, with its pours, waits, packages and what it should leave behind. */
export function doseLine(move: DoseMove, place: LinePlace, input: OpeningInput, constants: Constants): DoseLine {
  const { product, purpose, gPerM3 } = move.want
  const amountG = gPerM3 * input.volumeM3
  const [lowG, highG] = amountInterval(move, place.jobShare, input)
  const share = safeShare(move, input)
  const least = purpose === 'openingChlorine' && hasHighMetals(input) ? slowPourCount(product, gPerM3) : 1
  const count = isSlow(product) ? 1 : Math.max(least, pourCount(move.before.totals, product, gPerM3, constants))
  const spacing = pourSpacingHours(place.turnoverHours)
  const wait = waitHours(product, place)
  const firstG = share === undefined ? amountG : share * amountG
  const first = Math.max(1, Math.ceil(count * (firstG / amountG) - 1e-9))
  const rest = share === undefined ? 0 : Math.max(1, Math.ceil(count * (1 - firstG / amountG) - 1e-9))
  const pours: Pour[] = []
  for (let i = 0; i < first; i++) pours.push({ index: i + 1, amountG: firstG / first, hoursAfterStart: i * spacing })
  const later = (first - 1) * spacing + Math.max(wait, place.turnoverHours)
  for (let i = 0; i < rest; i++)
    pours.push({ index: first + i + 1, amountG: (amountG - firstG) / rest, hoursAfterStart: later + i * spacing })
  const isLowering = move.exception === 'lowering'
  const exception = move.exception === undefined ? undefined : EXCEPTION_TEXT[move.exception]
  return {
    kind: 'dose',
    key: place.key,
    title: isLowering ? 'Lower alkalinity' : TITLES[purpose],
    how: howTo(product, pours.length, share),
    why: isLowering ? LOWERING_WHY : (whyInside(move, input) ?? WHYS[purpose]),
    startHours: place.startHours,
    waitHours: wait,
    state: 'later',
    cautions: [...cautionsFor(product), ...borateWords(move)],
    purpose,
    productId: product.id,
    amountG,
    lowG,
    highG,
    pours,
    // containers hold what is bought fresh: this amount is of an old one
    packages: product.fresh ? undefined : packageAdvice(product, amountG, input.packageSystem ?? 'metric'),
    movements: movementsBetween(move.before, move.after, input.start, input.targets),
    after: expectedOf(move.after),
    ...(isLowering ? { isOptional: true } : {}),
    ...(exception === undefined ? {} : { exception }),
    ...(share === undefined ? {} : { safeFirstG: firstG }),
  }
}

/** With figures for the water it leaves, for any product that brings borate. */
function borateWords({ want, after }: DoseMove): string[] {
  if (!(effectPerGPerM3(want.product, 'borate_mg_per_L_as_B') > 0)) return []
  return [borateCaution(readingChange(after.totals, 'borate_mg_per_L_as_B'))]
}

/** Hours from the first pour to the end of the wait. */
export function lineHours(line: DoseLine): number {
  return (line.pours.at(-1)?.hoursAfterStart ?? 0) + line.waitHours
}
