import { table } from '../base/index.ts'
import type { UpkeepInput } from './upkeep-types.ts'

interface Cover {
  readonly id: UpkeepInput['coverKind']
  readonly label: string
  /** Share of near-ultraviolet light that passes it. */
  readonly lightPasses: number
  /** Shares that it holds back while it is on. */
  readonly evaporationCut: number
  readonly gasCut: number
  readonly debrisCut: number
  readonly source: string
}

const LAB = 'evaporation: NPIRC / Cal Poly study (seen second-hand); the rest from memory'

/** What lies on the water when nobody is in it. */
const COVERS = table<Cover>([
  { id: 'none', label: 'no cover', lightPasses: 1, evaporationCut: 0, gasCut: 0, debrisCut: 0, source: 'no cover' },
  {
    id: 'bubble',
    label: 'bubble cover',
    lightPasses: 0.3,
    evaporationCut: 0.949,
    gasCut: 0.9,
    debrisCut: 0.7,
    source: LAB,
  },
  {
    id: 'solid',
    label: 'solid cover',
    lightPasses: 0,
    evaporationCut: 0.939,
    gasCut: 0.9,
    debrisCut: 0.9,
    source: LAB,
  },
  {
    id: 'slatted',
    label: 'slatted cover',
    lightPasses: 0.05,
    evaporationCut: 0.9,
    gasCut: 0.8,
    debrisCut: 0.8,
    source: 'from memory',
  },
])

export interface Covered {
  readonly cover: Cover
  /** Share of the day that it is on. */
  readonly dayShare: number
  /** Share of the daylight that it is on: nights are taken to be covered first. */
  readonly daylightShare: number
}

/** How much of the day and of its light the cover is on. */
export function coveredShare(kind: UpkeepInput['coverKind'], hoursPerDay: number, daylightH: number): Covered {
  const cover = COVERS.get(kind) ?? COVERS.rows[0]!
  const hours = kind === 'none' ? 0 : Math.min(24, Math.max(0, hoursPerDay))
  const inDaylight = Math.max(0, hours - (24 - daylightH))
  return { cover, dayShare: hours / 24, daylightShare: daylightH > 0 ? Math.min(1, inDaylight / daylightH) : 0 }
}
