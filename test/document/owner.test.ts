import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  applyCommand,
  type Command,
  command,
  demoSpec,
  fromJson,
  linkOf,
  ownProductsFrom,
  type Spec,
  specFromLink,
  toJson,
  validateSpec,
} from '../../src/document/index.ts'
import { START_MODES } from '../../src/plan/index.ts'
import { RULES } from '../../src/water/index.ts'
import { richSpec } from './samples.ts'

const SEED = 20261128
const at = '2026-05-03T09:00:00-07:00'
const systemId = 'pool'

type Loose = { [key: string]: unknown }
const partOf = (value: unknown, ...path: (string | number)[]): Loose =>
  path.reduce((found, key) => (found as { [key: string]: never })[key]!, value as Loose)
const broken = (edit: (system: Loose, spec: Loose) => void) => {
  const spec = JSON.parse(JSON.stringify(richSpec)) as Loose
  edit(partOf(spec, 'systems', 0), spec)
  const result = validateSpec(spec)
  return result.ok ? [] : result.problem.map((p) => `${p.code} ${p.path}`)
}
const refusal = (made: Command, spec: Spec = richSpec) => {
  const result = applyCommand(spec, made)
  return result.ok ? 'ok' : `${result.problem.code} ${result.problem.path}`
}
const done = (spec: Spec, ...commands: Command[]): Spec =>
  commands.reduce((current, each) => {
    const result = applyCommand(current, each)
    if (!result.ok) throw new Error(`${result.problem.path}: ${result.problem.what}`)
    return result.value
  }, spec)

