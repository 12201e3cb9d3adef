import { describe, expect, test } from 'vitest'
import { productById } from '../../src/chemicals/index.ts'
import {
  type DoseLine,
  defaultTargets,
  type KnownReading,
  LIMITS,
  type OpeningInput,
  type OpeningPlan,
  targetsAt,
} from '../../src/plan/index.ts'
import { good } from '../water/golden.ts'
import { doses, HOUR, NOW, plan as ordinary } from './opening-cases.ts'

/** A water in the order pH, alkalinity, calcium, stabiliser, borate, free chlorine, salt, temperature. */
const water = (...values: readonly number[]): KnownReading => {
  const [pH, ta, ch, cya, borate, fc, salt, temperature_C] = values
  return {
    pH,
    ta_mg_per_L_as_CaCO3: ta,
    ch_mg_per_L_as_CaCO3: ch,
    cya_mg_per_L: cya,
    borate_mg_per_L_as_B: borate,
    fc_mg_per_L_as_Cl2: fc,
    salt_mg_per_L_as_NaCl: salt,
    temperature_C,
  }
}

const plan = (start: KnownReading, more: Partial<OpeningInput> = {}): OpeningPlan =>
  ordinary(start, { volumeSigmaM3: 3, measuredAtMs: NOW - 3.5 * HOUR, turnoverHours: 7.5, ...more })
const lastPour = (line: DoseLine): number => line.startHours + line.pours.at(-1)!.hoursAfterStart
const isAcid = (line: DoseLine) => good(productById(line.productId)).product.groups.includes('acid')

describe('gaps hold whatever the pump does', () => {
  const TURNOVERS = [0.5, 1, 2, 24] as const
  const FC_LOW = water(7.5, 90, 260, 30, 0, 0.5, 500, 26)

  test.each(TURNOVERS)(
    'turnover %s h: acid that was given stands 4 h before chlorine, and the other way round',
    (turnoverHours) => {
      for (const [product, start, purpose] of [
        ['muriatic-acid-31', FC_LOW, 'openingChlorine'],
        ['dry-acid', FC_LOW, 'openingChlorine'],
        ['liquid-chlorine-12', water(8.1, 90, 260, 30, 0, 3, 500, 26), 'acid'],
        ['cal-hypo-68', water(8.1, 90, 260, 30, 0, 3, 500, 26), 'acid'],
      ] as const) {
        const given = [{ product, amountG: 100, atMs: NOW - HOUR }]
        const opening = plan(start, { given, turnoverHours, measuredAtMs: NOW - 2 * HOUR })
        const next = doses(opening).find((line) => line.state !== 'done')!
        const before = opening.lines[opening.lines.indexOf(next) - 1]!
        expect([before.title, before.state], product).toEqual(['Keep the two apart', 'next'])
        expect(next.purpose).toBe(purpose)
        // hours count from the given dose; 4 h is the gap of the table of what must not meet
        expect(next.startHours, product).toBeGreaterThanOrEqual(Math.max(4, turnoverHours) - 1e-9)
      }
    },
  )

  test.each(TURNOVERS)('turnover %s h: nothing goes in within 4 h of the last pour of acid', (turnoverHours) => {
    let seen = 0
    for (const start of [water(8.1, 180, 250, 0, 0, 0.2, 600, 26), water(8.9, 200, 150, 0, 0, 0, 400, 18)]) {
      const given = doses(plan(start, { turnoverHours }))
      given.forEach((line, at) => {
        const next = given[at + 1]
        if (!isAcid(line)) return
        expect(line.waitHours).toBeGreaterThanOrEqual(4)
        if (!next) return
        expect(next.startHours - lastPour(line)).toBeGreaterThanOrEqual(4 - 1e-9)
        seen++
      })
    }
    expect(seen).toBeGreaterThan(2)
  })

  test.each(TURNOVERS)('turnover %s h: a pour has half a turnover, and two hours, before the next', (turnoverHours) => {
    const pours = doses(plan(water(8.1, 180, 250, 30, 0, 3, 600, 26), { turnoverHours })).flatMap((line) =>
      line.pours.slice(1).map((pour, at) => pour.hoursAfterStart - line.pours[at]!.hoursAfterStart),
    )
    expect(pours.length).toBeGreaterThan(3)
    for (const hours of pours) expect(hours).toBeGreaterThanOrEqual(Math.max(2, turnoverHours / 2) - 1e-9)
  })
})

