import { productById } from '../chemicals/index.ts'
import { metalsAdvice } from '../water/index.ts'
import type { PurposeProducts } from './check-input.ts'
import { effectPerGPerM3 } from './effect.ts'
import type { EndState } from './end-state.ts'
import { eatenOf, HUNGRY_SI } from './hungry.ts'
import { LIMITS } from './limits.ts'
import { stepLine } from './step-lines.ts'
import type { ExpectedWater, OpeningInput, OpeningLine, Purpose, StepLine } from './types.ts'
import { STEPS } from './wording.ts'

const MS_PER_HOUR = 3_600_000
/** The usual order of purposes; a line that comes after a later one was ticked says so. */
const USUAL: readonly Purpose[] = [
  'alkalinity',
  'acid',
  'base',
  'openingChlorine',
  'calcium',
  'borate',
  'stabiliser',
  'salt',
]
const AFTER_TICK =
  'Usually before what you have given already; it is planned from the water as it is now, so it comes next.'

/** Metals that were read above their limits. */
function highMetals(input: OpeningInput) {
  const advice = metalsAdvice(input.metals ?? {})
  return { advice, names: advice.findings.filter(({ isTooHigh }) => isTooHigh) }
}

export function hasHighMetals(input: OpeningInput): boolean {
  return highMetals(input).names.length > 0
}

/**
 * Test for metals, or deal with those that were read; undefined where iron and copper were read and none is too high. It
 * keeps its place when doses are ticked off, so that no line's number changes.
 */
export function metalsLine(input: OpeningInput, hasDoses: boolean): StepLine | undefined {
  const { advice, names } = highMetals(input)
  if (names.length === 0) {
    const isKnown =
      advice.findings.some(({ metal }) => metal.id === 'iron') &&
      advice.findings.some(({ metal }) => metal.id === 'copper')
    return hasDoses && !isKnown ? stepLine('metals', 'metals', STEPS.metals, 0, 0) : undefined
  }
  // where several limits have one source, it is named once, after the last of them
  const statuses = [...new Set(names.map(({ metal }) => metal.status))]
  const found = statuses
    .map((status) => {
      const each = names
        .filter(({ metal }) => metal.status === status)
        .map(({ metal, mgPerL }) => `${metal.name} ${mgPerL} mg/L, above ${metal.limitMgPerL}`)
      return `${each.join(', ')} (${status})`
    })
    .join('; ')
  const does = names.map(({ metal }) => metal.does).join(' ')
  const cartridge = (input.helpers ?? []).includes('mineral-cartridge')
    ? ['The mineral cartridge stays out until metals read below their limits.']
    : []
  return stepLine(
    'metals',
    'metals',
    { title: STEPS.metals.title, how: advice.steps.join(' '), why: `${found}. ${does}` },
    0,
    0,
    {
      cautions: cartridge,
    },
  )
}

/** Whether everything that oxidises has to wait: metals were read too high, and nobody ticked them off. */
function waitsForMetals(input: OpeningInput): boolean {
  return hasHighMetals(input) && !isTicked('metals', input)
}

function isTicked(key: string, input: OpeningInput): boolean {
  // what was done before the readings is in them, unless it is what is done once at the start
  const since =
    Math.min(input.measuredAtMs ?? input.nowMs, input.nowMs) -
    (ONCE.includes(key) ? LIMITS.readingHours * MS_PER_HOUR : 0)
  return (input.doneKeys ?? []).some((done) => done.key === key && done.atMs >= since)
}
const ONCE: readonly string[] = ['circulate', 'metals']

/** Everything up to the first dose still to give is next; the rest comes later; what was given or ticked is done. */
export function withStates(lines: readonly OpeningLine[], input: OpeningInput): OpeningLine[] {
  const anyDone = lines.some((line) => line.state === 'done')
  const isMetalsOpen = waitsForMetals(input)
  const marked = lines.map((line): OpeningLine => {
    const isOpener = line.key === 'circulate'
    const isDone = line.kind !== 'dose' && (isTicked(line.key, input) || (anyDone && isOpener))
    return isDone ? { ...line, state: 'done' } : line
  })
  const first = marked.findIndex(
    (line) =>
      line.state !== 'done' &&
      (line.kind === 'dose' || line.kind === 'exchange' || (isMetalsOpen && line.key === 'metals')),
  )
  const given = marked.flatMap((line) =>
    line.state === 'done' && line.kind === 'dose' ? [USUAL.indexOf(line.purpose)] : [],
  )
  const latest = Math.max(-1, ...given)
  return marked.map((line, at): OpeningLine => {
    if (line.state === 'done') return line
    const state = first === -1 || at <= first ? 'next' : 'later'
    const isLate = line.kind === 'dose' && line.exception === undefined && USUAL.indexOf(line.purpose) < latest
    return isLate ? { ...line, state, exception: AFTER_TICK } : { ...line, state }
  })
}

/** What to say of the water that the plan ends in, where calcium is known. */
export function endRemarks(end: ExpectedWater, input: OpeningInput): string[] {
  return [...leftRemarks(end, input), ...scaleRemarks(end, input)]
}

