import { describe, expect, test } from 'vitest'
import { strengthAfter } from '../../src/chemicals/index.ts'
import {
  deriveDeckCard,
  deriveLabelProblems,
  deriveOpening,
  deriveProducts,
  deriveUpkeep,
} from '../../src/derive/index.ts'
import { demoSpec, fromJson, type ReadingValues, type Spec, toJson } from '../../src/document/index.ts'
import { edited, lines } from './edited.ts'

const NOW = Date.parse('2026-06-01T12:00:00Z')
const systemId = 'pool'
const values: ReadingValues = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 60,
  ch_mg_per_L_as_CaCO3: 250,
  cya_mg_per_L: 40,
  fc_mg_per_L_as_Cl2: 0.5,
  borate_mg_per_L_as_B: 40,
  salt_mg_per_L_as_NaCl: 800,
  temperature_C: 26,
}
const bleach = {
  id: 'bleach',
  label: 'Liquid chlorine of the shed',
  like: 'liquid-chlorine-12',
  strength: 12.5,
  basis: 'trade-percent',
  packages: [{ label: '20 L can', massG: 23_800 }],
} as const
const owned = (product: object = {}): Spec =>
  edited(
    demoSpec,
    { id: 'addReadings', args: { systemId, set: { at: '2026-06-01T09:00:00Z', method: 'photometer', values } } },
    { id: 'addOwnProduct', args: { systemId, product: { ...bleach, ...product } } },
    { id: 'setProduct', args: { systemId, purpose: 'openingChlorine', product: 'bleach' } },
    { id: 'setProduct', args: { systemId, purpose: 'dailyChlorine', product: 'bleach' } },
  )
const chlorine = (spec: Spec) => {
  const line = lines(deriveOpening(spec, systemId, NOW)).find(
    (each) => each.kind === 'dose' && each.purpose === 'openingChlorine',
  )
  if (line?.kind !== 'dose') throw new Error('there is a chlorine line')
  return line
}

describe('an owner’s own products', () => {
  test('lose strength from the day they were bought, and the dose grows by as much', () => {
    // What stands in the shed is what ages: without any in stock it would be bought, and fresh.
    const inStock = (spec: Spec) =>
      edited(spec, { id: 'setStock', args: { systemId, product: 'bleach', amountG: 50_000 } })
    const fresh = owned()
    const dated = owned({ boughtAt: '2026-03-01T12:00:00Z', openedAt: '2026-05-01T12:00:00Z', storedC: 25 })
    const old = inStock(dated)
    const left = strengthAfter({ percent: 12.5, days: 92, storedC: 25 })
    if (!left.ok) throw new Error(left.problem.what)
    const found = deriveProducts(old, systemId, NOW).find('bleach')
    if (!found.ok) throw new Error(found.problem.what)
    expect(found.value.product.ageing).toMatchObject({ days: 92, percent: expect.closeTo(left.value.percent, 9) })
    expect(chlorine(fresh).productId).toBe('bleach')
    // The exact amount of chlorine is the same: grams go with the strength that is left.
    expect(chlorine(old).amountG / chlorine(fresh).amountG).toBeCloseTo(12.5 / left.value.percent, 2)
    expect(chlorine(dated).amountG).toBeCloseTo(chlorine(fresh).amountG, 6)
  })

  test('bought in the future counts as fresh; opened is what counts where nothing else is known', () => {
    const ageing = (product: object) => {
      const found = deriveProducts(owned(product), systemId, NOW).find('bleach')
      return found.ok ? found.value.product.ageing?.days : found.problem.code
    }
    expect(ageing({ boughtAt: '2026-07-01T12:00:00Z' })).toBeUndefined()
    expect(ageing({ openedAt: '2026-05-02T12:00:00Z' })).toBe(30)
    expect(ageing({})).toBeUndefined()
  })

  test('serve upkeep and deck card too', () => {
    const spec = owned()
    const upkeep = deriveUpkeep(spec, systemId, NOW)
    expect(upkeep.ok && upkeep.value.productGPerDay).toBeGreaterThan(0)
    const card = deriveDeckCard(spec, systemId, NOW)
    if (!card.ok) throw new Error(card.problem.what)
    const row = card.value.rows.find(({ reading }) => reading === 'fc_mg_per_L_as_Cl2')
    expect(row?.doses.every(({ productId }) => productId === 'bleach')).toBe(true)
    expect(card.value.madeFor.waterIs).toBe('measured')
  })

  test('what is assumed for upkeep is said in few digits', () => {
    const upkeep = deriveUpkeep({ ...owned(), site: { ...owned().site, climate: undefined } }, systemId, NOW)
    const words = upkeep.ok ? upkeep.value.warnings.join(' ') : ''
    expect(words).toContain('% of the possible sunshine')
    expect(words).not.toMatch(/\d\.\d{4,}/)
  })

  test('prices make the shopping list’s cost', () => {
    const priced = edited(owned(), {
      id: 'setPrice',
      args: { systemId, product: 'bleach', packageLabel: '20 L can', price: 30 },
    })
    const plan = deriveOpening(priced, systemId, NOW)
    if (!plan.ok) throw new Error(plan.problem.what)
    const item = plan.value.purchases.find(({ productId }) => productId === 'bleach')
    expect(item?.cost).toBe(30 * item!.count)
    const unpriced = deriveOpening(owned(), systemId, NOW)
    expect(
      unpriced.ok && unpriced.value.purchases.find(({ productId }) => productId === 'bleach')?.cost,
    ).toBeUndefined()
  })

  test('one that can’t be counted any more is a problem with its place, and takes no other plan away', () => {
    const ancient = owned({ boughtAt: '2010-01-01T12:00:00Z' })
    const list = deriveProducts(ancient, systemId, NOW)
    expect(list.problems.map(({ path }) => path)).toEqual(['ownProducts[0].ageDays'])
    expect(deriveOpening(ancient, systemId, NOW).ok).toBe(false)
    const back = edited(
      ancient,
      { id: 'setProduct', args: { systemId, purpose: 'openingChlorine', product: undefined } },
      { id: 'setProduct', args: { systemId, purpose: 'dailyChlorine', product: undefined } },
    )
    expect(deriveOpening(back, systemId, NOW).ok).toBe(true)
  })
})

