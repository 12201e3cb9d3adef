import { logKAt } from './constants.ts'
import { debyeHuckel } from './debye.ts'
import type { Constants, ReactionId } from './types.ts'

/** A constant set at one temperature: equilibrium constants as numbers, not logarithms. */
export interface Conditions {
  readonly temperatureC: number
  readonly debyeA: number
  readonly debyeB: number
  readonly k: { readonly [id in ReactionId]: number }
  readonly log10KCalcite: number
  readonly log10KGas: number
}

const ROOM = 256
const cached = new WeakMap<Constants, Map<number, Conditions>>()

/** The set at a temperature; kept for the last few hundred temperatures, since a season meets the same ones again. */
export function conditionsAt(constants: Constants, temperatureC: number): Conditions {
  let byTemperature = cached.get(constants)
  if (!byTemperature) {
    byTemperature = new Map()
    cached.set(constants, byTemperature)
  }
  const known = byTemperature.get(temperatureC)
  if (known) return known
  if (byTemperature.size >= ROOM) byTemperature.clear()
  const fresh = computed(constants, temperatureC)
  byTemperature.set(temperatureC, fresh)
  return fresh
}

function computed(constants: Constants, temperatureC: number): Conditions {
  const temperatureK = temperatureC + 273.15
  const k = Object.fromEntries(
    Object.values(constants.reactions).map((row) => [row.id, 10 ** logKAt(row.logK, temperatureK)]),
  ) as Record<ReactionId, number>
  const debye = debyeHuckel(temperatureC)
  return {
    temperatureC,
    debyeA: debye.a,
    debyeB: debye.b,
    k,
    log10KCalcite: logKAt(constants.reactions.calcite.logK, temperatureK),
    log10KGas: logKAt(constants.reactions.carbonDioxideGas.logK, temperatureK),
  }
}