describe('checking what an owner has', () => {
  test('labels: complaints have their paths, and a strength that its substance can’t have still opens', () => {
    const own = (edit: (label: Loose) => void) => broken((system) => edit(partOf(system, 'ownProducts', 0)))
    expect(own((label) => delete label['like'])).toEqual(['missing systems[0].ownProducts[0].like'])
    expect(own((label) => (label['strength'] = 0))).toEqual(['out-of-range systems[0].ownProducts[0].strength'])
    expect(own((label) => (label['basis'] = 'proof'))).toEqual(['not-one-of systems[0].ownProducts[0].basis'])
    expect(own((label) => (label['boughtAt'] = 'May'))).toEqual(['not-a-moment systems[0].ownProducts[0].boughtAt'])
    expect(own((label) => (label['packages'] = [{ label: 'can', massG: -2 }]))).toEqual([
      'out-of-range systems[0].ownProducts[0].packages[0].massG',
    ])
    expect(own((label) => (label['packages'] = [{ label: 'can', massG: 2, price: -1 }]))).toEqual([
      'out-of-range systems[0].ownProducts[0].packages[0].price',
    ])
    expect(own((label) => (label['strength'] = 95))).toEqual([])
    expect(own((label) => (label['like'] = 'moon-dust'))).toEqual(['own-product-like systems[0].ownProducts[0].like'])
    expect(own((label) => (label['like'] = 'chlorine-gas'))).toEqual([
      'own-product-like systems[0].ownProducts[0].like',
    ])
    expect(own((label) => (label['densityKgPerL'] = 21))).toEqual([
      'out-of-range systems[0].ownProducts[0].densityKgPerL',
    ])
    expect(own((label) => (label['id'] = 'spare-acid'))).toEqual(['own-product-id-taken systems[0].ownProducts[1].id'])
    expect(own((label) => (label['id'] = 'soda-ash'))).toEqual(['own-product-id-taken systems[0].ownProducts[0].id'])
  })

  test('prices, currency, devices, regime, rules, starts and readings', () => {
    expect(broken((system) => (partOf(system, 'prices', 0)['price'] = -1))).toEqual([
      'out-of-range systems[0].prices[0].price',
    ])
    expect(broken((system) => (system['currency'] = ''))).toEqual(['empty-text systems[0].currency'])
    expect(broken((system) => (partOf(system, 'equipment', 'devices', 1)['id'] = 'jug'))).toEqual([
      'same-id systems[0].equipment.devices[1].id',
    ])
    expect(broken((system) => (partOf(system, 'equipment', 'devices', 0)['kind'] = 'hat'))).toEqual([
      'not-one-of systems[0].equipment.devices[0].kind',
    ])
    expect(broken((system) => (partOf(system, 'equipment', 'devices', 1, 'held', 0)['at'] = 'once'))).toEqual([
      'not-a-moment systems[0].equipment.devices[1].held[0].at',
    ])
    expect(broken((system) => (partOf(system, 'regime')['objective'] = 'prettiest'))).toEqual([
      'not-one-of systems[0].regime.objective',
    ])
    expect(broken((system) => (partOf(system, 'regime')['dosing'] = 'handfuls'))).toEqual([
      'not-one-of systems[0].regime.dosing',
    ])
    expect(broken((system) => (partOf(system, 'regime')['chlorineConstants'] = 'guess'))).toEqual([
      'not-one-of systems[0].regime.chlorineConstants',
    ])
    expect(broken((_, spec) => (partOf(spec, 'site')['rules'] = { profile: 'nobody' }))).toEqual([
      'no-such-rules site.rules.profile',
    ])
    expect(broken((system) => (partOf(system, 'start')['mode'] = 'leap'))).toEqual([
      'no-such-start systems[0].start.mode',
    ])
    expect(broken((system) => delete partOf(system, 'start')['at'])).toEqual(['missing systems[0].start.at'])
    expect(broken((system) => (partOf(system, 'start')['values'] = { bathers: 'many' }))).toEqual([
      'wrong-type systems[0].start.values.bathers',
    ])
    expect(broken((system) => (partOf(system, 'start')['values'] = [3]))).toEqual([
      'wrong-type systems[0].start.values',
    ])
    expect(
      broken((system) => {
        partOf(system, 'start')['values'] = Object.fromEntries(Array.from({ length: 101 }, (_, i) => [`v${i}`, i]))
      }),
    ).toEqual(['start-values-many systems[0].start.values'])
    const values = (edit: (values: Loose) => void) =>
      broken((system) => edit(partOf(system, 'water', 'readings', 0, 'values')))
    expect(values((each) => (each['copper_mg_per_L'] = -0.1))).toEqual([
      'out-of-range systems[0].water.readings[0].values.copper_mg_per_L',
    ])
    expect(values((each) => (each['th_mg_per_L_as_CaCO3'] = '200'))).toEqual([
      'wrong-type systems[0].water.readings[0].values.th_mg_per_L_as_CaCO3',
    ])
  })

  test('a list of own products out of anything', () => {
    expect(ownProductsFrom(undefined, 'own')).toEqual({ ok: true, value: [] })
    const bad = ownProductsFrom([{ id: 'x' }], 'own')
    expect(bad.ok ? [] : bad.problem.map(({ path }) => path)).toContain('own[0].label')
    expect(ownProductsFrom(7, 'own').ok).toBe(false)
  })
})

