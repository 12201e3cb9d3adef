import { expect, test } from 'vitest'
import { tableAfter } from './model-tables.ts'
import { prove } from './random-waters.ts'

const WATERS = 20_000

/** The first of the million waters that `npm run prove:water` solves; MODEL.md has what that found. */
test(`${WATERS} random waters: no failure, no NaN, residual at rounding, monotone, buffer capacity as the numeric derivative`, {
  timeout: 180_000,
}, () => {
  const recorded = new Map(tableAfter('| proof | value').map(([name = '', value]) => [name, Number(value)]))
  const proof = prove(recorded.get('seed')!, WATERS)
  expect(proof.failures).toEqual([])
  expect(proof.failed).toBe(recorded.get('failures'))
  expect(recorded.get('waters')).toBe(1_000_000)
  expect(proof.worstResidual).toBeLessThanOrEqual(recorded.get('worst residual, relative')!)
  expect(proof.worstReturn).toBeLessThanOrEqual(recorded.get('worst pH after pH → state → pH')!)
  expect(proof.worstBuffer).toBeLessThanOrEqual(recorded.get('worst buffer capacity against the numeric')!)
  expect(proof.mostSweeps).toBeLessThanOrEqual(recorded.get('most sweeps')!)
})
