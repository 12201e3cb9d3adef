import { describe, expect, test } from 'vitest'
import {
  type DoseLine,
  defaultTargets,
  type ExchangeLine,
  isInside,
  type KnownReading,
  type OpeningInput,
  type OpeningPlan,
  openingPlan,
} from '../../src/plan/index.ts'
import { methodSigma } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'
import { BALANCED, doses, FRESH, HOUR, input, NOW, plan } from './opening-cases.ts'

const keys = (of: OpeningPlan) => of.lines.map((line) => line.key)

describe('the order of an opening', () => {
  test('circulate, metals, chlorine, alkalinity, calcium, stabiliser, measure again; nothing for what is in its band', () => {
    const opening = plan({ ...FRESH, pH: 7.5 })
    expect(keys(opening).filter((key) => !key.startsWith('apart'))).toEqual([
      'circulate',
      'metals',
      // below its floor it comes before the night
      'chlorine',
      'keep-chlorine',
      'alkalinity',
      'calcium',
      'stabiliser',
      ...keys(opening).filter((key) => /^(base|acid)/.test(key)),
      'measure',
    ])
    expect(opening.lines.every((line) => line.why !== '' && line.how !== '')).toBe(true)
  })

  test('salt comes last, after measuring, and is measured once more', () => {
    const opening = plan(FRESH, { regimeId: 'salt' })
    const order = keys(opening)
    expect(order.indexOf('salt')).toBeGreaterThan(order.indexOf('measure'))
    expect(order.slice(-2)).toEqual(['salt', 'measure-2'])
  })

  test('a chlorine residual is there on the first day, even where alkalinity takes weeks, and the line says why', () => {
    const opening = plan({ ...FRESH, pH: 8.1, ta_mg_per_L_as_CaCO3: 280 })
    const chlorine = doses(opening).find((line) => line.purpose === 'openingChlorine')!
    expect(chlorine.startHours).toBeLessThan(24)
    expect(chlorine.exception).toContain('must not stand without chlorine')
    const lowering = doses(opening).filter((line) => line.title === 'Lower alkalinity')
    expect(lowering.length).toBeGreaterThan(1)
    for (const line of lowering) expect(line.isOptional).toBe(true)
    expect(opening.lines.some((line) => line.kind === 'aerate')).toBe(true)
  })

  test('acid is named with its strength, on the line and in how', () => {
    const acid = doses(plan({ ...BALANCED, pH: 8.1 })).find((line) => line.purpose === 'acid')!
    expect(acid.how).toContain('31.45 % HCl')
    expect(acid.cautions.join(' ')).toContain('into water')
  })

  test('the end is inside every band that was asked for', () => {
    for (const regimeId of ['unstabilised', 'stabilised', 'slow-tablet', 'salt']) {
      const of = input(FRESH, { regimeId })
      const end = good(openingPlan(of)).endWater!.reading
      for (const [key, band] of Object.entries(of.targets))
        expect(isInside(end[key as keyof typeof end]!, band!), `${regimeId} ${key}`).toBe(true)
    }
  })

  test('other constants move pH-bound doses, not the linear ones', () => {
    const amount = (of: OpeningPlan, purpose: string) => doses(of).find((line) => line.purpose === purpose)?.amountG
    const one = plan({ ...BALANCED, pH: 8.1, cya_mg_per_L: 50 })
    const other = plan({ ...BALANCED, pH: 8.1, cya_mg_per_L: 50 }, { constants: 'wahman' })
    expect(amount(one, 'acid')).not.toBe(amount(other, 'acid'))
    expect(amount(plan(FRESH), 'calcium')).toBe(amount(plan(FRESH, { constants: 'wahman' }), 'calcium'))
  })
})

