import { METHODS } from '../water/index.ts'

/** Something that was given and is not read. */
export interface Notice {
  readonly code: 'unknown-key' | 'unknown-method'
  readonly path: string
  readonly what: string
  readonly hint: string
}

interface Naming {
  readonly isCalled: string
  /** Beyond this share of its letters changed, a name is like none. */
  readonly mostChanged: number
  /** Whether a name that is like none is somebody else's, and nothing is said of it. */
  readonly isNearOnly?: boolean
}

const READINGS: Naming = { isCalled: 'reading', mostChanged: 0.5 }

/** A notice for each key of an object that is none of the known ones; what is null counts as absent. */
export function unknownKeys(
  value: unknown,
  path: string,
  known: readonly string[],
  { isCalled, mostChanged, isNearOnly = false }: Naming = READINGS,
): readonly Notice[] {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return []
  return Object.entries(value).flatMap(([key, given]): Notice[] => {
    if (known.includes(key) || given === null || given === undefined) return []
    const near = nearest(key, known, mostChanged)
    if (isNearOnly && near === undefined) return []
    return [
      {
        code: 'unknown-key',
        path: `${path}.${key}`,
        what: `“${key}” is no ${isCalled} that is read here; the answer is as if it was not given.`,
        hint: near === undefined ? `Known are ${known.join(', ')}.` : `The nearest known name is ${near}.`,
      },
    ]
  })
}

/** A notice for a way of reading that is not known, whose scatter then counts as the widest of all; none where none is named. */
export function unknownMethod(value: unknown): readonly Notice[] {
  if (value === undefined || value === null || value === 'unknown') return []
  if (typeof value === 'string' && METHODS.get(value)) return []
  const what = 'The method is none that is known; its readings count with the widest scatter of all.'
  const hint = `Known are ${METHODS.rows.map(({ id }) => id).join(', ')}.`
  return [{ code: 'unknown-method', path: 'method', what, hint }]
}

/** The known name that is likest, where one is like enough. */
export function nearest(key: string, known: readonly string[], mostChanged: number): string | undefined {
  const asked = key.toLowerCase()
  const begins = known.find((name) => name.toLowerCase().startsWith(`${asked}_`))
  if (begins !== undefined) return begins
  const [best] = known
    .map((name) => ({ name, share: changes(asked, name.toLowerCase()) / Math.max(asked.length, name.length) }))
    .toSorted((a, b) => a.share - b.share)
  return best && best.share <= mostChanged ? best.name : undefined
}

/** Letters put in, left out or changed from one word to another: Levenshtein 1966, the usual table by rows. */
function changes(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, i) => i)
  for (let i = 1; i <= from.length; i++) {
    const next = [i]
    for (let j = 1; j <= to.length; j++)
      next.push(Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1)))
    row = next
  }
  return row[to.length]!
}
