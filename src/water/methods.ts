import { type Table, table } from '../base/index.ts'
import type { PeopleReadingKey } from './people-reading.ts'
import type { SourceStatus } from './sourcing.ts'

/** How well a method reads one quantity: one standard deviation is `absolute + relative × reading`, in its own unit. */
export interface MethodError {
  readonly absolute: number
  readonly relative: number
  /** Where the method reads at all; outside, it shows its own end. */
  readonly low: number
  readonly high: number
  readonly status: SourceStatus
}

/** A way of taking readings; a quantity it cannot read is absent. */
export interface TestMethod {
  readonly id: 'strip' | 'drop-kit' | 'photometer' | 'sensor' | 'laboratory' | 'supplier'
  readonly label: string
  readonly note: string
  readonly errors: { readonly [key in PeopleReadingKey]?: MethodError }
}

const TRADE: SourceStatus = 'common practice, no source'
const MEMORY: SourceStatus = 'from memory'
const e = (
  absolute: number,
  relative: number,
  low: number,
  high: number,
  status: SourceStatus = TRADE,
): MethodError => ({ absolute, relative, low, high, status })

/**
 * One standard deviation of each method on each reading, used with care, and the range it reads. Resolution of a drop
 * (half a step) and the printed ranges of common tests are from memory; the rest is what the trade reckons with.
 */
// biome-ignore format: one reading a line
export const METHODS: Table<TestMethod> = table<TestMethod>([
  {
    id: 'strip',
    label: 'Test strip',
    note: 'Coarse: a colour between two printed fields. Its hardness is total hardness, not calcium.',
    errors: {
      pH: e(0.3, 0, 6.2, 8.4),
      ta_mg_per_L_as_CaCO3: e(15, 0.15, 0, 240),
      th_mg_per_L_as_CaCO3: e(30, 0.2, 0, 1000),
      cya_mg_per_L: e(10, 0.25, 0, 150),
      borate_mg_per_L_as_B: e(8, 0.15, 0, 80),
      fc_mg_per_L_as_Cl2: e(0.4, 0.2, 0, 10),
      tc_mg_per_L_as_Cl2: e(0.4, 0.2, 0, 10),
      salt_mg_per_L_as_NaCl: e(100, 0.12, 400, 7000),
      copper_mg_per_L: e(0.2, 0.3, 0, 3),
      iron_mg_per_L: e(0.2, 0.3, 0, 5),
    },
  },
  {
    id: 'drop-kit',
    label: 'Drop kit',
    note: 'Counted drops; pH by the colour of phenol red, stabiliser by a dot that vanishes.',
    errors: {
      pH: e(0.15, 0, 6.8, 8.2),
      ta_mg_per_L_as_CaCO3: e(5, 0.03, 0, 500, MEMORY),
      ch_mg_per_L_as_CaCO3: e(6, 0.03, 0, 1000, MEMORY),
      mg_hardness_mg_per_L_as_CaCO3: e(9, 0.05, 0, 1000),
      th_mg_per_L_as_CaCO3: e(6, 0.03, 0, 1000, MEMORY),
      cya_mg_per_L: e(5, 0.1, 30, 100),
      borate_mg_per_L_as_B: e(3, 0.1, 0, 100),
      fc_mg_per_L_as_Cl2: e(0.15, 0.05, 0, 20, MEMORY),
      tc_mg_per_L_as_Cl2: e(0.15, 0.05, 0, 20, MEMORY),
      cc_mg_per_L_as_Cl2: e(0.15, 0.1, 0, 10),
      salt_mg_per_L_as_NaCl: e(100, 0.03, 200, 8000, MEMORY),
    },
  },
  {
    id: 'photometer',
    label: 'Photometer',
    note: 'A reagent’s colour measured by the instrument: as good as its cells are clean and its reagents fresh.',
    errors: {
      pH: e(0.1, 0, 6.5, 8.4),
      ta_mg_per_L_as_CaCO3: e(7, 0.05, 0, 200),
      ch_mg_per_L_as_CaCO3: e(12, 0.07, 0, 500),
      mg_hardness_mg_per_L_as_CaCO3: e(15, 0.1, 0, 400),
      th_mg_per_L_as_CaCO3: e(12, 0.07, 0, 500),
      sulfate_mg_per_L: e(6, 0.1, 5, 100),
      cya_mg_per_L: e(5, 0.08, 0, 160),
      borate_mg_per_L_as_B: e(2, 0.08, 0, 60),
      fc_mg_per_L_as_Cl2: e(0.05, 0.05, 0, 8),
      tc_mg_per_L_as_Cl2: e(0.05, 0.05, 0, 8),
      cc_mg_per_L_as_Cl2: e(0.1, 0.07, 0, 6),
      salt_mg_per_L_as_NaCl: e(100, 0.1, 0, 6000),
      copper_mg_per_L: e(0.05, 0.05, 0, 5),
      iron_mg_per_L: e(0.03, 0.05, 0, 1),
      manganese_mg_per_L: e(0.02, 0.06, 0, 4),
    },
  },
  {
    id: 'sensor',
    label: 'Sensor or meter',
    note: 'As good as its last calibration; it drifts.',
    errors: {
      pH: e(0.1, 0, 2, 12),
      fc_mg_per_L_as_Cl2: e(0.2, 0.1, 0, 10),
      salt_mg_per_L_as_NaCl: e(50, 0.06, 0, 10000),
      conductivity_uS_per_cm: e(5, 0.02, 0, 20000, MEMORY),
      tds_mg_per_L: e(5, 0.1, 0, 10000),
      temperature_C: e(0.5, 0, -5, 60),
    },
  },
  {
    id: 'laboratory',
    label: 'Laboratory',
    note: 'The best for what keeps in a bottle. Chlorine does not keep, and pH moves on the way.',
    errors: {
      pH: e(0.1, 0, 0, 14),
      ta_mg_per_L_as_CaCO3: e(2, 0.02, 0, 10000),
      ch_mg_per_L_as_CaCO3: e(1, 0.03, 0, 10000),
      mg_hardness_mg_per_L_as_CaCO3: e(1, 0.03, 0, 10000),
      th_mg_per_L_as_CaCO3: e(1.5, 0.03, 0, 10000),
      sulfate_mg_per_L: e(1, 0.04, 0, 10000),
      cya_mg_per_L: e(2, 0.05, 0, 1000),
      borate_mg_per_L_as_B: e(0.1, 0.05, 0, 1000),
      salt_mg_per_L_as_NaCl: e(2, 0.03, 0, 100000),
      copper_mg_per_L: e(0.005, 0.07, 0, 100),
      iron_mg_per_L: e(0.01, 0.07, 0, 100),
      manganese_mg_per_L: e(0.005, 0.07, 0, 100),
      conductivity_uS_per_cm: e(2, 0.02, 0, 200000),
      tds_mg_per_L: e(5, 0.04, 0, 100000),
    },
  },
  {
    id: 'supplier',
    label: 'Supplier’s report',
    note: 'Often a yearly mean of another week’s water: right for the mains, not for today’s tap.',
    errors: {
      pH: e(0.2, 0, 0, 14),
      ta_mg_per_L_as_CaCO3: e(5, 0.1, 0, 10000),
      ch_mg_per_L_as_CaCO3: e(5, 0.1, 0, 10000),
      mg_hardness_mg_per_L_as_CaCO3: e(3, 0.15, 0, 10000),
      th_mg_per_L_as_CaCO3: e(7, 0.1, 0, 10000),
      sulfate_mg_per_L: e(3, 0.15, 0, 10000),
      borate_mg_per_L_as_B: e(0.02, 0.2, 0, 100),
      fc_mg_per_L_as_Cl2: e(0.1, 0.4, 0, 10),
      salt_mg_per_L_as_NaCl: e(5, 0.15, 0, 10000),
      copper_mg_per_L: e(0.02, 0.3, 0, 100),
      iron_mg_per_L: e(0.02, 0.3, 0, 100),
      manganese_mg_per_L: e(0.01, 0.3, 0, 100),
      conductivity_uS_per_cm: e(10, 0.1, 0, 20000),
      tds_mg_per_L: e(10, 0.12, 0, 20000),
      temperature_C: e(4, 0, -5, 60),
    },
  },
])