describe('bands, not points', () => {
  test('water inside all its bands gets no dose', () => {
    const opening = plan(BALANCED)
    expect(doses(opening)).toEqual([])
    expect(opening.purchases).toEqual([])
    expect(opening.unreachable).toEqual([])
  })

  test('at the very ends of the bands too', () => {
    const targets = defaultTargets('plaster', 'stabilised', {})
    for (const end of ['low', 'high'] as const) {
      const start = {
        ...BALANCED,
        pH: 7.5,
        ch_mg_per_L_as_CaCO3: targets.ch_mg_per_L_as_CaCO3![end],
        cya_mg_per_L: targets.cya_mg_per_L![end],
      }
      expect(doses(plan(start))).toEqual([])
    }
  })

  test('the owner’s own band rules', () => {
    const targets = defaultTargets('plaster', 'stabilised', { cya_mg_per_L: { low: 40, aim: 45, high: 50 } })
    expect(targets.cya_mg_per_L).toMatchObject({ isOwn: true, aim: 45 })
    const opening = plan(BALANCED, { targets })
    expect(doses(opening).map((line) => line.purpose)).toContain('stabiliser')
  })

  test('a chlorine band below the floor is lifted to it', () => {
    const targets = defaultTargets('plaster', 'stabilised', { fc_mg_per_L_as_Cl2: { low: 0.3, aim: 0.5, high: 1 } })
    const chlorine = doses(plan({ ...BALANCED, fc_mg_per_L_as_Cl2: 0.5 }, { targets }))[0]!
    expect(chlorine.after.reading.fc_mg_per_L_as_Cl2).toBeCloseTo(2, 6)
  })
})

test('a turnover that nobody entered the flow for is said to be assumed, where lines wait for it', () => {
  const said = (of: OpeningPlan) => of.warnings.filter((text) => text.includes('turnover of 8 h'))
  expect(said(plan(FRESH, { turnoverHours: undefined }))).toHaveLength(1)
  expect(said(plan(FRESH))).toEqual([])
  expect(said(plan(BALANCED, { turnoverHours: undefined }))).toEqual([])
})

describe('what is unknown is not dosed', () => {
  test('an absent reading gets no dose and is asked for', () => {
    const opening = plan({ pH: 7.5, ta_mg_per_L_as_CaCO3: 90 })
    expect(doses(opening)).toEqual([])
    expect(opening.missing.map((row) => row.key).toSorted()).toEqual(
      ['ch_mg_per_L_as_CaCO3', 'cya_mg_per_L', 'fc_mg_per_L_as_Cl2'].toSorted(),
    )
    expect(opening.warnings.join(' ')).toContain('Stabiliser is unknown')
  })

  test('unknown magnesium hardness and sulfate are taken as none, and said in one line', () => {
    const said = (start: KnownReading) => plan(start).warnings.filter((line) => /magnesium|sulfate/i.test(line))
    expect(said({ pH: 7.5, ta_mg_per_L_as_CaCO3: 90 })).toEqual([
      expect.stringContaining('Magnesium hardness and sulfate unknown'),
    ])
    expect(said({ ...FRESH, sulfate_mg_per_L: undefined })).toEqual([expect.stringContaining('Sulfate unknown')])
    expect(said(FRESH)).toEqual([])
  })

  test('hard water whose salt was read and whose sulfate was not gets the sulfate that its charge needs, and says so', () => {
    const hard = {
      ...FRESH,
      pH: 7.6,
      ta_mg_per_L_as_CaCO3: 250,
      ch_mg_per_L_as_CaCO3: 340,
      mg_hardness_mg_per_L_as_CaCO3: undefined,
      sulfate_mg_per_L: undefined,
      salt_mg_per_L_as_NaCl: 60,
    }
    const opening = plan(hard)
    const { reading } = opening.startWater!
    // 2 (340 / 100.09) − 250 / 50.04 − 60 / 58.44 meq/L, by hand, and at the most 20 mg/L of salt more
    const leastEq = (2 * 340) / 100.0869 - 250 / 50.04345 - 60 / 58.4428
    expect(reading.sulfate_mg_per_L!).toBeGreaterThan(leastEq * 48.03)
    expect(reading.sulfate_mg_per_L!).toBeLessThan((leastEq + 0.35) * 48.03)
    expect(opening.warnings.join(' ')).toContain(`the sums take ${Math.round(reading.sulfate_mg_per_L!)} mg/L`)
    expect(opening.warnings.join(' ')).toMatch(/Magnesium hardness unknown: the sums take none/)
    // a reading is a reading, and what is not usual is not assumed
    const clash = (start: KnownReading) => {
      const answer = openingPlan(input(start))
      return answer.ok ? '' : answer.problem.code
    }
    expect(clash({ ...hard, sulfate_mg_per_L: 0 })).toBe('water-charge-does-not-close')
    expect(clash({ ...hard, ch_mg_per_L_as_CaCO3: 700 })).toBe('water-charge-does-not-close')
  })

  test('without pH or alkalinity there is nothing but the request to measure', () => {
    for (const absent of ['pH', 'ta_mg_per_L_as_CaCO3'] as const) {
      const opening = plan({ ...FRESH, [absent]: undefined })
      expect(opening.lines.map((line) => line.key)).toEqual(['measure-first'])
      expect(opening.missing.map((row) => row.key)).toContain(absent)
      expect(opening.startWater).toBeUndefined()
    }
  })

  test('unknown stabiliser counts as present for the floor', () => {
    const opening = plan(
      { ...BALANCED, cya_mg_per_L: undefined, fc_mg_per_L_as_Cl2: 1.2 },
      { regimeId: 'unstabilised' },
    )
    const chlorine = doses(opening).find((line) => line.purpose === 'openingChlorine')!
    expect(chlorine.after.reading.fc_mg_per_L_as_Cl2).toBeGreaterThanOrEqual(2)
  })
})

