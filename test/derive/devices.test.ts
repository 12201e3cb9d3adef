import { describe, expect, test } from 'vitest'
import { deriveDevices, deriveMayHold, deriveOpening, deriveUpkeep } from '../../src/derive/index.ts'
import { type DeviceEntry, demoSpec, fromJson, type Spec, toJson } from '../../src/document/index.ts'
import { edited } from './edited.ts'

const NOW = Date.parse('2026-06-01T12:00:00Z')
const systemId = 'pool'
const at = '2026-05-01T09:00:00Z'
const bleach = {
  id: 'bleach',
  label: 'Liquid chlorine of the shed',
  like: 'liquid-chlorine-12',
  strength: 12.5,
  basis: 'trade-percent',
} as const

/** The pool with one device that has held these, as a file may say it. */
const withDevice = (kind: DeviceEntry['kind'], isNew: boolean, ...held: readonly string[]): Spec => {
  const spec = edited(
    demoSpec,
    { id: 'addOwnProduct', args: { systemId, product: bleach } },
    { id: 'addDevice', args: { systemId, device: { id: 'it', kind, name: 'The old one', isNew, held: [] } } },
  )
  const [system] = spec.systems
  const devices = system!.equipment.devices!.map((device) => ({
    ...device,
    held: held.map((product) => ({ product, at })),
  }))
  const opened = fromJson(toJson({ ...spec, systems: [{ ...system!, equipment: { ...system!.equipment, devices } }] }))
  if (!opened.ok) throw new Error(JSON.stringify(opened.problem))
  return opened.value
}
const answer = (spec: Spec, product: string) => deriveMayHold(spec, systemId, 'it', product)?.answer

describe('whether a device may hold a product', () => {
  test.each([
    ['feeder', true, [], 'trichlor-tablet', 'may'],
    ['feeder', false, [], 'trichlor-tablet', 'ask'],
    ['feeder', true, ['cal-hypo-tablet'], 'trichlor-tablet', 'never'],
    ['feeder', true, ['trichlor-tablet'], 'cal-hypo-tablet', 'never'],
    ['bucket', true, ['bleach'], 'dichlor', 'never'],
    ['bucket', true, ['dichlor'], 'bleach', 'never'],
    ['bucket', true, ['muriatic-acid-31'], 'bleach', 'never'],
    ['skimmer', true, [], 'cal-hypo-65', 'never'],
    ['bucket', true, ['salt'], 'boric-acid', 'may'],
    ['bucket', true, [], 'moon-dust', 'ask'],
  ] as const)('%s, new: %s, after %j: %s → %s', (kind, isNew, held, product, expected) => {
    expect(answer(withDevice(kind, isNew, ...held), product)).toBe(expected)
  })

  test('a device that isn’t there gives no answer', () => {
    expect(deriveMayHold(demoSpec, systemId, 'it', 'salt')).toBeUndefined()
    expect(deriveMayHold(demoSpec, 'nowhere', 'it', 'salt')).toBeUndefined()
  })

  test('a product of the owner is known by its substance, whatever its label says', () => {
    const spec = withDevice('bucket', true, 'bleach')
    const odd = edited(spec, { id: 'setOwnProduct', args: { systemId, id: 'bleach', product: { strength: 95 } } })
    expect(answer(odd, 'dichlor')).toBe('never')
  })
})

