import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { deltaOf, keepApart, PRODUCTS, productById } from '../../src/chemicals/index.ts'
import {
  type DoseLine,
  defaultTargets,
  type ExchangeLine,
  isInside,
  LIMITS,
  type OpeningInput,
  type OpeningPlan,
  openingPlan,
  REGIMES,
  type StepLine,
} from '../../src/plan/index.ts'
import {
  addTotals,
  CONSTANT_SETS,
  equilibrate,
  equilibrateAtPH,
  MG_CACO3_PER_EQ,
  mix,
  READING_KEYS,
  readingOf,
  type Totals,
  totalsOf,
  type WaterReading,
} from '../../src/water/index.ts'
import { good } from '../water/golden.ts'

/** Fill waters as towns, wells and mountains have them; salt is drawn so that the charge closes. */
const fillWater = fc
  .record({
    pH: fc.double({ min: 6.3, max: 9, noNaN: true }),
    ta_mg_per_L_as_CaCO3: fc.double({ min: 15, max: 320, noNaN: true }),
    ch_mg_per_L_as_CaCO3: fc.double({ min: 5, max: 450, noNaN: true }),
    mg_hardness_mg_per_L_as_CaCO3: fc.double({ min: 0, max: 100, noNaN: true }),
    sulfate_mg_per_L: fc.double({ min: 0, max: 120, noNaN: true }),
    cya_mg_per_L: fc.constantFrom(0, 0, 0, 12, 40, 110),
    borate_mg_per_L_as_B: fc.constantFrom(0, 0.1, 25, 60),
    fc_mg_per_L_as_Cl2: fc.constantFrom(0, 0.3, 1, 3),
    extraSalt: fc.double({ min: 10, max: 900, noNaN: true }),
    temperature_C: fc.double({ min: 6, max: 33, noNaN: true }),
  })
  .map(({ extraSalt, ...water }): WaterReading => {
    const short =
      (water.ch_mg_per_L_as_CaCO3 + water.mg_hardness_mg_per_L_as_CaCO3 - water.ta_mg_per_L_as_CaCO3) * 1.1679
    return { ...water, salt_mg_per_L_as_NaCl: Math.max(0, short) + extraSalt }
  })
  // readings that no water can have at once are refused by the kernel and tested there
  .filter((water) => totalsOf(water, CONSTANT_SETS.default).ok)

const SURFACES = ['plaster', 'vinyl', 'fibreglass', 'tile'] as const
const NOW = Date.UTC(2026, 4, 2, 9)

const inputOf = (
  start: WaterReading,
  surface: (typeof SURFACES)[number],
  more: Partial<OpeningInput> = {},
): OpeningInput => {
  const regimeId = more.regimeId ?? 'stabilised'
  return {
    volumeM3: 60,
    volumeSigmaM3: 3,
    surface,
    regimeId,
    targets: defaultTargets(surface, regimeId, {}),
    products: {},
    start,
    startIs: 'pool',
    method: 'drop-kit',
    fill: { ...start, cya_mg_per_L: 0, borate_mg_per_L_as_B: 0 },
    measuredAtMs: NOW - 3_600_000,
    nowMs: NOW,
    turnoverHours: 8,
    given: [],
    stockG: {},
    constants: 'default',
    ...more,
  }
}

type Watered = DoseLine | ExchangeLine | StepLine
const watered = (plan: OpeningPlan): readonly Watered[] => plan.lines.filter((line) => line.after !== undefined)

/** Inside 7.0 to 8.2 pH stays there; from outside it only moves toward it. */
function isPermittedPH(from: number, to: number): boolean {
  if (from < 7 - 1e-5) return to >= from - 1e-5 && to <= 8.2 + 1e-5
  if (from > 8.2 + 1e-5) return to <= from + 1e-5 && to >= 7 - 1e-5
  return to >= 7 - 1e-5 && to <= 8.2 + 1e-5
}

