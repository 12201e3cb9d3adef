import { fail, type Problem, type Result } from '../base/index.ts'
import { problem } from './problems.ts'
import type { Spec } from './types.ts'
import { validateSpec } from './validate.ts'

/** Known keys in the order in which a reader wants them; others follow by name. */
// biome-ignore format: a list
const ORDER = [
  'format', 'version', 'kind', 'from', 'id', 'at', 'method', 'name', 'system', 'start', 'to', 'bulge', 'c1', 'c2', 'form', 'centre', 'outline',
  'islands', 'floor', 'wall', 'features', 'edgeDepthM', 'along', 'fromSegment', 'toSegment', 'widthM',
  'axis', 'segments', 'stations', 'treads', 'fromDepthM', 'toDepthM', 'depthM', 'radiusM', 'run', 'path', 'rings', 'points',
  'freeboardM', 'levelM', 'tolerance', 'planM', 'tapeScale', 'datumM', 'depthsMeasuredFrom', 'tileLineM', 'sketch', 'bodies', 'systems',
  'plumbingM3', 'volumeEstimates', 'm3', 'sigmaM3', 'water', 'readings', 'fill', 'targets', 'values', 'low', 'aim',
  'high', 'equipment', 'stock', 'regime', 'products', 'product', 'amountG', 'line', 'text', 'note', 'log', 'site',
]
const RANK = new Map(ORDER.map((key, rank) => [key, rank]))
const LINE = 100

/** The document as text: keys in one order, lists of numbers on one line, every number to its last digit. */
export function toJson(spec: Spec): string {
  return `${pretty(spec, '')}\n`
}

/** The document as one line without spaces, keys in the same order: equal documents give equal text. */
export function toLine(spec: Spec): string {
  return compact(spec)
}

/** The document out of its text. */
export function fromJson(text: string): Result<Spec, readonly Problem[]> {
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch (error) {
    return fail([
      problem('not-json', '', { detail: error instanceof Error ? error.message.slice(0, 120) : 'it can’t be read' }),
    ])
  }
  return validateSpec(json)
}

function entriesOf(value: object): [string, unknown][] {
  return Object.entries(value)
    .filter(([, item]) => item !== undefined)
    .sort(([a], [b]) => (RANK.get(a) ?? ORDER.length) - (RANK.get(b) ?? ORDER.length) || (a < b ? -1 : a > b ? 1 : 0))
}

function compact(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(compact).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  return `{${entriesOf(value)
    .map(([key, item]) => `${JSON.stringify(key)}:${compact(item)}`)
    .join(',')}}`
}

function spaced(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(spaced).join(', ')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  const inside = entriesOf(value).map(([key, item]) => `${JSON.stringify(key)}: ${spaced(item)}`)
  return inside.length === 0 ? '{}' : `{ ${inside.join(', ')} }`
}

function pretty(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  const oneLine = spaced(value)
  if (indent.length + oneLine.length <= LINE && indent !== '') return oneLine
  const inner = `${indent}  `
  if (Array.isArray(value)) return `[\n${value.map((item) => inner + pretty(item, inner)).join(',\n')}\n${indent}]`
  const inside = entriesOf(value).map(([key, item]) => `${inner}${JSON.stringify(key)}: ${pretty(item, inner)}`)
  return `{\n${inside.join(',\n')}\n${indent}}`
}
