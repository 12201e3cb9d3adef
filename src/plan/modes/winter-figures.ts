import { bracketedRoot, fail, ok, type Result } from '../../base/index.ts'
import { atTemperature, type Constants, concentrate, type PeopleReading, type Totals } from '../../water/index.ts'
import { constantsOf, solvedWater } from '../solved.ts'
import { startWater } from '../start.ts'
import { withScatter } from './cold-range.ts'
import { levelBelowFloor } from './problems.ts'
import { LEAST_LEFT, shareFigure } from './rain-and-drain.ts'
import type { Origin, StartContext, StartFigure, StartFigures, StartValues } from './types.ts'

const KERNEL: Origin = { source: 'the water kernel (see src/water/MODEL.md), CO2 kept in', status: 'derived' }
/** Waters are asked for at these [°C]: the coldest usual under ice, and a mild winter’s. */
const COLD = [2, 5] as const
/** pH that the search stays in. */
const PH_RANGE = [6.8, 8.6] as const
/** The band of pH on the days of closing (`winter-closing.ts`). */
export const CLOSING_PH = { low: 7.4, aim: 7.6, high: 7.8 } as const
/** Below this a winter eats plaster and grout, ours. */
const LEAST_SI = -0.3

/** How chalk will stand in the cold, the pH that would balance it, and what refilling by rain does to it. */
export function winterFigures(values: StartValues, context: StartContext): Result<StartFigures> {
  const { coldC = 4, loweredM = 0 } = values
  const { volumeM3, waterSurfaceM2 } = context
  const out = loweredM * waterSurfaceM2
  if (out > (1 - LEAST_LEFT) * volumeM3) return fail(levelBelowFloor('loweredM', 'The lowering', out, volumeM3))
  const keeps = (volumeM3 - out) / volumeM3
  const figures: StartFigure[] = loweredM > 0 ? [loweringFigure(keeps)] : []
  const reading = context.now ?? context.before
  const { pH, ta_mg_per_L_as_CaCO3: alkalinity, ch_mg_per_L_as_CaCO3: calcium } = reading ?? {}
  if (!reading || pH === undefined || alkalinity === undefined || calcium === undefined)
    return ok({
      figures,
      expected: [],
      warnings: ['pH, alkalinity and calcium are needed to tell how the water will stand in the cold: measure them.'],
    })
  const constants = constantsOf(context.constants)
  const totals = totalsAt(reading, pH, alkalinity, constants)
  if (!totals.ok) return totals
  const now = coldWaters(totals.value, coldC, constants)
  if (!now.ok) return now
  const method = (context.now ? context.method : undefined) ?? 'unknown'
  const coldOf = (each: PeopleReading, kept = 1): { readonly si: number; readonly pH: number } => {
    const made = totalsAt(each, each.pH ?? pH, each.ta_mg_per_L_as_CaCO3 ?? alkalinity, constants)
    const cold = made.ok ? coldWaters(concentrate(made.value, kept), coldC, constants) : made
    return cold.ok ? { si: cold.value.si.value, pH: cold.value.pH.value } : { si: Number.NaN, pH: Number.NaN }
  }
  const si = withScatter(now.value.si, reading, method, (each) => coldOf(each).si)
  const coldPH = withScatter(now.value.pH, reading, method, (each) => coldOf(each).pH)
  figures.unshift(
    {
      key: 'coldSI',
      label: `Calcite SI at ${coldC} °C`,
      quantity: 'number',
      ...si,
      how: 'The same water, cooled with its CO2 kept in. The range covers 2 to 5 °C and the scatter of the tests.',
      ...KERNEL,
    },
    {
      key: 'coldPH',
      label: `pH it will show at ${coldC} °C`,
      quantity: 'pH',
      ...coldPH,
      how: 'Cooling alone moves pH; nothing has to be dosed for that.',
      ...KERNEL,
    },
  )
  const balancedAt = (each: PeopleReading) =>
    bracketedRoot(
      (at) => siAt(each, at, each.ta_mg_per_L_as_CaCO3 ?? alkalinity, coldC, constants),
      PH_RANGE[0],
      PH_RANGE[1],
      1e-6,
    )
  const balanced = balancedAt(reading)
  if (balanced.ok) {
    const { x } = balanced.value
    figures.push({
      key: 'balancedPH',
      label: balancedLabel(x, coldC),
      quantity: 'pH',
      ...withScatter({ value: x, low: x, high: x }, reading, method, (each) => {
        const root = balancedAt(each)
        return root.ok ? root.value.x : Number.NaN
      }),
      how: 'At this alkalinity and calcium. pH stays inside its band all the same: above it, raise alkalinity or calcium to the upper half of their bands instead; below it, leave pH at the lower end.',
      ...KERNEL,
    })
  }
  const warnings: string[] = []
  if (si.value < LEAST_SI)
    warnings.push(
      `In the cold this water will dissolve chalk (SI −${Math.abs(si.value).toFixed(1)}): on plaster and tile raise alkalinity or calcium inside their bands before closing. A liner or shell does not mind.`,
    )
  if (!balanced.ok)
    warnings.push('No pH between 6.8 and 8.6 balances this water in the cold: alkalinity or calcium is too far off.')
  if (loweredM > 0) {
    const full = coldWaters(concentrate(totals.value, keeps), coldC, constants)
    if (!full.ok) return full
    figures.push({
      key: 'refilledSI',
      label: `Calcite SI at ${coldC} °C once rain has filled it`,
      quantity: 'number',
      ...withScatter(full.value.si, reading, method, (each) => coldOf(each, keeps).si),
      how: 'The lowered water with rain up to the old level, nothing run over.',
      ...KERNEL,
    })
  }
  return ok({ figures, expected: [], warnings })
}

