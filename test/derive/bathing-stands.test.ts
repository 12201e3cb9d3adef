import { describe, expect, test } from 'vitest'
import { deriveOpening, deriveUpkeep, deriveWater } from '../../src/derive/index.ts'
import { type CommandArgs, demoSpec, type ReadingValues, type Spec } from '../../src/document/index.ts'
import { lastingHours } from '../../src/plan/bathing-lasting.ts'
import { edited } from './edited.ts'

const systemId = 'pool'
const NOW = Date.parse('2026-07-10T12:00:00Z')
const HOUR = 3_600_000
const hoursAgo = (hours: number) => new Date(NOW - hours * HOUR).toISOString()
const GOOD: ReadingValues = {
  pH: 7.4,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 280,
  cya_mg_per_L: 30,
  borate_mg_per_L_as_B: 0,
  fc_mg_per_L_as_Cl2: 3,
  salt_mg_per_L_as_NaCl: 900,
  temperature_C: 26,
}
const PARTIAL: ReadingValues = { pH: 7.4, fc_mg_per_L_as_Cl2: 3 }

type ReadingSet = CommandArgs<'addReadings'>['set']
/** The demonstration pool with nothing logged and only these readings. */
const pool = (...sets: readonly Partial<ReadingSet>[]): Spec =>
  sets.reduce<Spec>(
    (spec, set) =>
      edited(spec, {
        id: 'addReadings',
        args: { systemId, set: { at: hoursAgo(1), method: 'photometer', values: GOOD, ...set } },
      }),
    {
      ...demoSpec,
      systems: demoSpec.systems.map((each) => ({ ...each, log: [], water: { ...each.water, readings: [] } })),
    },
  )
const dosed = (spec: Spec, product: string, amountG: number, hours: number): Spec =>
  edited(spec, { id: 'logDose', args: { systemId, at: hoursAgo(hours), product, amountG } })
const planOf = (spec: Spec, nowMs = NOW) => {
  const plan = deriveOpening(spec, systemId, nowMs)
  if (!plan.ok) throw new Error(plan.problem.what)
  return plan.value
}
const bathingOf = (spec: Spec, nowMs = NOW) => planOf(spec, nowMs).bathing

describe('what was read too high stands until it is read again', () => {
  const bound = { ...GOOD, tc_mg_per_L_as_Cl2: 5 }

  test('combined chlorine, though a newer reading lacks it', () => {
    const spec = pool({ at: hoursAgo(70), values: bound }, { values: GOOD })
    expect(bathingOf(spec)).toMatchObject({ cleared: false, reason: expect.stringContaining('read 2 mg/L 3 days ago') })
    expect(planOf(spec).lines.map(({ key }) => key)).toContain('combined')
    expect(
      bathingOf(pool({ at: hoursAgo(70), values: bound }, { values: { ...GOOD, tc_mg_per_L_as_Cl2: 3.1 } })),
    ).toEqual(bathingOf(pool({ values: GOOD })))
    expect(bathingOf(pool({ values: GOOD })).cleared).toBe(true)
  })

  test('combined chlorine that was read without free chlorine counts too', () => {
    const spec = pool({ at: hoursAgo(3), values: { cc_mg_per_L_as_Cl2: 1.5 } }, { values: GOOD })
    expect(bathingOf(spec).reason).toContain('Combined chlorine read 1.5 mg/L')
  })

  test('no dose clears it: the line stays, with what was given taken off, until only the reading is left', () => {
    const line = (spec: Spec) => planOf(spec).lines.find(({ key }) => key === 'combined')
    const spec = pool({ at: hoursAgo(20), values: bound })
    const raised = (of: Spec) => Number(/by ([\d.]+) mg\/L/.exec(line(of)?.how ?? '')?.[1])
    // 15 g of chlorine to a gram of nitrogen, 0.1975 g of that in each gram of combined chlorine, less what is there
    const whole = 15 * 0.1975 * 2 - 2
    expect(raised(dosed(spec, 'salt', 3000, 2))).toBeCloseTo(whole, 1)
    const some = dosed(spec, 'liquid-chlorine-12', 500, 2)
    expect(raised(some)).toBeGreaterThan(1)
    expect(raised(some)).toBeLessThan(whole - 0.5)
    expect(line(dosed(spec, 'liquid-chlorine-12', 6000, 12))?.title).toBe('Read free and total chlorine again')
    expect(bathingOf(dosed(spec, 'liquid-chlorine-12', 6000, 19)).cleared).toBe(false)
    const tick = { systemId, line: 'combined', at: hoursAgo(12), text: 'Broken down.' }
    const ticked = edited(pool({ at: hoursAgo(20), values: bound }, { values: PARTIAL }), {
      id: 'tickLine',
      args: tick,
    })
    expect(line(ticked)?.title).toBe('Read free and total chlorine again')
  })

  test('stabiliser that was read too high long ago stands against breaking it down, too', () => {
    const high = { at: hoursAgo(500), values: { ...bound, cya_mg_per_L: 150 } }
    const { lines } = planOf(pool(high, { values: { ...PARTIAL, ta_mg_per_L_as_CaCO3: 90, tc_mg_per_L_as_Cl2: 5 } }))
    expect(lines.find(({ key }) => key === 'combined')?.how).toContain('stabiliser')
    expect(lines.find(({ key }) => key === 'combined')?.how).not.toContain('Raise free chlorine')
  })

  test('stabiliser above 90 mg/L, days ago or moved by a dose since, until it is read again', () => {
    const high = { at: hoursAgo(72), values: { ...GOOD, cya_mg_per_L: 150 } }
    expect(bathingOf(pool(high, { values: PARTIAL })).reason).toContain('Stabiliser came to 150 mg/L 3 days ago')
    expect(bathingOf(pool(high, { values: GOOD })).cleared).toBe(true)
    const moved = dosed(
      pool({ at: hoursAgo(23), values: { ...GOOD, cya_mg_per_L: 85 } }, { values: PARTIAL }),
      'dichlor',
      2000,
      22,
    )
    expect(bathingOf(moved)).toMatchObject({ cleared: false, reason: expect.stringContaining('above 90') })
  })

  test('an exchange leaves it open how much is left; a sensor, which has no such test, takes nothing back', () => {
    const high = { at: hoursAgo(72), values: { ...GOOD, cya_mg_per_L: 150 } }
    const tick = { systemId, line: 'exchange', at: hoursAgo(40), text: 'Exchanged.' }
    const exchanged = edited(pool(high, { values: PARTIAL }), { id: 'tickLine', args: tick })
    expect(bathingOf(exchanged).reason).toContain('though water was exchanged')
    expect(bathingOf(pool(high, { method: 'sensor', values: { ...GOOD, cya_mg_per_L: 0 } })).cleared).toBe(false)
  })
})