describe('edits that are refused leave the document as it was', () => {
  test('labels that can’t be, ids that are taken, products that something still needs', () => {
    const label = { id: 'x', label: 'X', like: 'muriatic-acid-31', strength: 20, basis: 'percent-by-mass' } as const
    const add = (changes: object) => command('addOwnProduct', { systemId, product: { ...label, ...changes } })
    expect(refusal(add({}))).toBe('ok')
    expect(refusal(add({ strength: 0 }))).toBe('out-of-range args.product.strength')
    expect(refusal(add({ like: 'moon-dust' }))).toBe('own-product-like systems[0].ownProducts[2].like')
    expect(refusal(add({ id: 'salt' }))).toBe('own-product-id-taken systems[0].ownProducts[2].id')
    expect(refusal(add({ id: 'spare-acid' }))).toBe('own-product-id-taken systems[0].ownProducts[2].id')
    expect(refusal(command('setOwnProduct', { systemId, id: 'none', product: {} }))).toBe('no-such-part id')
    const dosed = done(richSpec, command('logDose', { systemId, at, product: 'spare-acid', amountG: 500 }))
    expect(refusal(command('removeOwnProduct', { systemId, id: 'spare-acid' }), dosed)).toBe('product-in-use id')
    const held = done(richSpec, command('holdInDevice', { systemId, deviceId: 'jug', product: 'spare-acid', at }))
    expect(refusal(command('removeOwnProduct', { systemId, id: 'spare-acid' }), held)).toBe('product-in-use id')
  })

  test('an own product goes with its stock, its prices and its place among the chosen products', () => {
    const used = done(
      richSpec,
      command('setStock', { systemId, product: 'shed-bleach', amountG: 5000 }),
      command('setProduct', { systemId, purpose: 'dailyChlorine', product: 'shed-bleach' }),
    )
    const [system] = done(used, command('removeOwnProduct', { systemId, id: 'shed-bleach' })).systems
    expect(JSON.stringify(system)).not.toContain('shed-bleach')
    const last = done(
      used,
      command('removeOwnProduct', { systemId, id: 'shed-bleach' }),
      command('removeOwnProduct', { systemId, id: 'spare-acid' }),
    )
    expect('ownProducts' in last.systems[0]!).toBe(false)
  })

  test('prices of packages that aren’t sold', () => {
    const price = (product: string, packageLabel: string, amount?: number) =>
      command('setPrice', { systemId, product, packageLabel, price: amount })
    expect(refusal(price('shed-bleach', '3 kg tin', 5))).toBe('price-without-package packageLabel')
    expect(refusal(price('moon-dust', '1 kg', 5))).toBe('no-such-part product')
    expect(refusal(price('boric-acid', '25 kg bag', -5))).toBe('out-of-range args.price')
    const [system] = done(richSpec, price('boric-acid', '25 kg bag'), price('shed-bleach', '20 L can')).systems
    expect('prices' in system!).toBe(false)
  })

  test('a device that held stabilised chlorine never takes unstabilised, nor the other way round, unless it is new', () => {
    const hold = (deviceId: string, product: string) => command('holdInDevice', { systemId, deviceId, product, at })
    expect(refusal(hold('float', 'cal-hypo-65'))).toBe('device-may-not-hold product')
    expect(refusal(hold('float', 'trichlor-tablet'))).toBe('ok')
    const feeder = { id: 'feeder', kind: 'feeder', name: 'Feeder', held: [] } as const
    const withNew = done(richSpec, command('addDevice', { systemId, device: { ...feeder, isNew: true } }))
    expect(refusal(hold('feeder', 'cal-hypo-tablet'), withNew)).toBe('ok')
    const afterTablets = done(withNew, hold('feeder', 'cal-hypo-tablet'))
    expect(refusal(hold('feeder', 'trichlor-tablet'), afterTablets)).toBe('device-may-not-hold product')
    const withOld = done(richSpec, command('addDevice', { systemId, device: { ...feeder, isNew: false } }))
    expect(refusal(hold('feeder', 'trichlor-tablet'), withOld)).toBe('device-history-unknown product')
    // An own product is known by its substance.
    const bleach = done(richSpec, hold('jug', 'shed-bleach'))
    expect(refusal(hold('jug', 'dichlor'), bleach)).toBe('device-may-not-hold product')
    // What nobody can tell is asked for, not guessed.
    expect(refusal(hold('jug', 'moon-dust'))).toBe('device-history-unknown product')
    expect(refusal(hold('jug', 'constructor'))).toBe('device-history-unknown product')
    const odd = [{ product: 'moon-dust', at }]
    const withOdd = done(richSpec, command('setDevice', { systemId, deviceId: 'jug', device: { held: odd } }))
    expect(refusal(hold('jug', 'dry-acid'), withOdd)).toBe('device-history-unknown product')
    expect(refusal(hold('jug', 'salt'), withOdd)).toBe('ok')
    expect(refusal(hold('nowhere', 'salt'))).toBe('no-such-part deviceId')
    expect(refusal(command('addDevice', { systemId, device: { ...feeder, id: 'jug', isNew: true } }))).toBe(
      'same-id systems[0].equipment.devices[2].id',
    )
  })

  test('values that a start doesn’t ask for, or that can’t be', () => {
    const value = (key: string, amount: number | undefined) =>
      command('setStartValue', { systemId, key, value: amount })
    expect(refusal(value('moonPhase', 3))).toBe('start-value-unknown values.moonPhase')
    expect(refusal(value('bathers', -3))).toBe('start-value-out values.bathers')
    expect(refusal(value('bathers', 3), demoSpec)).toBe('start-not-chosen key')
    expect(refusal(command('setStart', { systemId, mode: 'party', at, values: { bathers: 1e6 } }))).toBe(
      'start-value-out values.bathers',
    )
    expect(refusal(command('setStart', { systemId, mode: 'leap', at }))).toBe('no-such-start args.mode')
    const [system] = done(richSpec, value('bathers', undefined)).systems
    expect(system?.start).toEqual({ mode: 'party', at: '2026-05-02T20:00:00-07:00' })
  })

  test('rules: the last that goes leaves none behind, and what isn’t named stays', () => {
    const ruled = done(richSpec, command('setRules', { profile: 'who-2006', chlorineFloorMgPerL: 2 }))
    expect(done(ruled, command('setRules', { profile: undefined })).site.rules).toEqual({ chlorineFloorMgPerL: 2 })
    const bare = done(ruled, command('setRules', { profile: undefined, chlorineFloorMgPerL: undefined }))
    expect('rules' in bare.site).toBe(false)
    expect(refusal(command('setRules', { profile: 'nobody' }))).toBe('no-such-rules args.profile')
  })
})

