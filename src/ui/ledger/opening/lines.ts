import type { DoseEntry } from '../../../document/index.ts'
import type { Movement, OpeningLine, OpeningPlan } from '../../../plan/index.ts'

/**
 * For each line, the readings whose start is a measurement: the first line that moves a reading starts from what was
 * measured, every later one from what is only expected.
 */
export function measuredStarts(lines: readonly OpeningLine[]): ReadonlyMap<string, ReadonlySet<Movement['key']>> {
  const moved = new Set<Movement['key']>()
  const starts = new Map<string, ReadonlySet<Movement['key']>>()
  for (const line of lines) {
    starts.set(line.key, new Set(line.movements.map((m) => m.key).filter((key) => !moved.has(key))))
    for (const movement of line.movements) moved.add(movement.key)
  }
  return starts
}

/** What the whole plan moves, from its first start to its last end; the index, which follows from the rest, last. */
export function overallMovements(lines: readonly OpeningLine[]): readonly Movement[] {
  const whole = new Map<Movement['key'], Movement>()
  for (const line of lines)
    for (const movement of line.movements) {
      const first = whole.get(movement.key)
      whole.set(movement.key, first ? { ...movement, before: first.before } : movement)
    }
  const isIndex = ({ key }: Movement) => key === 'calciteSI'
  const all = [...whole.values()]
  return [...all.filter((movement) => !isIndex(movement)), ...all.filter(isIndex)]
}

/** What is worth a scale: it has a band or is the index, and both ends don't read the same. */
export function visibleMovements(
  movements: readonly Movement[],
  format: (key: Movement['key'], value: number) => string,
): readonly Movement[] {
  return movements.filter(
    ({ key, band, before, after }) =>
      (band !== undefined || key === 'calciteSI') && format(key, before) !== format(key, after),
  )
}

/** The products that a plan doses, each once, in the order of the plan. */
export function productsOf(lines: readonly OpeningLine[]): readonly string[] {
  return [...new Set(lines.flatMap((line) => (line.kind === 'dose' ? [line.productId] : [])))]
}

/**
 * The moment from which a plan counts its hours: the first dose that was given, or else the start that the owner chose,
 * or the usual one.
 */
export function originOf(plan: OpeningPlan, chosenMs: number | undefined, usualMs: number): number {
  const given = plan.lines.flatMap((line) => (line.kind === 'dose' && line.given ? [line.given.atMs] : []))
  return given.length > 0 ? Math.min(...given) : (chosenMs ?? usualMs)
}

/** The log's entry that a done line tells of. */
export function entryOf(line: OpeningLine, log: readonly DoseEntry[]): DoseEntry | undefined {
  const given = line.kind === 'dose' ? line.given : undefined
  if (!given) return undefined
  return log.find(
    (entry) =>
      entry.product === given.product && entry.amountG === given.amountG && Date.parse(entry.at) === given.atMs,
  )
}
