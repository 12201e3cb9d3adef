import { describe, expect, test } from 'vitest'
import { fitVolume } from '../../../src/derive/index.ts'
import { demoSpec } from '../../../src/document/index.ts'
import {
  boundWords,
  fitWords,
  offWords,
  percentFromSigma,
  sigmaFromPercent,
  unmetProblem,
} from '../../../src/ui/ledger/basin/volume-words.ts'

describe('a stated volume', () => {
  test('± 10 % of 60 m³ is nearly always within 6 m³: a standard deviation of 3.06 m³', () => {
    // 95 % of a normal error lies within 1.96 standard deviations.
    expect(sigmaFromPercent(60, 10)).toBeCloseTo(6 / 1.96, 12)
  })

  test('the percentage comes back as it was typed', () => {
    for (const percent of [0.5, 10, 33.3, 80]) {
      expect(percentFromSigma(47.3, sigmaFromPercent(47.3, percent))).toBeCloseTo(percent, 10)
    }
  })

  test('no volume has no percentage, rather than an endless one', () => {
    expect(percentFromSigma(0, 1)).toBe(0)
  })
})

/** With plain spaces, whatever keeps a number and its unit together. */
const plain = (text: string) => text.replace(/\s/g, ' ')

describe('how far off a figure is', () => {
  test('more and less are told apart', () => {
    expect(plain(offWords(0.171, 'us'))).toBe('17 % more')
    expect(plain(offWords(-0.043, 'us'))).toBe('4 % less')
  })

  test('small differences get a decimal, none is none', () => {
    expect(plain(offWords(0.0026, 'us'))).toBe('0.3 % more')
    expect(offWords(0.0000001, 'us')).toBe('the same')
  })
})

describe('a volume that is wanted', () => {
  test('one that no change of the plan or the depths gives says how far was looked, in the owner’s units, and what else to try', () => {
    const body = demoSpec.bodies[0]
    if (!body) throw new Error('the example has no body')
    const told = (means: 'depths' | 'plan') => {
      const fit = fitVolume(body, means, 100_000)
      if (fit.ok) throw new Error('it fits')
      const { what, why, hint } = unmetProblem(means, fit.problem, 'us')
      return plain(`${what} ${why} ${hint}`)
    }
    expect(told('plan')).toMatch(/^No change of the plan’s size alone .* 4 times as long.* change the depths\.$/)
    expect(told('depths')).toMatch(/^No change of the depths alone .* 65′ 7″ deeper.* the size of the plan\.$/)
  })
})

describe('the arithmetic’s own error', () => {
  test('is said in words a person can picture, and never as nothing', () => {
    expect(boundWords(1e-12, 'us')).toBe('less than a drop')
    expect(boundWords(2e-4, 'metric')).toBe('less than a litre')
    expect(boundWords(0.2, 'metric')).toContain('0.2')
  })
})

describe('what has to change for a wanted volume', () => {
  test('an offer that would lift a part of the floor out of the water says so', () => {
    const body = demoSpec.bodies[0]!
    const words = (value: number) => fitWords(body, 'depths', { value, volumeM3: 1 }, 'metric')
    expect(words(-1.5)).toMatch(/A part of the floor then stands above the water\.$/)
    expect(words(-0.5)).not.toMatch(/above the water/)
  })
})