/** Every staging rule, at every line; the trouble found, in words. */
function troubles(input: OpeningInput, plan: OpeningPlan): string[] {
  const wrong: string[] = []
  const startSI = plan.startWater!.equilibrium.calciteSI
  const leastBoundSI = Math.max(LIMITS.calciteSI, plan.endWater!.equilibrium.calciteSI)
  let boundSI = Math.max(leastBoundSI, startSI)
  let before = plan.startWater!
  for (const line of watered(plan)) {
    const after = line.after!
    const from = before.equilibrium.pH
    const to = after.equilibrium.pH
    const say = (what: string) => wrong.push(`${line.key}: ${what} (pH ${from.toFixed(3)} to ${to.toFixed(3)})`)
    // what a person gave is what it is: the rules are for what the plan asks for
    if (line.kind === 'exchange' || line.state === 'done') boundSI = Math.max(boundSI, after.equilibrium.calciteSI)
    else {
      if (from < 7 - 1e-5 ? to < from - 1e-5 || to > 8.2 + 1e-5 : false) say('moves away from the range')
      if (from > 8.2 + 1e-5 ? to > from + 1e-5 || to < 7 - 1e-5 : false) say('moves away from the range')
      if (from >= 7 && from <= 8.2 && (to < 7 - 1e-5 || to > 8.2 + 1e-5)) say('leaves pH 7.0 to 8.2')
      if (after.equilibrium.calciteSI > boundSI + 1e-5)
        say(`calcite SI ${after.equilibrium.calciteSI.toFixed(3)} above ${boundSI.toFixed(3)}`)
    }
    if (line.kind === 'dose' && line.state !== 'done') {
      const product = good(productById(line.productId)).product
      const sum = line.pours.reduce((total, pour) => total + pour.amountG, 0)
      if (Math.abs(sum - line.amountG) > 1e-6 * line.amountG) say('pours do not sum to the amount')
      let totals = totalsBefore.get(line)!
      let pH = from
      for (const pour of line.pours) {
        const delta = deltaOf(product, pour.amountG / input.volumeM3)
        totals = addTotals(totals, delta)
        const { pH: next, calciteSI } = good(equilibrate(totals, CONSTANT_SETS[input.constants]))
        if (calciteSI > boundSI + 1e-5)
          say(`calcite SI ${calciteSI.toFixed(3)} on the way, above ${boundSI.toFixed(3)}`)
        if (!isPermittedPH(pH, next)) say(`a pour takes pH to ${next.toFixed(3)}`)
        // what hangs in a sock for days is no pour
        if (product.wait.hoursAtLeast >= 72) continue
        // pours of unequal size (a safe share first) may exceed the step by a little
        if (Math.abs(next - pH) > LIMITS.pourPH * 1.1) say(`a pour moves pH by ${(next - pH).toFixed(3)}`)
        if (Math.abs(delta.alkalinityEq ?? 0) * MG_CACO3_PER_EQ > LIMITS.pourAlkalinityMgPerL * 1.0001)
          say('a pour moves alkalinity too far')
        pH = next
      }
      const alkalinity = Math.abs(deltaOf(product, line.amountG / input.volumeM3).alkalinityEq ?? 0) * MG_CACO3_PER_EQ
      if (alkalinity > LIMITS.lineAlkalinityMgPerL * 1.0001) say(`alkalinity moves by ${alkalinity.toFixed(1)} mg/L`)
      if (!(line.lowG < line.amountG && line.highG > line.amountG && line.lowG >= 0)) say('has no interval')
      if (line.how === '' || line.why === '' || line.cautions.length === 0) say('says too little')
    }
    // the bound follows the water down: what it has left behind it does not come back to
    boundSI = Math.max(leastBoundSI, after.equilibrium.calciteSI)
    before = after
  }
  const doses = plan.lines
  doses.forEach((line, at) => {
    const next = doses[at + 1]
    if (line.kind !== 'dose' || next?.kind !== 'dose') return
    // two that a person gave in a row, or one whose gap is over by now, are looked at below
    if (line.state === 'done') return
    const clash = keepApart(good(productById(line.productId)).product, good(productById(next.productId)).product)
    if (clash) wrong.push(`${line.key} and ${next.key} follow each other: ${clash.reason}`)
  })
  const gapHours = (clash: { readonly hoursApart: number }) => Math.max(input.turnoverHours!, clash.hoursApart)
  const given = plan.lines.filter((line) => line.kind === 'dose' && line.state === 'done') as readonly DoseLine[]
  for (const next of plan.lines) {
    if (next.kind !== 'dose' || next.state === 'done') continue
    for (const line of given) {
      const clash = keepApart(good(productById(line.productId)).product, good(productById(next.productId)).product)
      if (clash && next.startHours < line.startHours + gapHours(clash) - 1e-9)
        wrong.push(`${next.key} comes too soon after the given ${line.key}`)
    }
  }
  const keys = plan.lines.map((line) => line.key)
  if (new Set(keys).size !== keys.length) wrong.push(`keys are not unique: ${keys.join(' ')}`)
  plan.lines.reduce((hours, line) => {
    if (line.startHours < hours - 1e-9) wrong.push(`${line.key} starts before the line above it`)
    return line.startHours
  }, 0)
  return wrong
}

