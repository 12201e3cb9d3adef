import { describe, expect, test } from 'vitest'
import { deltaOf, productById, productsWith } from '../../src/chemicals/index.ts'
import {
  type DeckCard,
  deckCard,
  defaultTargets,
  isInside,
  type OpeningInput,
  openingPlan,
} from '../../src/plan/index.ts'
import { addTotals, CONSTANT_SETS, equilibrate, readingOf, totalsOf } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'

const NOW = Date.UTC(2026, 5, 2, 9)
const CONSTANTS = CONSTANT_SETS.default
const input = (more: Partial<OpeningInput> = {}): OpeningInput => ({
  volumeM3: 60,
  volumeSigmaM3: 2,
  surface: 'plaster',
  regimeId: 'unstabilised',
  targets: defaultTargets('plaster', 'unstabilised', {}),
  products: {},
  start: {
    pH: 7.6,
    ta_mg_per_L_as_CaCO3: 85,
    ch_mg_per_L_as_CaCO3: 260,
    cya_mg_per_L: 0,
    borate_mg_per_L_as_B: 40,
    fc_mg_per_L_as_Cl2: 2,
    salt_mg_per_L_as_NaCl: 500,
    temperature_C: 26,
  },
  startIs: 'pool',
  method: 'drop-kit',
  measuredAtMs: NOW,
  nowMs: NOW,
  turnoverHours: 8,
  given: [],
  stockG: {},
  constants: 'default',
  ...more,
})
const card = (more: Partial<OpeningInput> = {}): DeckCard => good(deckCard(input(more)))