describe('age of the readings, and bathing', () => {
  test('readings older than 48 h, or none, put "measure again first" at the top', () => {
    for (const measuredAtMs of [NOW - 49 * HOUR, undefined]) {
      const opening = plan(FRESH, { measuredAtMs })
      expect(opening.measureAgain).toBe(true)
      expect(opening.lines[0]!.key).toBe('measure-first')
      expect(opening.lines[0]!.state).toBe('next')
    }
    expect(plan(FRESH, { measuredAtMs: NOW - 47 * HOUR }).measureAgain).toBe(false)
    const why = (more: Partial<OpeningInput>) => plan(FRESH, more).lines[0]!.why
    expect(why({ measuredAtMs: NOW - 75 * HOUR })).toContain('3 days old')
    expect(why({ measuredAtMs: undefined })).toContain('Nobody wrote down when')
  })

  test('readings that are minutes old are not called old: what is wrong with them is named', () => {
    const given = [{ product: 'muriatic-acid-31', amountG: 1000, atMs: NOW - HOUR }]
    const opening = plan(BALANCED, { given })
    const asks = opening.lines.filter((line) => line.key.startsWith('measure-first'))
    for (const line of asks) expect(line.why).not.toMatch(/48|days old|missing/)
    const broken = plan({ ...BALANCED, fc_mg_per_L_as_Cl2: 3 }, { combinedMgPerL: 1.2 })
    const again = broken.lines.find((line) => line.key === 'measure-after-combined')!
    expect([again.title, again.why]).toEqual(['Measure again', expect.stringContaining('only a reading tells')])
    expect(plan({ ...FRESH, pH: undefined }).lines[0]!.why).toContain('was not read')
  })

  test('only a fresh measured reading inside limits clears bathing; expected readings never do', () => {
    expect(plan(BALANCED).bathing.cleared).toBe(true)
    expect(plan(BALANCED, { measuredAtMs: NOW - 30 * HOUR }).bathing.cleared).toBe(false)
    expect(plan(BALANCED, { measuredAtMs: undefined }).bathing.cleared).toBe(false)
    expect(plan({ ...BALANCED, fc_mg_per_L_as_Cl2: 1.5 }).bathing.cleared).toBe(false)
    expect(plan({ ...BALANCED, fc_mg_per_L_as_Cl2: 6 }).bathing.cleared).toBe(false)
    expect(plan({ ...BALANCED, pH: 8.0 }).bathing.cleared).toBe(false)
    expect(plan({ ...BALANCED, fc_mg_per_L_as_Cl2: undefined }).bathing.cleared).toBe(false)
    // the dose would bring it inside, but that is an expectation
    const low = { ...BALANCED, fc_mg_per_L_as_Cl2: 0.5 }
    const given = [{ line: 'chlorine', product: 'liquid-chlorine-12', amountG: 1400, atMs: NOW - HOUR / 2 }]
    const dosed = plan(low, { given })
    expect(dosed.endWater!.reading.fc_mg_per_L_as_Cl2).toBeGreaterThan(2)
    expect(dosed.bathing.cleared).toBe(false)
    expect(plan(BALANCED, { given }).bathing.cleared).toBe(false)
  })
})

