import { expect, test } from 'vitest'
import { GENERIC_GROUPS, isGeneric, LIKE_IDS, PRODUCTS } from '../../src/chemicals/index.ts'

test('the short list of substances says of every product what its row says, in the same order', () => {
  expect(Object.entries(GENERIC_GROUPS)).toEqual(PRODUCTS.rows.map(({ id, groups }) => [id, groups]))
  expect(LIKE_IDS).toEqual(PRODUCTS.rows.filter(({ active }) => active).map(({ id }) => id))
})

test('what every object has by nature is no product', () => {
  for (const id of ['constructor', 'toString', '__proto__', '']) expect(isGeneric(id)).toBe(false)
})