const words = fc.string({ minLength: 1, maxLength: 20 })
const amount = fc.double({ min: 0, max: 1e5, noNaN: true })
const above = fc.double({ min: 1e-3, max: 1e5, noNaN: true })
const moment = fc
  .date({ min: new Date(0), max: new Date('2199-01-01'), noInvalidDate: true })
  .map((d) => d.toISOString())
const label = fc.record(
  {
    label: words,
    like: fc.constant('liquid-chlorine-12'),
    strength: fc.double({ min: 1, max: 14, noNaN: true }),
    basis: fc.constant('trade-percent'),
    densityKgPerL: fc.double({ min: 1, max: 1.5, noNaN: true }),
    packages: fc.array(fc.record({ label: words, massG: above, price: amount }), { minLength: 1, maxLength: 3 }),
    openedAt: moment,
    boughtAt: moment,
    storedC: fc.double({ min: -10, max: 50, noNaN: true }),
  },
  { requiredKeys: ['label', 'like', 'strength', 'basis'] },
)
const held = fc.array(fc.record({ product: words, at: moment }), { maxLength: 3 })
const device = fc.record({
  kind: fc.constantFrom('feeder', 'skimmer', 'floater', 'bucket'),
  name: words,
  isNew: fc.boolean(),
  held,
})
const numbered = <T extends object>(list: readonly T[], prefix: string) =>
  list.map((each, i) => ({ id: `${prefix}${i}`, ...each }))
const people = fc.record(
  {
    pH: fc.double({ min: 5, max: 10, noNaN: true }),
    tc_mg_per_L_as_Cl2: amount,
    cc_mg_per_L_as_Cl2: amount,
    th_mg_per_L_as_CaCO3: amount,
    copper_mg_per_L: amount,
    iron_mg_per_L: amount,
    manganese_mg_per_L: amount,
    conductivity_uS_per_cm: amount,
    tds_mg_per_L: amount,
  },
  { requiredKeys: [] },
)
const owned = fc.record({
  ownProducts: fc.array(label, { minLength: 1, maxLength: 3 }).map((list) => numbered(list, 'own')),
  prices: fc.array(fc.record({ product: words, packageLabel: words, price: amount }), { minLength: 1, maxLength: 3 }),
  currency: fc.string({ minLength: 1, maxLength: 12 }),
  start: fc.record({
    mode: fc.constantFrom(...START_MODES.rows.map(({ id }) => id)),
    at: moment,
    values: fc.dictionary(fc.stringMatching(/^[a-zA-Z]{1,12}$/), fc.double({ noNaN: true, noDefaultInfinity: true })),
  }),
})

