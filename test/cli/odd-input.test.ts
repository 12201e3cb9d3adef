import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'
import { VERBS } from '../../src/cli/verbs/index.ts'
import { demoSpec } from '../../src/document/index.ts'

const NOW = Date.UTC(2026, 4, 2, 9)
const WATER = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 250,
  cya_mg_per_L: 30,
  fc_mg_per_L_as_Cl2: 2,
  salt_mg_per_L_as_NaCl: 500,
  temperature_C: 25,
}
const PRODUCTS = ['dry-acid', 'soda-ash', 'salt', 'borax-10', 'calcium-chloride-flake', 'liquid-chlorine-12']
/** What a slip of the hand, another program or somebody's curiosity may put where a number belongs. */
const ODD: readonly unknown[] = [-1, 0, 1e-300, 1e6, 1e308, '7', null, true, [], {}]

/** One line through a verb: its code and path where it is a problem, which then says everything a problem has to say. */
function answer(verb: string, json: unknown): string {
  const text = JSON.stringify(json)
  const { stdout, stderr, exitCode } = runCommandLine([verb, '-'], { readInput: () => text, nowMs: NOW })
  const line = JSON.parse(stdout)
  const said = `${verb} ${text.slice(0, 300)}`
  expect(stderr, said).toBe('')
  expect(exitCode, said).toBe('problem' in line ? 2 : 0)
  if (!('problem' in line)) return 'answered'
  const { code, path, what, why, hint } = line.problem
  for (const word of [code, what, why, hint]) expect(word, said).toMatch(/\S/)
  // every number given wrong is told by its place, and nothing is the program's own fault
  expect(code, said).not.toBe('program-fault')
  return `${code} at ${path}`
}

describe('odd input is answered or named, never a fault of the program', () => {
  test('a level that no pool has, which would hold an endless volume', () => {
    for (const level of [1e6, -1e6, 1e308]) {
      expect(answer('measure', { spec: demoSpec, levels: [0, level] })).toBe('out-of-range at levels[1]')
      expect(answer('inspect', { spec: demoSpec, levelM: level })).toBe('out-of-range at levelM')
      const { stderr, exitCode } = runCommandLine(['measure', '-', '--level', String(level)], {
        readInput: () => JSON.stringify(demoSpec),
        nowMs: NOW,
      })
      expect(stderr).toContain('from −1000 to 1000')
      expect(exitCode).toBe(1)
    }
  })

  test('a reading of the water', () => {
    for (const key of Object.keys(WATER))
      for (const value of ODD) {
        const water = { ...WATER, [key]: value }
        answer('speciate', { input: water })
        answer('dose', { start: water, add: [{ product: 'dry-acid', gPerM3: 10 }] })
        answer('target', { start: water, target: { pH: 7.2 }, products: ['dry-acid'] })
        answer('blend', { input: { fill_fraction: 0.3, fill: water, pool: WATER } })
        expect(answer('target', { start: WATER, target: { [key]: value }, products: PRODUCTS })).toMatch(
          /^answered$| at target/,
        )
      }
  })

  test('an amount, a product, a list', () => {
    for (const value of ODD) {
      answer('dose', { start: WATER, add: [{ product: 'dry-acid', gPerM3: value }] })
      answer('dose', { start: WATER, add: [{ product: 'liquid-chlorine-12', mLPerM3: value }] })
      expect(answer('dose', { start: WATER, add: [{ product: value, gPerM3: 1 }] })).toContain('add[0].product')
      answer('dose', { start: WATER, add: value })
      expect(answer('target', { start: WATER, target: { pH: 7.2 }, products: value })).toBe('no-products at products')
      for (const key of ['fill_fraction', 'concentration_factor', 'log10_pCO2_atm', 'new_temperature_C'])
        answer('blend', { input: { [key]: value, fill: WATER, pool: WATER } })
    }
    expect(answer('dose', { start: WATER, add: [{ product: 'dry-acid', gPerM3: -1 }] })).toBe(
      'dose-amount at add[0].gPerM3',
    )
    expect(answer('dose', { start: WATER, add: [{ product: 'dry-acid', kgPerM3: 1 }] })).toBe(
      'no-amount at add[0].gPerM3',
    )
  })

  test.each(['plan', 'card', 'link', 'inspect', 'measure'])('%s: a value anywhere in a document', (verb) => {
    const paths = [
      'version',
      'name',
      'bodies',
      'bodies.0.levelM',
      'site.latitudeDeg',
      'site.rules',
      'systems.0.plumbingM3',
      'systems.0.water.readings',
      'systems.0.regime.id',
      'systems.0.equipment.pumpM3PerH',
      'systems.0.stock',
      'systems.0.log',
    ]
    for (const path of paths)
      for (const value of [-1, 1e308, 'x', null, {}]) {
        const spec = structuredClone(demoSpec) as object
        const keys = path.split('.')
        const last = keys.pop()!
        const owner = keys.reduce((at, key) => (at as Record<string, object>)[key]!, spec)
        ;(owner as Record<string, unknown>)[last] = value
        const said = answer(verb, spec)
        if (typeof value === 'number' && value > 1e9) expect(said).not.toBe('answered')
      }
  })

  test('a line that is no object, in every verb', () => {
    for (const { id } of VERBS)
      for (const value of [null, 5, 'x', true, {}]) expect(answer(id, value)).not.toBe('answered')
  })

  test.each([
    ['EISDIR', 'x.json is a folder.'],
    ['EACCES', 'x.json may not be read by you.'],
    ['EMFILE', 'x.json can’t be read: EMFILE!'],
  ])('a file that can’t be read for %s is told with why', (code, says) => {
    const readInput = () => {
      throw Object.assign(new Error(`${code}!`), { code })
    }
    const { stderr, exitCode } = runCommandLine(['plan', 'x.json'], { readInput, nowMs: NOW })
    expect(exitCode).toBe(1)
    expect(stderr).toContain(says)
  })

  test('a verb, an option or a file that is not there ends with 1 and says so, and nothing on standard output', () => {
    const noFile = () => {
      throw Object.assign(new Error('ENOENT: no such file'), { code: 'ENOENT' })
    }
    for (const [args, says] of [
      [['frob', '-'], 'There is no verb “frob”. Use measure, inspect, '],
      [['mesure', '-'], 'There is no verb “mesure”. The nearest is measure.'],
      [['measure', '-', '--levels', '1'], 'There is no option --levels. The nearest is --level.'],
      [['__proto__', '-'], 'There is no verb'],
      [[], 'Say what to do'],
      [['plan', 'a', 'b'], 'Too many arguments: b'],
      [['plan', '-', '--nonsense', '1'], 'There is no option --nonsense. Use --constants, --level, --base, --now.'],
      [['plan', '-', '--now', 'yesterday'], '--now must be a date'],
      [['measure', '-', '--level', 'deep'], '--level must be a number'],
      [['plan', '-', '--constants', 'constructor'], 'There is no set of constants'],
      [
        ['plan', 'nowhere.json'],
        'There is no file nowhere.json. Check its name and folder, or give - to read what is piped in.',
      ],
    ] as const) {
      const { stdout, stderr, exitCode } = runCommandLine(args, { readInput: noFile, nowMs: NOW })
      expect([stdout, exitCode]).toEqual(['', 1])
      expect(stderr).toContain(says)
      expect(stderr.trimEnd().split('\n'), 'one line, and where to read on').toHaveLength(2)
    }
  })
})
