import { describe, expect, it } from 'vitest'
import { bracketedRoot } from '../../src/base/index.ts'

describe('the root of a function in a bracket', () => {
  it('is found to the tolerance, with what the function leaves there', () => {
    for (const [f, lo, hi, truth] of [
      [(x: number) => x * x - 2, 0, 2, Math.SQRT2],
      [(x: number) => Math.cos(x), 3, 0, Math.PI / 2],
      [(x: number) => Math.exp(x) - 1e-9, -40, 1, Math.log(1e-9)],
      [(x: number) => (x < 0.3 ? -1 : 1), 0, 1, 0.3],
    ] as const) {
      const root = bracketedRoot(f, lo, hi, 1e-12)
      if (!root.ok) throw new Error(root.problem.reason)
      expect(Math.abs(root.value.x - truth)).toBeLessThan(1e-12 + 4 * Number.EPSILON * Math.abs(truth))
      expect(root.value.residual).toBe(f(root.value.x))
    }
  })

  it('is found beside a stretch over which all values are one rounding', () => {
    // Near to 1 places are told apart by 2e-16 at best, near to 0.0031 by 4e-19.
    const beyond = (x: number): number => 1 + x - 1.0031
    const root = bracketedRoot((x) => 16 * beyond(x) + 3e-18, 0, 0.02, 0)
    if (!root.ok) throw new Error(root.problem.reason)
    expect(Math.abs(root.value.x - 0.0031)).toBeLessThan(4e-16)
  })

  it('is an end that has it', () => {
    expect(bracketedRoot((x) => x - 1, 1, 5, 0)).toEqual({ ok: true, value: { x: 1, residual: 0, iterations: 0 } })
    expect(bracketedRoot((x) => x - 5, 1, 5, 0)).toEqual({ ok: true, value: { x: 5, residual: 0, iterations: 0 } })
  })

  it('is a problem where there is none to be sure of, no number comes out, or steps run out', () => {
    const reason = (f: (x: number) => number, most?: number): string => {
      const root = bracketedRoot(f, 0, 1, 0, most)
      return root.ok ? `${root.value.x}` : root.problem.reason
    }
    expect(reason((x) => x + 1)).toBe('not-bracketed')
    expect(reason((x) => 1 / (x - 1) ** 2)).toBe('not-finite')
    expect(reason((x) => (x === 0 ? -1 : x === 1 ? 1 : Number.NaN))).toBe('not-finite')
    expect(reason((x) => x ** 9 - 1e-3, 2)).toBe('too-many-iterations')
  })
})