describe('scale', () => {
  test('water that acid has brought down to saturation is not let back up to where it came from', () => {
    const opening = plan(water(8.1, 180, 300, 30, 0, 3, 600, 26))
    expect(opening.startWater!.equilibrium.calciteSI).toBeGreaterThan(0.9)
    const rounds = opening.lines.filter((line) => line.kind === 'aerate')
    expect(rounds.length).toBeGreaterThan(1)
    for (const line of rounds) expect(line.after!.equilibrium.calciteSI).toBeLessThanOrEqual(LIMITS.calciteSI + 1e-6)
  })
})

describe('an exchange of water', () => {
  const FILL = water(7.6, 80, 100, 0, 0, 0, 100, 15)
  const HIGH = [
    ['no chlorine, vinyl', water(7.4, 120, 200, 250, 0, 0, 1200, 26), 'vinyl'],
    ['no chlorine, pH above the range', water(8.5, 150, 250, 150, 0, 0, 1200, 26), 'plaster'],
    ['some chlorine, plaster', water(7.5, 110, 300, 150, 0, 2, 1200, 26), 'plaster'],
    ['calcium only', water(7.4, 207, 439, 0, 0, 0.4, 1837, 31), 'tile'],
  ] as const
  const isChlorine = (line: DoseLine) => line.purpose === 'openingChlorine'

  test.each(HIGH)('%s: chlorine is in within a day and held while it lasts, fill known or not', (_, start, surface) => {
    for (const fill of [FILL, undefined]) {
      const opening = plan(start, { surface, fill })
      const at = opening.lines.findIndex((line) => line.kind === 'exchange')
      const before = opening.lines.slice(0, at)
      const keeps = before.find((line) => line.key === 'keep-chlorine')!
      expect(keeps.how).toContain('after every refill')
      if (start.fc_mg_per_L_as_Cl2! >= 2) continue
      const first = before.find((line): line is DoseLine => line.kind === 'dose' && isChlorine(line))!
      expect(first.startHours).toBeLessThan(LIMITS.residualByHours)
      expect(first.after.reading.fc_mg_per_L_as_Cl2!).toBeGreaterThanOrEqual(2)
      expect(first.exception).toContain('Before the exchange')
    }
  })

  test.each(HIGH)('%s: an unknown fill ends the plan with a measurement, no amount behind it', (_, start, surface) => {
    const opening = plan(start, { surface })
    const at = opening.lines.findIndex((line) => line.kind === 'exchange')
    expect(opening.lines.slice(at + 1).map((line) => line.kind)).toEqual(['measure'])
    expect(opening.lines.at(-1)!.startHours).toBeGreaterThanOrEqual(24)
    expect(opening.warnings.join(' ')).toContain('The plan ends with the exchange')
    const bought = opening.purchases.map((item) => item.productId)
    expect(bought.every((id) => doses(opening).some((line) => line.productId === id))).toBe(true)
    // with a known fill it goes on
    expect(plan(start, { surface, fill: FILL }).lines.at(-1)!.startHours).toBeGreaterThan(at)
  })
})

