import { logKAt } from '../../src/water/constants.ts'
import {
  addTotals,
  atTemperature,
  CONSTANT_SETS,
  type Constants,
  concentrate,
  type Delta,
  type Equilibrium,
  equilibrate,
  equilibrateAtPH,
  equilibrateOpen,
  formulaDelta,
  MG_CACO3_PER_EQ,
  mix,
  PURE_WATER,
  type ReactionId,
  readingOf,
  type Species,
  scaleDelta,
  strongIonChargeEq,
  sumDeltas,
  TOTAL_KEYS,
  type Totals,
  totalsOf,
  type WaterReading,
} from '../../src/water/index.ts'
import { good } from './golden.ts'
import type { Water } from './waters.ts'

/** One water solved with one set of constants, with another to blend with. */
export interface Cell {
  readonly reading: WaterReading
  readonly totals: Totals
  readonly e: Equilibrium
  readonly constants: Constants
  readonly other: Totals
}

/** An identity holds where |left − right| ≤ 1e-9 scale + 1e-16. */
export type Gap = readonly [what: string, left: number, right: number, scale: number]
export type Identity = (cell: Cell) => readonly Gap[]

export function cellOf(water: Water, other: Water, constants: Constants): Cell {
  const totals = good(totalsOf(water.reading, constants))
  return {
    reading: water.reading,
    totals,
    e: good(equilibrate(totals, constants)),
    constants,
    other: good(totalsOf(other.reading, constants)),
  }
}

export const SETS = Object.entries(CONSTANT_SETS)

const CHARGES: Partial<Record<keyof Species, number>> = {
  h: 1,
  oh: -1,
  hco3: -1,
  co3: -2,
  ca: 2,
  mg: 2,
  na: 1,
  k: 1,
  li: 1,
  cl: -1,
  so4: -2,
  hso4: -1,
  caHco3: 1,
  caOh: 1,
  mgHco3: 1,
  mgOh: 1,
  naSo4: -1,
  kSo4: -1,
  boh4: -1,
  ocl: -1,
  h2cy: -1,
  hcy2: -2,
  cy3: -3,
  hclcy: -1,
  clcy2: -2,
  cl2cy: -1,
}

const sum = (s: Species, weights: Partial<Record<keyof Species, number>>) =>
  Object.entries(weights).reduce((total, [key, weight]) => total + weight * s[key as keyof Species], 0)
const same = (what: string, left: number, right: number): Gap => [
  what,
  left,
  right,
  Math.max(Math.abs(left), Math.abs(right)),
]
const kOf = ({ constants, e }: Cell, id: ReactionId) =>
  10 ** logKAt(constants.reactions[id].logK, e.temperatureC + 273.15)
const gamma = ({ e }: Cell, key: keyof Equilibrium['logGammas']) => 10 ** e.logGammas[key]
/** Activity of water, 1 − 0.017 Σ m (Garrels & Christ 1965). */
const waterActivity = ({ e }: Cell) => 1 - 0.017 * Object.values(e.species).reduce((total, mol) => total + mol, 0)

const sameTotals = (left: Totals, right: Totals, scale: Totals = left): readonly Gap[] => [
  ...TOTAL_KEYS.map(
    (key): Gap => [
      key,
      left[key] ?? 0,
      right[key] ?? 0,
      Math.max(Math.abs(scale[key] ?? 0), Math.abs(left[key] ?? 0), Math.abs(right[key] ?? 0)),
    ],
  ),
  ['temperature', left.temperatureC, right.temperatureC, 60],
]
const pHOf = (totals: Totals, constants: Constants) => good(equilibrate(totals, constants)).pH
const samePH = (left: number, right: number): Gap => ['pH', left, right, 10]

const ACID = scaleDelta(formulaDelta('HCl')!, 2e-5)
const SODA = scaleDelta(formulaDelta('Na2CO3')!, 3e-4)
/** Sodium hypochlorite. */
const CHLORINE: Delta = { alkalinityEq: 4e-5, sodiumMol: 4e-5, chlorineMol: 4e-5 }
const PART: Delta = sumDeltas([SODA, CHLORINE])