describe('doses that are still mixing', () => {
  // 6 m³ an hour through the demonstration pool: about 11 h to a turnover
  test('nobody bathes while the wait of any dose runs, whenever the readings were taken', () => {
    const spec = dosed(pool({ at: hoursAgo(2 / 60) }), 'muriatic-acid-31', 2000, 3 / 60)
    expect(bathingOf(spec).reason).toMatch(/^Muriatic acid 31.45 % went in 3 min ago and needs .* nobody bathes/)
    expect(bathingOf(dosed(pool({}), 'muriatic-acid-31', 0, 1.1)).cleared).toBe(true)
  })

  test('a reading within that wait is of unmixed water: it clears nobody, and the plan begins with another', () => {
    const spec = dosed(pool({ at: hoursAgo(13) }), 'muriatic-acid-31', 500, 13.5)
    const plan = planOf(spec)
    expect(plan.bathing.reason).toMatch(/^The readings were taken 30 min after Muriatic acid 31.45 % went in/)
    expect(plan.lines[0]).toMatchObject({ key: 'measure-first', why: expect.stringContaining('not mixed') })
    expect(planOf(dosed(pool({ at: hoursAgo(1) }), 'muriatic-acid-31', 500, 15)).measureAgain).toBe(false)
    // what dissolves over days in a sock leaves pH and chlorine readable after a turnover
    expect(planOf(dosed(pool({ at: hoursAgo(1) }), 'cyanuric-acid', 500, 20)).measureAgain).toBe(false)
  })
})

describe('how long a reading tells that the floor is held', () => {
  const bare = (fc: number, hours: number, equipment: Partial<CommandArgs<'setEquipment'>> = {}) =>
    edited(pool({ at: hoursAgo(hours), values: { ...GOOD, cya_mg_per_L: 0, fc_mg_per_L_as_Cl2: fc } }), {
      id: 'setEquipment',
      args: { systemId, coverHoursPerDay: 0, ...equipment },
    })

  test('without stabiliser in the open sun it is over within the hour', () => {
    const { cleared, reason } = bathingOf(bare(1.2, 23.5))
    expect(cleared).toBe(false)
    expect(reason).toContain('Without stabiliser the sun may have taken it below the 1 mg/L')
    expect(bathingOf(bare(3, 0.2)).cleared).toBe(true)
  })

  test('where the upkeep says that the floor is held the whole day stands', () => {
    const covered = bare(3, 23.5, { coverHoursPerDay: 24, coverKind: 'solid' })
    const upkeep = deriveUpkeep(covered, systemId, NOW)
    expect(upkeep.ok && upkeep.value.floor.isHeld).toBe(true)
    expect(bathingOf(covered).cleared).toBe(true)
  })

  test('unknown stabiliser is judged as none', () => {
    const { cya_mg_per_L: _, ...rest } = GOOD
    expect(bathingOf(pool({ at: hoursAgo(12), values: { ...rest, fc_mg_per_L_as_Cl2: 3.5 } })).reason).toContain(
      'Stabiliser is unknown; without it the sun',
    )
  })

  test('t = ln((R + d/k)/(floor + d/k))/k: stepping dR/dt = −k R − d ends at the floor', () => {
    const [k, d, floor] = [0.51, 0.81, 2]
    const hours = lastingHours(3, floor, { isHeld: false, perDay: k, steadyMgPerLDay: d })
    let residual = 3
    const steps = 100_000
    for (let i = 0; i < steps; i++) residual -= (k * residual + d) * (hours / 24 / steps)
    expect(residual).toBeCloseTo(floor, 4)
    // the two figures of the model
    expect(hours).toBeCloseTo(12, 0)
    expect(60 * lastingHours(1.2, 1, { isHeld: false, perDay: 12.01, steadyMgPerLDay: 0.36 })).toBeCloseTo(21, 0)
    expect(lastingHours(3, floor, { isHeld: false, perDay: 0, steadyMgPerLDay: 2 })).toBeCloseTo(12, 9)
    expect(lastingHours(2, floor, { isHeld: false, perDay: k, steadyMgPerLDay: d })).toBe(0)
  })
})

