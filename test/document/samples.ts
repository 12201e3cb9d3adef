import { boundsOf, type Path } from '../../src/basin/index.ts'
import { type Body, demoSpec, type Spec, type System } from '../../src/document/index.ts'

/** A 9 × 4 rectangle, counter-clockwise from the origin, its closing line left out. */
export const RECTANGLE: Path = { start: [0, 0], segments: [{ to: [9, 0] }, { to: [9, 4] }, { to: [0, 4] }] }

/** Two straight sides and two half circles, 10 × 4. */
export const STADIUM: Path = {
  start: [-3, -2],
  segments: [{ to: [3, -2] }, { to: [3, 2], bulge: 1 }, { to: [-3, 2] }, { to: [-3, -2], bulge: 1 }],
}

export const ISLAND: Path = { start: [5.5, 2], segments: [{ to: [6.5, 2] }, { to: [6, 3] }, { to: [5.5, 2] }] }

const demoBody = demoSpec.bodies[0]!

/** What an owner has besides: products from labels, prices, a start under way. */
const OWNED: Partial<System> = {
  ownProducts: [
    {
      id: 'shed-bleach',
      label: 'Liquid chlorine of the shed',
      like: 'liquid-chlorine-12',
      strength: 12.5,
      basis: 'trade-percent',
      densityKgPerL: 1.19,
      packages: [{ label: '20 L can', massG: 23_800 }],
      boughtAt: '2026-04-01T09:00:00Z',
      openedAt: '2026-04-20T09:00:00Z',
      storedC: 18,
    },
    { id: 'spare-acid', label: 'Spare acid', like: 'muriatic-acid-31', strength: 20, basis: 'percent-by-mass' },
  ],
  prices: [
    { product: 'boric-acid', packageLabel: '25 kg bag', price: 80 },
    { product: 'shed-bleach', packageLabel: '20 L can', price: 31.5 },
  ],
  currency: '€',
  start: { mode: 'party', at: '2026-05-02T20:00:00-07:00', values: { bathers: 12 } },
}

/** The demonstration pool with an island and every kind of feature, and beside it a sketch and a stadium. */
export const richSpec: Spec = {
  ...demoSpec,
  bodies: [
    {
      ...demoBody,
      islands: [ISLAND],
      features: [
        ...demoBody.features,
        {
          kind: 'steps',
          path: { start: [9.8, 1.5], segments: [{ to: [11.5, 1.5] }, { to: [11.5, 3.5] }, { to: [9.8, 3.5] }] },
          axis: { from: [11, 2.5], to: [9.8, 2.5] },
          treads: [
            [0, 0.3],
            [0.3, 0.6],
            [0.6, 0.9],
          ],
        },
      ],
    },
    {
      ...demoBody,
      id: 'sketch',
      outline: RECTANGLE,
      islands: [],
      features: [],
      sketch: { scaleSigma: 0.25 },
      depthsAssumed: true,
    },
    { ...demoBody, id: 'stadium', outline: STADIUM, islands: [], features: [], floor: { kind: 'flat', depthM: 1.4 } },
    {
      ...demoBody,
      id: 'hopper',
      outline: RECTANGLE,
      islands: [],
      floor: {
        kind: 'contours',
        edgeDepthM: 1.1,
        rings: [{ depthM: 2.3, path: { start: [4, 1], segments: [{ to: [7, 1] }, { to: [7, 3] }, { to: [4, 3] }] } }],
      },
      wall: { kind: 'battered', run: 0.1 },
      features: [
        { kind: 'bench', along: { fromSegment: 1, toSegment: 2 }, widthM: 0.45, depthM: 0.45 },
        {
          kind: 'ramp',
          path: { start: [0, 0], segments: [{ to: [2, 0] }, { to: [2, 4] }, { to: [0, 4] }] },
          axis: { from: [0, 2], to: [2, 2] },
          fromDepthM: 0,
          toDepthM: 0.6,
        },
        { kind: 'bench', path: { start: [3, 0], segments: [{ to: [4, 0] }, { to: [4, 0.5] }] }, depthM: 0.4 },
      ],
      tolerance: { planM: 0.02, depthM: 0.02, tapeScale: 0.002, datumM: 0.01 },
    },
    {
      ...demoBody,
      id: 'sounded',
      outline: RECTANGLE,
      islands: [],
      features: [],
      floor: {
        kind: 'soundings',
        edgeDepthM: null,
        points: [
          [2, 2, 1.2],
          [5, 1.5, 1.9],
          [7.5, 2.5, 2.2],
        ],
      },
    },
    {
      ...demoBody,
      id: 'dished',
      outline: STADIUM,
      islands: [],
      features: [],
      floor: { kind: 'dish', form: 'cap', centre: [0, 0], radiusM: 1.6, edgeDepthM: 1.3, depthM: 1.7 },
    },
  ],
  systems: demoSpec.systems.map((system) => ({
    ...system,
    water: { ...system.water, targets: { pH: { low: 7.2, aim: 7.4, high: 7.6 } } },
    regime: { ...system.regime, products: { acid: 'dry-acid' } },
    planStartAt: '2026-05-02T09:00:00-07:00',
    ...OWNED,
    equipment: {
      ...system.equipment,
      devices: [
        { id: 'jug', kind: 'bucket', name: 'Blue bucket', isNew: true, held: [] },
        {
          id: 'float',
          kind: 'floater',
          name: 'Old floater',
          isNew: true,
          held: [{ product: 'trichlor-tablet', at: '2025-07-01T08:00:00Z' }],
        },
      ],
    },
    log: [
      ...system.log,
      { kind: 'dose', id: 'd1', at: '2026-05-02T10:00:00-07:00', product: 'boric-acid', amountG: 5000 },
    ],
  })),
}

export const bodyOf = (spec: Spec, id = 'main'): Body => spec.bodies.find((body) => body.id === id)!

export const outline = { of: 'outline' } as const
export const main = { bodyId: 'main', ring: outline } as const

/** The stations of the first body's floor. */
export const stations = (spec: Spec) => {
  const { floor } = bodyOf(spec)
  return floor.kind === 'profile' ? floor.stations : []
}

/** Overall length and width. */
export const size = (path: Path) => {
  const box = boundsOf(path)
  return [box.maxX - box.minX, box.maxY - box.minY] as const
}
