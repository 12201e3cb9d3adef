import { describe, expect, test } from 'vitest'
import { productById } from '../../../src/chemicals/index.ts'
import { chlorineDoseG, isStabilisedProduct } from '../../../src/ui/ledger/water/chlorine-dose.ts'
import {
  chlorineParts,
  halfLifeWords,
  halfWidthWords,
  shareWords,
  smallMgPerL,
  spreadWords,
  sunLines,
} from '../../../src/ui/ledger/water/chlorine-words.ts'
import { germsIn } from '../../../src/ui/ledger/water/germs.ts'
import { ruleLines } from '../../../src/ui/ledger/water/rule-lines.ts'
import {
  activeChlorineSpread,
  CONSTANT_SETS,
  equilibrate,
  limitsFor,
  RULES,
  sunHalfLives,
  totalsOf,
} from '../../../src/water/index.ts'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')
const product = (id: string) => {
  const found = productById(id)
  if (!found.ok) throw new Error(found.problem.what)
  return found.value.product
}

function accountOf(cyanurate: number) {
  const totals = totalsOf(
    {
      pH: 7.5,
      ta_mg_per_L_as_CaCO3: 90,
      ch_mg_per_L_as_CaCO3: 250,
      cya_mg_per_L: cyanurate,
      fc_mg_per_L_as_Cl2: 2,
      salt_mg_per_L_as_NaCl: 900,
    },
    CONSTANT_SETS.default,
  )
  if (!totals.ok) throw new Error(totals.problem.what)
  const water = equilibrate(totals.value, CONSTANT_SETS.default)
  const spread = activeChlorineSpread(totals.value, CONSTANT_SETS.default)
  const sun = sunHalfLives(totals.value, CONSTANT_SETS.default)
  if (!water.ok || !spread.ok || !sun.ok) throw new Error('no water')
  const account = {
    ...spread.value,
    chosen: 'obrien' as const,
    chosenMgPerL: spread.value.mgPerL,
    sunHereMin: sun.value.hereMin,
    sunWithoutStabiliserMin: sun.value.withoutStabiliserMin,
  }
  return { account, totals: totals.value, equilibrium: water.value }
}