describe('a document with all that an owner has', () => {
  test('goes through JSON and a link to the last digit', () => {
    const choice = fc.record({
      objective: fc.constantFrom('fewest-products', 'cheapest', 'least-salt'),
      dosing: fc.constantFrom('reckoned', 'whole-packages'),
      chlorineConstants: fc.constantFrom('obrien', 'wahman'),
    })
    const rules = fc.record({
      profile: fc.constantFrom(...RULES.rows.map(({ id }) => id)),
      chlorineFloorMgPerL: fc.double({ min: 0, max: 100, noNaN: true }),
      chlorineCeilingMgPerL: fc.double({ min: 0, max: 100, noNaN: true }),
    })
    fc.assert(
      fc.property(
        owned,
        choice,
        rules,
        people,
        fc.array(device, { minLength: 1, maxLength: 3 }),
        words,
        (own, regime, siteRules, values, devices, line) => {
          const [system] = demoSpec.systems
          const written = {
            ...demoSpec,
            site: { ...demoSpec.site, rules: siteRules },
            systems: [
              {
                ...system!,
                ...own,
                regime: { ...system!.regime, ...regime },
                equipment: { ...system!.equipment, devices: numbered(devices, 'device') },
                water: { ...system!.water, readings: [{ at, method: 'strip', values }] },
                log: [{ kind: 'note', id: 'n', at, text: '', line }],
              },
            ],
          } as Spec
          const plain = JSON.parse(JSON.stringify(written))
          const checked = validateSpec(written)
          if (!checked.ok) throw new Error(JSON.stringify(checked.problem))
          expect(JSON.parse(JSON.stringify(checked.value))).toEqual(plain)
          const read = fromJson(toJson(checked.value))
          expect(read.ok && JSON.parse(JSON.stringify(read.value))).toEqual(plain)
          const linked = specFromLink(linkOf(checked.value, 'https://pools.example/'))
          expect(linked.ok && toJson(linked.value)).toBe(toJson(checked.value))
        },
      ),
      { seed: SEED, numRuns: 200 },
    )
  })

  test('has nothing in it that a fresh document has: the demonstration’s text and link are as they were', () => {
    const text = toJson(demoSpec)
    for (const key of ['ownProducts', 'prices', 'currency', 'devices', 'objective', 'dosing', 'chlorineConstants'])
      expect(text).not.toContain(`"${key}"`)
    expect(toJson(validateSpecOf(demoSpec))).toBe(text)
  })

  test('a tick is a note that names its line: a reader that knows no ticks still reads the note', () => {
    const ticked = done(demoSpec, command('tickLine', { systemId, line: 'circulate', at, text: 'Pump on.' }))
    const entry = ticked.systems[0]?.log.find((each) => each.kind === 'note' && each.line === 'circulate')
    expect(entry).toMatchObject({ kind: 'note', text: 'Pump on.' })
    // The same tick on another day stands beside it.
    const twice = done(
      ticked,
      command('tickLine', { systemId, line: 'circulate', at: '2026-05-04T09:00:00Z', text: 'On.' }),
    )
    expect(twice.systems[0]?.log.filter((each) => each.kind === 'note' && each.line === 'circulate')).toHaveLength(2)
    const reworded = done(ticked, command('setLog', { systemId, id: entry!.id, entry: { text: 'Pump on at nine.' } }))
    expect(reworded.systems[0]?.log.find(({ id }) => id === entry!.id)).toMatchObject({ line: 'circulate' })
  })
})

function validateSpecOf(spec: Spec): Spec {
  const result = validateSpec(JSON.parse(JSON.stringify(spec)))
  if (!result.ok) throw new Error(result.problem[0]!.what)
  return result.value
}