describe('whose readings clear bathing', () => {
  test('fill water never does, however good and fresh it is', () => {
    const { bathing } = plan(BALANCED, { startIs: 'fill' })
    expect(bathing).toEqual({
      cleared: false,
      reason: 'These are the fill water’s readings; measure the pool itself.',
    })
  })

  test('a supplier’s report on the pool’s list does not either, nor readings of which nobody says how', () => {
    expect(plan(BALANCED, { method: 'supplier' }).bathing).toMatchObject({
      cleared: false,
      reason: expect.stringContaining('measure the pool itself'),
    })
    for (const method of ['unknown', undefined] as const)
      expect(plan(BALANCED, { method }).bathing).toMatchObject({
        cleared: false,
        reason: expect.stringContaining('is not said'),
      })
    expect(plan(BALANCED, { startIs: undefined }).bathing.cleared).toBe(false)
    for (const method of ['strip', 'drop-kit', 'photometer', 'sensor', 'laboratory'] as const)
      expect(plan(BALANCED, { method }).bathing.cleared).toBe(true)
  })

  test('stabiliser: 90 mg/L may, 95 never (MAHC 5.7.3.1.3, seen second-hand)', () => {
    expect(plan({ ...BALANCED, cya_mg_per_L: 90, fc_mg_per_L_as_Cl2: 4 }).bathing.cleared).toBe(true)
    for (const chlorine of [2, 3, 4])
      expect(plan({ ...BALANCED, cya_mg_per_L: 95, fc_mg_per_L_as_Cl2: chlorine }).bathing).toMatchObject({
        cleared: false,
        reason: expect.stringContaining('above 90 mg/L'),
      })
  })

  test('unknown stabiliser counts as present, and is said to', () => {
    const unknown = (chlorine: number) =>
      plan({ ...BALANCED, cya_mg_per_L: undefined, fc_mg_per_L_as_Cl2: chlorine }).bathing
    expect(unknown(1.5)).toMatchObject({ cleared: false, reason: expect.stringContaining('below the 2 mg/L') })
    expect(unknown(1.5).reason).toContain('unknown and counts as present')
    expect(unknown(2.5)).toMatchObject({ cleared: true, reason: expect.stringContaining('counts as present') })
    expect(plan({ ...BALANCED, cya_mg_per_L: 0, fc_mg_per_L_as_Cl2: 1.5 }).bathing.cleared).toBe(true)
  })

  test('pH from 7.0 to 7.8 (CDC operating guidance, seen), ends included', () => {
    for (const [pH, cleared] of [
      [6.9, false],
      [7.0, true],
      [7.8, true],
      [7.9, false],
    ] as const)
      expect(plan({ ...BALANCED, pH }).bathing.cleared, `${pH}`).toBe(cleared)
  })
})