/** Alkalinity above its band that a start leaves for later. */
function leftRemarks(end: ExpectedWater, { targets }: OpeningInput): string[] {
  const band = targets.ta_mg_per_L_as_CaCO3
  return band?.isHighLeft && end.reading.ta_mg_per_L_as_CaCO3 > band.high
    ? ['Alkalinity stays above its band for now: during this start only pH is set right.']
    : []
}

function scaleRemarks(end: ExpectedWater, input: OpeningInput): string[] {
  if (input.start.ch_mg_per_L_as_CaCO3 === undefined) return []
  const si = end.equilibrium.calciteSI
  if (si > LIMITS.calciteSI)
    return [`The water would still tend to scale (calcite SI ${si.toFixed(1)}): keep pH in the lower half of its band.`]
  const what = eatenOf(input)
  if (!what || !(si < 0)) return []
  return [
    si < HUNGRY_SI
      ? `The water ends hungry for ${what} (calcite SI −${Math.abs(si).toFixed(2)}): aim calcium or alkalinity at the upper half of its band, or let pH stand there.`
      : `The water ends slightly below saturation (calcite SI −${Math.abs(si).toFixed(2)}). On ${what} that is usual and slow; as pH creeps up it closes by itself.`,
  ]
}

/** Where chlorine comes only later than it has to: how long the water stands without, and why. */
export function lateChlorine(lines: readonly OpeningLine[], fromHours: number, byHours: number): string[] {
  const first = lines.find((line) => line.kind === 'dose' && line.purpose === 'openingChlorine')
  const hours = first ? first.startHours - fromHours : 0
  if (hours <= byHours + 1e-9) return []
  return [
    `Chlorine comes only after ${Math.ceil(hours - 1e-9)} h: before that it would take pH or scale further out, so acid has to make room first. Until it is in, nobody bathes; keep the pump running.`,
  ]
}

/** The turnover that waits go by; one of more than a week is a slip in the pump's flow, and no wait can go by it. */
export function believedTurnover({ turnoverHours }: OpeningInput): number | undefined {
  return turnoverHours !== undefined && turnoverHours > LIMITS.mostTurnoverHours ? undefined : turnoverHours
}

/** Whose guess the waits go by where nobody entered the pump's flow, or one that can't be. */
export function turnoverWords(lines: readonly OpeningLine[], input: OpeningInput): string[] {
  const waits = lines.some((line) => line.kind === 'dose' && line.state !== 'done')
  if (!waits || believedTurnover(input) !== undefined) return []
  const guess = `the waits take a turnover of ${LIMITS.turnoverHours} h (8 to 12 are usual at home, from memory)`
  return input.turnoverHours === undefined
    ? [
        `The pump’s flow is not entered, so ${guess}. Enter the flow, and they follow it; with a slower pump wait longer.`,
      ]
    : [
        `By the pump’s flow that is entered, going round once would take the water more than a week: check it. Until then ${guess}.`,
      ]
}

/** The stabiliser that a chlorine of the plan brings along, and where that leads. */
export function broughtAlong(lines: readonly OpeningLine[], input: OpeningInput): string[] {
  const moved = lines.flatMap((line) => {
    const isChlorine = line.kind === 'dose' && line.state !== 'done' && line.purpose === 'openingChlorine'
    const product = isChlorine ? productById(line.productId, input.productList) : undefined
    if (!isChlorine || !product?.ok) return []
    const rise = (line.amountG / input.volumeM3) * effectPerGPerM3(product.value.product, 'cya_mg_per_L')
    return rise > 0 ? [{ label: product.value.product.label, rise, to: line.after.reading.cya_mg_per_L ?? 0 }] : []
  })
  const last = moved.at(-1)
  if (!last) return []
  const rise = moved.reduce((sum, each) => sum + each.rise, 0)
  const band = input.targets.cya_mg_per_L
  const where =
    input.start.cya_mg_per_L === undefined
      ? ''
      : band && last.to > band.high
        ? `, to ${last.to.toFixed(0)} mg/L, above the ${band.high} of its band`
        : `, to ${last.to.toFixed(0)} mg/L`
  return [
    `${last.label} brings ${rise.toFixed(1)} mg/L of stabiliser along${where}. Only an exchange of water takes that out again; unstabilised chlorine brings none.`,
  ]
}

const OBJECTIVE_WORDS: { readonly [O in NonNullable<OpeningInput['objective']>]: string } = {
  'fewest-products': 'fewer products do',
  cheapest: 'by your prices what has to be bought costs less, counting what has no price as dear',
  'least-salt': 'less salt stays in the water',
}

/** Products that were taken instead of the regime's, and which of the two reasons it was. */
export function swapRemarks(
  from: PurposeProducts,
  end: Pick<EndState, 'products' | 'swappedFor'>,
  lines: readonly OpeningLine[],
  input: OpeningInput,
): string[] {
  const used = new Set(lines.flatMap((line) => (line.kind === 'dose' ? [line.purpose] : [])))
  const why =
    end.swappedFor === 'reach'
      ? 'the bands cannot all be reached with the usual products'
      : OBJECTIVE_WORDS[input.objective ?? 'fewest-products']
  return (Object.keys(from) as Purpose[]).flatMap((purpose) =>
    used.has(purpose) && from[purpose].id !== end.products[purpose].id
      ? [`${end.products[purpose].label} instead of ${from[purpose].label}: ${why}.`]
      : [],
  )
}
