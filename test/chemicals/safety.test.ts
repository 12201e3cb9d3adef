import { describe, expect, test } from 'vitest'
import {
  borateIntake,
  CAUTIONS,
  cautionsOf,
  FIRST_AID,
  GEAR,
  gearFor,
  INCOMPATIBLE,
  keepApart,
  PLACE_RULES,
  type Place,
  PRODUCTS,
  placeRules,
  productById,
  productsWith,
} from '../../src/chemicals/index.ts'
import { good } from '../water/golden.ts'

const of = (...ids: string[]) => ids.map((id) => good(productById(id)).product)
const ruleIds = (ids: string[], where?: Place) => placeRules(of(...ids), where).map(({ id }) => id)
const STATUSES = ['seen', 'seen second-hand', 'from memory', 'common practice, no source', 'derived']
const sold = PRODUCTS.rows.filter((row) => !row.isAccounting)

describe('cautions as data', () => {
  const everything = [
    ...CAUTIONS.rows,
    ...PLACE_RULES.rows,
    ...GEAR.rows,
    ...FIRST_AID.rows,
    ...INCOMPATIBLE.map((row) => ({ ...row, id: `${row.a} and ${row.b}` })),
  ]

  test.each(everything)('$id has a source and says how sure it is', ({ source, status }) => {
    expect(source).not.toBe('')
    expect(STATUSES).toContain(status)
    if (status === 'from memory' || status === 'common practice, no source') expect(source).toBe(status)
  })

  test('nothing prints a telephone number', () => {
    for (const { when, act } of FIRST_AID.rows) expect(when + act).not.toMatch(/\d{3,}/)
    expect(FIRST_AID.get('whom-to-ask')?.act).toContain('poison centre')
    expect(FIRST_AID.get('whom-to-ask')?.act).toContain('emergency number')
  })

  test('no caution is for nothing: every one is carried by a product', () => {
    for (const { id } of CAUTIONS.rows)
      expect(id === 'label' || sold.some((row) => row.cautions.includes(id)), id).toBe(true)
  })

  test.each(sold)('$id carries the cautions that its kind asks for', (row) => {
    const has = (id: (typeof row.cautions)[number]) => expect(row.cautions, id).toContain(id)
    if (row.form === 'gas') return
    has('pump-running')
    if (row.groups.includes('acid')) has(row.groups.includes('oxidiser') ? 'gear' : 'into-water')
    if (row.groups.includes('hypochlorite') || row.groups.includes('isocyanurate')) {
      has('no-acid-near')
      has('never-mix')
    }
    if (row.uses.includes('chlorine') && row.form !== 'tablet') {
      has('open-cover')
      has('wait-to-bathe')
    }
    // what burns through a swing of pH, takes chlorine away or oxidises: a test comes before a bather
    if (['soda-ash', 'sodium-hydroxide', 'sodium-thiosulfate', 'sodium-sulfite'].includes(row.id)) has('wait-to-bathe')
    if (row.id === 'potassium-monopersulfate') has('open-cover')
    if (row.uses.includes('borate')) has('borate')
    if (row.id === 'trichlor-tablet') has('skimmer-pump-off')
    if (['stabiliser', 'borate', 'calcium', 'salt', 'magnesium'].some((use) => row.uses.some((each) => each === use)))
      has('hard-to-undo')
  })

  test('cautions of several products come once each, gravest first, the label always last', () => {
    const ids = cautionsOf(of('cal-hypo-65', 'liquid-chlorine-12', 'boric-acid')).map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids[0]).toBe('no-acid-near')
    expect(ids.at(-1)).toBe('label')
    expect(ids).toContain('borate')
    expect(cautionsOf([]).map(({ id }) => id)).toEqual(['label'])
  })
})

