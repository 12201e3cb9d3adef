import { type ProductList, productById } from '../chemicals/index.ts'
import { momentMs, type ReadingSet, type System } from '../document/index.ts'
import { effectPerGPerM3, type LastStabiliser, REGIMES } from '../plan/index.ts'
import { INCIDENT_STABILISER_LIMIT_MG_PER_L, leastSeen, METHODS, NO_STABILISER_MG_PER_L } from '../water/index.ts'
import { isPools } from './latest.ts'

const KEY = 'cya_mg_per_L'
/** Starts that begin with water that was not in the pool before. */
const NEW_WATER: readonly string[] = ['new-plaster', 'liner-or-shell']

type Event =
  | { readonly kind: 'reading'; readonly atMs: number; readonly value: number; readonly set: ReadingSet }
  | {
      readonly kind: 'dose'
      readonly atMs: number
      readonly label: string
      readonly mgPerG: number
      readonly g: number
    }
  | { readonly kind: 'exchange'; readonly atMs: number }
  | { readonly kind: 'new-water'; readonly atMs: number }

/** All that tells of stabiliser in the pool up to a moment, oldest first. */
function eventsUntil(system: System, untilMs: number, products: ProductList): readonly Event[] {
  const { readings } = system.water
  const read = readings.flatMap((set): Event[] => {
    const value = set.values[KEY]
    return value === undefined || !isPools(set, system) ? [] : [{ kind: 'reading', atMs: momentMs(set.at), value, set }]
  })
  const logged = system.log.flatMap((entry): Event[] => {
    const atMs = momentMs(entry.at)
    if (entry.kind === 'note') return entry.line?.startsWith('exchange') ? [{ kind: 'exchange', atMs }] : []
    if (entry.kind !== 'dose' || !(entry.amountG > 0)) return []
    const found = productById(entry.product, products)
    const mgPerG = found.ok ? effectPerGPerM3(found.value.product, KEY) : 0
    return found.ok && mgPerG > 0
      ? [{ kind: 'dose', atMs, label: found.value.product.label, mgPerG, g: entry.amountG }]
      : []
  })
  const start = system.start
  const began: Event[] =
    start && NEW_WATER.includes(start.mode) ? [{ kind: 'new-water', atMs: momentMs(start.at) }] : []
  return [...read, ...logged, ...began].filter(({ atMs }) => atMs <= untilMs).sort((a, b) => a.atMs - b.atMs)
}

/** What the log and earlier readings have against a reading of none, in words. */
function evidenceOf(events: readonly Event[], reading: ReadingSet): string | undefined {
  let evidence: { readonly words: string; readonly isExchanged: boolean } | undefined
  for (const event of events) {
    if (event.kind === 'dose') evidence = { words: `${event.label} was logged`, isExchanged: false }
    else if (event.kind === 'new-water') evidence = undefined
    else if (event.kind === 'exchange') evidence = evidence && { ...evidence, isExchanged: true }
    else if (event.set !== reading) {
      const least = leastSeen(event.set.method, KEY)
      if (least === undefined) continue
      if (event.value >= least)
        evidence = { words: `it read ${Math.round(event.value)} mg/L before`, isExchanged: false }
      // once water was exchanged a test that sees little enough settles it; one that is blind to what is left doesn't
      else if (evidence?.isExchanged && least <= INCIDENT_STABILISER_LIMIT_MG_PER_L) evidence = undefined
    }
  }
  return evidence?.words
}

/** What brings stabiliser in day by day, in words. */
function inUse(system: System, products: ProductList): string | undefined {
  const regime = REGIMES.get(system.regime.id)
  const daily = system.regime.products.dailyChlorine ?? regime?.products.dailyChlorine
  const held = (system.equipment.devices ?? []).flatMap((device) => device.held.at(-1)?.product ?? [])
  for (const id of [daily, ...held]) {
    const found = id === undefined ? undefined : productById(id, products)
    if (found?.ok && effectPerGPerM3(found.value.product, KEY) > 0) return `${found.value.product.label} is in use`
  }
  return undefined
}

/**
 * Why a reading of no stabiliser doesn't count as none, or undefined where it does. Below the least that its test sees it is
 * none only where nothing in the log, in earlier readings or in use speaks against it; a method without such a test tells
 * nothing. Counting it as unknown keeps the chlorine floor that holds with stabiliser.
 */
export function noneDoubted(system: System, set: ReadingSet, products: ProductList): string | undefined {
  const value = set.values[KEY]
  if (value === undefined || value >= NO_STABILISER_MG_PER_L || !isPools(set, system)) return undefined
  const name = METHODS.get(set.method)?.label.toLowerCase() ?? 'unknown test'
  const least = leastSeen(set.method, KEY)
  const end =
    'Stabiliser counts as unknown, so as present for the chlorine floor, and none is dosed: have it measured by a photometer or a laboratory.'
  if (least === undefined) return `Stabiliser was entered as none, but by ${name}, which has no test for it. ${end}`
  const evidence = evidenceOf(eventsUntil(system, momentMs(set.at), products), set) ?? inUse(system, products)
  return evidence === undefined
    ? undefined
    : `Stabiliser read none, but by ${name} that means less than ${least} mg/L, and ${evidence}. ${end}`
}

/** Stabiliser as it was read last, with what doses since have brought; undefined where nobody read it in this water. */
export function lastStabiliser(
  system: System,
  nowMs: number,
  volumeM3: number,
  products: ProductList,
): LastStabiliser | undefined {
  let last: LastStabiliser | undefined
  for (const event of eventsUntil(system, nowMs, products)) {
    if (event.kind === 'reading') {
      // a figure that nobody says how it was read, or by what has no such test, takes nothing back
      const isRead = METHODS.get(event.set.method) !== undefined && leastSeen(event.set.method, KEY) !== undefined
      if (isRead || !last || event.value > last.mgPerL)
        last = { mgPerL: event.value, atMs: event.atMs, isExchanged: false }
    } else if (event.kind === 'new-water') last = undefined
    else if (last && event.kind === 'exchange') last = { ...last, isExchanged: true }
    else if (last && event.kind === 'dose')
      last = { ...last, mgPerL: last.mgPerL + (event.g / volumeM3) * event.mgPerG }
  }
  return last
}
