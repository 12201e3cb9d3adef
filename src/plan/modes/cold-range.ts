import { methodSigma, type PeopleReading } from '../../water/index.ts'
import { LIMITS } from '../limits.ts'

export interface Ranged {
  readonly value: number
  readonly low: number
  readonly high: number
}

const READ = ['pH', 'ta_mg_per_L_as_CaCO3', 'ch_mg_per_L_as_CaCO3'] as const

/**
 * A figure with the scatter of the readings behind it added to its range.
 * Equation: low = x − √((x − l)² + (z σ)²), high likewise; σ² = Σ ((f(r + σᵣ) − f(r − σᵣ))/2)².
 * Symbols: x the figure, l and h its range so far; r a reading (pH, alkalinity, calcium), σᵣ of its method; z 1.96.
 * Valid for: readings that scatter each on their own; a side on which no such water exists adds nothing.
 * Source: propagation of independent errors.
 * Accuracy: first order.
 */
export function withScatter(
  figure: Ranged,
  reading: PeopleReading,
  method: string,
  f: (reading: PeopleReading) => number,
): Ranged {
  const variance = READ.reduce((sum, key) => {
    const value = reading[key]
    const sigma =
      value === undefined ? undefined : (methodSigma(method, key, value) ?? methodSigma('unknown', key, value))?.sigma
    if (value === undefined || !sigma) return sum
    const least = key === 'pH' ? value - sigma : Math.max(0, value - sigma)
    const slope = (f({ ...reading, [key]: value + sigma }) - f({ ...reading, [key]: least })) / (value + sigma - least)
    return Number.isFinite(slope) ? sum + (slope * sigma) ** 2 : sum
  }, 0)
  const scatter = LIMITS.z95 * Math.sqrt(variance)
  const { value, low, high } = figure
  return { value, low: value - Math.hypot(value - low, scatter), high: value + Math.hypot(high - value, scatter) }
}