describe('what must never meet what, and where', () => {
  test('calcium hypochlorite and trichlor: not in one feeder, bucket or corner of the shed (EPA 550-F-01-003)', () => {
    const both = ['cal-hypo-65', 'trichlor-tablet']
    expect(ruleIds(both, 'feeder')).toContain('feeder-two-chlorines')
    expect(ruleIds(both, 'bucket')).toContain('bucket-one-product')
    expect(ruleIds(both, 'shed')).toContain('shed-two-chlorines')
    expect(PLACE_RULES.get('feeder-two-chlorines')?.source).toContain('550-F-01-003')
    for (const one of both) expect(ruleIds([one], 'feeder')).not.toContain('feeder-two-chlorines')
  })

  test('acid and chlorine: not in one dosing line, bucket or shed, nor in the pool without a turnover (MMWR 66(19))', () => {
    const both = ['muriatic-acid-31', 'liquid-chlorine-12']
    expect(ruleIds(both, 'feeder')).toContain('feeder-acid-and-chlorine')
    expect(ruleIds(both, 'bucket')).toContain('bucket-acid-and-chlorine')
    expect(ruleIds(both, 'shed')).toContain('shed-acid-and-oxidiser')
    expect(ruleIds(both, 'pool')).toContain('pool-acid-and-chlorine')
    expect(PLACE_RULES.get('feeder-acid-and-chlorine')?.source).toContain('MMWR 66(19)')
  })

  test('tablets in a skimmer with the pump off, closed covers after a shock, liquids above solids are warned of', () => {
    expect(ruleIds(['trichlor-tablet'], 'basket')).toContain('basket-tablets-pump-off')
    expect(ruleIds(['cal-hypo-65'], 'pool')).toContain('pool-closed-cover')
    expect(ruleIds(['muriatic-acid-31', 'soda-ash'], 'shed')).toContain('shed-liquid-above-solid')
  })

  test('rules come gravest first, one place when asked, and only what bears on the products', () => {
    const all = placeRules(of('calcium-chloride-flake', 'sodium-bicarbonate', 'liquid-chlorine-12'))
    const firstSpoils = all.findIndex(({ kind }) => kind === 'spoils')
    expect(all.slice(firstSpoils).every(({ kind }) => kind === 'spoils')).toBe(true)
    expect(all.map(({ id }) => id)).toContain('pool-calcium-and-carbonate')
    expect(ruleIds(['salt'], 'bucket')).toEqual([])
    expect(placeRules([])).toEqual([])
    for (const where of ['feeder', 'basket', 'bucket', 'shed', 'pool'] as const)
      expect(placeRules(sold, where).every((row) => row.where === where)).toBe(true)
  })

  test('every rule bears on some products, and for every dangerous pair of products a place says so', () => {
    const all = placeRules(sold).map(({ id }) => id)
    expect(all.toSorted()).toEqual(PLACE_RULES.rows.map(({ id }) => id).toSorted())
    for (const a of sold)
      for (const b of sold) {
        if (a.form === 'gas' || b.form === 'gas' || keepApart(a, b)?.kind !== 'danger') continue
        const said = placeRules([a, b]).some(({ kind, meets }) => kind === 'danger' && meets)
        expect(said, `${a.id} and ${b.id}`).toBe(true)
      }
  })

  test('an own product counts as what it is like', () => {
    const { rows } = productsWith([
      { id: 'tab', label: 'Tab', like: 'trichlor-tablet', strength: 90, basis: 'available-chlorine' },
    ])
    const tab = rows.find(({ id }) => id === 'tab')!
    expect(placeRules([tab], 'basket').map(({ id }) => id)).toContain('basket-tablets-pump-off')
  })
})

describe('what to wear', () => {
  test('acid and chlorine ask for goggles, gloves and water at hand; salt for little', () => {
    for (const id of ['muriatic-acid-31', 'liquid-chlorine-12', 'cal-hypo-65', 'dichlor'])
      expect(gearFor(of(id)).map((gear) => gear.id)).toEqual(
        expect.arrayContaining(['goggles', 'gloves', 'water-at-hand']),
      )
    expect(gearFor(of('salt')).map((gear) => gear.id)).toEqual(['gloves-others'])
    expect(gearFor(of('salt', 'dichlor')).map((gear) => gear.id)).not.toContain('gloves-others')
  })

  test('every product that is sold asks for something, gases too', () => {
    for (const row of sold.filter(({ id }) => id !== 'carbon-dioxide'))
      expect(gearFor([row]).length, row.id).toBeGreaterThan(0)
  })

  test('borates ask for a mask and for somebody else where anyone is pregnant', () => {
    const texts = gearFor(of('boric-acid')).map(({ wear }) => wear)
    expect(texts.join(' ')).toContain('pregnant')
    expect(texts.join(' ')).toContain('mask')
  })
})

describe('boron that is swallowed', () => {
  test('50 mg/L: a child of 15 kg that swallows 48 mL takes 2.4 mg of the 3.0 mg a day held to be without harm (EPA 2004)', () => {
    const child = borateIntake(50, 48, 15)
    expect(child.boronMg).toBeCloseTo(2.4, 9)
    expect(child.shareOfReference).toBeCloseTo(2.4 / 3, 9)
  })

  test('50 mg/L: a dog of 10 kg that drinks half a litre takes 2.5 mg per kg', () => {
    expect(borateIntake(50, 500, 10).mgPerKg).toBeCloseTo(2.5, 9)
  })
})