describe('chlorine and high pH or scale', () => {
  const firstChlorine = (of: OpeningPlan) => doses(of).find((line) => line.purpose === 'openingChlorine')!

  test.each([
    ['hard, at pH 8.2', water(8.2, 220, 300, 0, 0, 0, 900, 26)],
    ['pH 8.5', water(8.5, 120, 250, 30, 0, 0, 600, 26)],
    ['pH 8.6 with borate', water(8.6, 150, 200, 0, 30, 0, 600, 20)],
  ])('%s: acid makes only the room that a residual needs, so that it is in within a day', (_, start) => {
    const opening = plan(start)
    const { startHours } = firstChlorine(opening)
    expect(startHours).toBeLessThanOrEqual(1 + LIMITS.residualByHours)
    // later than the first hours all the same, and that is told
    expect(opening.warnings.join(' ')).toContain(
      `Chlorine comes only after ${Math.ceil(startHours - 1)} h: before that it would`,
    )
  })

  test.each([
    ['no stabiliser, pH and alkalinity at odds', water(7.9, 61, 260, 0, 0, 0.5, 500, 26), 'unstabilised', 2],
    ['pH at the end of its band', water(7.8, 60, 200, 0, 0, 0.2, 500, 26), 'unstabilised', 2],
    ['too much at once would let chalk fall out', water(7.8, 90, 260, 30, 0, 0.2, 500, 26), 'stabilised', 2],
    ['too much at once would lift pH out of the limits', water(8.1, 60, 260, 30, 0, 0.2, 500, 26), 'stabilised', 1],
  ] as const)(
    '%s: chlorine goes in first, as far as there is room, and acid after a gap',
    (_, start, regimeId, least) => {
      const opening = plan(start, { regimeId })
      const first = firstChlorine(opening)
      expect(first.startHours).toBe(1)
      expect(first.after.reading.fc_mg_per_L_as_Cl2!).toBeGreaterThanOrEqual(least - 1e-9)
      expect(opening.warnings.join(' ')).not.toContain('Chlorine comes only after')
      for (const acid of doses(opening).filter(isAcid))
        expect(acid.startHours - lastPour(first)).toBeGreaterThanOrEqual(4)
      const end = doses(opening).findLast((line) => line.purpose === 'openingChlorine')!
      expect(end.after.reading.fc_mg_per_L_as_Cl2!).toBeCloseTo(regimeId === 'stabilised' ? 3 : 2, 6)
    },
  )

  test('chlorine above its floor, though below its band, keeps the usual order', () => {
    const targets = defaultTargets('plaster', 'stabilised', { fc_mg_per_L_as_Cl2: { low: 3, aim: 4, high: 4 } })
    const calm = doses(plan(water(7.9, 60, 260, 30, 0, 2.5, 500, 26), { targets }))
    expect(calm.findIndex((line) => line.purpose === 'openingChlorine')).toBeGreaterThan(0)
  })

  test('where the limits let it in only later, the plan says after how many hours', () => {
    const opening = plan(water(9.3, 270, 260, 0, 30, 0.3, 850, 24))
    const hours = Math.ceil(firstChlorine(opening).startHours - 1)
    expect(hours).toBeGreaterThan(LIMITS.residualByHours)
    expect(opening.warnings.join(' ')).toContain(`Chlorine comes only after ${hours} h`)
    expect(opening.warnings.join(' ')).toContain('nobody bathes')
  })
})

describe('a pH that was read inside its band', () => {
  test('gets a line only where something else pulls it out, and the line says so', () => {
    const alone = plan(water(7.8, 90, 260, 30, 0, 3, 500, 26))
    expect(doses(alone)).toEqual([])
    const pulled = plan(water(7.8, 90, 260, 30, 0, 0.2, 500, 26))
    const acid = doses(pulled).find(isAcid)!
    expect(acid.why).toMatch(/read at 7.8, inside its band of 7.2 to 7.8. What else goes in by this plan/)
    const outside = doses(plan(water(8.1, 90, 260, 30, 0, 0.2, 500, 26))).find(isAcid)!
    expect(outside.why).not.toContain('inside its band of')
  })
})

describe('alkalinity that is not worth bringing down', () => {
  test('is left, with the ways out, rather than weeks of acid and air', () => {
    const opening = plan(water(7.8, 300, 250, 30, 0, 2, 900, 26))
    expect(opening.lines.filter((line) => line.kind === 'aerate')).toEqual([])
    expect(doses(opening)).toEqual([])
    const problem = opening.unreachable.find(({ code }) => code === 'alkalinity-stays-high')!
    expect(problem.why).toContain('not worth it')
    expect(problem.hint).toMatch(/widen the band.*exchange/i)
  })

  test('and no soda goes on top of it: air lifts pH back into its band', () => {
    const fill = water(7.6, 80, 100, 0, 0, 0, 100, 15)
    const opening = plan(water(7.4, 207, 439, 0, 0, 3, 1837, 31), { surface: 'tile', regimeId: 'salt', fill })
    expect(opening.unreachable.map(({ code }) => code)).toContain('alkalinity-stays-high')
    expect(doses(opening).filter((line) => line.purpose === 'base' || line.purpose === 'alkalinity')).toEqual([])
    expect(opening.endWater!.reading.pH).toBeGreaterThanOrEqual(7.2)
    expect(opening.lines.at(-1)!.startHours).toBeLessThan(14 * 24)
  })

  test('no plan has more than six rounds, and six are enough for the usual hard water', () => {
    const opening = plan(water(7.9, 220, 250, 30, 0, 2, 700, 24))
    const rounds = opening.lines.filter((line) => line.kind === 'aerate').length
    expect(rounds).toBeGreaterThan(1)
    expect(rounds).toBeLessThanOrEqual(6)
    expect(opening.endWater!.reading.ta_mg_per_L_as_CaCO3).toBeLessThanOrEqual(120)
  })
})

