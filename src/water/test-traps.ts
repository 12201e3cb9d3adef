import { type Table, table } from '../base/index.ts'
import { NO_STABILISER_MG_PER_L } from './chlorine-limits.ts'
import { METHODS, methodSigma } from './methods.ts'
import type { PeopleReading, PeopleReadingKey } from './people-reading.ts'
import type { SourceStatus } from './sourcing.ts'

/** A way in which a test misleads: whom it concerns, and what to do. */
export interface TestTrap {
  readonly id: string
  /** The readings it spoils here; none where it does not bite. */
  readonly concerns: (reading: PeopleReading, methodId: string) => readonly PeopleReadingKey[]
  readonly text: string
  /** Set where the reading it spoils must not be dosed by: it has to be read again, another way, before anything goes in. */
  readonly isSpoilt?: true | undefined
  /** Set where it holds of the test itself, whatever it read: worth knowing once, not at every reading. */
  readonly isAlways?: true | undefined
  readonly source: string
  readonly status: SourceStatus
}

/** Readings of a colour that a reagent makes. */
const isColour = (methodId: string) => ['strip', 'drop-kit', 'photometer', 'unknown'].includes(methodId)
const isBottle = (methodId: string) => methodId === 'drop-kit' || methodId === 'photometer' || methodId === 'unknown'
const CHLORINE = ['fc_mg_per_L_as_Cl2', 'tc_mg_per_L_as_Cl2', 'cc_mg_per_L_as_Cl2'] as const
const given = <Key extends PeopleReadingKey>(reading: PeopleReading, ...keys: readonly Key[]) =>
  keys.filter((key) => reading[key] !== undefined)
const over = (value: number | undefined, limit: number) => value !== undefined && value > limit
const chlorineOf = (reading: PeopleReading) =>
  Math.max(reading.fc_mg_per_L_as_Cl2 ?? 0, reading.tc_mg_per_L_as_Cl2 ?? 0)

/** Above this much free chlorine phenol red and the alkalinity indicator are bleached or changed [mg/L]. */
const INDICATOR_LIMIT = 10
/** Above this much chlorine a simple DPD test begins to bleach [mg/L]. */
export const DPD_LIMIT_MG_PER_L = 8
const COLD_SAMPLE_C = 21
const COPPER_SPOILS_HARDNESS = 0.2
const TRADE: SourceStatus = 'common practice, no source'