/** What must hold in every water, whatever is in it. */
export const IDENTITIES: Readonly<Record<string, Identity>> = {
  'charge: the ions of the solution sum to none': ({ e }) => [
    [
      'charge',
      sum(e.species, CHARGES),
      0,
      sum(e.species, { cl: 1, na: 1, ca: 2, mg: 2, hco3: 1, so4: 2, h: 1, oh: 1 }),
    ],
  ],
  'charge: the strong ions carry exactly the alkalinity': ({ totals }) => [
    [
      'alkalinity',
      strongIonChargeEq(totals),
      totals.alkalinityEq,
      totals.chlorideMol + totals.sulfateMol + Math.abs(totals.alkalinityEq),
    ],
  ],
  'mass: species sum to each conserved total': ({ totals, e: { species: s } }) => [
    same(
      'carbon',
      sum(s, { co2: 1, hco3: 1, co3: 1, caHco3: 1, caCo3: 1, mgHco3: 1, mgCo3: 1, naHco3: 1 }),
      totals.carbonMol,
    ),
    same('calcium', sum(s, { ca: 1, caHco3: 1, caCo3: 1, caSo4: 1, caOh: 1 }), totals.calciumMol),
    same('magnesium', sum(s, { mg: 1, mgHco3: 1, mgCo3: 1, mgSo4: 1, mgOh: 1 }), totals.magnesiumMol),
    same('sodium', sum(s, { na: 1, naHco3: 1, naSo4: 1 }), totals.sodiumMol),
    same('potassium', sum(s, { k: 1, kSo4: 1 }), totals.potassiumMol),
    same('sulfate', sum(s, { so4: 1, hso4: 1, caSo4: 1, mgSo4: 1, naSo4: 1, kSo4: 1 }), totals.sulfateMol),
    same('chloride', s.cl, totals.chlorideMol),
    same('boron', sum(s, { boh3: 1, boh4: 1 }), totals.boronMol),
    same(
      'cyanurate',
      sum(s, { h3cy: 1, h2cy: 1, hcy2: 1, cy3: 1, h2clcy: 1, hclcy: 1, clcy2: 1, hcl2cy: 1, cl2cy: 1, cl3cy: 1 }),
      totals.cyanurateMol,
    ),
    same(
      'chlorine',
      sum(s, { hocl: 1, ocl: 1, h2clcy: 1, hclcy: 1, clcy2: 1, hcl2cy: 2, cl2cy: 2, cl3cy: 3 }),
      totals.chlorineMol,
    ),
  ],
  'mass action: each acid and its ion': (cell) => {
    const { species: s, pH } = cell.e
    const h = 10 ** -pH
    const g0 = gamma(cell, 'neutral')
    const g1 = gamma(cell, 'monovalent')
    const acid = (id: ReactionId, acidMol: number, baseMol: number, gAcid = g0, gBase = g1) =>
      same(id, h * baseMol * gBase, kOf(cell, id) * acidMol * gAcid)
    return [
      same('bicarbonate', h * gamma(cell, 'co3') * s.co3 * kOf(cell, 'bicarbonate'), gamma(cell, 'hco3') * s.hco3),
      same('hydrogen', s.h * gamma(cell, 'h'), h),
      acid('hypochlorousAcid', s.hocl, s.ocl),
      acid('boricAcid', s.boh3, s.boh4),
      acid('k6', s.h3cy, s.h2cy),
      acid('k10', s.h2cy, s.hcy2, g1, g1 ** 4),
      acid('k12', s.hcy2, s.cy3, g1 ** 4, g1 ** 9),
      acid('k4', s.h2clcy, s.hclcy),
      acid('k8', s.hclcy, s.clcy2, g1, g1 ** 4),
      acid('k2', s.hcl2cy, s.cl2cy),
    ]
  },
  'mass action: chlorine leaves the ring by one constant each': (cell) => {
    const { species: s } = cell.e
    const off = (id: ReactionId, ring: number, chlorinated: number) =>
      same(id, ring * s.hocl * gamma(cell, 'neutral'), kOf(cell, id) * chlorinated * waterActivity(cell))
    return [off('k9a', s.h2cy, s.hclcy), off('k7a', s.hclcy, s.cl2cy), off('k1a', s.hcl2cy, s.cl3cy)]
  },
  // O'Brien, Morris & Butler's own cycles: two ways round give one hydrolysis constant
  'closure: the three cycles of chlorine and cyanurate': (cell) => {
    const { species: s } = cell.e
    const k = (id: ReactionId) => kOf(cell, id)
    const g0 = gamma(cell, 'neutral')
    const round = (what: string, ring: number, chlorinated: number, constant: number) =>
      same(what, ring * s.hocl * g0, constant * chlorinated * waterActivity(cell))
    return [
      round('H2ClCy to H3Cy', s.h3cy, s.h2clcy, (k('k4') * k('k9a')) / k('k6')),
      round('ClCy to HCy', s.hcy2, s.clcy2, (k('k9a') * k('k10')) / k('k8')),
      round('HCl2Cy to H2ClCy', s.h2clcy, s.hcl2cy, (k('k2') * k('k7a')) / k('k4')),
    ]
  },
  'index: calcite’s is the logarithm of its activity product': (cell) => {
    const { species: s, calciteSI } = cell.e
    if (s.ca === 0 || s.co3 <= 0) return [['no index', Number(calciteSI === Number.NEGATIVE_INFINITY), 1, 1]]
    return [
      [
        'calcite',
        calciteSI,
        Math.log10((s.ca * gamma(cell, 'ca') * s.co3 * gamma(cell, 'co3')) / kOf(cell, 'calcite')),
        10,
      ],
    ]
  },
  'sign: an index above zero is an activity product above the constant': (cell) => {
    const { species: s, calciteSI } = cell.e
    const product = s.ca * gamma(cell, 'ca') * s.co3 * gamma(cell, 'co3')
    return [['sign', Number(calciteSI > 0), Number(product > kOf(cell, 'calcite')), 1]]
  },
  'sum: the alkalinity parts are the alkalinity': ({ totals, e: { alkalinity: a } }) => {
    const parts = [a.carbonate, a.borate, a.cyanurate, a.chlorinatedCyanurate, a.hypochlorite, a.hydroxide]
    const scale = parts.reduce((total, part) => total + Math.abs(part), 0)
    return [
      ['parts', parts.reduce((total, part) => total + part, 0), a.total, scale],
      ['total', a.total, totals.alkalinityEq * MG_CACO3_PER_EQ, scale],
    ]
  },
  'sum: active, hypochlorite and bound chlorine are free chlorine': ({ totals, e }) => [
    same('chlorine', e.activeChlorineMgPerL + e.hypochloriteMgPerL + e.boundChlorineMgPerL, totals.chlorineMol * 70906),
  ],
  'reading: a reading survives the way to totals and back': ({ reading, totals, e }) =>
    Object.entries(readingOf(totals, e)).map(([key, value]): Gap => {
      const read = reading[key as keyof WaterReading] ?? (key === 'temperature_C' ? 25 : 0)
      return [key, value, read, Math.max(10, Math.abs(read))]
    }),
  'reading: pH to state to pH returns': ({ totals, e, constants }) => {
    const held = good(equilibrateAtPH(totals, e.pH, constants))
    return [
      samePH(held.equilibrium.pH, e.pH),
      ['carbon', held.totals.carbonMol, totals.carbonMol, totals.carbonMol + Math.abs(totals.alkalinityEq)],
    ]
  },
  'speciation leaves the totals alone': ({ totals, constants }) => {
    const copy = structuredClone(totals)
    const { residual } = good(equilibrate(copy, constants))
    return [
      ...sameTotals(copy, totals).map(([what, left, right]): Gap => [what, left, right, 0]),
      ['residual', residual, 0, 1e-3],
    ]
  },
  'linear: a dose of a + b is a then b, in either order, and can be undone': ({ totals, constants }) => {
    const once = addTotals(totals, sumDeltas([ACID, SODA]))
    const there = addTotals(addTotals(totals, ACID), SODA)
    const back = addTotals(addTotals(totals, SODA), ACID)
    const undone = addTotals(once, scaleDelta(sumDeltas([ACID, SODA]), -1))
    return [
      ...sameTotals(there, once),
      ...sameTotals(back, once),
      ...sameTotals(undone, totals, once),
      samePH(pHOf(there, constants), pHOf(once, constants)),
      samePH(pHOf(back, constants), pHOf(once, constants)),
    ]
  },
  'linear: half a dose twice is the dose': ({ totals, constants }) => {
    const once = addTotals(totals, PART)
    const twice = addTotals(addTotals(totals, scaleDelta(PART, 0.5)), scaleDelta(PART, 0.5))
    return [...sameTotals(twice, once), samePH(pHOf(twice, constants), pHOf(once, constants))]
  },
  'linear: blending commutes, nests, and keeps a water blended with itself': ({ totals: a, other: b, constants }) => [
    ...sameTotals(mix(a, b, 0.3), mix(b, a, 0.7)),
    ...sameTotals(mix(mix(a, b, 0.5), b, 0.5), mix(a, b, 0.75)),
    ...sameTotals(mix(a, a, 0.4), a),
    ...sameTotals(addTotals(mix(a, b, 0.3), PART), mix(addTotals(a, PART), addTotals(b, PART), 0.3)),
    samePH(pHOf(mix(a, b, 0.3), constants), pHOf(mix(b, a, 0.7), constants)),
  ],
  'linear: evaporation then dilution returns': ({ totals, e, constants }) => {
    const back = concentrate(concentrate(totals, 1.7), 1 / 1.7)
    return [
      ...sameTotals(back, totals),
      ...sameTotals(mix(atTemperature(PURE_WATER, totals.temperatureC), concentrate(totals, 2), 0.5), totals),
      samePH(pHOf(back, constants), e.pH),
    ]
  },
  'linear: warming then cooling returns': ({ totals, e, constants }) => {
    const back = atTemperature(atTemperature(totals, 3), totals.temperatureC)
    return [...sameTotals(back, totals), samePH(pHOf(back, constants), e.pH)]
  },
  'air: it takes or gives CO2 alone, and the water answers with the air’s pressure': ({ totals, constants }) => {
    const open = good(equilibrateOpen(totals, -3.38, constants))
    const { carbonMol } = open.totals
    return [
      ...sameTotals({ ...open.totals, carbonMol: 0 }, { ...totals, carbonMol: 0 }),
      ['log pCO2', open.equilibrium.log10PCO2Atm, -3.38, 1],
      samePH(pHOf({ ...totals, carbonMol }, constants), open.equilibrium.pH),
    ]
  },
}

/** Where an identity does not hold in a water, with the reason; one that has become true fails the test. */
export const EXCEPTIONS: readonly { readonly water: string; readonly identity: string; readonly reason: string }[] = []
