import { table } from '../base/index.ts'
import type { Band } from './types.ts'

/** What a pool is lined with, and what that asks of the water and allows of an exchange. */
export interface Surface {
  readonly id: 'plaster' | 'vinyl' | 'fibreglass' | 'tile' | 'unknown'
  readonly label: string
  readonly calcium: Band & { readonly source: string }
  /** Largest share of the water to take out at one time. */
  readonly exchangeShare: number
  readonly exchangeWhy: string
}

const MONTANA = 'Montana ARM 37.115.1308 table 6 (ideal 200 to 400); aim within it: our choice'
const PRACTICE = 'common practice, no source'

export const SURFACES = table<Surface>([
  {
    id: 'plaster',
    label: 'Plaster',
    calcium: { low: 200, aim: 275, high: 400, source: MONTANA },
    exchangeShare: 0.5,
    exchangeWhy: 'Half at a time keeps weight on the shell against groundwater and the plaster wet.',
  },
  {
    id: 'tile',
    label: 'Tile',
    calcium: { low: 200, aim: 250, high: 400, source: `${MONTANA}; grout wants calcium as plaster does` },
    exchangeShare: 0.5,
    exchangeWhy: 'Half at a time keeps weight on the shell against groundwater.',
  },
  {
    id: 'vinyl',
    label: 'Vinyl liner',
    calcium: {
      low: 100,
      aim: 175,
      high: 400,
      source: `${PRACTICE}: a liner needs no calcium, heaters and fittings like some`,
    },
    exchangeShare: 1 / 3,
    exchangeWhy: 'An empty liner shrinks and floats: a third at a time, and the maker of the liner has the last word.',
  },
  {
    id: 'fibreglass',
    label: 'Fibreglass',
    calcium: {
      low: 120,
      aim: 175,
      high: 350,
      source: `${PRACTICE}: the shell needs no calcium, heaters and fittings like some`,
    },
    exchangeShare: 1 / 3,
    exchangeWhy: 'An empty shell floats or bulges: a third at a time, and the maker of the shell has the last word.',
  },
  {
    id: 'unknown',
    label: 'Not stated',
    calcium: {
      low: 200,
      aim: 250,
      high: 400,
      source: `${MONTANA}; the surface is not stated, so the band for plaster`,
    },
    exchangeShare: 1 / 3,
    exchangeWhy: 'The surface is not stated, so a third at a time, as for a liner or a fibreglass shell.',
  },
])

export function surfaceOf(id: string | undefined): Surface {
  const row = SURFACES.get(id ?? 'unknown') ?? SURFACES.get('unknown')
  return row ?? SURFACES.rows[0]!
}
