import { describe, expect, test } from 'vitest'
import { deriveBody } from '../../../src/derive/index.ts'
import { type Body, demoSpec } from '../../../src/document/index.ts'
import { assumedNote, assumedWords } from '../../../src/ui/ledger/basin/assumed-words.ts'
import { figuresOf, spreadWords } from '../../../src/ui/ledger/basin/figures.ts'

const plain = (text: string) => text.replace(/\s/g, ' ')
const GALLON = 0.003785411784
const demo = demoSpec.bodies[0]!

function figures(body: Body, changes: { sigmaM3?: number; ruleM3?: number } = {}) {
  const derived = deriveBody(body)
  if (!derived.measures.ok || !derived.rule) throw new Error('the example measures')
  const measures = derived.measures.value
  const volumeM3 = changes.ruleM3 ?? derived.rule.volumeM3
  const rule = { ...derived.rule, volumeM3, relativeError: volumeM3 / measures.volumeM3 - 1 }
  return figuresOf(body, { sigmaM3: changes.sigmaM3 ?? derived.sigmaM3, rule }, measures, 'us')
}

describe('figures of a body', () => {
  test('a volume that may be hardly any has an upper end only, never an interval below nothing', () => {
    expect(plain(spreadWords(13_000 * GALLON, 9_700 * GALLON, 'us'))).toBe('up to about 32,000 gal')
    expect(plain(spreadWords(13_000 * GALLON, 800 * GALLON, 'us'))).toBe('± 1,600 gal')
  })

  test('a sketch’s areas and lengths have no more digits than its scale has', () => {
    const drawn = figures(demo)
    const sketch = figures({ ...demo, sketch: { scaleSigma: 0.35 } })
    expect(plain(drawn.length(33.1 * 0.3048))).toMatch(/^33 ft 1 in|^33′ 1″/)
    expect(plain(sketch.length(33.1 * 0.3048))).toBe('33 ft')
    expect(plain(sketch.area(385 * 0.3048 ** 2))).toBe('390 ft²')
    expect(plain(drawn.area(385 * 0.3048 ** 2))).toBe('385 ft²')
  })

  test('the rule of thumb has no more digits than the drawing, and is the same where it shows the same', () => {
    const { measures } = deriveBody(demo)
    if (!measures.ok) throw new Error('the example measures')
    const m3 = measures.value.volumeM3
    for (const sigmaM3 of [0.001 * m3, 0.01 * m3, 0.05 * m3, 0.9 * m3]) {
      for (const factor of [0.9, 0.98, 0.998, 1, 1.0019, 1.004, 1.02, 1.3]) {
        const { volume, rule } = figures(demo, { sigmaM3, ruleM3: factor * m3 })
        const [drawing, thumb] = [volume, rule?.volume ?? ''].map((text) => Number(text.replace(/[^\d.]/g, '')))
        const off = plain(rule?.off ?? '')
        if (off.endsWith('more')) expect(thumb, off).toBeGreaterThan(drawing!)
        else if (off.endsWith('less')) expect(thumb, off).toBeLessThan(drawing!)
        else expect(Math.abs(thumb! / drawing! - 1), off).toBeLessThan(0.001)
        expect(off).not.toMatch(/^0 %|^0\.0 %/)
      }
    }
  })
})

describe('a rule of thumb that makes nonsense of a pool', () => {
  test('gives no figure, but says that it can’t be used and why', () => {
    const far = figures(demo, { ruleM3: 1000 })
    expect(far.rule).toBe(undefined)
    expect(far.noRule).toBe('it is more than 3 times too much')
    expect(figures(demo, { ruleM3: 1 }).noRule).toBe('it is more than 3 times too little')
    expect(figures(demo).noRule).toBe(undefined)
    // A beach that rises as far as the deep end lies deep: the mean of the two is nothing.
    const axis = demo.floor.kind === 'profile' ? demo.floor.axis : undefined
    const beach = { kind: 'profile', axis: axis!, stations: [[0, -2.2] as const, [11, 2.1] as const] } as const
    const dry = figures({ ...demo, features: [], floor: beach })
    expect(dry.rule).toBe(undefined)
    expect(dry.noRule).toBe('the mean of its two depths isn’t under water')
  })
})

describe('depths that nobody has said', () => {
  test('are told as all, as some, or as none', () => {
    expect(assumedNote(demo)).toBe('')
    expect(assumedWords(demo)).toBe(undefined)
    expect(assumedNote({ ...demo, depthsAssumed: true })).toMatch(/^depths assumed/)
    expect(assumedNote({ ...demo, depthsAssumed: [1] })).toMatch(/^1 of \d depths assumed/)
    expect(assumedWords({ ...demo, depthsAssumed: [1] })).toMatch(/^Some depths are still assumed/)
  })

  test('where they were reckoned from a floor of another kind, that one is named', () => {
    const flat = {
      floor: { kind: 'flat', depthM: 1.5 },
      depthsAssumed: true,
      otherFloors: [{ floor: demo.floor }],
    } as const
    expect(assumedWords(flat)).toContain('slopes along a line')
  })
})
