import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { isDark, mixed, parseColour, tonesFrom } from '../../../src/ui/solid/tones.ts'

const css = readFileSync(new URL('../../../src/ui/theme/tokens.css', import.meta.url), 'utf8')
/** The tokens of one block of the style sheet; a later block only overrides, as in the browser. */
function lookUpIn(blocks: readonly string[]): (token: string) => string {
  const table = new Map<string, string>()
  for (const block of blocks)
    for (const [, name, value] of block.matchAll(/(--[\w-]+):\s*([^;]+);/g)) table.set(name!, value!)
  return (token) => table.get(token) ?? ''
}
const blocks = [...css.matchAll(/:root(\[data-theme="dark"\])?\s*\{([^}]*)\}/g)]
const light = blocks.filter((block) => block[1] === undefined).map((block) => block[2]!)
const dark = blocks.filter((block) => block[1] !== undefined).map((block) => block[2]!)

describe('colours come from the theme', () => {
  test('short and long hex and rgb() are read, and nothing else is guessed at', () => {
    expect(parseColour(' #fff ')).toEqual([1, 1, 1])
    expect(parseColour('#336699')).toEqual([0.2, 0.4, 0.6])
    expect(parseColour('rgba(51, 102, 153, 0.5)')).toEqual([0.2, 0.4, 0.6])
    expect(parseColour('rgb(51 102 153)')).toEqual([0.2, 0.4, 0.6])
    expect(parseColour('rebeccapurple')).toBeUndefined()
    expect(parseColour('')).toBeUndefined()
  })

  test('both themes give every tone, one light and one dark, and both ramps deepen without a step back', () => {
    const [day, night] = [tonesFrom(lookUpIn(light)), tonesFrom(lookUpIn([...light, ...dark]))]
    expect(isDark(day.paper)).toBe(false)
    expect(isDark(night.paper)).toBe(true)
    for (const { depth } of [day, night]) {
      expect(depth).toHaveLength(7)
      const brightness = depth.map(([r, g, b]) => 0.2126 * r + 0.7152 * g + 0.0722 * b)
      expect(brightness).toEqual(brightness.toSorted((a, b) => b - a))
    }
  })

  test('a token that is not a plain colour is a broken theme, said by name', () => {
    const broken = (token: string) => (token === '--rule' ? 'var(--paper)' : '#000')
    expect(() => tonesFrom(broken)).toThrow('--rule')
  })

  test('mixing by half lands in the middle', () => {
    expect(mixed([0, 0.2, 1], [1, 0.4, 0], 0.5).map((part) => Number(part.toFixed(9)))).toEqual([0.5, 0.3, 0.5])
  })
})