describe('ticked doses', () => {
  test('what was given is counted from the readings, stays listed, and the rest is planned anew', () => {
    const before = plan(FRESH)
    const calcium = doses(before).find((line) => line.purpose === 'calcium')!
    const half = calcium.amountG / 2
    const after = plan(FRESH, { given: [{ line: 'calcium', product: calcium.productId, amountG: half, atMs: NOW }] })
    const done = doses(after).find((line) => line.state === 'done')!
    expect(done).toMatchObject({ key: 'calcium', amountG: half, state: 'done' })
    expect(done.given?.amountG).toBe(half)
    const rest = doses(after).find((line) => line.purpose === 'calcium' && line.state !== 'done')!
    expect(rest.key).toBe('calcium-2')
    const ch = (line: DoseLine) => line.after.reading.ch_mg_per_L_as_CaCO3!
    expect(ch(done)).toBeCloseTo(80 + (ch(calcium) - 80) / 2, 6)
    expect(isInside(ch(rest), input(FRESH).targets.ch_mg_per_L_as_CaCO3!)).toBe(true)
    expect(rest.startHours).toBeGreaterThanOrEqual(8)
  })

  /** The lines between the last given dose and the next dose that is planned. */
  const between = (of: OpeningPlan) => {
    const first = of.lines.findIndex((line) => line.kind === 'dose' && line.state !== 'done')
    const from = of.lines.findLastIndex((line) => line.state === 'done')
    return { next: of.lines[first] as DoseLine, lines: of.lines.slice(from + 1, first) }
  }

  test.each([
    ['acid, then chlorine', 'muriatic-acid-31', 200, { ...BALANCED, fc_mg_per_L_as_Cl2: 0.5 }, 'openingChlorine', 8],
    ['chlorine, then acid', 'liquid-chlorine-12', 100, { ...BALANCED, pH: 8.1 }, 'acid', 8],
    ['bicarbonate, then calcium', 'sodium-bicarbonate', 100, { ...BALANCED, ch_mg_per_L_as_CaCO3: 120 }, 'calcium', 12],
    ['soda, then calcium', 'soda-ash', 100, { ...BALANCED, ch_mg_per_L_as_CaCO3: 120 }, 'calcium', 12],
    [
      'calcium, then bicarbonate',
      'calcium-chloride-flake',
      100,
      { ...BALANCED, ta_mg_per_L_as_CaCO3: 40 },
      'alkalinity',
      12,
    ],
  ] as const)('%s: a turnover and a line of its own stand between, counted from when it was given', (...row) => {
    const [, product, amountG, start, purpose, hours] = row
    for (const agoHours of [0, 0.5, 3]) {
      const atMs = NOW - agoHours * HOUR
      const opening = plan(start, { given: [{ product, amountG, atMs }], measuredAtMs: NOW - 5 * HOUR })
      const { next, lines } = between(opening)
      expect(next.purpose).toBe(purpose)
      expect(lines.map((line) => line.title)).toEqual(['Keep the two apart'])
      expect(lines[0]!.state).toBe('next')
      // hours count from the first dose that was given
      expect(next.startHours).toBeGreaterThanOrEqual(hours)
      expect(next.startHours).toBeCloseTo(lines[0]!.startHours + lines[0]!.waitHours, 9)
    }
    const long = plan(start, { given: [{ product, amountG, atMs: NOW - 20 * HOUR }], measuredAtMs: NOW - 21 * HOUR })
    expect(between(long).lines).toEqual([])
  })

  test('a dose from before the readings still keeps its enemies away', () => {
    const start = { ...BALANCED, fc_mg_per_L_as_Cl2: 0.5 }
    const given = [{ product: 'muriatic-acid-31', amountG: 200, atMs: NOW - 2 * HOUR }]
    const opening = plan(start, { given })
    const at = opening.lines.findIndex((line) => line.kind === 'dose')
    expect(opening.lines[at - 1]).toMatchObject({ title: 'Keep the two apart', startHours: 1, waitHours: 5 })
    // it is in the readings already: nothing is counted twice
    expect(opening.startWater).toEqual(plan(start).startWater)
    expect(opening.endWater).toEqual(plan(start).endWater)
  })

  test('a slow pump’s whole turnover is waited, and a given dose two lines back counts too', () => {
    const given = [
      { product: 'muriatic-acid-31', amountG: 200, atMs: NOW - HOUR },
      { product: 'salt', amountG: 500, atMs: NOW - HOUR / 2 },
    ]
    const start = { ...BALANCED, fc_mg_per_L_as_Cl2: 0.5 }
    const { next, lines } = between(plan(start, { given, turnoverHours: 20, measuredAtMs: NOW - 2 * HOUR }))
    expect(lines.map((line) => line.title)).toEqual(['Keep the two apart'])
    expect(next.startHours).toBeGreaterThanOrEqual(20)
  })

  test('the whole plan ticked line by line leaves nothing to dose', () => {
    const start = { ...FRESH, pH: 7.5 }
    let given: OpeningInput['given'] = []
    for (let step = 0; step < 20; step++) {
      const next = doses(plan(start, { given })).find((line) => line.state !== 'done')
      if (!next) break
      given = [...given, { line: next.key, product: next.productId, amountG: next.amountG, atMs: NOW + step * HOUR }]
    }
    expect(given.length).toBeGreaterThan(3)
    const finished = plan(start, { given })
    expect(doses(finished).every((line) => line.state === 'done')).toBe(true)
    expect(new Set(keys(finished)).size).toBe(keys(finished).length)
  })

  test('a dose of an unknown product says which', () => {
    const answer = openingPlan(input(FRESH, { given: [{ product: 'elixir', amountG: 10, atMs: NOW }] }))
    expect(!answer.ok && answer.problem.path).toBe('given[0].product')
  })
})

