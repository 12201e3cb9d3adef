import { describe, expect, test } from 'vitest'
import type { Result } from '../../src/base/index.ts'
import {
  alkalinityFromBicarbonate,
  bicarbonateFromAlkalinity,
  CONSTANT_SETS,
  calciumFromTotal,
  conductivityAt25,
  conductivityFromSolids,
  METALS,
  metalsAdvice,
  type PeopleReading,
  readingFromPeople,
  saltFromConductivity,
  solidsFromConductivity,
  TEST_TRAPS,
  totalsOf,
  trapsFor,
} from '../../src/water/index.ts'
import { goldenRows, good, ORACLE, stateOf } from './golden.ts'

const DEFAULT = CONSTANT_SETS.default

function problem<T>(result: Result<T>) {
  if (result.ok) throw new Error('expected a problem')
  for (const words of [result.problem.what, result.problem.why, result.problem.hint])
    expect(words.length).toBeGreaterThan(10)
  return result.problem
}

describe('total hardness', () => {
  test('without magnesium calcium lies between a half and all of it', () => {
    expect(good(calciumFromTotal({ th_mg_per_L_as_CaCO3: 200 }, 'strip'))).toEqual({
      low: 100,
      best: 150,
      high: 200,
      status: 'common practice, no source',
    })
  })

  test('with magnesium it is the rest, with calcium that reading itself', () => {
    const rest = good(calciumFromTotal({ th_mg_per_L_as_CaCO3: 200, mg_hardness_mg_per_L_as_CaCO3: 50 }, 'drop-kit'))
    expect(rest.best).toBe(150)
    // 6 + 3 % of 200, twice
    expect(rest.high - rest.best).toBeCloseTo(24, 9)
    const own = good(calciumFromTotal({ th_mg_per_L_as_CaCO3: 200, ch_mg_per_L_as_CaCO3: 160 }, 'drop-kit'))
    expect([own.low, own.best, own.high]).toEqual([160, 160, 160])
  })

  test('parts above the total by more than the tests scatter are a clash, with the amount', () => {
    const clash = problem(calciumFromTotal({ th_mg_per_L_as_CaCO3: 150, ch_mg_per_L_as_CaCO3: 250 }, 'drop-kit'))
    expect(clash.code).toBe('water-hardness-disagrees')
    expect(clash.what).toContain('100 too little')
    expect(calciumFromTotal({ th_mg_per_L_as_CaCO3: 150, ch_mg_per_L_as_CaCO3: 250 }, 'strip').ok).toBe(true)
    for (const bad of [-1, Number.NaN])
      expect(problem(calciumFromTotal({ th_mg_per_L_as_CaCO3: bad }, 'strip')).code).toBe('water-extra-reading-bad')
  })
})

