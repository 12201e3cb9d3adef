import { describe, expect, test } from 'vitest'
import { logKAt } from '../../src/water/constants.ts'
import {
  addTotals,
  atTemperature,
  CONSTANT_SETS,
  concentrate,
  type Delta,
  type Equilibrium,
  equilibrate,
  equilibrateOpen,
  FORMULA_NAMES,
  formulaDelta,
  mix,
  PURE_WATER,
  type Species,
  scaleDelta,
  strongIonChargeEq,
  sumDeltas,
  TOTAL_KEYS,
  type Totals,
  type WaterReading,
} from '../../src/water/index.ts'
import { goldenRows, good, ORACLE, stateOf } from './golden.ts'

interface Water {
  readonly id: string
  readonly reading: WaterReading
}

/** Every starting water of the golden tables; a new row there joins the matrix by itself. */
const WATERS: readonly Water[] = [
  ...goldenRows('speciation').map(({ id, input }) => ({ id, reading: input })),
  ...goldenRows('dose_reactions').map(({ id, start }) => ({ id, reading: start })),
  ...goldenRows('blending').flatMap(({ id, input }) => [
    { id: `${id} pool`, reading: input.pool },
    ...(input.fill ? [{ id: `${id} fill`, reading: input.fill }] : []),
  ]),
  ...goldenRows('inverse').map(({ id, start }) => ({ id, reading: start })),
  ...goldenRows('first_fill').map(({ id, start }) => ({ id, reading: start })),
]

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

/** [left, right, scale]: an identity holds where |left − right| ≤ 1e-9 scale. */
type Identity = (totals: Totals, e: Equilibrium) => readonly (readonly [left: number, right: number, scale: number])[]

const same = (left: number, right: number) => [left, right, Math.max(Math.abs(left), Math.abs(right))] as const

/** Activity from molality for a pair of equal kind: only what `logGammas` publishes is used. */
const g = (e: Equilibrium, key: keyof Equilibrium['logGammas']) => 10 ** e.logGammas[key]
const kOf = (e: Equilibrium, id: keyof typeof ORACLE.reactions) =>
  10 ** logKAt(ORACLE.reactions[id].logK, e.temperatureC + 273.15)

