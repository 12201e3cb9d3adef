import { expect, test } from 'vitest'
import { prove } from './random-waters.ts'

const SEED = 20_261_126
const WATERS = 20_000

/** The same that `npm run prove:water` does a million times; MODEL.md has what that found. */
test(`${WATERS} random waters (seed ${SEED}): no failure, no NaN, residual at rounding, monotone, buffer capacity as the numeric derivative`, {
  timeout: 180_000,
}, () => {
  const proof = prove(SEED, WATERS)
  expect(proof.failures).toEqual([])
  expect(proof.failed).toBe(0)
  expect(proof.worstResidual).toBeLessThan(1e-12)
  expect(proof.worstReturn).toBeLessThan(1e-9)
  expect(proof.worstBuffer).toBeLessThan(1e-6)
  expect(proof.mostSweeps).toBeLessThan(150)
})