describe('a label that can’t be', () => {
  const odd = owned({ strength: 95 })

  test('opens, keeps what it says and is a problem with its path', () => {
    const opened = fromJson(toJson(odd))
    expect(opened).toEqual({ ok: true, value: odd })
    expect(odd.systems[0]?.ownProducts?.[0]?.strength).toBe(95)
    expect(deriveLabelProblems(odd).map(({ code, path }) => `${code} ${path}`)).toEqual([
      'own-product-too-strong systems[0].ownProducts[0].strength',
    ])
    expect(deriveLabelProblems(owned())).toEqual([])
    const wrong = owned({ like: 'muriatic-acid-31' })
    expect(deriveLabelProblems(wrong).map(({ code }) => code)).toEqual(['own-product-basis'])
    const heavy = owned({ densityKgPerL: 3 })
    expect(deriveLabelProblems(heavy).map(({ path }) => path)).toEqual(['systems[0].ownProducts[0].densityKgPerL'])
  })

  test('is reckoned with nowhere: no plan while it is chosen, a warning while it isn’t', () => {
    const chosen = deriveOpening(odd, systemId, NOW)
    expect(chosen.ok ? 'ok' : chosen.problem.code).toBe('own-product-too-strong')
    expect(deriveUpkeep(odd, systemId, NOW).ok).toBe(false)
    const aside = edited(
      odd,
      { id: 'setProduct', args: { systemId, purpose: 'openingChlorine', product: undefined } },
      { id: 'setProduct', args: { systemId, purpose: 'dailyChlorine', product: undefined } },
    )
    const plan = deriveOpening(aside, systemId, NOW)
    if (!plan.ok) throw new Error(plan.problem.what)
    expect(plan.value.warnings[0]).toMatch(/^“Liquid chlorine of the shed” is left out: 95 trade % is more than/)
    expect(plan.value.lines.some((line) => line.kind === 'dose' && line.productId === 'bleach')).toBe(false)
  })
})

describe('what else the plan is told', () => {
  test('whole packages only where they are chosen', () => {
    const whole = edited(owned(), { id: 'setRegime', args: { systemId, dosing: 'whole-packages' } })
    const isWhole = (spec: Spec) =>
      lines(deriveOpening(spec, systemId, NOW)).some((line) => line.kind === 'dose' && line.packages?.isWhole === true)
    expect(isWhole(owned())).toBe(false)
    expect(isWhole(whole)).toBe(true)
  })

  test('metals that were read stand before the oxidiser', () => {
    const spec = edited(owned(), {
      id: 'addReadings',
      args: {
        systemId,
        set: { at: '2026-06-01T10:00:00Z', method: 'photometer', values: { ...values, iron_mg_per_L: 0.6 } },
      },
    })
    const text = JSON.stringify(deriveOpening(spec, systemId, NOW))
    expect(text).toContain('iron')
    expect(text).not.toBe(JSON.stringify(deriveOpening(owned(), systemId, NOW)))
  })

  test('a ticked line is done; a start’s tick is none of the plan’s', () => {
    const spec = owned()
    const [first] = lines(deriveOpening(spec, systemId, NOW)).filter((line) => line.kind !== 'dose')
    const tick = (line: string) =>
      edited(spec, { id: 'tickLine', args: { systemId, line, at: '2026-06-01T11:00:00Z', text: 'Done.' } })
    const states = (each: Spec) =>
      lines(deriveOpening(each, systemId, NOW))
        .filter(({ state }) => state === 'done')
        .map(({ key }) => key)
    expect(states(tick(first!.key))).toContain(first!.key)
    expect(states(tick(`start/party/${first!.key}`))).toEqual(states(spec))
  })

  test('a target outside the chosen rules warns', () => {
    const spec = edited(
      owned(),
      { id: 'setRules', args: { profile: 'us-model-code' } },
      { id: 'setTarget', args: { systemId, key: 'fc_mg_per_L_as_Cl2', band: { low: 0.2, aim: 0.5, high: 1 } } },
    )
    const plan = deriveOpening(spec, systemId, NOW)
    expect(plan.ok && plan.value.targetWarnings.map(({ path }) => path)).toContain('targets.fc_mg_per_L_as_Cl2')
  })
})
