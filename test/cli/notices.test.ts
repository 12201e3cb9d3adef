import { expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'

const WATER = { pH: 7.5, ta_mg_per_L_as_CaCO3: 100, ch_mg_per_L_as_CaCO3: 200, salt_mg_per_L_as_NaCl: 500 }
const ODD = { ...WATER, cya: 50, fc_mg_per_l_as_Cl2: 3, colour: 7, ch: null }
const answer = (verb: string, line: object) => {
  const { stdout } = runCommandLine([verb], { readInput: () => JSON.stringify(line), nowMs: 0 })
  return JSON.parse(stdout)
}
const add = [{ product: 'muriatic-acid-31', gPerM3: 1 }]
const ASKED: readonly (readonly [verb: string, path: string, of: (water: object) => object])[] = [
  ['speciate', 'input', (water) => ({ input: water })],
  ['dose', 'start', (water) => ({ start: water, add })],
  ['target', 'start', (water) => ({ start: water, target: { pH: 7.3 }, products: ['muriatic-acid-31'] })],
  ['blend', 'input.pool', (water) => ({ input: { pool: water, new_temperature_C: 20 } })],
  ['blend', 'input.fill', (water) => ({ input: { pool: WATER, fill: water, fill_fraction: 0.5 } })],
]

test.each(ASKED)('%s names each key of a water that it does not read, at %s', (verb, path, of) => {
  const { notices } = answer(verb, of(ODD))
  expect(notices.map((notice: { path: string }) => notice.path)).toEqual([
    `${path}.cya`,
    `${path}.fc_mg_per_l_as_Cl2`,
    `${path}.colour`,
  ])
  expect(notices[0].hint).toContain('cya_mg_per_L')
  expect(notices[1].hint).toContain('fc_mg_per_L_as_Cl2')
  expect(notices[2].hint).toContain('Known are')
  expect(answer(verb, of(WATER))).not.toHaveProperty('notices')
})

test('readings of other tests are known to speciate, and told from the contract’s elsewhere', () => {
  const tested = { ...WATER, cya_mg_per_L: 0, fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 2.2 }
  expect(answer('speciate', { input: tested })).not.toHaveProperty('notices')
  expect(answer('dose', { start: tested, add }).notices[0].path).toBe('start.tc_mg_per_L_as_Cl2')
})

test('a way of reading that is not known is named, with those that are', () => {
  const tested = { ...WATER, fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 2.2 }
  const [notice] = answer('speciate', { input: tested, method: 'dropkit' }).notices
  expect(notice).toMatchObject({ path: 'method', hint: expect.stringContaining('drop-kit') })
  for (const method of ['drop-kit', 'unknown', null])
    expect(answer('speciate', { input: tested, method })).not.toHaveProperty('notices')
})