describe('a reading of no stabiliser', () => {
  const none = (method: ReadingSet['method'], hours = 1) => ({
    at: hoursAgo(hours),
    method,
    values: { ...GOOD, cya_mg_per_L: 0, fc_mg_per_L_as_Cl2: 1.5 },
  })
  // tablets without stabiliser, so that nothing in use speaks against it
  const floorOf = (spec: Spec) => {
    const upkeep = deriveUpkeep(spec, systemId, NOW)
    if (!upkeep.ok) throw new Error(upkeep.problem.what)
    expect(deriveWater(spec, systemId, NOW).sanitation.limits.floorMgPerL).toBe(upkeep.value.floor.mgPerL)
    return upkeep.value.floor.mgPerL
  }

  test('counts as none where nothing speaks against it, by every test that there is', () => {
    for (const method of ['strip', 'drop-kit', 'photometer', 'laboratory'] as const)
      expect(floorOf(pool(none(method)))).toBe(1)
    expect(floorOf(pool(none('sensor')))).toBe(2)
  })

  test('a stabilised dose, an earlier reading or tablets in use speak against it', () => {
    const logged = dosed(pool(none('drop-kit')), 'dichlor', 2000, 400)
    expect(floorOf(logged)).toBe(2)
    expect(planOf(logged).warnings.join(' ')).toContain('by drop kit that means less than 30 mg/L')
    expect(planOf(logged).missing.map(({ key }) => key)).toContain('cya_mg_per_L')
    const read = (value: number) =>
      pool({ at: hoursAgo(500), values: { ...GOOD, cya_mg_per_L: value } }, none('drop-kit'))
    expect(floorOf(read(35))).toBe(2)
    expect(floorOf(read(5))).toBe(1)
    const tablets = { systemId, purpose: 'dailyChlorine', product: 'trichlor-tablet' } as const
    expect(floorOf(edited(pool(none('drop-kit')), { id: 'setProduct', args: tablets }))).toBe(2)
  })

  test('after an exchange a photometer settles it, a drop kit does not', () => {
    const exchanged = (method: ReadingSet['method']) =>
      edited(dosed(pool(none(method, 30), none('drop-kit')), 'dichlor', 2000, 400), {
        id: 'tickLine',
        args: { systemId, line: 'exchange', at: hoursAgo(60), text: 'Exchanged.' },
      })
    expect(floorOf(exchanged('photometer'))).toBe(1)
    expect(floorOf(exchanged('drop-kit'))).toBe(2)
  })

  test('after an accident no times are named by a test that cannot tell 15 mg/L from none', () => {
    const codeOf = (method: ReadingSet['method']) => {
      const { diarrhoea } = deriveWater(pool(none(method)), systemId, NOW).sanitation.incidents
      return diarrhoea.ok ? 'times' : diarrhoea.problem.code
    }
    for (const method of ['photometer', 'laboratory'] as const) expect(codeOf(method)).toBe('times')
    for (const method of ['strip', 'drop-kit'] as const) expect(codeOf(method)).toBe('incident-stabiliser-not-seen')
    expect(codeOf('sensor')).toBe('incident-stabiliser-unknown')
  })

  test('the demonstration pool’s own drop kit is taken at its word', () => {
    const at = Date.parse(demoSpec.systems[0]!.water.readings[0]!.at)
    expect(deriveWater(demoSpec, systemId, at).sanitation.limits.stabiliser).toBe('none')
    expect(planOf(demoSpec, at).missing).toEqual([])
  })
})

describe('stabiliser that had not dissolved when it was read', () => {
  const stabilised = edited(pool({ values: { ...GOOD, cya_mg_per_L: 12 } }), {
    id: 'setRegime',
    args: { systemId, id: 'stabilised' },
  })
  const isDosed = (spec: Spec) =>
    planOf(spec).lines.some((line) => line.kind === 'dose' && line.state !== 'done' && line.purpose === 'stabiliser')

  test('is not asked for a second time, and the plan says when to read', () => {
    expect(isDosed(stabilised)).toBe(true)
    const given = dosed(stabilised, 'cyanuric-acid', 1500, 12)
    expect(isDosed(given)).toBe(false)
    expect(planOf(given).warnings.join(' ')).toMatch(
      /None is dosed until it can be read\. Read it again in (60 h|3 days)/,
    )
    expect(isDosed(dosed(stabilised, 'cyanuric-acid', 1500, 80))).toBe(true)
  })
})