const IDENTITIES: Readonly<Record<string, Identity>> = {
  'the ions of the solution sum to no charge': (_totals, { species }) => [
    [sum(species, CHARGES), 0, sum(species, { cl: 1, na: 1, ca: 2, hco3: 1 })],
  ],
  'the strong ions carry exactly the alkalinity': (totals) => [
    [strongIonChargeEq(totals), totals.alkalinityEq, totals.chlorideMol + Math.abs(totals.alkalinityEq)],
  ],
  'species sum to each conserved total': (totals, { species: s }) => [
    same(sum(s, { co2: 1, hco3: 1, co3: 1, caHco3: 1, caCo3: 1, mgHco3: 1, mgCo3: 1, naHco3: 1 }), totals.carbonMol),
    same(sum(s, { ca: 1, caHco3: 1, caCo3: 1, caSo4: 1, caOh: 1 }), totals.calciumMol),
    same(sum(s, { mg: 1, mgHco3: 1, mgCo3: 1, mgSo4: 1, mgOh: 1 }), totals.magnesiumMol),
    same(sum(s, { na: 1, naHco3: 1, naSo4: 1 }), totals.sodiumMol),
    same(sum(s, { so4: 1, hso4: 1, caSo4: 1, mgSo4: 1, naSo4: 1, kSo4: 1 }), totals.sulfateMol),
    same(sum(s, { boh3: 1, boh4: 1 }), totals.boronMol),
    same(
      sum(s, { h3cy: 1, h2cy: 1, hcy2: 1, cy3: 1, h2clcy: 1, hclcy: 1, clcy2: 1, hcl2cy: 1, cl2cy: 1, cl3cy: 1 }),
      totals.cyanurateMol,
    ),
    same(sum(s, { hocl: 1, ocl: 1, h2clcy: 1, hclcy: 1, clcy2: 1, hcl2cy: 2, cl2cy: 2, cl3cy: 3 }), totals.chlorineMol),
  ],
  'mass action holds for each weak acid': (_totals, e) => {
    const { species: s } = e
    const h = 10 ** -e.pH
    const g1 = g(e, 'monovalent')
    const g0 = g(e, 'neutral')
    const acid = (acidMol: number, baseMol: number, k: number) => same(h * baseMol * g1, k * acidMol * g0)
    return [
      same(h * g(e, 'co3') * s.co3 * kOf(e, 'bicarbonate'), g(e, 'hco3') * s.hco3),
      acid(s.hocl, s.ocl, kOf(e, 'hypochlorousAcid')),
      acid(s.boh3, s.boh4, kOf(e, 'boricAcid')),
      acid(s.h3cy, s.h2cy, kOf(e, 'k6')),
      acid(s.h2clcy, s.hclcy, kOf(e, 'k4')),
      acid(s.hcl2cy, s.cl2cy, kOf(e, 'k2')),
    ]
  },
  'taking chlorine off the ring obeys one constant, whatever the pH': (_totals, e) => {
    const { species: s } = e
    // the activity of water is the only thing between quotient and constant: above 0.995 in a pool
    const quotient = (ring: number, chlorinated: number, k: number) =>
      chlorinated === 0
        ? ([0, 0, 1] as const)
        : ([(ring * s.hocl * g(e, 'neutral')) / (chlorinated * k), 1, 5e6] as const)
    return [
      quotient(s.h2cy, s.hclcy, kOf(e, 'k9a')),
      quotient(s.hclcy, s.cl2cy, kOf(e, 'k7a')),
      quotient(s.hcl2cy, s.cl3cy, kOf(e, 'k1a')),
    ]
  },
  'the calcite index is the logarithm of the activity product': (_totals, e) => [
    [
      e.calciteSI,
      Math.log10(e.species.ca * g(e, 'ca') * e.species.co3 * g(e, 'co3')) - Math.log10(kOf(e, 'calcite')),
      1,
    ],
  ],
  'the alkalinity parts sum to the alkalinity': (totals, { alkalinity: a }) => [
    same(a.carbonate + a.borate + a.cyanurate + a.chlorinatedCyanurate + a.hypochlorite + a.hydroxide, a.total),
    same(a.total, totals.alkalinityEq * 50043.45),
  ],
  'active, hypochlorite and bound chlorine sum to free chlorine': (totals, e) => [
    same(e.activeChlorineMgPerL + e.hypochloriteMgPerL + e.boundChlorineMgPerL, totals.chlorineMol * 70906),
  ],
}

describe('consistency matrix', () => {
  test(`it spans ${WATERS.length} waters`, () => {
    expect(WATERS.length).toBeGreaterThan(100)
  })

  test.each(Object.entries(IDENTITIES))('%s', (_name, identity) => {
    for (const { id, reading } of WATERS) {
      const { totals, equilibrium } = stateOf(reading)
      for (const [left, right, scale] of identity(totals, equilibrium)) {
        expect(Math.abs(left - right), id).toBeLessThanOrEqual(1e-9 * scale + 1e-16)
      }
    }
  })

  test.each(WATERS)('solving $id leaves its totals alone, and the residual is rounding', ({ reading }) => {
    const { totals } = stateOf(reading)
    const before = structuredClone(totals)
    const { residual } = good(equilibrate(totals, ORACLE))
    expect(totals).toEqual(before)
    expect(residual).toBeLessThan(1e-12)
  })
})

const closeTotals = (a: Totals, b: Totals) => {
  for (const key of TOTAL_KEYS) {
    expect(Math.abs((a[key] ?? 0) - (b[key] ?? 0)), key).toBeLessThanOrEqual(1e-15 + 1e-12 * Math.abs(a[key] ?? 0))
  }
  expect(a.temperatureC).toBeCloseTo(b.temperatureC, 12)
}

const PART: Delta = { alkalinityEq: 2e-4, carbonMol: 1e-4, sodiumMol: 2e-4 }