describe('water that the plan’s own doses would leave hungry', () => {
  test.each([
    ['plaster', water(7.2, 40, 50, 0, 0, 0.5, 25, 12)],
    ['tile', water(6.8, 60, 150, 0, 0, 0.5, 325, 22)],
  ] as const)('%s: stabiliser is followed by soda ash to the aim of pH', (surface, start) => {
    const opening = plan(start, { surface })
    const given = doses(opening)
    const stabiliser = given.findIndex((line) => line.purpose === 'stabiliser')
    expect(given[stabiliser]!.after.equilibrium.calciteSI).toBeLessThan(-0.3)
    const base = given[stabiliser + 1]!
    expect(base).toMatchObject({ purpose: 'base', productId: 'soda-ash' })
    expect(base.after.reading.pH).toBeCloseTo(7.5, 3)
    expect(opening.endWater!.equilibrium.calciteSI).toBeGreaterThan(-0.3)
    expect(opening.endWater!.reading.ta_mg_per_L_as_CaCO3).toBeLessThanOrEqual(120)
  })

  test('a liner gets none, nor water that was so inside its bands', () => {
    const vinyl = plan(water(7.2, 40, 50, 0, 0, 0.5, 25, 12), { surface: 'vinyl' })
    expect(doses(vinyl).at(-1)!.purpose).toBe('stabiliser')
    const inBands = plan(water(7.2, 75, 210, 30, 0, 3, 500, 12))
    expect(inBands.startWater!.equilibrium.calciteSI).toBeLessThan(-0.3)
    expect(doses(inBands)).toEqual([])
    // chlorine alone is no reason either
    const chlorine = plan(water(7.2, 75, 210, 30, 0, 0.5, 500, 12))
    expect(doses(chlorine).map((line) => line.purpose)).toEqual(['openingChlorine'])
  })
})

describe('the start-up of new plaster', () => {
  const NEW = water(8.9, 150, 200, 0, 0, 0, 400, 18)

  test.each([1, 10, 30])('day %i: pH is brought to the start’s own aim, and no round of acid and air begins', (day) => {
    const targets = targetsAt('new-plaster', day, defaultTargets('plaster', 'stabilised', {}))
    const opening = plan(NEW, { targets })
    expect(opening.lines.some((line) => line.kind === 'aerate' || line.title === 'Lower alkalinity')).toBe(false)
    const first = doses(opening)[0]!
    expect(first.purpose).toBe('acid')
    for (const line of doses(opening)) expect(line.after.reading.pH).toBeGreaterThanOrEqual(7.2)
    expect(opening.endWater!.reading.pH).toBeLessThanOrEqual(7.6)
    expect(opening.endWater!.reading.ta_mg_per_L_as_CaCO3).toBeGreaterThan(100)
    expect(opening.unreachable.map(({ code }) => code)).not.toContain('alkalinity-stays-high')
    expect(opening.warnings.join(' ')).toContain('Alkalinity stays above its band for now')
  })

  test('an owner’s own band of alkalinity doesn’t begin rounds either; after the start-up they may', () => {
    const own = defaultTargets('plaster', 'stabilised', { ta_mg_per_L_as_CaCO3: { low: 60, aim: 70, high: 80 } })
    const airs = (day: number) =>
      plan(NEW, { targets: targetsAt('new-plaster', day, own) }).lines.filter((line) => line.kind === 'aerate').length
    expect(airs(5)).toBe(0)
    expect(airs(31)).toBeGreaterThan(0)
  })
})