describe('what cannot be dosed away', () => {
  const high = { ...BALANCED, cya_mg_per_L: 90 }
  const fill = { ...FRESH, ch_mg_per_L_as_CaCO3: 120 }

  test('too much stabiliser is a Problem and an exchange that would do it', () => {
    const opening = plan(high, { fill })
    expect(opening.unreachable.map((problem) => problem.code)).toContain('cya-too-high')
    const line = opening.lines.find((each): each is ExchangeLine => each.kind === 'exchange')!
    expect(line.isAllowed).toBe(true)
    expect(line.after!.reading.cya_mg_per_L).toBeLessThanOrEqual(50)
    expect(line.after!.reading.cya_mg_per_L).toBeGreaterThan(48)
    expect(line.cautions.join(' ')).toMatch(/groundwater/i)
    expect(line.cautions.join(' ')).toMatch(/leaves must hold no chlorine/i)
    expect(line.cautions.join(' ')).toMatch(/local rule/i)
  })

  test('vinyl and fibreglass are emptied only in part, with the maker’s word first', () => {
    for (const surface of ['vinyl', 'fibreglass'] as const) {
      const line = plan(high, { surface, fill }).lines.find((each): each is ExchangeLine => each.kind === 'exchange')!
      expect(line.fraction).toBeLessThanOrEqual(1 / 3 + 1e-9)
      expect(line.rounds).toBeGreaterThan(1)
      expect(line.why).toContain('maker')
      // the rounds together do what one would
      expect(90 * (1 - line.fraction) ** line.rounds).toBeCloseTo(line.after!.reading.cya_mg_per_L!, 6)
    }
  })

  test('without a known fill it is only described, and says that it is a least', () => {
    const opening = plan(high)
    const line = opening.lines.find((each): each is ExchangeLine => each.kind === 'exchange')!
    expect(line.after).toBeUndefined()
    expect(opening.unreachable[0]!.hint).toContain('at least')
  })

  test('a fill as hard as the pool is no way out, and is said to be none', () => {
    const opening = plan(
      { ...BALANCED, ch_mg_per_L_as_CaCO3: 600, salt_mg_per_L_as_NaCl: 900 },
      { fill: { ...BALANCED, ch_mg_per_L_as_CaCO3: 590, salt_mg_per_L_as_NaCl: 900 } },
    )
    expect(opening.lines.some((line) => line.kind === 'exchange')).toBe(false)
    expect(opening.unreachable[0]!.hint).toContain('fill water has as much')
  })

  test('chlorine above its band is waited for', () => {
    const opening = plan({ ...BALANCED, fc_mg_per_L_as_Cl2: 9 })
    expect(keys(opening)).toContain('chlorine-high')
    expect(doses(opening)).toEqual([])
  })
})

