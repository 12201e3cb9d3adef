import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'
import { demoSpec } from '../../src/document/index.ts'
import { edited } from '../derive/edited.ts'

const NOW = Date.UTC(2026, 5, 1, 12)
function answer(args: readonly string[], line: unknown) {
  const { stdout, exitCode } = runCommandLine(args, { readInput: () => JSON.stringify(line), nowMs: NOW })
  return { exitCode, ...JSON.parse(stdout.trim()) }
}
const water = { pH: 7.5, ta_mg_per_L_as_CaCO3: 100, fc_mg_per_L_as_Cl2: 2, salt_mg_per_L_as_NaCl: 500 }
const own = { id: 'can', label: 'Can', like: 'liquid-chlorine-12', strength: 10, basis: 'trade-percent' }

describe('the command line with readings and products as people have them', () => {
  test('speciate: without them the answer is the contract’s alone; with them it says what they tell', () => {
    const plain = answer(['speciate', '-'], { input: water })
    expect(Object.keys(plain)).toEqual(['exitCode', 'output'])
    const told = answer(['speciate', '-'], {
      input: { ...water, th_mg_per_L_as_CaCO3: 200, tc_mg_per_L_as_Cl2: 3 },
      method: 'photometer',
    })
    expect(told.told[0]).toMatchObject({ key: 'ch_mg_per_L_as_CaCO3', likely: { low: 100, best: 150, high: 200 } })
    expect(told.combined.combinedMgPerL).toBeCloseTo(1, 9)
    const same = answer(['speciate', '-'], { input: { ...water, ch_mg_per_L_as_CaCO3: 150 } })
    expect(told.output).toEqual(same.output)
  })

  test('speciate: clashing or unreadable ones are a problem with its place', () => {
    const clash = answer(['speciate', '-'], { input: { ...water, tc_mg_per_L_as_Cl2: 0.2 }, method: 'photometer' })
    expect([clash.exitCode, clash.problem.path.startsWith('input.')]).toEqual([2, true])
    const text = answer(['speciate', '-'], { input: { ...water, copper_mg_per_L: 'some' } })
    expect([text.exitCode, text.problem.path]).toEqual([2, 'input.copper_mg_per_L'])
  })

  test('dose and target take own products by id, and refuse those that can’t be', () => {
    const dosed = (line: object) =>
      answer(['dose', '-'], { start: water, add: [{ product: 'can', gPerM3: 20 }], ...line })
    const weak = dosed({ ownProducts: [own] })
    const strong = dosed({ ownProducts: [{ ...own, strength: 12.5 }] })
    expect(strong.after_closed.pH).toBeGreaterThan(weak.after_closed.pH)
    expect(dosed({}).problem.code).toBe('unknown-product')
    expect(dosed({ ownProducts: [{ ...own, strength: 80 }] }).problem.path).toBe('ownProducts[0].strength')
    expect(dosed({ ownProducts: 7 }).problem.path).toBe('ownProducts')
    const hit = answer(['target', '-'], {
      start: water,
      target: { fc_mg_per_L_as_Cl2: 4 },
      products: ['can'],
      ownProducts: [own],
    })
    expect(hit.doses[0].product).toBe('can')
    expect(hit.doses[0].gPerM3).toBeGreaterThan(0)
  })

  test.each([
    ['prettiest', 'objective'],
    [{ kind: 'cheapest', perGram: { salt: -1 } }, 'objective.perGram.salt'],
    [{ kind: 'cheapest' }, 'objective.perGram'],
  ])('target refuses the objective %j', (objective, path) => {
    const line = { start: water, target: { salt_mg_per_L_as_NaCl: 800 }, products: ['salt'], objective }
    const { exitCode, problem } = answer(['target', '-'], line)
    expect([exitCode, problem.path]).toEqual([2, path])
  })

  test('card, water and a start under way come out of a document', () => {
    const at = '2026-05-30T09:00:00Z'
    const spec = edited(demoSpec, { id: 'setStart', args: { systemId: 'pool', mode: 'new-plaster', at } })
    expect(answer(['plan', '-'], spec).systems[0].start.day).toBe(3)
    expect('start' in answer(['plan', '-'], demoSpec).systems[0]).toBe(false)
    expect(answer(['card', '-'], spec).systems[0].card.rows.length).toBeGreaterThan(0)
    expect(answer(['card', '-'], { ...spec, bodies: [] }).exitCode).toBe(0)
    const [system] = answer(['water', '-'], spec).systems
    expect(system.sanitation.limits.floorMgPerL).toBeGreaterThan(0)
    expect(system.equilibrium.pH).toBeGreaterThan(6)
  })

  test.each(['plan', 'card', 'season', 'water', 'measure', 'link'])(
    '%s refuses a document with a label that can’t be, and says where',
    (verb) => {
      const [system] = demoSpec.systems
      const spec = { ...demoSpec, systems: [{ ...system!, ownProducts: [{ ...own, strength: 80 }] }] }
      const { exitCode, problem } = answer([verb, '-'], spec)
      expect([exitCode, problem.path]).toEqual([2, 'systems[0].ownProducts[0].strength'])
    },
  )

  test('the owner’s choice of constants holds unless others are asked for', () => {
    const [system] = demoSpec.systems
    const newest = system!.water.readings.at(-1)!
    const readings = [{ ...newest, values: { ...newest.values, cya_mg_per_L: 40, fc_mg_per_L_as_Cl2: 2 } }]
    const of = (chlorineConstants: 'obrien' | 'wahman') => ({
      ...demoSpec,
      systems: [
        { ...system!, water: { ...system!.water, readings }, regime: { ...system!.regime, chlorineConstants } },
      ],
    })
    expect(answer(['plan', '-'], of('wahman'))).toEqual(answer(['plan', '-', '--constants', 'wahman'], of('obrien')))
    expect(answer(['plan', '-', '--constants', 'default'], of('wahman'))).toEqual(answer(['plan', '-'], of('obrien')))
  })

  test('help names every verb, option and kind of input', () => {
    const { stderr } = runCommandLine(['--help'], { readInput: () => '', nowMs: NOW })
    for (const word of [
      'measure',
      'card',
      'water',
      '--constants',
      '--now',
      '--base',
      '--level',
      'ownProducts',
      'th_mg_per_L',
    ])
      expect(stderr).toContain(word)
  })
})
