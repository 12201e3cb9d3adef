import { describe, expect, test } from 'vitest'
import {
  activeChlorineSpread,
  addTotals,
  breakpointRatio,
  CONSTANT_SETS,
  combinedChlorine,
  equilibrate,
  faecalIncident,
  INCIDENT_STABILISER_LIMIT_MG_PER_L,
  LOCAL_CODE_FIRST,
  MOLAR_MASSES_G_PER_MOL,
  photolysisPerDay,
  photolysisRangePerDay,
  speciationColumns,
  sunHalfLives,
  superchlorination,
} from '../../src/water/index.ts'
import { goldenRows, good, ORACLE, stateOf } from './golden.ts'

const DEFAULT = CONSTANT_SETS.default

function problem<T>(result: { ok: true; value: T } | { ok: false; problem: { code: string } }) {
  if (result.ok) throw new Error('expected a problem')
  return result.problem as { code: string; what: string; why: string; hint: string; path: string }
}

describe('combined chlorine', () => {
  test('is total less free, with the scatter of both tests', () => {
    const found = good(combinedChlorine({ fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 3 }, 'drop-kit'))
    expect(found?.combinedMgPerL).toBeCloseTo(1, 12)
    // 0.15 + 5 % of 2 and of 3
    expect(found?.sigmaMgPerL).toBeCloseTo(Math.hypot(0.25, 0.3), 12)
    expect(found?.isWithinScatter).toBe(false)
  })

  test('a little below zero is none, far below is a clash that names both readings and the amount', () => {
    const little = good(combinedChlorine({ fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 1.8 }, 'drop-kit'))
    expect(little).toMatchObject({ combinedMgPerL: 0, isWithinScatter: true })
    const clash = problem(combinedChlorine({ fc_mg_per_L_as_Cl2: 3, tc_mg_per_L_as_Cl2: 1 }, 'photometer'))
    expect(clash.code).toBe('chlorine-total-below-free')
    expect(clash.what).toContain('2 mg/L less')
    expect(clash.why).toContain('total chlorine, free chlorine')
    // the same pair from a strip is no clash: it scatters by more
    expect(combinedChlorine({ fc_mg_per_L_as_Cl2: 3, tc_mg_per_L_as_Cl2: 1.5 }, 'strip').ok).toBe(true)
  })

  test('three readings that do not add up are named with the amount', () => {
    const clash = problem(
      combinedChlorine({ fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 5, cc_mg_per_L_as_Cl2: 0.5 }, 'photometer'),
    )
    expect(clash.code).toBe('chlorine-parts-disagree')
    expect(clash.what).toContain('2.5 mg/L more')
  })

  test('read alone it is itself; read by neither test it is unknown, not zero', () => {
    expect(good(combinedChlorine({ fc_mg_per_L_as_Cl2: 2, cc_mg_per_L_as_Cl2: 0.6 }, 'drop-kit'))?.combinedMgPerL).toBe(
      0.6,
    )
    expect(good(combinedChlorine({ fc_mg_per_L_as_Cl2: 2 }, 'drop-kit'))).toBeUndefined()
    for (const bad of [-1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(problem(combinedChlorine({ fc_mg_per_L_as_Cl2: bad }, 'strip')).code).toBe('chlorine-reading-bad')
    }
  })
})

describe('superchlorination', () => {
  const water = { freeMgPerL: 2, combinedMgPerL: 1, stabiliserMgPerL: 0 }
  const dose = (id: string, of = water) => good(superchlorination(of)).doses.find((row) => row.id === id)!

  test('by theory the whole is 3 mol of chlorine to 2 of nitrogen, 7.593 g/g (FACTS: handbook, seen)', () => {
    const nitrogen = MOLAR_MASSES_G_PER_MOL.nitrogen / MOLAR_MASSES_G_PER_MOL.chlorineAsCl2
    expect(1.5 * (70.906 / 14.007)).toBeCloseTo(7.593, 3)
    expect((dose('theory').lowMgPerL + 1) / nitrogen).toBeCloseTo(breakpointRatio, 9)
  })

  test('in practice 10 to 15 g to 1 g of nitrogen; the trade’s ten times is five or more times that', () => {
    const nitrogen = 14.007 / 70.906
    expect((dose('practice').lowMgPerL + 1) / nitrogen).toBeCloseTo(10, 9)
    expect((dose('practice').highMgPerL + 1) / nitrogen).toBeCloseTo(15, 9)
    expect(dose('trade-rule').lowMgPerL).toBe(8)
    expect(dose('trade-rule', { ...water, freeMgPerL: 0 }).lowMgPerL / dose('practice').highMgPerL).toBeGreaterThan(5)
    expect(good(superchlorination(water)).doseMgPerL).toBe(dose('practice').highMgPerL)
  })

  test('it is needed above the limit of the rules: 0.5 outdoors and 0.8 indoors in Wisconsin (ATCP 76.14, seen)', () => {
    const at = (combinedMgPerL: number, isIndoor: boolean) =>
      good(superchlorination({ ...water, combinedMgPerL, isIndoor, rules: { profile: 'wisconsin' } })).isNeeded
    expect([at(0.5, false), at(0.51, false), at(0.8, true), at(0.81, true)]).toEqual([false, true, false, true])
    expect(good(superchlorination({ ...water, combinedMgPerL: 0.4 })).isNeeded).toBe(false)
  })

  test('what remains, the air, stabiliser and the local code are said', () => {
    const words = (extra: object) => good(superchlorination({ ...water, ...extra })).notes.join(' ')
    expect(words({})).toMatch(/urea.*cover off/)
    expect(words({ isIndoor: true })).toMatch(/ventilation/)
    expect(words({})).not.toMatch(/slows this down/)
    expect(words({ stabiliserMgPerL: 30 })).toMatch(/Stabiliser slows this down/)
    expect(words({ stabiliserMgPerL: undefined })).toMatch(/unknown and counts as present/)
    expect(words({})).toContain(LOCAL_CODE_FIRST)
  })

  test('with more stabiliser than the rules allow it is not advised, and fresh water is', () => {
    const refused = problem(superchlorination({ ...water, stabiliserMgPerL: 120 }))
    expect(refused.code).toBe('breakpoint-stabiliser-too-high')
    expect(refused.hint).toContain('25 %')
    expect(superchlorination({ ...water, stabiliserMgPerL: 90 }).ok).toBe(true)
    expect(problem(superchlorination({ ...water, combinedMgPerL: -1 })).code).toBe('chlorine-reading-bad')
    expect(problem(superchlorination({ ...water, freeMgPerL: Number.NaN })).code).toBe('chlorine-reading-bad')
  })
})

describe('faeces in the water', () => {
  const here = { pH: 7.4, temperatureC: 27 }

  test('diarrhoea without stabiliser: 20 mg/L for 12.75 h, 10 for 25.5 h (CDC; 20 × 12.75 × 60 = 15 300)', () => {
    const { holds } = good(faecalIncident({ kind: 'diarrhoea', stabiliserMgPerL: 0, ...here }))
    expect(holds.map(({ freeMgPerL, hours }) => [freeMgPerL, hours])).toEqual([
      [20, 12.75],
      [10, 25.5],
    ])
    for (const { freeMgPerL, hours } of holds) expect(freeMgPerL * hours * 60).toBeCloseTo(15300, 9)
  })

  test('with up to 15 mg/L of stabiliser: 20 for 28 h, 30 for 18, 40 for 8.5, and the older edition named apart', () => {
    const answer = good(faecalIncident({ kind: 'diarrhoea', stabiliserMgPerL: 15, ...here }))
    expect(answer.holds.map(({ freeMgPerL, hours }) => [freeMgPerL, hours])).toEqual([
      [20, 28],
      [30, 18],
      [40, 8.5],
    ])
    expect(answer.otherEdition).toMatch(/6\.5\.3\.2\.1.*pH 6\.5 and 40 mg\/L for at least 30 h/)
    for (const hold of answer.holds) expect(hold.status).toBe('from memory')
  })

  test.each(['diarrhoea', 'formed'] as const)(
    '%s above 15 mg/L of stabiliser: blocked, and what to do instead is said',
    (kind) => {
      for (const stabiliserMgPerL of [15.1, 16, 50, 200]) {
        const blocked = problem(faecalIncident({ kind, stabiliserMgPerL, ...here }))
        expect(blocked.code).toBe('incident-stabiliser-too-high')
        expect(blocked.hint).toMatch(/Close the pool\. Replace at least (\d+) %/)
        const share = Number(/Replace at least (\d+) %/.exec(blocked.hint)?.[1]) / 100
        // and that much fresh water is enough
        expect(stabiliserMgPerL * (1 - share)).toBeLessThanOrEqual(INCIDENT_STABILISER_LIMIT_MG_PER_L + 1e-9)
        expect(blocked.hint).toContain('health authority')
        expect(blocked.hint).not.toMatch(/\d+ h\b/)
      }
    },
  )

  test('unknown stabiliser: nothing is advised but closing and measuring', () => {
    for (const stabiliserMgPerL of [undefined, Number.NaN, -1]) {
      const blocked = problem(faecalIncident({ kind: 'diarrhoea', stabiliserMgPerL, ...here }))
      expect(blocked.code).toBe('incident-stabiliser-unknown')
      expect(blocked.hint).toMatch(/Close the pool now/)
    }
  })

  test('formed stool: 2 mg/L for half an hour; pH, cold and stabiliser are spoken to', () => {
    const steps = (water: object) =>
      good(faecalIncident({ kind: 'formed', stabiliserMgPerL: 0, ...here, ...water })).steps.join(' ')
    expect(steps({})).toMatch(/2 mg\/L .* 30 minutes/)
    expect(steps({ pH: 7.9 })).toMatch(/Lower pH from 7\.9/)
    expect(steps({ temperatureC: 18 })).toMatch(/at 18 °C: warm it/)
    expect(steps({ stabiliserMgPerL: 10 })).toMatch(/hold longer/)
    expect(steps({ pH: undefined, temperatureC: undefined })).toMatch(/Measure pH.*Measure the temperature/)
    expect(steps({})).toContain('health authority’s response rules')
  })
})

describe('active chlorine with its spread', () => {
  test('both sets agree with the golden table’s two columns (USGS PHREEQC 3.6.3)', () => {
    for (const row of goldenRows('speciation')) {
      const { totals, equilibrium } = stateOf(row.input)
      const spread = good(activeChlorineSpread(totals, ORACLE))
      expect(Math.abs(spread.mgPerL - row.output['hocl_mg_per_L_as_Cl2']!), row.id).toBeLessThanOrEqual(
        0.0005 * row.output['hocl_mg_per_L_as_Cl2']!,
      )
      const columns = good(speciationColumns(totals, equilibrium, ORACLE))
      expect(spread.wahmanMgPerL).toBeCloseTo(columns['alt_W19_hocl_mg_per_L_as_Cl2']!, 10)
      expect(spread.lowMgPerL).toBeLessThanOrEqual(spread.highMgPerL)
      const hasBoth = (row.input.cya_mg_per_L ?? 0) > 0 && (row.input.fc_mg_per_L_as_Cl2 ?? 0) > 0
      if (hasBoth) expect(spread.ratio).toBeGreaterThan(1.3)
      else expect(spread.ratio).toBeCloseTo(1, 9)
      expect(spread.shareHigh).toBeLessThanOrEqual(1)
    }
  })

  test('water without chlorine has no share, and a water that cannot be is a Problem', () => {
    const { totals } = stateOf({ pH: 7.5, ta_mg_per_L_as_CaCO3: 80, cya_mg_per_L: 30 }, DEFAULT)
    expect(good(activeChlorineSpread(totals, DEFAULT))).toMatchObject({ ratio: 1, shareHigh: 0, mgPerL: 0 })
    expect(activeChlorineSpread(addTotals(totals, { calciumMol: -1 }), DEFAULT).ok).toBe(false)
  })
})

describe('sun', () => {
  const at = (cya: number, pH = 7.5) =>
    stateOf(
      {
        pH,
        ta_mg_per_L_as_CaCO3: 90,
        cya_mg_per_L: cya,
        fc_mg_per_L_as_Cl2: 3,
        temperature_C: 28,
        ch_mg_per_L_as_CaCO3: 50,
      },
      DEFAULT,
    ).totals

  test('without stabiliser half is gone in 12 min at pH 8 and 60 at pH 5 (Nowell & Hoigné 1992, abstract)', () => {
    const bare = (pH: number) => {
      const { totals } = stateOf({ pH, ta_mg_per_L_as_CaCO3: 5, fc_mg_per_L_as_Cl2: 1, temperature_C: 25 }, DEFAULT)
      return good(sunHalfLives(totals, DEFAULT)).withoutStabiliserMin
    }
    expect(bare(8)).toBeGreaterThan(11.5)
    expect(bare(8)).toBeLessThan(13)
    expect(bare(5)).toBeGreaterThan(55)
    expect(bare(5)).toBeLessThan(60)
  })

  test('stabiliser makes it longer, the more the longer; without any both are one', () => {
    const none = good(sunHalfLives(at(0), DEFAULT))
    expect(none.hereMin).toBeCloseTo(none.withoutStabiliserMin, 9)
    let before = none.hereMin
    for (const cya of [10, 25, 50, 100]) {
      const { hereMin, withoutStabiliserMin } = good(sunHalfLives(at(cya), DEFAULT))
      expect(hereMin).toBeGreaterThan(before)
      expect(withoutStabiliserMin).toBeCloseTo(none.withoutStabiliserMin, 1)
      before = hereMin
    }
  })

  test('the range holds the one measurement with much stabiliser: 1–2 % a day at 138 mg/L (Wojtowicz, abstract)', () => {
    const body = { solarMJPerM2Day: 29, meanDepthM: 1.4 }
    const stabilised = good(equilibrate(at(138), DEFAULT))
    const range = photolysisRangePerDay(stabilised, body)
    expect(range.low).toBeLessThan(0.02)
    expect(range.high).toBeGreaterThan(0.02)
    const plain = good(equilibrate(at(0), DEFAULT))
    const open = photolysisRangePerDay(plain, body)
    expect(open.high / photolysisPerDay(plain, body)).toBeCloseTo(1.5, 9)
    expect(open.low * 1.5).toBeCloseTo(photolysisPerDay(plain, body), 9)
  })
})