describe('amounts that a person can weigh', () => {
  test('the amount’s interval is that of the volume and of the reading, as squares', () => {
    const z = 1.959964
    for (const method of ['strip', 'drop-kit', 'photometer'] as const)
      for (const line of doses(plan(FRESH, { volumeSigmaM3: 3, method }))) {
        const key = ({ calcium: 'ch_mg_per_L_as_CaCO3', stabiliser: 'cya_mg_per_L' } as const)[
          line.purpose as 'calcium'
        ]
        if (key === undefined) continue
        const value = FRESH[key]!
        const sigma = (methodSigma(method, key, value) ?? methodSigma('unknown', key, value))!.sigma
        const { after } = line.movements.find((movement) => movement.key === key)!
        const spread = z * Math.hypot(3 / 60, sigma / (after - value))
        expect(line.lowG / line.amountG).toBeCloseTo(Math.max(0, 1 - spread), 6)
        expect(line.highG / line.amountG).toBeCloseTo(1 + spread, 6)
      }
  })

  test('a coarser test makes every interval wider, never narrower than the volume’s', () => {
    const widths = (method: OpeningInput['method']) =>
      doses(plan(FRESH, { method })).map((line) => (line.highG - line.amountG) / line.amountG)
    const fine = widths('photometer')
    widths('strip').forEach((width, at) => {
      expect(width).toBeGreaterThanOrEqual(fine[at]!)
      expect(fine[at]!).toBeGreaterThan((1.959964 * 2) / 60)
    })
    expect(fine.length).toBeGreaterThan(3)
    // hardness is read by no strip, so that its σ is the widest of all tests either way
    expect(widths('strip').filter((width, at) => width > fine[at]!).length).toBeGreaterThan(2)
  })

  test('the reckoned amount comes first; whole packages only where they are asked for', () => {
    const calcium = (of: OpeningPlan) => doses(of).find((line) => line.purpose === 'calcium')!
    const reckoned = calcium(plan(FRESH))
    expect(reckoned.after.reading.ch_mg_per_L_as_CaCO3).toBeCloseTo(275, 6)
    expect(reckoned.packages!.isWhole).toBe(false)
    expect(calcium(plan(FRESH, { dosing: 'whole-packages' })).packages!.isWhole).toBe(true)
  })

  test('whole packages only where they land inside the band', () => {
    for (const volumeM3 of [7, 23, 60, 141]) {
      const of = input(FRESH, { volumeM3, volumeSigmaM3: 0, dosing: 'whole-packages' })
      for (const line of doses(good(openingPlan(of)))) {
        if (!line.packages?.isWhole || line.purpose === 'acid' || line.purpose === 'base') continue
        const moved = line.movements.find(
          (movement) => movement.band && movement.key !== 'pH' && movement.after > movement.before,
        )
        expect(moved?.inBand, line.key).toBe(true)
        expect(line.packages.leftoverG).toBe(0)
      }
      const calcium = doses(good(openingPlan(of))).find((line) => line.purpose === 'calcium')!
      expect(isInside(calcium.after.reading.ch_mg_per_L_as_CaCO3!, of.targets.ch_mg_per_L_as_CaCO3!)).toBe(true)
    }
  })

  test('a small pool weighs out of a bag and says what is left', () => {
    const stabiliser = doses(plan(FRESH, { volumeM3: 9, volumeSigmaM3: 0 })).find(
      (line) => line.purpose === 'stabiliser',
    )!
    expect(stabiliser.packages).toMatchObject({ label: '1 kg', count: 1, isWhole: false })
    expect(stabiliser.packages!.leftoverG).toBeCloseTo(1000 - stabiliser.amountG, 6)
  })

  test('US packages where they are asked for', () => {
    const calcium = doses(plan(FRESH, { packageSystem: 'us' })).find((line) => line.purpose === 'calcium')!
    expect(calcium.packages!.label).toMatch(/ lb$/)
  })

  test('what stands in the shed is not bought again', () => {
    const bare = plan(FRESH).purchases.find((item) => item.productId === 'calcium-chloride-flake')!
    const stocked = plan(FRESH, { stockG: { 'calcium-chloride-flake': 1e6 } }).purchases.find(
      (item) => item.productId === 'calcium-chloride-flake',
    )!
    expect(bare.count).toBeGreaterThan(0)
    expect(stocked).toMatchObject({ count: 0, inStockG: 1e6 })
  })

  test('where the volume is unsure and overshoot hard to undo, a safe share goes first', () => {
    const of = input(FRESH, { volumeSigmaM3: 12, regimeId: 'unstabilised' })
    const borate = doses(good(openingPlan(of))).find((line) => line.purpose === 'borate')!
    expect(borate.safeFirstG).toBeDefined()
    expect(borate.safeFirstG!).toBeLessThan(borate.amountG)
    expect(borate.how).toContain('% first, measure')
    // even in the smallest plausible volume the first share stays inside the band
    const least = 60 - 1.959964 * 12
    const rise = borate.after.reading.borate_mg_per_L_as_B! * (borate.safeFirstG! / borate.amountG) * (60 / least)
    expect(rise).toBeLessThanOrEqual(50 + 1e-6)
    expect(doses(plan(FRESH, { volumeSigmaM3: 0.1 })).every((line) => line.safeFirstG === undefined)).toBe(true)
  })

  test('large doses are poured in parts, hours apart', () => {
    const alkalinity = doses(plan({ ...FRESH, ta_mg_per_L_as_CaCO3: 15, salt_mg_per_L_as_NaCl: 150 })).find(
      (line) => line.purpose === 'alkalinity',
    )!
    expect(alkalinity.pours.length).toBeGreaterThan(1)
    expect(alkalinity.pours[1]!.hoursAfterStart).toBeGreaterThan(0)
  })
})

