import type { Movement, OpeningLine } from '../../../plan/index.ts'

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

/** What the whole plan moves, from its first start to its last end, in the order of first appearance. */
export function overallMovements(lines: readonly OpeningLine[]): readonly Movement[] {
  const whole = new Map<Movement['key'], Movement>()
  for (const line of lines)
    for (const movement of line.movements) {
      const first = whole.get(movement.key)
      whole.set(movement.key, first ? { ...movement, before: first.before } : movement)
    }
  return [...whole.values()]
}

/** The products that a plan doses, each once, in the order of the plan. */
export function productsOf(lines: readonly OpeningLine[]): readonly string[] {
  return [...new Set(lines.flatMap((line) => (line.kind === 'dose' ? [line.productId] : [])))]
}
