import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { excessChlorine, RULES } from '../../src/water/index.ts'

describe('far too much chlorine', () => {
  test('is above every ceiling that any rules have', () => {
    for (const { id, ceilingMgPerL } of RULES.rows) expect(excessChlorine(ceilingMgPerL ?? 4, true), id).toBeUndefined()
    expect(excessChlorine(undefined, true)).toBeUndefined()
    expect(excessChlorine(Number.NaN, true)).toBeUndefined()
  })

  test('begins where MODEL.md says', () => {
    const text = readFileSync(join(import.meta.dirname, '../../src/water/MODEL.md'), 'utf8')
    const above = Number(/Above (\d+) mg\/L of free chlorine `excessChlorine`/.exec(text)?.[1])
    expect(excessChlorine(above, true)).toBeUndefined()
    expect(excessChlorine(above + 0.01, true)?.code).toBe('chlorine-far-too-high')
  })

  test('keeps everyone out and says what to do and what not', () => {
    const problem = excessChlorine(207.8, false)
    expect(problem?.what).toBe('Keep everyone out: free chlorine comes by the sums to about 210 mg/L.')
    for (const words of ['no acid', 'by its label', 'licensed', 'poison centre']) expect(problem?.hint).toContain(words)
    expect(excessChlorine(30, true)?.what).toBe('Keep everyone out: free chlorine reads 30 mg/L.')
  })
})
