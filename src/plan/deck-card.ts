import { ok, type Result } from '../base/index.ts'
import { deltaOf, PRODUCTS, type Product } from '../chemicals/index.ts'
import { type Constants, equilibrateAtPH } from '../water/index.ts'
import { borateCaution } from './borate-caution.ts'
import { checkOpening, type PurposeProducts } from './check-input.ts'
import type { DeckCard, DeckDose, DeckRow } from './deck-types.ts'
import { DECK_CAUTIONS, DECK_LABELS } from './deck-words.ts'
import { effectPerGPerM3, type LinearKey } from './effect.ts'
import { chlorineClash, plannedStabiliser, withinRules } from './floor.ts'
import { asBought } from './fresh.ts'
import { afterDose } from './moves.ts'
import { hasHighMetals } from './opening-marks.ts'
import { pourCount, slowPourCount } from './pours.ts'
import { floorAboveCeiling } from './problems.ts'
import { USE_OF } from './purposes.ts'
import { quickChlorine } from './quick-chlorine.ts'
import { doseToPH } from './single.ts'
import { constantsOf, type SolvedWater } from './solved.ts'
import { startWater } from './start.ts'
import { TARGET_KEYS } from './targets.ts'
import type { KnownReading, OpeningInput, Purpose, TargetKey } from './types.ts'
import { cautionsFor } from './wording.ts'

/** How far below the aim a reading is taken, in steps that a test can tell apart [mg/L]. */
const BELOW_AIM: readonly { readonly key: LinearKey; readonly purpose: Purpose; readonly steps: readonly number[] }[] =
  [
    { key: 'ta_mg_per_L_as_CaCO3', purpose: 'alkalinity', steps: [10, 20, 40] },
    { key: 'fc_mg_per_L_as_Cl2', purpose: 'openingChlorine', steps: [1, 2, 3] },
    { key: 'ch_mg_per_L_as_CaCO3', purpose: 'calcium', steps: [25, 50, 100] },
    { key: 'cya_mg_per_L', purpose: 'stabiliser', steps: [5, 10, 20] },
    { key: 'borate_mg_per_L_as_B', purpose: 'borate', steps: [5, 10, 20] },
    { key: 'salt_mg_per_L_as_NaCl', purpose: 'salt', steps: [200, 400, 800] },
  ]
/** Readings of pH above and below its band; at its ends it is inside and nothing is given. */
const PH_BEYOND = [0.1, 0.2, 0.4] as const
/**
 * Readings that hold alkalinity at a higher pH, so that pH takes more acid or base: where nobody read them they count as none,
 * as a dose may be too small but never too big.
 */
const BUFFERS = ['borate_mg_per_L_as_B', 'cya_mg_per_L'] as const
/** Never offered beside the chosen product: tablets raise nothing the same day, gas is for licensed plants. */
const SLOW_OR_LICENSED: readonly Product['form'][] = ['tablet', 'gas']
const NEUTRAL_PH = 7.5
const NEUTRAL_ALKALINITY = 90

/**
 * Reading → dose for the pool's edge, each dose counted by the kernel in the pool's own volume and water: the last
 * readings, else the aims, but no borate or stabiliser that nobody read. A dose goes to the aim of its band, rounded down to two digits, never up.
 */
export function deckCard(asked: OpeningInput): Result<DeckCard> {
  const input: OpeningInput = {
    ...asked,
    productList: asBought(asked),
    targets: withinRules(asked.targets, asked.start, asked),
  }
  const checked = checkOpening(asked)
  if (!checked.ok) return checked
  const constants = constantsOf(input.constants)
  const isMeasured = input.start.pH !== undefined && input.start.ta_mg_per_L_as_CaCO3 !== undefined
  const start = startWater(waterFor(input), constants)
  if (!start.ok) return start
  const { water } = start.value
  // a reading asks for chlorine today: what dissolves over days, and can't be broken, is no answer to it
  const quick = quickChlorine(checked.value, input)
  const job: Job = { input, water, products: quick.products, constants }
  const rows = [...pHRows(job), ...BELOW_AIM.flatMap((each) => linearRow(job, each))].filter(
    (row) => row.doses.length > 0,
  )
  const used = new Set(rows.flatMap((row) => row.doses.map((dose) => dose.productId)))
  const cautions = listed(job)
    .filter((product) => used.has(product.id))
    .flatMap(cautionsFor)
  const borate = rows.find((row) => row.key === 'borate_mg_per_L_as_B')
  if (borate) cautions.push(borateCaution(borate.band.aim))
  const clash = chlorineClash(plannedStabiliser(asked.targets, asked.start), asked)
  const clashing = clash && floorAboveCeiling(clash)
  const waterIs = isMeasured ? 'measured' : 'targets'
  return ok({
    rows,
    cautions: [
      ...new Set([
        ...(clashing ? [`${clashing.what} ${clashing.why} ${clashing.hint}`] : []),
        ...DECK_CAUTIONS,
        ...(used.has(quick.products.openingChlorine.id) ? quick.warnings : []),
        ...cautions,
      ]),
    ],
    madeFor: {
      volumeM3: input.volumeM3,
      volumeSigmaM3: input.volumeSigmaM3,
      waterIs,
      measuredAtMs: isMeasured ? input.measuredAtMs : undefined,
      water: water.reading,
      assumed: isMeasured
        ? TARGET_KEYS.filter(
            (key) => input.targets[key] && isUnread(input, key) && !BUFFERS.some((each) => each === key),
          )
        : [],
      countedAsNone: BUFFERS.filter((key) => (input.targets[key]?.aim ?? 0) > 0 && isUnread(input, key)),
      text: `Made for ${Number(input.volumeM3.toPrecision(3))} m³ of this pool's water, ${isMeasured ? 'as it was last read' : 'as its targets have it'}; make it anew when that changes.`,
    },
  })
}