describe('the deck card', () => {
  test('every dose brings its reading to the aim, recounted through the kernel', () => {
    const made = card({ stockG: { 'dry-acid': 5000, 'borax-10': 4000 } })
    let checks = 0
    for (const row of made.rows)
      for (const dose of row.doses) {
        const from = { ...made.madeFor.water, [row.reading]: dose.value }
        const { product } = good(productById(dose.productId))
        const totals = addTotals(good(totalsOf(from, CONSTANTS)), deltaOf(product, dose.exactG / 60))
        const after = readingOf(totals, good(equilibrate(totals, CONSTANTS)))
        expect(after[row.reading], `${row.key} ${dose.value}`).toBeCloseTo(row.band.aim, 5)
        expect(after.pH).toBeCloseTo(dose.pHAfter, 6)
        checks++
      }
    expect(checks).toBeGreaterThan(15)
  })

  test('amounts are two digits and never more than the exact one', () => {
    for (const { doses } of card().rows)
      for (const { amountG, exactG } of doses) {
        expect(amountG).toBeLessThanOrEqual(exactG * (1 + 1e-9))
        expect(amountG).toBeGreaterThan(0.9 * exactG)
        expect(Number(amountG.toPrecision(2))).toBeCloseTo(amountG, 9)
      }
  })

  test('rows follow the targets: pH by acid at three readings, borate only where it is wanted, stabiliser where it is', () => {
    const keys = (of: DeckCard) => of.rows.map((row) => row.key)
    expect(keys(card())).toContain('borate_mg_per_L_as_B')
    // 45 mg/L × 48 mL = 2.16 mg of 15 kg × 0.2 mg/kg = 3 mg (EPA reference dose of 2004, seen)
    expect(card().cautions.join(' ')).toContain('takes in about 2.2 mg of boron, 72 %')
    expect(keys(card())).not.toContain('cya_mg_per_L')
    const stabilised = card({ regimeId: 'stabilised', targets: defaultTargets('plaster', 'stabilised', {}) })
    expect(keys(stabilised)).toContain('cya_mg_per_L')
    expect(keys(stabilised)).not.toContain('borate_mg_per_L_as_B')
    expect(stabilised.cautions.join(' ')).not.toContain('mg of boron')
    const high = card().rows.find((row) => row.key === 'pH-high')!
    expect(high.doses.map((dose) => dose.readingText)).toEqual(['pH 7.9', 'pH 8.0', 'pH 8.2'])
    expect(high.doses.map((dose) => dose.exactG)).toEqual(
      high.doses.map((dose) => dose.exactG).toSorted((a, b) => a - b),
    )
  })

  test('a reading at an end of its band asks for nothing, on the card as in the plan', () => {
    const made = card()
    for (const { key, band, doses } of made.rows)
      for (const { value } of doses)
        expect(key.startsWith('pH') && isInside(value, band), `${key} ${value}`).toBe(false)
    const atEnd = good(openingPlan(input({ start: { ...input().start, pH: 7.8 } })))
    expect(atEnd.lines.filter(({ kind }) => kind === 'dose')).toEqual([])
  })

  test('for the same change in the same water the card and the plan name the same amount', () => {
    for (const [key, reading, value] of [
      ['pH-high', 'pH', 7.9],
      ['pH-high', 'pH', 8.2],
      ['fc_mg_per_L_as_Cl2', 'fc_mg_per_L_as_Cl2', 0],
      ['ch_mg_per_L_as_CaCO3', 'ch_mg_per_L_as_CaCO3', 175],
    ] as const) {
      const start = { ...input().start, [reading]: value }
      const planned = good(openingPlan(input({ start }))).lines.filter((line) => line.kind === 'dose')
      const row = card({ start }).rows.find((each) => each.key === key)!
      const own = planned.filter((line) => line.productId === row.doses[0]!.productId)
      const amountG = own.reduce((sum, line) => sum + line.amountG, 0)
      const dose = row.doses.find((each) => Math.abs(each.value - value) < 1e-9)!
      expect(dose.exactG / amountG, `${key} ${value}`).toBeCloseTo(1, 6)
    }
  })

  test('doses scale with the volume, and borate needs more acid than water without it', () => {
    const acid = (of: DeckCard) => of.rows.find((row) => row.key === 'pH-high')!.doses[1]!.exactG
    expect(acid(card({ volumeM3: 120 })) / acid(card())).toBeCloseTo(2, 6)
    expect(acid(card())).toBeGreaterThan(1.2 * acid(card({ start: { ...input().start, borate_mg_per_L_as_B: 0 } })))
  })

  test('what is in stock stands beside the chosen product, an own product too, with its cautions', () => {
    const productList = productsWith([
      { id: 'my-acid', label: 'My acid', like: 'muriatic-acid-31', strength: 20, basis: 'percent-by-mass' },
    ])
    const made = card({ productList, stockG: { 'my-acid': 1000 } })
    const high = made.rows.find((row) => row.key === 'pH-high')!
    const [strong, weak] = high.doses.filter((dose) => dose.value === 8)
    expect([strong!.productId, weak!.productId]).toEqual(['muriatic-acid-31', 'my-acid'])
    expect(weak!.exactG / strong!.exactG).toBeCloseTo(31.45 / 20, 1)
    expect(made.cautions.join(' ')).toContain('into water')
    expect(made.cautions.join(' ')).toContain('measure again before anyone bathes')
    expect(new Set(made.cautions).size).toBe(made.cautions.length)
  })

  test.each(['slow-tablet', 'unstabilised'])(
    'chlorine too low under %s: never a tablet, which raises nothing the same day',
    (regimeId) => {
      const products = { openingChlorine: 'trichlor-tablet' }
      for (const more of [{}, { products }]) {
        const made = card({
          regimeId,
          targets: defaultTargets('plaster', regimeId, {}),
          stockG: { 'trichlor-tablet': 20_000, 'cal-hypo-tablet': 20_000, 'liquid-chlorine-12': 5000 },
          ...more,
        })
        const { doses } = made.rows.find((row) => row.key === 'fc_mg_per_L_as_Cl2')!
        expect(new Set(doses.map((dose) => dose.productId))).toEqual(new Set(['liquid-chlorine-12']))
        expect(made.cautions.join(' ').includes('raises nothing the same day')).toBe('products' in more)
      }
    },
  )

  test('chlorine is raised by no more than 1 mg/L a pour where metals were read high', () => {
    const pours = (of: DeckCard) =>
      of.rows.find((row) => row.key === 'fc_mg_per_L_as_Cl2')!.doses.map((dose) => dose.pours)
    const start = { ...input().start, fc_mg_per_L_as_Cl2: 0 }
    expect(pours(card({ start, metals: { iron_mg_per_L: 1.2 } }))).toEqual([1, 2])
    expect(pours(card({ start }))).toEqual([1, 1])
  })

  test('what nobody read beside measured readings is named as taken from the targets', () => {
    const { start } = input()
    const key = 'ch_mg_per_L_as_CaCO3'
    expect(card({ start: { ...start, [key]: undefined } }).madeFor.assumed).toEqual([key])
    expect(card({ start: { ...start, [key]: 200 } }).madeFor.assumed).toEqual([])
  })

  test('borate that nobody read counts as none, so that no acid is too much', () => {
    const { start, targets } = input()
    const wanted = { ...targets, borate_mg_per_L_as_B: { low: 30, aim: 45, high: 50, source: 'a test', isOwn: true } }
    const acidG = (borate: number | undefined) => {
      const made = card({ targets: wanted, start: { ...start, borate_mg_per_L_as_B: borate } })
      return { made, g: made.rows.find(({ key }) => key === 'pH-high')!.doses[0]!.exactG }
    }
    const unread = acidG(undefined)
    expect(unread.made.madeFor.countedAsNone).toContain('borate_mg_per_L_as_B')
    expect(unread.g).toBeCloseTo(acidG(0).g, 6)
    expect(unread.g).toBeLessThan(0.7 * acidG(45).g)
    const bare = card({ targets: wanted, start: { borate_mg_per_L_as_B: 45 }, startIs: undefined })
    expect(bare.madeFor.water.borate_mg_per_L_as_B, 'what was read stands without pH too').toBeCloseTo(45, 6)
  })

  test('without readings the card is made for the targets, and says so', () => {
    const made = card({ start: {}, startIs: undefined, measuredAtMs: undefined })
    expect(made.madeFor.waterIs).toBe('targets')
    expect(made.madeFor.assumed).toEqual([])
    expect(made.madeFor.text).toContain('as its targets have it')
    for (const [key, band] of Object.entries(input().targets))
      if (!made.madeFor.countedAsNone.some((each) => each === key))
        expect(isInside(made.madeFor.water[key as 'pH']!, band!), key).toBe(true)
  })

  test('a volume of nothing is a Problem', () => {
    const answer = deckCard(input({ volumeM3: 0 }))
    expect(!answer.ok && answer.problem.path).toBe('volumeM3')
  })
})