describe('input that cannot be planned is a Problem with its place', () => {
  const path = (more: Partial<OpeningInput>) => {
    const answer = openingPlan(input(FRESH, more))
    return answer.ok ? '' : `${answer.problem.code} ${answer.problem.path}`
  }
  test('volume, spread, regime, band and product', () => {
    expect(path({ volumeM3: 0 })).toBe('plan-number volumeM3')
    expect(path({ volumeM3: Number.NaN })).toBe('plan-number volumeM3')
    expect(path({ volumeSigmaM3: -1 })).toBe('plan-number volumeSigmaM3')
    expect(path({ turnoverHours: 0 })).toBe('plan-number turnoverHours')
    expect(path({ regimeId: 'magic' })).toBe('unknown-regime regimeId')
    expect(path({ products: { acid: 'soda-ash' } })).toBe('wrong-product products.acid')
    expect(path({ products: { acid: 'elixir' } })).toBe('unknown-product products.acid')
    const targets = { pH: { low: 7.8, aim: 7.5, high: 7.2, source: '', isOwn: true } }
    expect(path({ targets })).toBe('band-upside-down targets.pH')
  })

  test('readings that clash are the kernel’s own Problem', () => {
    const answer = openingPlan(
      input({ ...FRESH, salt_mg_per_L_as_NaCl: 0, ch_mg_per_L_as_CaCO3: 400, sulfate_mg_per_L: 0 }),
    )
    expect(!answer.ok && answer.problem.code).toBe('water-charge-does-not-close')
  })

  test('an unknown regime leaves only the owner’s own bands', () => {
    expect(defaultTargets('plaster', 'magic', {})).toEqual({})
    expect(Object.keys(defaultTargets('plaster', 'magic', { pH: { low: 7, aim: 7.4, high: 7.6 } }))).toEqual(['pH'])
  })
})

describe('a slip in the pump’s flow', () => {
  test('no wait goes by a turnover of more than a week, and the plan says so', () => {
    const slow = plan(FRESH, { turnoverHours: 8000 })
    const usual = plan(FRESH, { turnoverHours: 8 })
    expect(slow.lines.map(({ key, startHours }) => [key, startHours])).toEqual(
      usual.lines.map(({ key, startHours }) => [key, startHours]),
    )
    expect(slow.warnings.some((words) => words.includes('more than a week: check it'))).toBe(true)
    expect(usual.warnings.some((words) => words.includes('turnover'))).toBe(false)
    expect(plan(FRESH, { turnoverHours: 160 }).warnings.some((words) => words.includes('check it'))).toBe(false)
  })
})