/** Totals before each dose line, from the deltas alone. */
const totalsBefore = new WeakMap<DoseLine, Totals>()

/** Applies the plan line by line through conserved totals; the largest difference from what it predicts. */
function replay(input: OpeningInput, plan: OpeningPlan): { readonly off: number; readonly end: Totals } {
  const constants = CONSTANT_SETS[input.constants]
  let totals = good(totalsOf(input.start as WaterReading, constants))
  let off = 0
  for (const line of watered(plan)) {
    if (line.kind === 'dose') {
      totalsBefore.set(line, totals)
      totals = addTotals(totals, deltaOf(good(productById(line.productId)).product, line.amountG / input.volumeM3))
    } else if (line.kind === 'exchange') {
      const fill = good(totalsOf(input.fill as WaterReading, constants))
      const { temperatureC } = totals
      for (let round = 0; round < line.rounds; round++) totals = mix(totals, fill, line.fraction)
      totals = { ...totals, temperatureC }
    } else totals = good(equilibrateAtPH(totals, line.after!.equilibrium.pH, constants)).totals
    const reading = readingOf(totals, good(equilibrate(totals, constants)))
    for (const key of READING_KEYS) off = Math.max(off, Math.abs(reading[key] - (line.after!.reading[key] ?? 0)))
  }
  return { off, end: totals }
}

describe('staging rules hold at every line of every plan', () => {
  for (const surface of SURFACES)
    test(`200 fill waters into a ${surface} pool: limits, pours, neighbours, keys, and the plan replayed line by line`, () => {
      const regimes = REGIMES.rows.map((row) => row.id)
      fc.assert(
        fc.property(fillWater, fc.constantFrom(...regimes), (start, regimeId) => {
          const input = inputOf(start, surface, { regimeId })
          const plan = good(openingPlan(input))
          const { off } = replay(input, plan)
          expect(off).toBeLessThan(1e-6)
          expect(troubles(input, plan)).toEqual([])
          expect(plan.bathing.cleared && plan.lines.some((line) => line.state === 'done')).toBe(false)
        }),
        { numRuns: 200, seed: 20261124 },
      )
    }, 120_000)

  test('what a plan can dose ends inside its bands, in 200 fill waters; what it cannot is said', () => {
    const shortfalls: string[] = []
    fc.assert(
      fc.property(fillWater, fc.constantFrom(...SURFACES), (start, surface) => {
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
        const input = inputOf(start, 'plaster', { regimeId: 'unstabilised', products: { borate: 'borax-10' } })
        const plan = good(openingPlan(input))
        expect(replay(input, plan).off).toBeLessThan(1e-6)
        expect(troubles(input, plan)).toEqual([])
      }),
      { numRuns: 60, seed: 11 },
    )
  }, 60_000)

  test('whole packages, and every objective, keep the same rules', () => {
    fc.assert(
      fc.property(
        fillWater,
        fc.constantFrom(...SURFACES),
        fc.constantFrom(...REGIMES.rows.map((row) => row.id)),
        fc.constantFrom('reckoned', 'whole-packages'),
        fc.constantFrom('fewest-products', 'cheapest', 'least-salt'),
        (start, surface, regimeId, dosing, objective) => {
          const input = inputOf(start, surface, { regimeId, dosing, objective, stockG: { 'dry-acid': 8000 } })
          const plan = good(openingPlan(input))
          expect(replay(input, plan).off).toBeLessThan(1e-6)
          expect(troubles(input, plan)).toEqual([])
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
        fc.constantFrom(...REGIMES.rows.map((row) => row.id)),
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
              atMs: NOW - agoHours * 3_600_000,
            }))
            .sort((a, b) => a.atMs - b.atMs)
          const input = inputOf(start, 'plaster', {
            regimeId,
            products: { acid, openingChlorine, base },
            given,
            turnoverHours,
            measuredAtMs: NOW - 15 * 3_600_000,
          })
          const plan = good(openingPlan(input))
          expect(plan.lines.filter((line) => line.state === 'done' && line.kind === 'dose').length).toBe(given.length)
          expect(replay(input, plan).off).toBeLessThan(1e-6)
          expect(troubles(input, plan)).toEqual([])
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