describe('the account of free chlorine', () => {
  test('active, hypochlorite and held chlorine make up the free', () => {
    const { equilibrium } = accountOf(30)
    expect(chlorineParts(equilibrium).reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(2, 8)
  })

  test('two sets that lie apart are said to; without stabiliser they agree', () => {
    // FC 2, cyanurate 30, pH 7.5: O’Brien and Wahman lie about 1.5 apart (0.0273 against 0.0178 mg/L)
    expect(spreadWords(accountOf(30).account)).toMatch(/1\.[45] times apart/)
    expect(spreadWords(accountOf(0).account)).toContain('agree')
  })

  test('it is said which of the two is chosen: never to count on the lower above a choice of the higher', () => {
    const { account } = accountOf(30)
    const { mgPerL, wahmanMgPerL } = account
    expect(wahmanMgPerL).toBeLessThan(mgPerL)
    expect(spreadWords({ ...account, chosenMgPerL: mgPerL })).toContain('The higher one is chosen')
    expect(spreadWords({ ...account, chosenMgPerL: wahmanMgPerL })).toContain('The lower one, the careful one')
  })

  test('sun: with stabiliser the water without it is beside, without it a usual amount', () => {
    const shielded = accountOf(30)
    const [here, without] = sunLines(shielded.account, shielded.totals, 7.5, 30)
    expect(here?.minutes).toBeGreaterThan(10 * (without?.minutes ?? Number.NaN))
    const bare = accountOf(0)
    const [now, shaded] = sunLines(bare.account, bare.totals, 7.5, 0)
    expect(shaded?.id).toBe('with')
    expect(now?.minutes).toBeCloseTo(without?.minutes ?? Number.NaN, 1)
    expect(shaded?.minutes).toBeCloseTo(here?.minutes ?? Number.NaN, -1)
  })

  test('figures are no finer than they are known', () => {
    expect(plain(smallMgPerL(0.0312, 'metric'))).toBe('0.031 mg/L')
    expect(plain(smallMgPerL(3.14, 'metric'))).toBe('3.1 mg/L')
    expect(plain(smallMgPerL(0, 'metric'))).toBe('0.0 mg/L')
  })

  test('a figure has no more decimals than two figures of what it may be off by', () => {
    expect(plain(smallMgPerL(0.0764, 'us', 0.1234))).toBe('0.08 mg/L')
    expect(halfWidthWords(0.1234, 0.0764, 'us')).toBe('0.12')
    expect(plain(smallMgPerL(0.0312, 'us', 0.0161))).toBe('0.031 mg/L')
    expect(halfWidthWords(0.0161, 0.0312, 'us')).toBe('0.016')
    expect(halfWidthWords(0.004, 1.2, 'us')).toBe('0.1')
    expect(plain(halfLifeWords(767, 'us'))).toBe('13 h')
    expect(halfLifeWords(Number.POSITIVE_INFINITY, 'us')).toBe('none to lose')
    expect(plain(shareWords(0.031, 3.2, 'us'))).toBe('1.0 %')
    expect(plain(shareWords(2, 3, 'us'))).toBe('67 %')
  })
})

describe('a dose of chlorine in a product', () => {
  test('1 mg/L in 10,000 US gallons is 303 mL of liquid chlorine of trade 12.5 % (definition)', () => {
    const liquid = product('liquid-chlorine-12')
    const grams = chlorineDoseG(liquid, 1, 37.854118) ?? Number.NaN
    expect(grams / liquid.densityGPerML).toBeCloseTo(303, -1)
  })

  test('acid brings none, dichlor brings stabiliser', () => {
    expect(chlorineDoseG(product('muriatic-acid-31'), 1, 10)).toBeUndefined()
    expect(isStabilisedProduct(product('trichlor-tablet'))).toBe(true)
    expect(isStabilisedProduct(product('liquid-chlorine-12'))).toBe(false)
  })
})

describe('germs', () => {
  const warm = { fc_mg_per_L_as_Cl2: 2, cya_mg_per_L: 0, pH: 7.4, temperature_C: 27 }

  test('20 mg/L holds 12.75 h for Cryptosporidium: 15 300 mg·min/L (CDC after Shields 2008)', () => {
    const found = germsIn({ ...warm, fc_mg_per_L_as_Cl2: 20 })
    expect(found.lines.find(({ id }) => id === 'cryptosporidium')?.minutes).toBeCloseTo(12.75 * 60, 6)
    expect(found.problem).toBeUndefined()
  })

  test('with stabiliser no times are given', () => {
    const found = germsIn({ ...warm, cya_mg_per_L: 30 })
    expect(found.lines).toEqual([])
    expect(found.problem?.code).toBe('contact-stabiliser-present')
  })

  test('unknown stabiliser is not taken for none', () => {
    const { cya_mg_per_L: _, ...rest } = warm
    expect(germsIn(rest).problem?.code).toBe('contact-readings-missing')
  })

  test('in cold water only the rule that reckons with warmth holds', () => {
    const found = germsIn({ ...warm, temperature_C: 15 })
    expect(found.lines.map(({ id }) => id)).toEqual(['giardia-epa'])
    expect(found.problem?.what).toContain('15 °C')
  })

  test('the Giardia rule: 47.9 mg·min/L at pH 7.5, 1 mg/L, 25 °C, 3 logs (EPA regression)', () => {
    const found = germsIn({ fc_mg_per_L_as_Cl2: 1, cya_mg_per_L: 0, pH: 7.5, temperature_C: 25 })
    expect(found.lines.find(({ id }) => id === 'giardia-epa')?.minutes).toBeCloseTo(47.9, 0)
  })
})

describe('the rules as a table', () => {
  test.each(RULES.rows.map(({ id }) => id))('%s: every line has a rule and how sure it is', (id) => {
    for (const line of ruleLines(limitsFor(id, 0), {}, undefined, 'metric')) {
      expect(line.rule).toMatch(/\d/)
      expect(line.status.length).toBeGreaterThan(3)
      expect(line.measured).toBeUndefined()
      expect(line.outside).toBeUndefined()
    }
  })

  test('a figure that the rules leave open is called the default’s', () => {
    const lines = ruleLines(limitsFor('wisconsin', 20), {}, undefined, 'metric')
    expect(lines.find(({ id }) => id === 'fc_mg_per_L_as_Cl2')?.status).toContain('default’s')
    expect(lines.find(({ id }) => id === 'cya_mg_per_L')?.status).toBe('seen')
  })

  test('readings outside are marked on their side', () => {
    const values = { fc_mg_per_L_as_Cl2: 0.5, pH: 8.2, cya_mg_per_L: 40 }
    const combined = { combinedMgPerL: 0.9, sigmaMgPerL: 0.1, isWithinScatter: false }
    const sides = ruleLines(limitsFor(undefined, 40), values, combined, 'metric').map(({ id, outside }) => [
      id,
      outside,
    ])
    expect(Object.fromEntries(sides)).toMatchObject({
      fc_mg_per_L_as_Cl2: 'below',
      pH: 'above',
      cc_mg_per_L_as_Cl2: 'above',
      cya_mg_per_L: undefined,
    })
  })
})
