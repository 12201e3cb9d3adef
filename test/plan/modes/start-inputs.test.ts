import { expect, test } from 'vitest'
import { START_INPUTS, START_MODES } from '../../../src/plan/index.ts'

test('every way of starting asks for exactly its entry', () => {
  expect(Object.keys(START_INPUTS)).toEqual(START_MODES.rows.map(({ id }) => id))
  for (const { id, inputs } of START_MODES.rows) expect(inputs).toBe(START_INPUTS[id])
})
