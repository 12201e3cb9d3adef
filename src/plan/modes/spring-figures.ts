import { fail, ok, type Result } from '../../base/index.ts'
import { type Product, productById } from '../../chemicals/index.ts'
import { breakpointRatio, MOLAR_MASSES_G_PER_MOL as MASS, methodSigma } from '../../water/index.ts'
import { HIGH_RATIO } from '../demand-terms.ts'
import { constantsOf } from '../solved.ts'
import { amountOf } from './amount.ts'
import { type DilutionRange, winterDilution } from './dilution.ts'
import { expectedReadings } from './expected.ts'
import { productFor } from './handling.ts'
import { MASS_BALANCE } from './origins.ts'
import { levelBelowFloor } from './problems.ts'
import { LEAST_LEFT, shareFigure, toldBy } from './rain-and-drain.ts'
import type { StartContext, StartFigure, StartFigures, StartValues } from './types.ts'

/** The bucket test: so much pool water is brought to so much chlorine. */
export const BUCKET = Object.freeze({ litres: 10, chlorineMgPerL: 10 })
/** Stabiliser that may be missing before the bucket test is asked for, ours: what a careful reading may be off by [mg/L]. */
export const UNEXPLAINED_MG_PER_L = 5
/** g N in a gram of cyanuric acid: three nitrogen atoms to a ring. */
const NITROGEN_PER_STABILISER = (3 * MASS.nitrogen) / MASS.cyanuricAcid
/** Rough: a dropper's drops differ by a third either way. */
const DROPS_PER_ML = 20

/** A wintered pool: how far it was diluted, what to expect, and what vanished stabiliser may have left behind. */
export function springFigures(values: StartValues, context: StartContext): Result<StartFigures> {
  const { loweredM, springBelowM, pumpedOffM = 0, rainM, waterC, bucketMgPerL } = values
  const bucket = bucketFigures(bucketMgPerL, context)
  if (!bucket.ok) return bucket
  if (loweredM === undefined || springBelowM === undefined)
    return ok({ figures: bucket.value, expected: [], warnings: [] })
  const { volumeM3, waterSurfaceM2, before } = context
  for (const [key, label, level] of [
    ['loweredM', 'The lowering', loweredM],
    ['springBelowM', 'The level in spring', springBelowM],
  ] as const) {
    const out = level * waterSurfaceM2
    if (out > (1 - LEAST_LEFT) * volumeM3) return fail(levelBelowFloor(key, label, out, volumeM3))
  }
  const winter = winterDilution({ volumeM3, surfaceM2: waterSurfaceM2, loweredM, springBelowM, pumpedOffM, rainM })
  const answer = expectedReadings({
    before: before ?? {},
    dilution: winter,
    isLong: true,
    temperatureC: waterC,
    constants: constantsOf(context.constants),
  })
  if (!answer.ok) return answer
  const share = shareFigure(
    'Exchanged over winter',
    1 - winter.value.keeps,
    1 - winter.least.keeps,
    1 - winter.most.keeps,
    `Water at closing over water in spring: what dries up takes nothing along.${winter.lostM3 > 0 ? ' Of what ran over or was pumped off the low end takes none of the old water, the high end its full share.' : ''}`,
  )
  const missing = missingStabiliser(winter, context)
  const warnings = [
    ...(before ? [] : ['There are no readings from before winter; only the share of water can be told.']),
    ...(rainM === undefined && pumpedOffM === 0 && !winter.isLower
      ? [
          'Rain and what ran over are not given, so this is the least that was exchanged; a pool that overflowed lost more.',
        ]
      : []),
    ...(winter.isLower
      ? [
          'The level is lower than at closing: it dried up, or it leaks. Mark the level, wait a day, compare it with a bucket of water standing on a step.',
        ]
      : []),
  ]
  return ok({
    figures: [share, ...missing, ...bucket.value],
    ...toldBy(answer.value, warnings),
  })
}