describe('conductivity, dissolved solids and salt', () => {
  test('each golden water: the salt that explains PHREEQC’s conductance is the salt that is in it', () => {
    for (const { id, input, output } of goldenRows('speciation')) {
      const { totals, equilibrium } = stateOf(input)
      // the table has it at the water's own temperature; our model only carries it to 25 °C
      const to25 = good(conductivityAt25(totals, ORACLE)) / equilibrium.conductanceMicroSPerCm
      const read = output['specific_conductance_uS_per_cm_at_T']! * to25
      const salt = good(saltFromConductivity(input, read, ORACLE))
      expect(salt.low, id).toBeLessThanOrEqual(input.salt_mg_per_L_as_NaCl!)
      expect(salt.high, id).toBeGreaterThanOrEqual(input.salt_mg_per_L_as_NaCl!)
    }
  })

  test('turned around our own conductivity gives the salt back, whatever the temperature of the water', () => {
    for (const { input } of goldenRows('speciation')) {
      const totals = good(totalsOf(input, DEFAULT))
      const salt = good(saltFromConductivity(input, good(conductivityAt25(totals, DEFAULT)), DEFAULT))
      expect(salt.best).toBeCloseTo(input.salt_mg_per_L_as_NaCl ?? 0, 3)
      expect(salt.low).toBeLessThanOrEqual(salt.best)
      expect(salt.high).toBeGreaterThanOrEqual(salt.best)
    }
  })

  test('less than the other readings conduct is a clash with the amount, more than sea water is refused', () => {
    const reading = { pH: 7.5, ta_mg_per_L_as_CaCO3: 100, ch_mg_per_L_as_CaCO3: 300, temperature_C: 27 }
    const clash = problem(saltFromConductivity(reading, 200, DEFAULT))
    expect(clash.code).toBe('water-conductivity-too-low')
    const [, needed, short] = /conduct ([\d.]+) .*: about ([\d.]+) too little/.exec(clash.what) ?? []
    // two figures of a difference
    expect((Number(needed) - 200) / Number(short)).toBeCloseTo(1, 1)
    expect(problem(saltFromConductivity(reading, 1e6, DEFAULT)).code).toBe('water-conductivity-too-high')
    expect(problem(saltFromConductivity(reading, Number.NaN, DEFAULT)).code).toBe('water-extra-reading-bad')
    expect(problem(saltFromConductivity({ ...reading, pH: 20 }, 900, DEFAULT)).code).toBe('water-reading-out-of-range')
  })

  test('potassium chloride standard: 0.01 mol/kg conducts 1413 µS/cm at 25 °C (CRC Handbook, from memory)', () => {
    const { totals } = stateOf({ pH: 7, ta_mg_per_L_as_CaCO3: 0.01, temperature_C: 25 }, DEFAULT)
    const standard = { ...totals, potassiumMol: 0.01, chlorideMol: 0.01 }
    expect(Math.abs(good(conductivityAt25(standard, DEFAULT)) / 1413 - 1)).toBeLessThan(0.02)
  })

  test('a meter’s dissolved solids are 0.5 to 0.7 of conductivity, or its printed factor', () => {
    expect(good(solidsFromConductivity(1000))).toMatchObject({ low: 500, best: 600, high: 700 })
    const back = good(conductivityFromSolids(600))
    expect([back.low, back.high]).toEqual([600 / 0.7, 1200])
    expect(good(conductivityFromSolids(600, 0.5)).best).toBe(1200)
    expect(problem(conductivityFromSolids(600, 0)).code).toBe('water-extra-reading-bad')
    expect(problem(conductivityFromSolids(-1)).code).toBe('water-extra-reading-bad')
    expect(problem(solidsFromConductivity(-1)).code).toBe('water-extra-reading-bad')
  })
})

describe('bicarbonate', () => {
  test('122 mg/L HCO3 is 100 mg/L as CaCO3 (2 mmol); 60 mg/L CO3 is as much (1 mmol)', () => {
    expect(good(alkalinityFromBicarbonate(122.0336))).toBeCloseTo(100.0869, 6)
    expect(good(alkalinityFromBicarbonate(0, 60.0089))).toBeCloseTo(100.0869, 3)
    expect(bicarbonateFromAlkalinity(100.0869)).toBeCloseTo(122.0336, 6)
    expect(problem(alkalinityFromBicarbonate(-1)).code).toBe('water-extra-reading-bad')
  })

  test('at pH 7.5 nearly all of a tap water’s alkalinity is bicarbonate', () => {
    const { equilibrium, totals } = stateOf({ pH: 7.5, ta_mg_per_L_as_CaCO3: 100 }, DEFAULT)
    const bicarbonate = (equilibrium.species.hco3 + equilibrium.species.naHco3) * 61016.8
    expect(bicarbonate / bicarbonateFromAlkalinity(totals.alkalinityEq * 50043.45)).toBeGreaterThan(0.98)
  })
})

