import { fail, ok, type Result } from '../../base/index.ts'
import { constantsOf } from '../solved.ts'
import { surfaceOf } from '../surfaces.ts'
import { LEVEL_READ_M, rainDilution } from './dilution.ts'
import { type Expected, expectedReadings } from './expected.ts'
import { MASS_BALANCE } from './origins.ts'
import { drainTwice, levelBelowFloor } from './problems.ts'
import type { StartContext, StartFigure, StartFigures, StartValues } from './types.ts'

const NONE: StartFigures = { figures: [], expected: [], warnings: [] }
const NO_READINGS = 'There are no readings from before; only the share of water can be told, not what it did to them.'
/** Least share of the water that has to stay for a dilution to be one. */
export const LEAST_LEFT = 0.1

/** Rain on the surface and from ground that drains into the pool: what it dilutes, and what ran over. */
export function rainFigures(values: StartValues, context: StartContext): Result<StartFigures> {
  const { rainM, catchmentM2 = 0, runoffPercent = 0, roomM = 0 } = values
  if (rainM === undefined) return ok(NONE)
  const { volumeM3, waterSurfaceM2, before } = context
  const fromGround = rainM * catchmentM2 * (runoffPercent / 100)
  const inflow = rainM * waterSurfaceM2 + fromGround
  const room = roomM * waterSurfaceM2
  const leastInflow = rainM * waterSurfaceM2
  const mostInflow = rainM * (waterSurfaceM2 + catchmentM2)
  const at = (inflowM3: number) => rainDilution(volumeM3, room, inflowM3)
  const usual = at(inflow)
  const dilution = { value: usual.value, least: at(leastInflow).least, most: at(mostInflow).most }
  const answer = expectedReadings({
    before: before ?? {},
    dilution,
    isLong: false,
    isDirty: true,
    constants: constantsOf(context.constants),
  })
  if (!answer.ok) return answer
  const figures: StartFigure[] = [
    {
      key: 'inflow',
      label: 'Water that came in',
      quantity: 'volume',
      value: inflow,
      low: leastInflow,
      high: mostInflow,
      how: 'Rain times the surface, and times the ground that drains in by its share; the ends take none and all of that ground.',
      ...MASS_BALANCE,
    },
    {
      key: 'overflow',
      label: 'Of it ran over',
      quantity: 'volume',
      value: usual.overflowM3,
      low: at(leastInflow).overflowM3,
      high: at(mostInflow).overflowM3,
      how: 'What came in, less the room up to the brim.',
      ...MASS_BALANCE,
    },
    shareFigure(
      'Diluted by',
      1 - dilution.value.keeps,
      1 - dilution.least.keeps,
      1 - dilution.most.keeps,
      'Rain holds next to nothing. The low end: rain lay on top and ran off again; the high end: it mixed in.',
    ),
  ]
  const warnings = [
    ...(before ? [] : [NO_READINGS]),
    ...(fromGround > 0
      ? [
          'Water from the ground brings soil, fertiliser and germs: it is no rain, and readings may move otherwise than expected.',
        ]
      : []),
  ]
  return ok({ figures, ...toldBy(answer.value, warnings) })
}

/** Part of the water taken out and replaced: the share, and the blend to expect. */
export function drainFigures(values: StartValues, context: StartContext): Result<StartFigures> {
  const { drainedM, drainedPercent } = values
  const { volumeM3, waterSurfaceM2, before, fill } = context
  const byLevel = drainedM === undefined ? undefined : (drainedM * waterSurfaceM2) / volumeM3
  const byShare = drainedPercent === undefined ? undefined : drainedPercent / 100
  if (byLevel !== undefined && byShare !== undefined && Math.abs(byLevel - byShare) > DISAGREE)
    return fail(drainTwice())
  const share = byShare ?? byLevel
  if (share === undefined) return ok(NONE)
  if (byShare === undefined && share > 1 - LEAST_LEFT)
    return fail(levelBelowFloor('drainedM', 'The drain', share * volumeM3, volumeM3))
  const slack = byShare === undefined ? (LEVEL_READ_M * waterSurfaceM2) / volumeM3 : 0
  const of = (fresh: number) => ({ keeps: 1 - fresh, fresh })
  const least = Math.max(0, share - slack)
  const most = Math.min(1, share + slack)
  const answer = expectedReadings({
    before: before ?? {},
    dilution: { value: of(share), least: of(least), most: of(most) },
    fresh: fill ?? {},
    isLong: false,
    constants: constantsOf(context.constants),
  })
  if (!answer.ok) return answer
  const surface = surfaceOf(context.surface)
  const warnings = [
    ...(before ? [] : [NO_READINGS]),
    ...(fill ? [] : ['The fill water’s readings are missing; without them no reading can be foretold.']),
    ...(share > surface.exchangeShare + 1e-9
      ? [
          `More than ${Math.round(surface.exchangeShare * 100)} % at one time is too much for this surface. ${surface.exchangeWhy}`,
        ]
      : []),
  ]
  const figures: StartFigure[] = [
    shareFigure(
      'Exchanged',
      share,
      least,
      most,
      byShare === undefined ? 'Level times surface, over the volume; the level read to 10 mm.' : 'As given.',
    ),
    {
      key: 'drained',
      label: 'Water taken out',
      quantity: 'volume',
      value: share * volumeM3,
      low: least * volumeM3,
      high: most * volumeM3,
      how: 'The share times the volume.',
      ...MASS_BALANCE,
    },
  ]
  return ok({ figures, ...toldBy(answer.value, warnings) })
}

/** Shares given twice may differ by so much. */
const DISAGREE = 0.03

export function shareFigure(label: string, share: number, low: number, high: number, how: string): StartFigure {
  const ends = [share, low, high].map((value) => value * 100)
  return {
    key: 'exchanged',
    label,
    quantity: 'percent',
    value: share * 100,
    low: Math.min(...ends),
    high: Math.max(...ends),
    how,
    ...MASS_BALANCE,
  }
}

/** What the expectation adds to the figures; what it assumed stands among the warnings. */
export function toldBy(expected: Expected, warnings: readonly string[]): Omit<StartFigures, 'figures'> {
  const { readings, water, assumptions } = expected
  return {
    expected: readings,
    ...(water ? { expectedWater: water } : {}),
    warnings: [...warnings, ...assumptions],
  }
}