describe('a device that has held what must not meet', () => {
  test('is warned of however that came into the document, in the plan too', () => {
    for (const held of [
      ['trichlor-tablet', 'cal-hypo-tablet'],
      ['cal-hypo-tablet', 'trichlor-tablet'],
    ]) {
      const spec = withDevice('feeder', true, ...held)
      const [notice, ...more] = deriveDevices(spec, systemId)
      expect(more).toEqual([])
      expect(notice).toMatchObject({ code: 'device-has-held', path: 'systems[0].equipment.devices[0].held' })
      expect(notice?.what).toContain('The old one')
      expect(notice?.why).toContain('Stabilised and unstabilised chlorine must never meet')
      const plan = deriveOpening(spec, systemId, NOW)
      expect(plan.ok && plan.value.warnings[0]).toContain('The old one has held what must never be in it')
      const weekly = deriveUpkeep(spec, systemId, NOW)
      expect(weekly.ok && weekly.value.warnings[0]).toContain('The old one has held what must never be in it')
    }
  })

  test('is warned of with an own product whose strength can’t be', () => {
    const spec = edited(withDevice('bucket', false, 'bleach', 'dichlor'), {
      id: 'setOwnProduct',
      args: { systemId, id: 'bleach', product: { strength: 95 } },
    })
    expect(deriveDevices(spec, systemId)).toHaveLength(1)
  })

  test('is not warned of where its contents agree, nobody knows them, or there is none', () => {
    expect(deriveDevices(withDevice('floater', false, 'trichlor-tablet', 'trichlor-tablet'), systemId)).toEqual([])
    expect(deriveDevices(withDevice('bucket', false, 'moon-dust', 'dichlor'), systemId)).toEqual([])
    expect(deriveDevices(withDevice('bucket', false), systemId)).toEqual([])
    expect(deriveDevices(demoSpec, 'nowhere')).toEqual([])
    const plan = deriveOpening(demoSpec, systemId, NOW)
    expect(plan.ok && plan.value.warnings.some((words) => words.includes('has held'))).toBe(false)
  })

  test('is warned of where its kind is never for a product', () => {
    const [notice] = deriveDevices(withDevice('skimmer', false, 'cal-hypo-65'), systemId)
    expect(notice?.why).toContain('skimmer')
  })
})

describe('a daily chlorine that its feeder must not hold', () => {
  const fedWith = (
    dailyChlorine: string,
    kind: DeviceEntry['kind'],
    isNew: boolean,
    ...held: readonly string[]
  ): Spec => {
    const spec = withDevice(kind, isNew, ...held)
    const [system] = spec.systems
    const products = { ...system!.regime.products, dailyChlorine }
    return { ...spec, systems: [{ ...system!, regime: { ...system!.regime, products } }] }
  }
  const first = (spec: Spec) => {
    const opening = deriveOpening(spec, systemId, NOW)
    const upkeep = deriveUpkeep(spec, systemId, NOW)
    if (!opening.ok || !upkeep.ok) throw new Error('no plan')
    return { opening: opening.value.warnings[0], upkeep: upkeep.value.warnings[0], blocked: upkeep.value.blocked }
  }

  test.each([
    ['cal-hypo-tablet', 'trichlor-tablet'],
    ['trichlor-tablet', 'cal-hypo-tablet'],
  ])('%s after %s: plan and upkeep say so before anything else', (product, held) => {
    const said = first(fedWith(product, 'feeder', false, held))
    for (const words of [said.opening, said.upkeep, said.blocked?.[0]]) {
      expect(words).toContain('into The old one')
      expect(words).toContain('must never meet')
      expect(words).toContain('Take a new one')
    }
  })

  test('a new one, and one that always held the same, is not spoken of', () => {
    expect(first(fedWith('cal-hypo-tablet', 'feeder', true)).blocked).toBeUndefined()
    expect(first(fedWith('cal-hypo-tablet', 'feeder', false, 'cal-hypo-tablet')).blocked).toBeUndefined()
  })

  test('one that is not new and whose history nobody knows has to be found out about first', () => {
    expect(first(fedWith('cal-hypo-tablet', 'feeder', false)).opening).toContain('find out')
  })

  test('a line that is dissolved first says which bucket must not hold it', () => {
    const plan = deriveOpening(withDevice('bucket', false, 'trichlor-tablet'), systemId, NOW)
    if (!plan.ok) throw new Error('no plan')
    const chlorine = plan.value.lines.find((line) => line.kind === 'dose' && line.purpose === 'openingChlorine')
    const salty = plan.value.lines.find((line) => line.kind === 'dose' && line.purpose === 'alkalinity')
    expect(chlorine?.cautions[0]).toContain('into The old one')
    expect(salty?.cautions[0] ?? '').not.toContain('The old one')
  })
})
