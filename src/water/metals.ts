import { type Table, table } from '../base/index.ts'
import type { PeopleReading } from './people-reading.ts'
import type { SourceStatus } from './sourcing.ts'

/** A metal that stains: how much is too much, and why. */
export interface Metal {
  readonly id: 'copper' | 'iron' | 'manganese'
  readonly key: 'copper_mg_per_L' | 'iron_mg_per_L' | 'manganese_mg_per_L'
  readonly name: string
  /** Above this it is dealt with before anything that oxidises [mg/L]. */
  readonly limitMgPerL: number
  readonly status: SourceStatus
  readonly source: string
  readonly does: string
}

export const METALS: Table<Metal> = table<Metal>([
  {
    id: 'iron',
    key: 'iron_mg_per_L',
    name: 'Iron',
    limitMgPerL: 0.2,
    status: 'common practice, no source',
    source: 'trade custom 0.1 to 0.3; the US secondary drinking-water level is 0.3 (from memory)',
    does: 'Chlorine turns it brown within minutes; it clouds the water and stains.',
  },
  {
    id: 'manganese',
    key: 'manganese_mg_per_L',
    name: 'Manganese',
    limitMgPerL: 0.05,
    status: 'from memory',
    source: 'the US secondary drinking-water level',
    does: 'Oxidisers turn it brown-black, strong ones purple; it stains dark.',
  },
  {
    id: 'copper',
    key: 'copper_mg_per_L',
    name: 'Copper',
    limitMgPerL: 0.3,
    status: 'common practice, no source',
    source: 'trade custom 0.2 to 0.4; the US drinking-water action level is 1.3 (from memory)',
    does: 'At high pH it falls out green to black on plaster, and tints fair hair.',
  },
])

export interface MetalFinding {
  readonly metal: Metal
  readonly mgPerL: number
  readonly isTooHigh: boolean
}

export interface MetalsAdvice {
  /** Each metal that was read. */
  readonly findings: readonly MetalFinding[]
  /** What has to wait until they are dealt with. */
  readonly holdBack: readonly ('oxidiser' | 'mineral-cartridge')[]
  /** In this order. */
  readonly steps: readonly string[]
  readonly status: SourceStatus
}

/**
 * What to do about metals, before an oxidiser or a mineral cartridge. The order is common practice, no source: know where
 * they come from, take them out, hold what is left, and only then oxidise gently.
 */
export function metalsAdvice(reading: PeopleReading): MetalsAdvice {
  const findings = METALS.rows.flatMap((metal): MetalFinding[] => {
    const mgPerL = reading[metal.key]
    return mgPerL === undefined ? [] : [{ metal, mgPerL, isTooHigh: mgPerL > metal.limitMgPerL }]
  })
  const high = findings.filter(({ isTooHigh }) => isTooHigh)
  const hasCopper = high.some(({ metal }) => metal.id === 'copper')
  const status = 'common practice, no source'
  if (high.length === 0) return { findings, holdBack: [], steps: [], status }
  const names = high.map(({ metal }) => metal.name.toLowerCase())
  const [last, ...others] = names.toReversed()
  const are = others.length > 0 ? `${others.toReversed().join(', ')} and ${last} are` : `${last} is`
  return {
    findings,
    holdBack: ['oxidiser', 'mineral-cartridge'],
    steps: [
      `Don’t shock, and add no strong oxidiser, while ${are} this high; nobody bathes until chlorine is at its floor again.`,
      hasCopper
        ? 'Find the source: a well, old pipes, a heater eaten by low pH, copper algicide, a mineral cartridge. Take that cartridge out; add no copper.'
        : 'Find the source: a well or old iron pipes. Read the fill water too.',
      'Take it out where you can: run the fill water through a filter for metals, or bring in better water. In the pool exchange part of the water if the fill water holds less.',
      'Hold what is left with a sequestrant, by its label, at pH 7.2 to 7.5. It hides metal and removes none, chlorine uses it up over weeks, and some add phosphate.',
      'Then raise chlorine slowly, in small doses with the pump and filter running, and clean the filter as it loads.',
      'Fit a mineral cartridge only when all metals read below their limits; it brings copper or silver of its own and lowers no chlorine floor.',
    ],
    status,
  }
}
