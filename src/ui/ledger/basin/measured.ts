import type { Tolerance } from '../../../basin/index.ts'

export interface Care {
  readonly id: string
  readonly label: string
  readonly tolerance: Tolerance
}

/** How carefully a pool may have been measured: one standard deviation of a point. Common practice, no source. */
export const CARES: readonly Care[] = [
  { id: 'surveyed', label: 'Surveying instrument', tolerance: { planM: 0.005, depthM: 0.01 } },
  { id: 'tape', label: 'Tape and staff', tolerance: { planM: 0.02, depthM: 0.02 } },
  { id: 'drawing', label: 'From a builder’s drawing', tolerance: { planM: 0.05, depthM: 0.05 } },
  { id: 'paced', label: 'Paced, depths with a pole', tolerance: { planM: 0.2, depthM: 0.05 } },
  { id: 'by-eye', label: 'By eye', tolerance: { planM: 0.5, depthM: 0.15 } },
]

/** The row that a tolerance is, or undefined where it was typed. */
export function careOf(tolerance: Tolerance): Care | undefined {
  return CARES.find((care) => care.tolerance.planM === tolerance.planM && care.tolerance.depthM === tolerance.depthM)
}