interface Job {
  readonly input: OpeningInput
  readonly water: SolvedWater
  readonly products: PurposeProducts
  readonly constants: Constants
}

const isUnread = ({ start }: OpeningInput, key: TargetKey): boolean => start[key] === undefined

function waterFor({ targets, start }: OpeningInput) {
  const aims = Object.fromEntries(Object.entries(targets).map(([key, band]) => [key, band?.aim])) as KnownReading
  const none = Object.fromEntries(BUFFERS.map((key) => [key, 0]))
  // what was read stands; what was not is taken from the aims
  const own = Object.fromEntries(Object.entries(start).filter(([, value]) => value !== undefined))
  const known: KnownReading = { ...aims, ...none, ...own }
  return {
    ...known,
    temperature_C: start.temperature_C,
    pH: known.pH ?? NEUTRAL_PH,
    ta_mg_per_L_as_CaCO3: known.ta_mg_per_L_as_CaCO3 ?? NEUTRAL_ALKALINITY,
  }
}

/** The products for a purpose: the chosen one first, then what else is in stock for it. */
function productsFor(job: Job, purpose: Purpose): readonly Product[] {
  const chosen = job.products[purpose]
  const others = listed(job).filter(
    (product) =>
      product.id !== chosen.id &&
      product.uses[0] === USE_OF[purpose] &&
      !SLOW_OR_LICENSED.includes(product.form) &&
      (job.input.stockG[product.id] ?? 0) > 0,
  )
  return [chosen, ...others]
}

function listed(job: Job): readonly Product[] {
  return (job.input.productList ?? PRODUCTS).rows
}

function dose(job: Job, water: SolvedWater, product: Product, gPerM3: number, value: number, text: string): DeckDose[] {
  const after = afterDose(water.totals, deltaOf(product, gPerM3), job.constants)
  if (!after || !(gPerM3 > 0)) return []
  const exactG = gPerM3 * job.input.volumeM3
  const isChlorine = product.uses.includes('chlorine')
  const least = isChlorine && hasHighMetals(job.input) ? slowPourCount(product, gPerM3) : 1
  return [
    {
      value,
      readingText: text,
      productId: product.id,
      productLabel: `${product.label} (${product.strength})`,
      amountG: roundedDown(exactG),
      exactG,
      pours: Math.max(least, pourCount(water.totals, product, gPerM3, job.constants)),
      pHAfter: after.equilibrium.pH,
    },
  ]
}

/** Two digits, never more than there is to give. */
function roundedDown(amountG: number): number {
  const unit = 10 ** (Math.floor(Math.log10(amountG)) - 1)
  return Math.floor(amountG / unit + 1e-9) * unit
}

function pHRows(job: Job): DeckRow[] {
  const band = job.input.targets.pH
  if (!band) return []
  const row = (key: 'pH-high' | 'pH-low', purpose: 'acid' | 'base', values: readonly number[]): DeckRow => ({
    key,
    label: DECK_LABELS[key],
    reading: 'pH',
    band,
    doses: values.flatMap((value) => {
      // the same alkalinity and everything else, at the pH that is read
      const there = equilibrateAtPH(job.water.totals, value, job.constants)
      const water = there.ok ? afterDose(there.value.totals, {}, job.constants) : undefined
      if (!water) return []
      return productsFor(job, purpose).flatMap((product) => {
        const gPerM3 = doseToPH(water.totals, deltaOf(product, 1), band.aim, job.constants)
        return gPerM3 === undefined ? [] : dose(job, water, product, gPerM3, value, `pH ${value.toFixed(1)}`)
      })
    }),
  })
  return [
    row(
      'pH-high',
      'acid',
      PH_BEYOND.map((beyond) => tenth(band.high + beyond)),
    ),
    row(
      'pH-low',
      'base',
      PH_BEYOND.map((below) => tenth(band.low - below)),
    ),
  ]
}

const tenth = (value: number): number => Math.round(value * 10) / 10

function linearRow(job: Job, each: (typeof BELOW_AIM)[number]): DeckRow[] {
  const { key, purpose, steps } = each
  const band = job.input.targets[key]
  if (!band || !(band.aim > 0)) return []
  const values = steps.map((step) => band.aim - step).filter((value) => value >= 0)
  const doses = values.flatMap((value) =>
    productsFor(job, purpose).flatMap((product) => {
      const effect = effectPerGPerM3(product, key)
      // what else is in the water is as it stands: only this reading is another one
      const water = withReading(job, key, value)
      if (!(effect > 0) || !water) return []
      return dose(job, water, product, (band.aim - value) / effect, value, `${Number(value.toPrecision(4))} mg/L`)
    }),
  )
  return [{ key, label: DECK_LABELS[key], reading: key as TargetKey, band, doses }]
}

/** The water with one reading replaced, at the same pH. */
function withReading(job: Job, key: LinearKey, value: number): SolvedWater | undefined {
  const made = startWater(
    { ...job.water.reading, [key]: value } as KnownReading & { pH: number; ta_mg_per_L_as_CaCO3: number },
    job.constants,
  )
  return made.ok ? made.value.water : undefined
}