/** What the pH that would balance the water is called: one outside the band is not one to leave with. */
function balancedLabel(pH: number, coldC: number): string {
  const { low, high } = CLOSING_PH
  const would = `pH that would bring SI at ${coldC} °C to 0`
  if (pH > high) return `${would}: above the band, so raise alkalinity or calcium instead`
  if (pH < low) return `${would}: below the band, so stay at its lower end`
  return `pH to leave with, so that SI at ${coldC} °C is 0`
}

function loweringFigure(keeps: number): StartFigure {
  return shareFigure(
    'Rain will exchange',
    1 - keeps,
    0,
    1 - keeps,
    'If rain and melt fill it to the old level, and none runs over.',
  )
}

function totalsAt(reading: PeopleReading, pH: number, alkalinity: number, constants: Constants): Result<Totals> {
  const water = startWater({ ...reading, pH, ta_mg_per_L_as_CaCO3: alkalinity }, constants)
  return water.ok ? ok(water.value.water.totals) : water
}

/** The same water in the cold: SI and pH, with their range over the winter's temperatures. */
function coldWaters(totals: Totals, coldC: number, constants: Constants) {
  const waters = []
  for (const temperatureC of [coldC, ...COLD]) {
    const water = solvedWater(atTemperature(totals, temperatureC), constants)
    if (!water.ok) return water
    waters.push(water.value.equilibrium)
  }
  const spread = (all: readonly number[]) => ({ value: all[0] ?? 0, low: Math.min(...all), high: Math.max(...all) })
  return ok({ si: spread(waters.map(({ calciteSI }) => calciteSI)), pH: spread(waters.map(({ pH }) => pH)) })
}

/** SI in the cold of a water left at this pH; NaN where there is no such water, which ends the search. */
function siAt(reading: PeopleReading, pH: number, alkalinity: number, coldC: number, constants: Constants): number {
  const totals = totalsAt(reading, pH, alkalinity, constants)
  if (!totals.ok) return Number.NaN
  const water = solvedWater(atTemperature(totals.value, coldC), constants)
  return water.ok ? water.value.equilibrium.calciteSI : Number.NaN
}
