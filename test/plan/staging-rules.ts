import fc from 'fast-check'
import { deltaOf, keepApart, productById } from '../../src/chemicals/index.ts'
import {
  type DoseLine,
  type ExchangeLine,
  LIMITS,
  type OpeningInput,
  type OpeningPlan,
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
import { input as ordinary } from './opening-cases.ts'

/** Fill waters as towns, wells and mountains have them; salt is drawn so that the charge closes. */
export const fillWater = fc
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

export const SURFACES = ['plaster', 'vinyl', 'fibreglass', 'tile'] as const

export const inputOf = (
  start: WaterReading,
  surface: (typeof SURFACES)[number],
  more: Partial<OpeningInput> = {},
): OpeningInput =>
  ordinary(start, {
    surface,
    volumeSigmaM3: 3,
    fill: { ...start, cya_mg_per_L: 0, borate_mg_per_L_as_B: 0 },
    ...more,
  })

type Watered = DoseLine | ExchangeLine | StepLine
const watered = (plan: OpeningPlan): readonly Watered[] => plan.lines.filter((line) => line.after !== undefined)

/** Inside 7.0 to 8.2 pH stays there; from outside it only moves toward it. */
function isPermittedPH(from: number, to: number): boolean {
  if (from < 7 - 1e-5) return to >= from - 1e-5 && to <= 8.2 + 1e-5
  if (from > 8.2 + 1e-5) return to <= from + 1e-5 && to >= 7 - 1e-5
  return to >= 7 - 1e-5 && to <= 8.2 + 1e-5
}

/** Every staging rule, at every line, and the plan replayed; the trouble found, in words. */
export function troubles(input: OpeningInput, plan: OpeningPlan): string[] {
  const { off, totalsBefore } = replay(input, plan)
  const wrong = off < 1e-6 ? [] : [`replayed off by ${off}`]
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
      if (!isPermittedPH(from, to))
        say(from < 7 || from > 8.2 ? 'moves away from pH 7.0 to 8.2' : 'leaves pH 7.0 to 8.2')
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
        const outside = Math.min(0.35, next < pH ? Math.max(0, pH - 8.2) : Math.max(0, 7 - pH))
        // pours of unequal size (a safe share first) may exceed the step by a little
        if (Math.abs(next - pH) > (0.35 + outside) * 1.1) say(`a pour moves pH by ${(next - pH).toFixed(3)}`)
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
  const mostSI = Math.max(LIMITS.calciteSI, startSI)
  if (
    plan.endWater!.equilibrium.calciteSI > mostSI + 1e-5 &&
    !plan.warnings.some((text) => text.includes('tend to scale'))
  )
    wrong.push(`ends at calcite SI ${plan.endWater!.equilibrium.calciteSI.toFixed(2)} and does not say so`)
  wrong.push(...tooSoon(input, plan), ...chlorineTooLate(input, plan))
  const keys = plan.lines.map((line) => line.key)
  if (new Set(keys).size !== keys.length) wrong.push(`keys are not unique: ${keys.join(' ')}`)
  plan.lines.reduce((hours, line) => {
    if (line.startHours < hours - 1e-9) wrong.push(`${line.key} starts before the line above it`)
    return line.startHours
  }, 0)
  return wrong
}

/** Chlorine below its floor that comes after the first hours, though some of it had room at once; or late and unsaid. */
function chlorineTooLate(input: OpeningInput, plan: OpeningPlan): string[] {
  const floor = (input.start.cya_mg_per_L ?? 1) > 0 ? 2 : 1
  const first = plan.lines.find((line): line is DoseLine => line.kind === 'dose' && line.purpose === 'openingChlorine')
  const isGiven = plan.lines.some((line) => line.state === 'done')
  if (!first || isGiven || !(input.start.fc_mg_per_L_as_Cl2! < floor)) return []
  if (first.startHours <= 1 + 3 + 1e-9) return []
  const wrong: string[] = []
  if (!plan.warnings.some((text) => text.startsWith('Chlorine comes only after')))
    wrong.push(`${first.key} comes after ${first.startHours} h and nobody says so`)
  const { product } = good(productById(first.productId))
  const constants = CONSTANT_SETS[input.constants]
  const totals = good(totalsOf(input.start as WaterReading, constants))
  // a quarter of a milligram: a little more than the least that is worth a line
  const some = addTotals(totals, deltaOf(product, 0.25 / product.availableChlorine))
  const before = good(equilibrate(totals, constants))
  const after = good(equilibrate(some, constants))
  const least = Math.max(LIMITS.calciteSI, before.calciteSI)
  if (isPermittedPH(before.pH, after.pH) && after.calciteSI <= least)
    wrong.push(`${first.key} comes after ${first.startHours} h, and a little had room at once`)
  return wrong
}

/** Lines that follow another too soon: what must not meet, what is not mixed in or dissolved yet, pours not apart. */
function tooSoon(input: OpeningInput, plan: OpeningPlan): string[] {
  const wrong: string[] = []
  const turnoverHours = input.turnoverHours!
  const doses = plan.lines.filter((line): line is DoseLine => line.kind === 'dose')
  const productOf = (line: DoseLine) => good(productById(line.productId)).product
  doses.forEach((line, at) => {
    const product = productOf(line)
    const lastPour = line.startHours + line.pours.at(-1)!.hoursAfterStart
    const mixed = Math.max(product.wait.hoursAtLeast, product.wait.turnovers * turnoverHours)
    // stabiliser takes days, everything else a turnover: not by the table alone
    const least = line.purpose === 'stabiliser' ? 72 : turnoverHours
    for (const next of doses.slice(at + 1)) {
      // two that a person gave are what they are
      if (next.state === 'done') continue
      const gap = next.startHours - lastPour
      const say = (why: string) => wrong.push(`${next.key} comes ${gap.toFixed(1)} h after ${line.key}: ${why}`)
      const clash = keepApart(product, productOf(next))
      if (clash && gap < Math.max(turnoverHours, clash.hoursApart) - 1e-9) say(clash.reason)
      if (line.state === 'done') continue
      if (gap < mixed - 1e-9) say(`it is not mixed in for ${mixed} h`)
      if (gap < least - 1e-9) say(`less than ${least} h`)
    }
    if (line.state === 'done') return
    line.pours.slice(1).forEach((pour, i) => {
      const hours = pour.hoursAfterStart - line.pours[i]!.hoursAfterStart
      if (hours < Math.max(2, turnoverHours / 2) - 1e-9) wrong.push(`${line.key}: pours ${hours.toFixed(1)} h apart`)
    })
  })
  return wrong
}

/**
 * Applies the plan line by line through conserved totals: the largest difference from what it predicts, and the totals
 * before each dose, from the deltas alone.
 */
function replay(input: OpeningInput, plan: OpeningPlan) {
  const constants = CONSTANT_SETS[input.constants]
  let totals = good(totalsOf(input.start as WaterReading, constants))
  let off = 0
  const totalsBefore = new Map<DoseLine, Totals>()
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
  return { off, totalsBefore }
}
