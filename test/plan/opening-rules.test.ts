import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { PRODUCTS } from '../../src/chemicals/index.ts'
import {
  type DoseLine,
  isInside,
  type OpeningInput,
  type OpeningPlan,
  openingPlan,
  REGIMES,
} from '../../src/plan/index.ts'
import type { WaterReading } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'
import { HOUR, NOW } from './opening-cases.ts'
import { fillWater, inputOf, SURFACES, troubles } from './staging-rules.ts'

/** From a small pool's big pump to a big one's small. */
const turnover = fc.constantFrom(0.5, 3, 6, 8, 8, 15, 24)
const surfaceId = fc.constantFrom(...SURFACES)
const regime = fc.constantFrom(...REGIMES.rows.map((row) => row.id))

/** The plan of an input, every rule held against it. */
function ruledPlan(input: OpeningInput): OpeningPlan {
  const plan = good(openingPlan(input))
  expect(troubles(input, plan)).toEqual([])
  return plan
}

describe('staging rules hold at every line of every plan', () => {
  for (const surface of SURFACES)
    test(`200 fill waters into a ${surface} pool: limits, pours, neighbours, keys, and the plan replayed line by line`, () => {
      fc.assert(
        fc.property(fillWater, regime, turnover, (start, regimeId, turnoverHours) => {
          const plan = ruledPlan(inputOf(start, surface, { regimeId, turnoverHours }))
          expect(plan.bathing.cleared && plan.lines.some((line) => line.state === 'done')).toBe(false)
        }),
        { numRuns: 200, seed: 20261124 },
      )
    }, 120_000)

  test('each rule is really looked at: a plan that breaks it is found out', () => {
    // alkalinity too high, pH above the range, stabiliser and calcium lacking: every kind of line is in it
    const start: WaterReading = {
      pH: 8.5,
      ta_mg_per_L_as_CaCO3: 190,
      ch_mg_per_L_as_CaCO3: 150,
      cya_mg_per_L: 0,
      borate_mg_per_L_as_B: 0,
      fc_mg_per_L_as_Cl2: 0,
      salt_mg_per_L_as_NaCl: 500,
      temperature_C: 24,
    }
    const input = inputOf(start, 'plaster')
    const plan = good(openingPlan(input))
    const with_ = (key: string, change: (line: DoseLine) => Partial<DoseLine>): OpeningPlan => {
      const at = plan.lines.findIndex((line) => line.key === key)
      const lines = plan.lines.map((line, i) => (i === at ? { ...line, ...change(line as DoseLine) } : line))
      return { ...plan, lines: lines as OpeningPlan['lines'] }
    }
    const found = (of: OpeningPlan): string => troubles(input, of).join('\n')
    const scaled = (line: DoseLine, by: number) => ({
      amountG: by * line.amountG,
      pours: line.pours.map((pour) => ({ ...pour, amountG: by * pour.amountG })),
    })
    expect(found(plan)).toBe('')
    expect(found(with_('acid', (line) => scaled(line, 1.001)))).toContain('replayed off')
    expect(found(with_('acid-2', (line) => scaled(line, 4)))).toContain('alkalinity moves by')
    expect(found(with_('acid-2', (line) => scaled(line, 4)))).toMatch(/acid-2: a pour takes pH to 6\./)
    const atOnce = (line: DoseLine) => ({ pours: [{ index: 1, amountG: line.amountG, hoursAfterStart: 0 }] })
    expect(found(with_('acid-2', atOnce))).toContain('a pour moves pH')
    const sameHour = (line: DoseLine) => ({ pours: line.pours.map((pour) => ({ ...pour, hoursAfterStart: 0 })) })
    expect(found(with_('acid-2', sameHour))).toContain('pours 0.0 h apart')
    const soon = (line: DoseLine) => ({ startHours: line.startHours - 1 })
    expect(found(with_('chlorine', soon))).toContain('chlorine gas')
    expect(found(with_('stabiliser', (line) => ({ startHours: line.startHours - 0.5 })))).toContain(
      'it is not mixed in',
    )
    expect(found({ ...plan, lines: [...plan.lines, plan.lines[0]!] })).toContain('keys are not unique')
    const { equilibrium, reading } = plan.endWater!
    const chalky = { reading, equilibrium: { ...equilibrium, calciteSI: 1.5 } }
    expect(found(with_('stabiliser', () => ({ after: chalky })))).toContain('calcite SI 1.500 above')
    const sour = { reading, equilibrium: { ...equilibrium, pH: 6.9 } }
    expect(found(with_('stabiliser', () => ({ after: sour })))).toContain('leaves pH 7.0 to 8.2')
  })

  test('the first chlorine is in by the first hours where it has room, within a day in nearly every fill water; what comes late is said', () => {
    let late = 0
    let soon = 0
    let chlorinated = 0
    fc.assert(
      fc.property(fillWater, surfaceId, regime, (start, surface, regimeId) => {
        const plan = ruledPlan(inputOf(start, surface, { regimeId }))
        const first = plan.lines.find((line) => line.kind === 'dose' && line.purpose === 'openingChlorine')
        if (!first) return
        chlorinated++
        // an hour of circulation comes before it
        if (first.startHours > 1 + 24) late++
        if (first.startHours <= 1 + 3) soon++
        // chlorine that stands above its floor has a day
        const floor = start.cya_mg_per_L! < 1 ? 1 : 2
        const isLate = first.startHours > 1 + (start.fc_mg_per_L_as_Cl2! < floor ? 3 : 24)
        expect(plan.warnings.some((text) => text.startsWith('Chlorine comes only after'))).toBe(isLate)
      }),
      { numRuns: 600, seed: 5 },
    )
    expect(chlorinated).toBeGreaterThan(350)
    expect(late / chlorinated).toBeLessThan(0.02)
    // the rest stands above pH 8.2 or is saturated with chalk: there acid comes first
    expect(soon / chlorinated).toBeGreaterThan(0.65)
  }, 60_000)

  test('what a plan can dose ends inside its bands, in 200 fill waters; what it cannot is said', () => {
    const shortfalls: string[] = []
    fc.assert(
      fc.property(fillWater, surfaceId, (start, surface) => {
        const input = inputOf(start, surface)
        const plan = good(openingPlan(input))
        // the water after such an exchange is not known: nothing is dosed for it, and it is measured first
        if (plan.lines.some((line) => line.kind === 'exchange' && !line.after)) {
          expect(plan.lines.at(-1)!.kind).toBe('measure')
          return
        }
        const excused = plan.unreachable.map((problem) => problem.path + problem.code).join(' ')
        const end = plan.endWater!.reading
        for (const [key, band] of Object.entries(input.targets)) {
          const value = end[key as keyof WaterReading]!
          if (key === 'fc_mg_per_L_as_Cl2' || !band || isInside(value, band)) continue
          if (excused.includes(key) || excused.includes('balance') || excused.includes('dose-not-placed')) continue
          shortfalls.push(`${key} ${value.toFixed(2)} from ${JSON.stringify(start)}`)
        }
      }),
      { numRuns: 200, seed: 7 },
    )
    expect(shortfalls).toEqual([])
  }, 60_000)

  test('borax instead of boric acid keeps the same rules, acid between its parts', () => {
    fc.assert(
      fc.property(fillWater, (start) => {
        ruledPlan(inputOf(start, 'plaster', { regimeId: 'unstabilised', products: { borate: 'borax-10' } }))
      }),
      { numRuns: 60, seed: 11 },
    )
  }, 60_000)

  test('whole packages, and every objective, keep the same rules', () => {
    fc.assert(
      fc.property(
        fillWater,
        surfaceId,
        regime,
        fc.constantFrom('reckoned', 'whole-packages'),
        fc.constantFrom('fewest-products', 'cheapest', 'least-salt'),
        (start, surface, regimeId, dosing, objective) => {
          ruledPlan(inputOf(start, surface, { regimeId, dosing, objective, stockG: { 'dry-acid': 8000 } }))
        },
      ),
      { numRuns: 120, seed: 23 },
    )
  }, 60_000)

  const serving = (use: 'acid' | 'chlorine' | 'base') =>
    PRODUCTS.rows.filter((row) => row.uses.includes(use) && !row.isAccounting).map((row) => row.id)

  test('any acid, chlorine and base, with doses ticked on the way: the same rules, and nothing too soon after a given one', () => {
    const ticked = fc.array(
      fc.record({
        product: fc.constantFrom(
          ...new Set([
            ...serving('acid'),
            ...serving('chlorine'),
            ...serving('base'),
            'sodium-bicarbonate',
            'calcium-chloride-flake',
          ]),
        ),
        gPerM3: fc.double({ min: 0.1, max: 3, noNaN: true }),
        agoHours: fc.double({ min: 0, max: 14, noNaN: true }),
      }),
      { maxLength: 3 },
    )
    let apart = 0
    let runs = 0
    fc.assert(
      fc.property(
        fillWater,
        regime,
        fc.constantFrom(...serving('acid')),
        fc.constantFrom(...serving('chlorine')),
        fc.constantFrom(...serving('base')),
        ticked,
        fc.constantFrom(6, 8, 15),
        (start, regimeId, acid, openingChlorine, base, doses, turnoverHours) => {
          const given = doses
            .map(({ product, gPerM3, agoHours }) => ({
              product,
              amountG: gPerM3 * 60,
              atMs: NOW - agoHours * HOUR,
            }))
            .sort((a, b) => a.atMs - b.atMs)
          const input = inputOf(start, 'plaster', {
            regimeId,
            products: { acid, openingChlorine, base },
            given,
            turnoverHours,
            measuredAtMs: NOW - 15 * HOUR,
          })
          const plan = ruledPlan(input)
          expect(plan.lines.filter((line) => line.state === 'done' && line.kind === 'dose').length).toBe(given.length)
          runs++
          const last = plan.lines.findLastIndex((line) => line.state === 'done' && line.kind === 'dose')
          const next = plan.lines.findIndex((line) => line.kind === 'dose' && line.state !== 'done')
          if (last >= 0 && plan.lines.slice(last, next).some((line) => line.key.startsWith('apart'))) apart++
        },
      ),
      { numRuns: 120, seed: 17 },
    )
    expect(runs).toBe(120)
    // the rule is met because it was called for, not because it never was
    expect(apart).toBeGreaterThan(20)
  }, 60_000)

  test('scale: twice the volume takes twice of everything but whole packages', () => {
    let checks = 0
    fc.assert(
      fc.property(fillWater, (start) => {
        const one = good(openingPlan(inputOf(start, 'tile', { volumeM3: 0.9, volumeSigmaM3: 0 })))
        const two = good(openingPlan(inputOf(start, 'tile', { volumeM3: 1.8, volumeSigmaM3: 0 })))
        const amounts = (plan: OpeningPlan) =>
          plan.lines.flatMap((line) => (line.kind === 'dose' ? [line.packages?.isWhole ? 0 : line.amountG] : []))
        const a = amounts(one)
        const b = amounts(two)
        // whole packages move what follows them: such plans are no multiples of each other
        if (a.length !== b.length || a.includes(0) || b.includes(0)) return
        a.forEach((amount, at) => {
          expect(b[at]! / amount).toBeCloseTo(2, 5)
          checks++
        })
      }),
      { numRuns: 60, seed: 3 },
    )
    // a plan in which nothing is bought in whole packages gives several
    expect(checks).toBeGreaterThan(200)
  }, 60_000)
})