/**
 * Stabiliser that dilution does not explain [mg/L], and the chlorine that its nitrogen would use if all of it stood there
 * as ammonia [mg/L as Cl2].
 * Equation: lost = before × keeps − now; Cl2 = lost × 3 M(N)/M(CYA) × ratio.
 * Symbols: keeps by `winterDilution`; ratio 7.59 g Cl2 per g N by theory, 10 to 15 in practice.
 * Valid for: stabiliser read before and since; reading scatter is two standard deviations.
 * Source: stoichiometry of the ring; that bacteria break it down to ammonia is from memory; ratio: CRC handbook, chapter 40
 *   (excerpt seen).
 * Accuracy: two standard deviations of both readings; the chlorine is an upper end, since ammonia may have gone on to
 *   nitrate or into the air: the bucket tells.
 */
function missingStabiliser(winter: DilutionRange, context: StartContext): readonly StartFigure[] {
  const { before, now, method } = context
  const was = before?.cya_mg_per_L
  const is = now?.cya_mg_per_L
  if (was === undefined || is === undefined) return []
  const sigmaAt = (mgPerL: number) => methodSigma(method ?? 'unknown', 'cya_mg_per_L', mgPerL)?.sigma ?? 0.2 * mgPerL
  const sigma = Math.hypot(sigmaAt(was), sigmaAt(is))
  const lost = Math.max(0, was * winter.value.keeps - is)
  const low = Math.max(0, was * Math.min(winter.most.keeps, winter.value.keeps) - is - 2 * sigma)
  const high = Math.max(lost, was * winter.least.keeps - is + 2 * sigma)
  const chlorine = (mgPerL: number, ratio: number) => mgPerL * NITROGEN_PER_STABILISER * ratio
  return [
    {
      key: 'stabiliserLost',
      label: 'Stabiliser that dilution does not explain',
      quantity: 'concentration',
      value: lost,
      low,
      high,
      how: 'Before winter times what the water kept, less what is read now. Cold samples read low: warm the sample first.',
      ...MASS_BALANCE,
    },
    {
      key: 'ammoniaChlorine',
      label: 'Chlorine that it may ask for, if it all became ammonia',
      quantity: 'concentration',
      value: chlorine(lost, breakpointRatio),
      low: 0,
      high: chlorine(high, HIGH_RATIO),
      how: 'Three nitrogen to a ring, 7.6 g of chlorine for each gram by theory, up to 15 in practice. Where that is much, exchanging water is cheaper than burning it off.',
      source: 'stoichiometry; ratio: CRC handbook, chapter 40 (excerpt seen); the bacteria from memory',
      status: 'derived',
    },
  ]
}

/** What the bucket wants, and what its answer means for the pool. */
function bucketFigures(bucketMgPerL: number | undefined, context: StartContext): Result<readonly StartFigure[]> {
  const own = productFor('openingChlorine', context)
  if (!own.ok) return own
  // drops can be counted of a liquid only
  const liquid = own.value.form === 'liquid' ? ok(own.value) : generic('liquid-chlorine-12')
  if (!liquid.ok) return liquid
  const product = liquid.value
  const grams = (BUCKET.litres * BUCKET.chlorineMgPerL) / 1000 / product.availableChlorine
  const amount = amountOf(product, grams)
  const mL = grams / product.densityGPerML
  const figures: StartFigure[] = [
    {
      key: 'bucketDose',
      label: `Into the bucket: ${product.label}`,
      quantity: amount.quantity,
      value: amount.value,
      low: amount.value,
      high: amount.value,
      how: `Brings ${BUCKET.litres} L to ${BUCKET.chlorineMgPerL} mg/L: about ${Math.round(mL * DROPS_PER_ML)} drops. Old liquid chlorine is weaker: use fresh.`,
      ...MASS_BALANCE,
    },
  ]
  if (bucketMgPerL !== undefined) {
    const kg = (bucketMgPerL * context.volumeM3) / 1000
    figures.push({
      key: 'bucketChlorine',
      label: 'Chlorine the pool asks for, as Cl2',
      quantity: 'mass',
      value: kg,
      low: kg,
      high: 1.5 * kg,
      how: 'What the bucket used up, for the whole pool. Walls, filter and pipes ask for more: up to half again, by experience.',
      source: 'the bucket’s reading; the half again is from memory',
      status: 'derived',
    })
  }
  return ok(figures)
}

function generic(id: string): Result<Product> {
  const found = productById(id)
  return found.ok ? ok(found.value.product) : found
}
