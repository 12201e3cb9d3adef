import { expect } from 'vitest'
import type { Spec } from '../../src/document/index.ts'
import type { SAMPLES } from './command-samples.ts'

type OwnerCommand =
  | 'addOwnProduct'
  | 'setOwnProduct'
  | 'removeOwnProduct'
  | 'setPrice'
  | 'setCurrency'
  | 'addDevice'
  | 'setDevice'
  | 'removeDevice'
  | 'holdInDevice'
  | 'setStart'
  | 'setStartValue'
  | 'clearStart'
  | 'tickLine'
  | 'setRules'

const at = '2026-05-03T09:00:00-07:00'
const system = (spec: Spec) => spec.systems[0]!
const own = (spec: Spec) => system(spec).ownProducts ?? []
const devices = (spec: Spec) => system(spec).equipment.devices ?? []

/** A sample of each edit of what an owner has: products, prices, devices, a start, ticks and rules. */
export const OWNER_SAMPLES: Pick<typeof SAMPLES, OwnerCommand> = {
  addOwnProduct: [
    {
      systemId: 'pool',
      product: {
        id: 'lake-calcium',
        label: 'Calcium of the lake',
        like: 'calcium-chloride-flake',
        strength: 77,
        basis: 'percent-by-mass',
        packages: [{ label: '10 kg pail', massG: 10_000, price: 14 }],
      },
    },
    (after) => {
      expect(own(after).map(({ id }) => id)).toEqual(['shed-bleach', 'spare-acid', 'lake-calcium'])
      expect(own(after)[2]?.packages).toEqual([{ label: '10 kg pail', massG: 10_000, price: 14 }])
    },
  ],
  setOwnProduct: [
    {
      systemId: 'pool',
      id: 'shed-bleach',
      product: { strength: 10, openedAt: undefined, packages: [{ label: '10 L can', massG: 11_600 }] },
    },
    (after) => {
      expect(own(after)[0]).toMatchObject({ strength: 10, boughtAt: '2026-04-01T09:00:00Z' })
      expect('openedAt' in own(after)[0]!).toBe(false)
      // The price was of a package that is gone.
      expect(system(after).prices?.map(({ product }) => product)).toEqual(['boric-acid'])
    },
  ],
  removeOwnProduct: [
    { systemId: 'pool', id: 'shed-bleach' },
    (after) => {
      expect(own(after).map(({ id }) => id)).toEqual(['spare-acid'])
      expect(system(after).prices?.map(({ product }) => product)).toEqual(['boric-acid'])
      expect(system(after).stock.some(({ product }) => product === 'shed-bleach')).toBe(false)
      expect(system(after).regime.products).toEqual({ acid: 'dry-acid' })
    },
  ],
  setPrice: [
    { systemId: 'pool', product: 'shed-bleach', packageLabel: '20 L can', price: 29 },
    (after) => expect(system(after).prices?.at(-1)).toMatchObject({ product: 'shed-bleach', price: 29 }),
  ],
  setCurrency: [{ systemId: 'pool' }, (after) => expect('currency' in system(after)).toBe(false)],
  addDevice: [
    {
      systemId: 'pool',
      device: { id: 'feeder', kind: 'feeder', name: 'Feeder', isNew: false, held: [{ product: 'unknown-to-us', at }] },
    },
    (after) => expect(devices(after).map(({ id }) => id)).toEqual(['jug', 'float', 'feeder']),
  ],
  setDevice: [
    { systemId: 'pool', deviceId: 'jug', device: { isNew: false, held: [{ product: 'salt', at }] } },
    (after) =>
      expect(devices(after)[0]).toEqual({
        id: 'jug',
        kind: 'bucket',
        name: 'Blue bucket',
        isNew: false,
        held: [{ product: 'salt', at }],
      }),
  ],
  removeDevice: [
    { systemId: 'pool', deviceId: 'jug' },
    (after) => expect(devices(after).map(({ id }) => id)).toEqual(['float']),
  ],
  holdInDevice: [
    { systemId: 'pool', deviceId: 'jug', product: 'shed-bleach', at },
    (after) => expect(devices(after)[0]?.held).toEqual([{ product: 'shed-bleach', at }]),
  ],
  setStart: [
    { systemId: 'pool', mode: 'new-plaster', at },
    // What was told stays: another start may ask for the same.
    (after) => expect(system(after).start).toEqual({ mode: 'new-plaster', at, values: { bathers: 12 } }),
  ],
  setStartValue: [
    { systemId: 'pool', key: 'hours', value: 2.5 },
    (after) => expect(system(after).start?.values).toEqual({ bathers: 12, hours: 2.5 }),
  ],
  clearStart: [{ systemId: 'pool' }, (after) => expect('start' in system(after)).toBe(false)],
  tickLine: [
    { systemId: 'pool', line: 'circulate', at, text: 'Pump on.' },
    (after) =>
      expect(system(after).log.at(-1)).toEqual({
        kind: 'note',
        id: 'entry-3',
        at,
        text: 'Pump on.',
        line: 'circulate',
      }),
  ],
  setRules: [
    { profile: 'us-model-code', chlorineCeilingMgPerL: 4 },
    (after) => expect(after.site.rules).toEqual({ profile: 'us-model-code', chlorineCeilingMgPerL: 4 }),
  ],
}