describe('a strip and a meter make a water', () => {
  const strip: PeopleReading = {
    pH: 7.4,
    ta_mg_per_L_as_CaCO3: 90,
    th_mg_per_L_as_CaCO3: 240,
    fc_mg_per_L_as_Cl2: 2,
    temperature_C: 26,
  }

  test('total hardness tells calcium, conductivity salt, total chlorine the combined; each says so', () => {
    const taken = readingFromPeople(
      { ...strip, conductivity_uS_per_cm: 1200, tc_mg_per_L_as_Cl2: 3.5 },
      'strip',
      DEFAULT,
    )
    expect(taken.problems).toEqual([])
    expect(taken.reading.ch_mg_per_L_as_CaCO3).toBe(180)
    expect(taken.combined?.combinedMgPerL).toBeCloseTo(1.5, 9)
    expect(taken.told.map(({ key }) => key)).toEqual(['ch_mg_per_L_as_CaCO3', 'salt_mg_per_L_as_NaCl'])
    expect(taken.told[0]!.words).toBe('Calcium hardness is reckoned from total hardness: 120 to 240 mg/L.')
    const { pH = 0, ta_mg_per_L_as_CaCO3 = 0 } = taken.reading
    const totals = good(totalsOf({ ...taken.reading, pH, ta_mg_per_L_as_CaCO3 }, DEFAULT))
    expect(good(conductivityAt25(totals, DEFAULT))).toBeCloseTo(1200, 3)
  })

  test('what was read is never replaced', () => {
    const own = { ...strip, ch_mg_per_L_as_CaCO3: 200, salt_mg_per_L_as_NaCl: 500, conductivity_uS_per_cm: 1200 }
    const taken = readingFromPeople(own, 'drop-kit', DEFAULT)
    expect(taken.told).toEqual([])
    expect(taken.reading).toMatchObject({ ch_mg_per_L_as_CaCO3: 200, salt_mg_per_L_as_NaCl: 500 })
    expect(Object.keys(taken.reading)).not.toContain('th_mg_per_L_as_CaCO3')
  })

  test('a meter’s dissolved solids tell salt more widely than conductivity', () => {
    const width = (extra: PeopleReading) => {
      const { likely } = readingFromPeople({ ...strip, ...extra }, 'strip', DEFAULT).told.find(
        ({ key }) => key === 'salt_mg_per_L_as_NaCl',
      )!
      expect(likely.low).toBeLessThanOrEqual(likely.best)
      expect(likely.best).toBeLessThanOrEqual(likely.high)
      return likely.high - likely.low
    }
    expect(width({ tds_mg_per_L: 900 })).toBeGreaterThan(2 * width({ conductivity_uS_per_cm: 1500 }))
  })

  test('clashes are collected, and what clashes tells nothing', () => {
    const clash = readingFromPeople(
      { ...strip, ch_mg_per_L_as_CaCO3: 600, conductivity_uS_per_cm: 50, tc_mg_per_L_as_Cl2: 0, fc_mg_per_L_as_Cl2: 5 },
      'photometer',
      DEFAULT,
    )
    expect(clash.problems.map(({ code }) => code)).toEqual([
      'water-hardness-disagrees',
      'water-conductivity-too-low',
      'chlorine-total-below-free',
    ])
    expect(clash.told).toEqual([])
    expect(clash.combined).toBeUndefined()
  })

  test('without pH or alkalinity no salt is told, and nothing read is nothing told', () => {
    expect(readingFromPeople({ conductivity_uS_per_cm: 1200 }, 'sensor', DEFAULT)).toEqual({
      reading: {},
      told: [],
      combined: undefined,
      problems: [],
    })
  })
})

describe('metals', () => {
  test('above its limit each holds back oxidiser and mineral cartridge; taking out comes before holding, holding before oxidising', () => {
    for (const metal of METALS.rows) {
      const advice = metalsAdvice({ [metal.key]: metal.limitMgPerL * 1.5 })
      expect(advice.holdBack).toEqual(['oxidiser', 'mineral-cartridge'])
      const at = (pattern: RegExp) => advice.steps.findIndex((step) => pattern.test(step))
      const order = [
        /Don’t shock/,
        /Find the source/,
        /Take it out/,
        /sequestrant/,
        /raise chlorine slowly/,
        /mineral cartridge only/,
      ].map(at)
      expect(order).toEqual([0, 1, 2, 3, 4, 5])
      expect(metalsAdvice({ [metal.key]: metal.limitMgPerL }).holdBack).toEqual([])
    }
  })

  test('one metal is high, several are', () => {
    const first = (reading: PeopleReading) => metalsAdvice(reading).steps[0]
    expect(first({ copper_mg_per_L: 1 })).toContain('while copper is this high')
    expect(first({ copper_mg_per_L: 1, iron_mg_per_L: 1 })).toContain('while iron and copper are this high')
    const all = { copper_mg_per_L: 1, iron_mg_per_L: 1, manganese_mg_per_L: 1 }
    expect(first(all)).toContain('while iron, manganese and copper are this high')
  })

  test('what nobody read is not said to be clear, and nothing lowers the chlorine floor', () => {
    expect(metalsAdvice({ iron_mg_per_L: 0.05 }).findings.map(({ metal }) => metal.id)).toEqual(['iron'])
    expect(metalsAdvice({})).toMatchObject({ findings: [], holdBack: [] })
    expect(metalsAdvice({ copper_mg_per_L: 1 }).steps.join(' ')).toMatch(
      /Take that cartridge out.*lowers no chlorine floor/,
    )
  })
})

