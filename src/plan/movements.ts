import { readingChange } from './effect.ts'
import type { SolvedWater } from './solved.ts'
import { isInside, TARGET_KEYS } from './targets.ts'
import type { KnownReading, Movement, TargetKey, Targets } from './types.ts'

/** What counts as moved, in each reading's own unit. */
const LEAST = { pH: 0.005, mgPerL: 0.005, calciteSI: 0.005 } as const

function readAs(water: SolvedWater, key: TargetKey): number {
  if (key === 'pH') return water.equilibrium.pH
  return readingChange(water.totals, key)
}

/** How a line moves the known readings and, where calcium is known, calcite SI. */
export function movementsBetween(
  before: SolvedWater,
  after: SolvedWater,
  known: KnownReading,
  targets: Targets,
): Movement[] {
  const movements: Movement[] = TARGET_KEYS.flatMap((key) => {
    if (known[key] === undefined) return []
    const from = readAs(before, key)
    const to = readAs(after, key)
    if (Math.abs(to - from) < (key === 'pH' ? LEAST.pH : LEAST.mgPerL)) return []
    const band = targets[key]
    return [{ key, before: from, after: to, band, inBand: band ? isInside(to, band) : true }]
  })
  const fromSI = before.equilibrium.calciteSI
  const toSI = after.equilibrium.calciteSI
  const isKnown = known.ch_mg_per_L_as_CaCO3 !== undefined && Number.isFinite(fromSI) && Number.isFinite(toSI)
  if (isKnown && Math.abs(toSI - fromSI) >= LEAST.calciteSI)
    movements.push({ key: 'calciteSI', before: fromSI, after: toSI, inBand: toSI <= 0.5 && toSI >= -0.5 })
  return movements
}