export const TEST_TRAPS: Table<TestTrap> = table<TestTrap>([
  {
    id: 'dpd-bleached',
    concerns: (reading, method) =>
      isColour(method) && chlorineOf(reading) >= DPD_LIMIT_MG_PER_L ? given(reading, ...CHLORINE) : [],
    text: 'So much chlorine bleaches the test’s own colour, and it may read far too low. Mix the sample with nine parts of chlorine-free water, read again and multiply by ten; or count drops.',
    isSpoilt: true,
    source: 'DPD methods',
    status: 'from memory',
  },
  {
    id: 'dpd-none',
    concerns: (reading, method) => (isColour(method) && reading.fc_mg_per_L_as_Cl2 === 0 ? ['fc_mg_per_L_as_Cl2'] : []),
    text: 'No colour can mean no chlorine, or so much that it was bleached at once. If chlorine was dosed lately, mix the sample with nine parts of chlorine-free water and look again.',
    source: 'DPD methods',
    status: 'from memory',
  },
  {
    id: 'ph-with-high-chlorine',
    concerns: (reading, method) =>
      isColour(method) && over(reading.fc_mg_per_L_as_Cl2, INDICATOR_LIMIT) ? given(reading, 'pH') : [],
    text: 'Above 10 mg/L of free chlorine phenol red turns into another dye and pH reads too high. Wait until chlorine is below 10, or use a meter; dose no acid for this reading.',
    isSpoilt: true,
    source: 'phenol red and chlorine',
    status: TRADE,
  },
  {
    id: 'alkalinity-with-high-chlorine',
    concerns: (reading, method) =>
      isColour(method) && over(reading.fc_mg_per_L_as_Cl2, INDICATOR_LIMIT)
        ? given(reading, 'ta_mg_per_L_as_CaCO3')
        : [],
    text: 'So much chlorine bleaches the indicator: the end shows as blue to yellow instead of green to red. Take the chlorine out of the sample first with a drop of thiosulfate.',
    isSpoilt: true,
    source: 'alkalinity titration',
    status: TRADE,
  },
  {
    id: 'stabiliser-in-cold-water',
    concerns: (reading, method) =>
      isBottle(method) && reading.temperature_C !== undefined && reading.temperature_C < COLD_SAMPLE_C
        ? given(reading, 'cya_mg_per_L')
        : [],
    text: 'The cloud that shows stabiliser forms differently in cold water, and the reading is off by tens of mg/L. Let the sample warm to 21 to 25 °C, mix as the kit says, and read it in daylight.',
    isSpoilt: true,
    source: 'melamine turbidity test',
    status: TRADE,
  },
  {
    id: 'dpd-reads-bound-chlorine',
    concerns: (reading, method) =>
      (isColour(method) || method === 'laboratory') &&
      (reading.cya_mg_per_L === undefined || reading.cya_mg_per_L >= NO_STABILISER_MG_PER_L)
        ? given(reading, 'fc_mg_per_L_as_Cl2')
        : [],
    text: 'The test counts the chlorine held on stabiliser as free. What works at once is the active chlorine, a few hundredths of it.',
    isAlways: true,
    source:
      'Wahman & Alexander 2019, Environ. Eng. Sci. 36:283; Austria’s bathing-water decree BHygV §6(2) subtracts the bound part',
    status: 'seen',
  },
  {
    id: 'free-drifts-with-combined',
    concerns: (reading, method) =>
      isColour(method) && combinedOf(reading) > 0.5 ? given(reading, 'fc_mg_per_L_as_Cl2') : [],
    text: 'With much combined chlorine the free reading creeps up while it stands. Read it within a minute of adding the reagent.',
    source: 'DPD methods: monochloramine breaks through',
    status: 'from memory',
  },
  {
    id: 'combined-reads-other-oxidisers',
    concerns: (reading, method) =>
      isColour(method) && combinedOf(reading) > 0.5 ? given(reading, 'tc_mg_per_L_as_Cl2', 'cc_mg_per_L_as_Cl2') : [],
    text: 'Chlorine-free oxidiser (monopersulfate) reads as combined chlorine for days. If it was used, wait or take it out of the sample before you act on this.',
    source: 'monopersulfate in DPD tests',
    status: TRADE,
  },
  {
    id: 'strip-hardness-is-total',
    concerns: (reading, method) =>
      method === 'strip' ? given(reading, 'th_mg_per_L_as_CaCO3', 'ch_mg_per_L_as_CaCO3') : [],
    text: 'A strip reads total hardness, calcium and magnesium together. Calcium is a half to all of it.',
    isAlways: true,
    source: 'hardness strips',
    status: TRADE,
  },
  {
    id: 'metals-in-hardness-test',
    concerns: (reading, method) =>
      isBottle(method) && (over(reading.copper_mg_per_L, COPPER_SPOILS_HARDNESS) || over(reading.iron_mg_per_L, 0.5))
        ? given(reading, 'ch_mg_per_L_as_CaCO3', 'th_mg_per_L_as_CaCO3')
        : [],
    text: 'Metals blur the end point: it stays purple. Add a few drops of the titrant before the indicator, and count them in.',
    isSpoilt: true,
    source: 'EDTA titration of hardness',
    status: 'from memory',
  },
  {
    id: 'sensor-sees-active-chlorine',
    concerns: (reading, method) => (method === 'sensor' ? given(reading, 'fc_mg_per_L_as_Cl2') : []),
    text: 'Most chlorine sensors see hypochlorous acid alone: they follow pH and stabiliser as well as chlorine. Set them against a DPD reading whenever either has changed.',
    isAlways: true,
    source: 'amperometric sensors',
    status: 'from memory',
  },
  {
    id: 'salt-meter-reads-all-ions',
    concerns: (reading, method) => (method === 'sensor' ? given(reading, 'salt_mg_per_L_as_NaCl', 'tds_mg_per_L') : []),
    text: 'The meter reads conductivity and calls all of it salt, hardness and bicarbonate too. In water with little salt it reads too high.',
    isAlways: true,
    source: 'conductivity meters',
    status: TRADE,
  },
  {
    id: 'bottle-on-the-way',
    concerns: (reading, method) => (method === 'laboratory' ? given(reading, 'pH', ...CHLORINE) : []),
    text: 'pH and chlorine change in the bottle on the way to the laboratory. Read them at the pool.',
    isAlways: true,
    source: 'sampling practice',
    status: TRADE,
  },
  {
    id: 'supplier-is-a-mean',
    concerns: (reading, method) =>
      method === 'supplier' ? given(reading, 'pH', 'ta_mg_per_L_as_CaCO3', 'ch_mg_per_L_as_CaCO3') : [],
    text: 'A supplier’s figure is a mean of other days, and waters are mixed by season. Read the tap once before a large dose.',
    isAlways: true,
    source: 'suppliers’ reports',
    status: TRADE,
  },
  {
    id: 'end-of-range',
    concerns: (reading, method) =>
      METHODS.get(method)
        ? (Object.keys(reading) as PeopleReadingKey[]).filter((key) => {
            const value = reading[key]
            return value !== undefined && methodSigma(method, key, value)?.isInRange === false
          })
        : [],
    text: 'This lies at the end of what the test can read; the truth may be well beyond. Read it again with a wider test, or with a diluted sample.',
    source: 'printed ranges of common tests',
    status: 'from memory',
  },
])

function combinedOf(reading: PeopleReading): number {
  const { cc_mg_per_L_as_Cl2: combined, tc_mg_per_L_as_Cl2: total, fc_mg_per_L_as_Cl2: free } = reading
  return combined ?? (total !== undefined && free !== undefined ? total - free : 0)
}

export interface TrapHere {
  readonly trap: TestTrap
  readonly concerns: readonly PeopleReadingKey[]
}

/** The traps that bite on these readings, taken by this method, each with the readings it spoils. */
export function trapsFor(reading: PeopleReading, methodId: string): readonly TrapHere[] {
  return TEST_TRAPS.rows.flatMap((trap): TrapHere[] => {
    const concerns = trap.concerns(reading, methodId)
    return concerns.length > 0 ? [{ trap, concerns }] : []
  })
}
