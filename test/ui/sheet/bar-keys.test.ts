import { expect, test } from 'vitest'
import { stepAcross } from '../../../src/ui/sheet/bar-keys.ts'

const KEYS = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Tab', 'a']

test('the arrows across a bar of tools go along it too; those along it are the group’s own', () => {
  expect(KEYS.map((key) => stepAcross(key, true))).toEqual([-1, 1, 0, 0, 0, 0])
  expect(KEYS.map((key) => stepAcross(key, false))).toEqual([0, 0, -1, 1, 0, 0])
})
