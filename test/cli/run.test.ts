import { afterEach, describe, expect, test, vi } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'
import { VERBS } from '../../src/cli/verbs/index.ts'
import { demoSpec } from '../../src/document/index.ts'

const NOW = Date.UTC(2026, 5, 1, 12)
const run = (args: readonly string[], text: string) => runCommandLine(args, { readInput: () => text, nowMs: NOW })
const lines = (stdout: string) =>
  stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))

afterEach(() => vi.restoreAllMocks())

describe('the command line', () => {
  test('answers each line in order and exits with 2 where one was a problem', () => {
    const water = { pH: 7.5, ta_mg_per_L_as_CaCO3: 100 }
    const text = [{ input: water }, { input: { pH: 'x' } }, { input: water }]
      .map((line) => JSON.stringify(line))
      .join('\n')
    const { stdout, stderr, exitCode } = run(['speciate', '-'], text)
    const [first, second, third] = lines(stdout)
    expect(exitCode).toBe(2)
    expect(stderr).toBe('')
    expect(first).toEqual(third)
    expect(first.output.dic_mmol_per_kgw).toBeGreaterThan(2)
    expect(second.problem.path).toBe('input.pH')
    for (const key of ['code', 'path', 'what', 'why', 'hint']) expect(typeof second.problem[key]).toBe('string')
  })

  test.each([
    ['blend', { fill_fraction: 1.2 }, 'input.fill_fraction'],
    ['blend', { fill_fraction: -0.2 }, 'input.fill_fraction'],
    ['blend', { concentration_factor: 0 }, 'input.concentration_factor'],
    ['blend', { concentration_factor: -2 }, 'input.concentration_factor'],
    ['blend', { concentration_factor: 1e6 }, 'input'],
    ['blend', { log10_pCO2_atm: 4 }, 'input.log10_pCO2_atm'],
    ['blend', { new_temperature_C: 300 }, 'input.new_temperature_C'],
    ['blend', { concentration_factor: 1.1, new_temperature_C: 30 }, 'input'],
  ])('%s answers the other lines where one says %j', (verb, change, path) => {
    const pool = { pH: 7.5, ta_mg_per_L_as_CaCO3: 100, fc_mg_per_L_as_Cl2: 1 }
    const good = { input: { pool, concentration_factor: 1.1 } }
    const bad = { input: { pool, fill: pool, ...change } }
    const { stdout, stderr, exitCode } = run([verb, '-'], JSON.stringify([good, bad, good]))
    expect([exitCode, stderr]).toEqual([2, ''])
    const [first, second, third] = lines(stdout)
    expect(first.output.pH).toBeGreaterThan(7)
    expect(third).toEqual(first)
    expect(second.problem.path).toBe(path)
  })

  test.each([
    [{ add: [{ product: 'sodium-thiosulfate', gPerM3: 500 }] }, 'add'],
    [{ product: 'sodium-thiosulfate', amount_g_per_m3: 500 }, 'product'],
  ])('dose says that %j takes more away than there is, at the key of the line', (line, path) => {
    const start = { pH: 7.5, ta_mg_per_L_as_CaCO3: 100, fc_mg_per_L_as_Cl2: 1 }
    const [{ problem }] = lines(run(['dose', '-'], JSON.stringify({ start, ...line })).stdout)
    expect([problem.code, problem.path]).toEqual(['water-total-negative', path])
  })

  test.each(VERBS.map(({ id }) => [id]))('a fault of the program’s own in %s loses no other line', (id) => {
    const verb = VERBS.find((each) => each.id === id)!
    vi.spyOn(verb, 'run').mockImplementation((input) => {
      if (input === 'bad') throw new Error('boom')
      return { ok: true, value: { input } }
    })
    const { stdout, exitCode } = run([id, '-'], '"one"\n"bad"\n"two"')
    const [first, second, third] = lines(stdout)
    expect([exitCode, first, third]).toEqual([2, { input: 'one' }, { input: 'two' }])
    expect(second.problem).toMatchObject({ code: 'program-fault', what: expect.stringContaining('boom') })
  })

  test('says where text is not JSON', () => {
    const { stdout, exitCode } = run(['measure', '-'], '{"a": 1}\n{oops\n')
    expect(exitCode).toBe(2)
    expect(lines(stdout)[1].problem).toMatchObject({ code: 'not-json', path: 'line 2' })
  })

  test.each([
    [[]],
    [['dance']],
    [['measure', '-', 'more']],
    [['measure', '--nonsense', '1']],
    [['measure', '--level', 'deep']],
  ])('refuses misuse %j in a line, with where the help is, and exit status 1', (args) => {
    const { stdout, stderr, exitCode } = run(args, '{}')
    expect([stdout, exitCode]).toEqual(['', 1])
    expect(stderr).toMatch(/^[^\n]+\n`npm run -s cli -- --help` tells all\.\n$/)
    expect(run([...args, '--help'], '{}')).toMatchObject({
      stdout: '',
      exitCode: 0,
      stderr: expect.stringContaining('WATER'),
    })
  })

  test.each([
    ['target', { start: { pH: 7.5, ta_mg_per_L_as_CaCO3: 90 }, target: { ta: 100 }, products: ['salt'] }, 'target.ta'],
    ['target', { start: { pH: 7.5, ta_mg_per_L_as_CaCO3: 90 }, target: {}, products: ['salt'] }, 'target'],
    ['target', { start: { pH: 7.5, ta_mg_per_L_as_CaCO3: 90 }, target: { pH: 7.4 }, products: [] }, 'products'],
    [
      'dose',
      { start: { pH: 7.5, ta_mg_per_L_as_CaCO3: 90 }, add: [{ product: 'salt', gPerM3: 1, mLPerM3: 1 }] },
      'add[0].mLPerM3',
    ],
    ['blend', { input: { pool: { pH: 7.5, ta_mg_per_L_as_CaCO3: 90 } } }, 'input'],
    ['unlink', 7, ''],
  ])('%s says what is wrong with %j', (verb, line, path) => {
    const { stdout, exitCode } = run([verb, '-'], JSON.stringify(line))
    expect(exitCode).toBe(2)
    expect(lines(stdout)[0].problem.path).toBe(path)
  })

  test('takes an array as its lines, and says so where nothing was given', () => {
    const water = { input: { pH: 7.5, ta_mg_per_L_as_CaCO3: 100 } }
    expect(lines(run(['speciate', '-'], JSON.stringify([water, water])).stdout)).toHaveLength(2)
    const nothing = run(['speciate', '-'], ' \n')
    expect([nothing.exitCode, lines(nothing.stdout)[0].problem.code]).toEqual([2, 'nothing-given'])
  })

  test('plans with the constants that are asked for', () => {
    const [system] = demoSpec.systems
    const newest = system!.water.readings.at(-1)!
    const stabilised = { ...newest, values: { ...newest.values, cya_mg_per_L: 40, fc_mg_per_L_as_Cl2: 2 } }
    const water = { ...system!.water, readings: [stabilised] }
    const text = JSON.stringify({ ...demoSpec, systems: [{ ...system!, water }] })
    expect(run(['plan', '-', '--constants', 'wahman'], text).stdout).not.toBe(run(['plan', '-'], text).stdout)
  })

  test('plans a pool beside a spa that has no volume yet', () => {
    const spa = { ...demoSpec.systems[0]!, id: 'spa', volumeEstimates: [], log: [] }
    const [answer] = lines(
      run(['plan', '-'], JSON.stringify({ ...demoSpec, systems: [...demoSpec.systems, spa] })).stdout,
    )
    expect(answer.systems[0].opening.lines.length).toBeGreaterThan(0)
    expect(answer.systems[1].problem.code).toBe('no-volume')
  })

  test('a link and back gives the document byte for byte', () => {
    const text = JSON.stringify(demoSpec)
    const { url } = lines(run(['link', '-'], text).stdout)[0]
    expect(url).toMatch(/^http/)
    expect(lines(run(['unlink', '-'], JSON.stringify(url)).stdout)[0]).toEqual(JSON.parse(text))
  })

  test('measures levels beside the current one', () => {
    const [answer] = lines(run(['measure', '-'], JSON.stringify({ spec: demoSpec, levels: [-0.2, 0] })).stdout)
    const [body] = answer.bodies
    expect(body.levels).toHaveLength(2)
    expect(body.levels[1].volumeM3).toBeCloseTo(body.volumeM3, 9)
    expect(body.levels[0].volumeM3).toBeLessThan(body.volumeM3)
    expect(answer.systems[0].volumeM3).toBeGreaterThanOrEqual(body.volumeM3)
  })

  test('says first that everyone keeps out where a dose has brought far too much chlorine', () => {
    const [system] = demoSpec.systems
    const at = new Date(Date.parse(system!.water.readings.at(-1)!.at) + 3_600_000).toISOString()
    const slip = { kind: 'dose', id: 'slip', at, product: 'liquid-chlorine-12', amountG: 118_000 }
    const spec = { ...demoSpec, systems: [{ ...system!, log: [slip] }] }
    const [answer] = lines(run(['plan', '-'], JSON.stringify(spec)).stdout)
    expect(answer.systems[0].alarm.what).toMatch(
      /^Keep everyone out: free chlorine comes by the sums to about \d+ mg\/L/,
    )
    const { opening } = answer.systems[0]
    const ahead = opening.lines.filter(({ kind, given }: { kind: string; given?: object }) => kind === 'dose' && !given)
    expect(ahead, 'nothing else goes in, above all no acid').toEqual([])
    expect(opening.lines.at(-1)).toMatchObject({ kind: 'measure', title: 'Measure again' })
    expect(opening.purchases).toEqual([])
    const [usual] = lines(run(['plan', '-'], JSON.stringify(demoSpec)).stdout)
    expect(usual.systems[0].alarm).toBeUndefined()
  })

  test('plans the opening and the upkeep of a spec', () => {
    const [answer] = lines(run(['plan', '-'], JSON.stringify(demoSpec)).stdout)
    expect(answer.systems[0].opening.lines.length).toBeGreaterThan(0)
    expect(answer.systems[0].upkeep.chlorineMgPerLDay).toBeGreaterThan(0)
  })

  test('runs a season day by day whose totals are the sums of its days', () => {
    const [answer] = lines(run(['season', '-'], JSON.stringify(demoSpec)).stdout)
    const { days, totals } = answer.systems[0]
    expect(days).toHaveLength(365)
    expect(days[0].date).toBe('2026-06-01')
    const sum = days.reduce((total: number, day: { acidG: number }) => total + day.acidG, 0)
    expect(totals.acidG).toBeCloseTo(sum, 6)
  })

  test('answers the season of the systems that it can, and names what the others lack', () => {
    const [pool] = demoSpec.systems
    const bare = { ...pool!, id: 'bare', volumeEstimates: [] }
    const { stdout, exitCode } = run(['season', '-'], JSON.stringify({ ...demoSpec, systems: [pool, bare] }))
    const [answer] = lines(stdout)
    expect(answer.systems.map(({ id }: { id: string }) => id)).toEqual([pool!.id, 'bare'])
    expect(answer.systems[0].days).toHaveLength(365)
    expect(answer.systems[1].problem.code).toBe('no-volume')
    expect(exitCode).toBe(0)
    const none = run(['season', '-'], JSON.stringify({ ...demoSpec, systems: [bare], bodies: [] }))
    expect(none.exitCode).toBe(2)
  })

  test('names no single amount of chlorine for a season of unknown stabiliser, only its ends', () => {
    const [pool] = demoSpec.systems
    const readings = pool!.water.readings.map(({ values: { cya_mg_per_L: _, ...values }, ...set }) => ({
      ...set,
      values,
    }))
    const { cya_mg_per_L: __, ...fillValues } = pool!.water.fill?.values ?? {}
    const fill = pool!.water.fill && { ...pool!.water.fill, values: fillValues }
    const spec = { ...demoSpec, systems: [{ ...pool!, water: { ...pool!.water, readings, fill } }] }
    const [answer] = lines(run(['season', '-'], JSON.stringify(spec)).stdout)
    const { days, totals, warnings } = answer.systems[0]
    expect(totals.chlorineProductG).toBeUndefined()
    expect(days[0].chlorineProductG).toBeUndefined()
    expect(totals.chlorineProductHighG).toBeGreaterThan(2 * totals.chlorineProductLowG)
    expect(warnings[0]).toContain('Stabiliser is unknown')
  })
})