describe('traps of the tests', () => {
  const ids = (reading: PeopleReading, method: string) => trapsFor(reading, method).map(({ trap }) => trap.id)
  // biome-ignore format: a table of cases
  test.each<[id: string, method: string, bites: PeopleReading, spares: PeopleReading]>([
    ['dpd-bleached', 'drop-kit', { fc_mg_per_L_as_Cl2: 15 }, { fc_mg_per_L_as_Cl2: 4 }],
    ['dpd-none', 'photometer', { fc_mg_per_L_as_Cl2: 0 }, { fc_mg_per_L_as_Cl2: 0.2 }],
    ['ph-with-high-chlorine', 'drop-kit', { pH: 8, fc_mg_per_L_as_Cl2: 11 }, { pH: 8, fc_mg_per_L_as_Cl2: 10 }],
    ['alkalinity-with-high-chlorine', 'drop-kit', { ta_mg_per_L_as_CaCO3: 90, fc_mg_per_L_as_Cl2: 11 }, { ta_mg_per_L_as_CaCO3: 90, fc_mg_per_L_as_Cl2: 5 }],
    ['stabiliser-in-cold-water', 'drop-kit', { cya_mg_per_L: 40, temperature_C: 12 }, { cya_mg_per_L: 40, temperature_C: 24 }],
    ['dpd-reads-bound-chlorine', 'photometer', { fc_mg_per_L_as_Cl2: 3, cya_mg_per_L: 30 }, { fc_mg_per_L_as_Cl2: 3, cya_mg_per_L: 0 }],
    ['free-drifts-with-combined', 'photometer', { fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 3 }, { fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 2.2 }],
    ['combined-reads-other-oxidisers', 'drop-kit', { cc_mg_per_L_as_Cl2: 1 }, { cc_mg_per_L_as_Cl2: 0.2 }],
    ['strip-hardness-is-total', 'strip', { th_mg_per_L_as_CaCO3: 250 }, { ta_mg_per_L_as_CaCO3: 90 }],
    ['metals-in-hardness-test', 'drop-kit', { ch_mg_per_L_as_CaCO3: 250, copper_mg_per_L: 0.5 }, { ch_mg_per_L_as_CaCO3: 250, copper_mg_per_L: 0.1 }],
    ['sensor-sees-active-chlorine', 'sensor', { fc_mg_per_L_as_Cl2: 2 }, { pH: 7.5 }],
    ['salt-meter-reads-all-ions', 'sensor', { salt_mg_per_L_as_NaCl: 3000 }, { pH: 7.5 }],
    ['bottle-on-the-way', 'laboratory', { pH: 7.5 }, { ch_mg_per_L_as_CaCO3: 250 }],
    ['supplier-is-a-mean', 'supplier', { ta_mg_per_L_as_CaCO3: 90 }, { salt_mg_per_L_as_NaCl: 30 }],
    ['end-of-range', 'drop-kit', { pH: 8.2 }, { pH: 7.6 }],
  ])('%s bites on a %s where it must, and only there', (id, method, bites, spares) => {
    expect(ids(bites, method)).toContain(id)
    expect(ids(spares, method)).not.toContain(id)
    for (const { concerns } of trapsFor(bites, method)) for (const key of concerns) expect(bites[key]).toBeDefined()
  })

  test('each row has a case above, words, a source and how sure it is', () => {
    expect(TEST_TRAPS.rows.length).toBe(15)
    for (const { text, source, status } of TEST_TRAPS.rows) {
      expect(text.length).toBeGreaterThan(40)
      expect(source.length).toBeGreaterThan(5)
      expect(status.length).toBeGreaterThan(3)
    }
  })

  test('unknown stabiliser counts as present; nothing read means no trap; a meter for pH is not spoilt by chlorine', () => {
    expect(ids({ fc_mg_per_L_as_Cl2: 3 }, 'drop-kit')).toContain('dpd-reads-bound-chlorine')
    for (const method of ['strip', 'drop-kit', 'photometer', 'sensor', 'laboratory', 'supplier', 'unknown'])
      expect(trapsFor({}, method)).toEqual([])
    expect(ids({ pH: 7.6, fc_mg_per_L_as_Cl2: 12 }, 'sensor')).not.toContain('ph-with-high-chlorine')
  })
})