export interface MethodSigma {
  /** One standard deviation, in the reading's own unit. */
  readonly sigma: number
  readonly status: SourceStatus
  /** False where the reading lies at or beyond an end that the method cannot read past. */
  readonly isInRange: boolean
}

/**
 * One standard deviation of a reading taken by a method, in the reading's own unit; undefined where no method reads it so.
 * An unknown method gets the widest that any test gives (the supplier's report is no test).
 */
export function methodSigma(methodId: string, key: PeopleReadingKey, value: number): MethodSigma | undefined {
  const at = (error: MethodError): MethodSigma => ({
    sigma: error.absolute + error.relative * Math.abs(value),
    status: error.status,
    isInRange: value >= error.low && value < error.high,
  })
  const method = METHODS.get(methodId)
  if (method) {
    const error = method.errors[key]
    return error && at(error)
  }
  let widest: MethodSigma | undefined
  for (const { id, errors } of METHODS.rows) {
    const error = id === 'supplier' ? undefined : errors[key]
    const found = error && at(error)
    if (found && found.sigma > (widest?.sigma ?? -1)) widest = found
  }
  return widest
}

/** So many standard deviations of none stand out from none (ours). */
const SEEN_SIGMAS = 2

/**
 * The least value that a method tells from none, in the reading's own unit: the end of its range, or two standard deviations
 * of a reading of none, whichever is more. Undefined where it has no such test; an unknown method sees as little as the
 * blindest test.
 */
export function leastSeen(methodId: string, key: PeopleReadingKey): number | undefined {
  const of = (error: MethodError | undefined) => error && Math.max(error.low, SEEN_SIGMAS * error.absolute)
  const method = METHODS.get(methodId)
  if (method) return of(method.errors[key])
  const all = METHODS.rows.flatMap(({ errors }) => of(errors[key]) ?? [])
  return all.length > 0 ? Math.max(...all) : undefined
}
