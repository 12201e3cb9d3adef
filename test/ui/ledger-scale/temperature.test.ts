import { expect, test } from 'vitest'
import { readQuantity } from '../../../src/ui/fields/reading.ts'
import { READING_ROWS } from '../../../src/ui/ledger/scale/reading-rows.ts'

test('a water temperature below freezing is refused, with the limits in the owner’s degrees', () => {
  const row = READING_ROWS.find(({ key }) => key === 'temperature_C')!
  const read = (text: string) => readQuantity(row.quantity, text, 'us', row)
  expect(read('32 °F').ok).toBe(true)
  const cold = read('28.4 °F')
  expect(cold.ok ? '' : `${cold.problem.what} ${cold.problem.hint}`.replace(/\s/g, ' ')).toContain(
    'Between 32 °F and 113 °F',
  )
})
