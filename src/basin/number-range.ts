import type { Problem } from '../base/index.ts'
import { problem } from './problems.ts'
import { MAX_NUMBER } from './tolerance.ts'
import type { BasinShape } from './types.ts'

/** True for a number that no pool is measured by, though it is one: from it on products would overflow. */
export function isOutOfRange(value: number): boolean {
  return !(Math.abs(value) <= MAX_NUMBER)
}

/** First complaint about the size of a number besides those of paths, if any. */
export function checkRange(shape: BasinShape): Problem | undefined {
  const { floor, wall, freeboardM, tolerance, patches } = shape
  const wrong = rangeProblem({ floor, wall, freeboardM, tolerance }, '')
  if (wrong) return wrong
  for (const { plane, band, feature } of patches)
    if (rangeProblem({ plane, axis: band?.axis }, '')) return problem('out-of-range', `features[${feature}]`)
  return undefined
}

function rangeProblem(value: unknown, path: string): Problem | undefined {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) return problem('not-a-number', path)
    return isOutOfRange(value) ? problem('out-of-range', path) : undefined
  }
  if (typeof value !== 'object' || value === null) return undefined
  const isList = Array.isArray(value)
  for (const [key, item] of Object.entries(value)) {
    const wrong = rangeProblem(item, isList ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`)
    if (wrong) return wrong
  }
  return undefined
}