describe('state operations are linear', () => {
  test.each(WATERS)('$id: a dose of a + b equals a then b, in either order', ({ reading }) => {
    const { totals } = stateOf(reading)
    const acid = scaleDelta(formulaDelta('HCl')!, 1e-4)
    const soda = scaleDelta(formulaDelta('Na2CO3')!, 3e-4)
    const once = addTotals(totals, sumDeltas([acid, soda]))
    closeTotals(addTotals(addTotals(totals, acid), soda), once)
    closeTotals(addTotals(addTotals(totals, soda), acid), once)
    closeTotals(addTotals(once, scaleDelta(sumDeltas([acid, soda]), -1)), totals)
  })

  test.each(WATERS)('$id: evaporation then dilution returns, and so does warming then cooling', ({ reading }) => {
    const { totals, equilibrium } = stateOf(reading)
    const back = concentrate(concentrate(totals, 1.7), 1 / 1.7)
    closeTotals(back, totals)
    expect(good(equilibrate(back, ORACLE)).pH).toBeCloseTo(equilibrium.pH, 9)
    closeTotals(atTemperature(atTemperature(totals, 3), totals.temperatureC), totals)
    closeTotals(mix(atTemperature(PURE_WATER, totals.temperatureC), concentrate(totals, 2), 0.5), totals)
  })

  test('blending commutes and nests', () => {
    for (let i = 1; i < WATERS.length; i++) {
      const a = stateOf(WATERS[i - 1]!.reading).totals
      const b = stateOf(WATERS[i]!.reading).totals
      closeTotals(mix(a, b, 0.3), mix(b, a, 0.7))
      closeTotals(mix(mix(a, b, 0.5), b, 0.5), mix(a, b, 0.75))
      closeTotals(mix(a, a, 0.4), a)
      closeTotals(addTotals(mix(a, b, 0.3), PART), mix(addTotals(a, PART), addTotals(b, PART), 0.3))
    }
  })

  test('air takes or gives CO2 and leaves every other total', () => {
    for (const { reading } of WATERS) {
      const { totals } = stateOf(reading)
      const open = good(equilibrateOpen(totals, -3.38, ORACLE)).totals
      expect({ ...open, carbonMol: 0 }).toEqual({ ...totals, carbonMol: 0 })
    }
  })

  test('every formula carries as much alkalinity as its strong ions carry charge', () => {
    expect(FORMULA_NAMES.length).toBeGreaterThan(30)
    for (const name of FORMULA_NAMES) {
      const one = addTotals(PURE_WATER, formulaDelta(name)!)
      expect(one.alkalinityEq, name).toBe(strongIonChargeEq(one))
    }
    expect(formulaDelta('toString')).toBeUndefined()
  })
})

describe('the cyanurate constants close', () => {
  // O'Brien, Morris & Butler 1974 (from memory): the three cycles give its other printed constants exactly
  const pK = (id: keyof typeof ORACLE.reactions) => -logKAt(ORACLE.reactions[id].logK, 298.15)
  test.each([
    ['H2ClCy to H3Cy: 5.33 + 5.62 − 6.88 = 4.07', () => pK('k4') + pK('k9a') - pK('k6'), 4.07],
    ['ClCy to HCy: 5.62 + 11.40 − 10.12 = 6.90', () => pK('k9a') + pK('k10') - pK('k8'), 6.9],
    ['HCl2Cy to H2ClCy: 3.75 + 4.51 − 5.33 = 2.93', () => pK('k2') + pK('k7a') - pK('k4'), 2.93],
  ] as const)('%s', (_name, closed, printed) => {
    expect(closed()).toBeCloseTo(printed, 10)
  })

  test('in a solved water the three cycles hold between the species', () => {
    for (const { id, reading } of WATERS.filter(({ reading }) => reading.cya_mg_per_L && reading.fc_mg_per_L_as_Cl2)) {
      const { equilibrium: e } = stateOf({ ...reading, temperature_C: 25 })
      const { species: s } = e
      const g0 = g(e, 'neutral')
      // quotients of hydrolysis; water's activity takes under 0.005 off each logarithm
      expect(-Math.log10((s.h3cy * s.hocl * g0) / s.h2clcy), id).toBeCloseTo(4.07, 2)
      expect(-Math.log10((s.hcy2 * s.hocl * g0) / s.clcy2), id).toBeCloseTo(6.9, 2)
      expect(-Math.log10((s.h2clcy * s.hocl * g0) / s.hcl2cy), id).toBeCloseTo(2.93, 2)
    }
  })

  test('the Wahman set changes three constants and names its parent', () => {
    const { reactions } = CONSTANT_SETS.wahman
    const changed = Object.values(reactions).filter((row) => row !== CONSTANT_SETS.default.reactions[row.id])
    expect(changed.map((row) => row.id).sort()).toEqual(['k6', 'k7a', 'k9a'])
  })
})