describe('metals that were read high', () => {
  const WELL = water(5.9, 20, 30, 0, 0, 0, 30, 10)
  const chlorine = (of: OpeningPlan) => doses(of).filter((line) => line.purpose === 'openingChlorine')

  test('chlorine goes in by pours of no more than 1 mg/L, apart, as the metals line asks', () => {
    const opening = plan(WELL, { metals: { iron_mg_per_L: 1.2 } })
    expect(opening.lines.find((line) => line.key === 'metals')!.how).toContain('slowly, in small doses')
    const lines = chlorine(opening)
    expect(lines.length).toBeGreaterThan(0)
    for (const line of lines) {
      const { product } = good(productById(line.productId))
      for (const pour of line.pours)
        expect((pour.amountG / 60) * product.availableChlorine).toBeLessThanOrEqual(1 + 1e-6)
      expect(line.how).toContain(`in ${line.pours.length} pours, hours apart`)
    }
  })

  test('each is named with its limit, and where several limits have one source it is named once', () => {
    const metals = { iron_mg_per_L: 2, copper_mg_per_L: 2, manganese_mg_per_L: 1 }
    const { why } = plan(WELL, { metals }).lines.find((line) => line.key === 'metals')!
    expect(why).toMatch(/Iron 2 mg\/L, above .*Copper 2 mg\/L, above /)
    expect(why).toContain('Manganese 1 mg/L, above')
    expect(why.split('no source').length).toBe(2)
  })

  test('with combined chlorine besides: a little goes in toward the floor, with its amount, then it is measured', () => {
    const opening = plan(water(7.5, 90, 260, 40, 0, 0.2, 500, 26), {
      metals: { copper_mg_per_L: 1, iron_mg_per_L: 0.8 },
      combinedMgPerL: 1.2,
    })
    const kinds = opening.lines.map(({ key }) => key)
    expect(kinds).toEqual(['circulate', 'metals', 'combined', 'chlorine', 'measure-after-combined'])
    const [little] = chlorine(opening)
    expect(little!.after.reading.fc_mg_per_L_as_Cl2!).toBeCloseTo(1.2, 6)
    expect(little!.pours.length).toBe(1)
    expect(little!.exception).toContain('Toward the floor and no further')
    expect(opening.purchases.map(({ needG }) => needG)).toEqual([little!.amountG])
    const measure = opening.lines.at(-1)!
    expect(measure.startHours).toBeGreaterThanOrEqual(little!.startHours + little!.waitHours)
    // at the floor there is nothing to add before the metals are dealt with
    const enough = plan(water(7.5, 90, 260, 40, 0, 2.5, 500, 26), {
      metals: { copper_mg_per_L: 1 },
      combinedMgPerL: 1.2,
    })
    expect(chlorine(enough)).toEqual([])
  })

  test('where stabiliser is too high to break combined chlorine down, chlorine comes to its floor all the same', () => {
    const opening = plan(water(7.5, 90, 260, 150, 0, 0.2, 500, 26), { combinedMgPerL: 1.2 })
    const [toFloor] = chlorine(opening)
    expect(toFloor!.after.reading.fc_mg_per_L_as_Cl2!).toBeCloseTo(2, 6)
  })

  test('below the limits, or unread, one pour does', () => {
    expect(chlorine(plan(WELL, { metals: { iron_mg_per_L: 0.1 } })).map((line) => line.pours.length)).toEqual([1])
    expect(chlorine(plan(WELL)).map((line) => line.pours.length)).toEqual([1])
  })
})

describe('the first chlorine', () => {
  const lowIn = (cya: number) => water(7.5, 90, 260, cya, 0, 0.2, 500, 26)
  const said = (of: OpeningPlan) => of.warnings.filter((text) => text.includes('of stabiliser along'))

  test('stabilised chlorine says how much stabiliser it brings, and what that does to the band', () => {
    const at = (cya: number) => plan(lowIn(cya), { products: { openingChlorine: 'dichlor' } })
    // above the band there is an exchange first; at its very end the dose itself leads beyond
    const [text] = said(at(49.5))
    expect(text).toMatch(/brings \d\.\d mg\/L of stabiliser along, to 5\d mg\/L, above the 50 of its band/)
    expect(said(at(30))[0]).not.toContain('above')
    expect(said(plan(lowIn(49.5)))).toEqual([])
    const high = said(at(60))
    expect(high[0]).toContain('above the 50 of its band')
  })

  test.each(['trichlor-tablet', 'cal-hypo-tablet'])(
    '%s is no first chlorine: liquid goes in, and why is said',
    (id) => {
      const opening = plan(lowIn(48), { products: { openingChlorine: id } })
      const line = doses(opening).find((each) => each.purpose === 'openingChlorine')!
      expect(good(productById(line.productId)).product.form).toBe('liquid')
      expect(opening.warnings.join(' ')).toContain('dissolves over days and raises nothing the same day')
    },
  )
})
