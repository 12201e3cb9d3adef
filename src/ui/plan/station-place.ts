import type { Problem } from '../../base/index.ts'
import { STATION_GAP_M } from '../../document/index.ts'
import { formatQuantity, type UnitSystem } from '../../units/index.ts'

/** Why a station can't be at a typed distance from A: it would pass its neighbour. What is dragged stops there instead. */
export function stationProblem(
  stations: readonly (readonly [sM: number, depthM: number])[],
  station: number,
  sM: number,
  units: UnitSystem,
): Problem | undefined {
  const [before, after] = [stations[station - 1]?.[0], stations[station + 1]?.[0]]
  const isPast = before !== undefined && sM < before + STATION_GAP_M
  const isBeyond = after !== undefined && sM > after - STATION_GAP_M
  if (!isPast && !isBeyond) return undefined
  const [way, no, atM] = isPast ? ['after', station, before] : ['before', station + 2, after as number]
  return {
    code: 'station-out-of-order',
    path: '',
    what: `It has to be ${way} station ${no}, at ${formatQuantity('length', atM, units)}.`,
    why: 'Stations are numbered from A on.',
    hint: '',
  }
}
