import type { UnknownPart } from '../../../derive/index.ts'
import type { ReadingValues } from '../../../document/index.ts'
import type { Equilibrium, IndexTerm } from '../../../water/index.ts'
import type { BarPart } from '../scale/index.ts'
import { andList } from './reading-words.ts'

/** CO2 pressure of air [log10 atm]: about 0.000417 atm. */
const LOG10_PCO2_AIR = -3.38
const NEAR_BALANCE = 0.3

/** What each term of the difference between the two indices is about. */
export const INDEX_TERM_LABELS: { readonly [id in IndexTerm['id']]: string } = {
  temperature: 'Temperature',
  alkalinity: 'Alkalinity that is no carbonate',
  salt: 'Dissolved salt',
  pairs: 'Held in pairs',
  constants: 'Printed constants',
}

/** What an index means for the surface. The limits of balance are common practice, no source. */
export function saturationWords(calciteSI: number): string {
  if (!Number.isFinite(calciteSI)) return 'no calcium or carbonate'
  if (calciteSI < -NEAR_BALANCE) return 'dissolves plaster and grout'
  if (calciteSI > NEAR_BALANCE) return 'may leave scale'
  return 'near balance'
}

/** Why there is no table index: it is not shown for a guess. */
export function indexLacksWords(known: ReadingValues): string {
  const { ch_mg_per_L_as_CaCO3: calcium, th_mg_per_L_as_CaCO3: hardness, temperature_C } = known
  if (calcium === 0) return 'there is no calcium'
  const what = [...(calcium === undefined ? ['calcium'] : []), ...(temperature_C === undefined ? ['temperature'] : [])]
  const why = calcium === undefined && hardness !== undefined ? ': total hardness is not enough' : ''
  return `needs ${andList(what)}${why}`
}

/** How many times the CO2 that air would hold in it, and what follows. */
export function carbonDioxideWords(log10PCO2Atm: number, formatFactor: (factor: number) => string): string {
  if (!Number.isFinite(log10PCO2Atm)) return 'none, since there is no carbonate'
  const factor = 10 ** (log10PCO2Atm - LOG10_PCO2_AIR)
  if (factor > 1.2) return `${formatFactor(factor)} times what air would leave in it: it escapes, and pH creeps up`
  if (factor < 0.8) return `${formatFactor(factor)} times what air would leave in it: it takes some up, and pH sinks`
  return 'in balance with air'
}

/** Total alkalinity by what it belongs to [mg/L as CaCO3]; the parts add up to the total. */
export function alkalinityParts(
  equilibrium: Equilibrium,
  unknown: readonly Pick<UnknownPart, 'key'>[] = [],
): readonly (BarPart & { readonly isUnknown?: boolean })[] {
  const { carbonate, borate, cyanurate, chlorinatedCyanurate, hypochlorite, hydroxide } = equilibrium.alkalinity
  return [
    { id: 'carbonate', label: 'Carbonate', value: carbonate, ink: 'plain' },
    {
      id: 'cyanurate',
      label: 'Cyanurate, the stabiliser',
      value: cyanurate + chlorinatedCyanurate,
      ink: 'hatched',
      isUnknown: unknown.some(({ key }) => key === 'cya_mg_per_L'),
    },
    {
      id: 'borate',
      label: 'Borate',
      value: borate,
      ink: 'dotted',
      isUnknown: unknown.some(({ key }) => key === 'borate_mg_per_L_as_B'),
    },
    { id: 'other', label: 'Hypochlorite, hydroxide', value: hypochlorite + hydroxide, ink: 'solid' },
  ]
}

/** What the parts that nobody read would hold, and what they would do to the index. */
export function unreadWords(
  parts: readonly UnknownPart[],
  format: (mgPerL: number) => string,
  formatIndex: (value: number) => string,
): string | undefined {
  if (parts.length === 0) return undefined
  const names = parts.map(({ key }) => (key === 'cya_mg_per_L' ? 'Stabiliser' : 'borate'))
  const each = parts.map(
    ({ key, atMgPerL, holdsMgPerL, lowersSI }) =>
      `${atMgPerL} mg/L of ${key === 'cya_mg_per_L' ? 'stabiliser' : 'borate'} would hold ${format(holdsMgPerL)} of it and lower calcite SI by ${formatIndex(lowersSI)}`,
  )
  const list = andList(names)
  return `${list.charAt(0).toUpperCase()}${list.slice(1)} ${parts.length === 1 ? 'is' : 'are'} not measured: ${each.join('; ')}. So the carbonate is at most what stands here, and the ± of the index doesn’t count it.`
}

/** Which part counts for balance, and what the rest is good for. */
export function alkalinityWords({ alkalinity }: Equilibrium, isPartUnknown = false): string {
  const rest = alkalinity.total - alkalinity.carbonate
  if (isPartUnknown) return 'Balance goes by the carbonate alone; the titration counts whatever else there is with it.'
  if (rest < 0.03 * alkalinity.total) return 'Nearly all of it is carbonate, which is what balance goes by.'
  return `Balance goes by the carbonate alone. The other ${rest.toFixed(0)} mg/L steady pH too, but make no scale, and the titration counts them all as one.`
}
