import { expect, test } from 'vitest'
import { doses, FRESH, input, plan } from './opening-cases.ts'

const borated = { regimeId: 'unstabilised' }

test('the borate line says that it is a choice and how to leave it out, with its caution; and so it is left out', () => {
  const line = doses(plan(FRESH, borated)).find(({ purpose }) => purpose === 'borate')
  expect(line?.why).toContain('It is a choice')
  expect(line?.why).toContain('lower end of its target to 0')
  expect(line?.cautions.join(' ')).toContain('of boron')
  const { targets } = input(FRESH, borated)
  const band = { ...targets.borate_mg_per_L_as_B!, low: 0, aim: 0, isOwn: true }
  const without = plan(FRESH, { ...borated, targets: { ...targets, borate_mg_per_L_as_B: band } })
  expect(doses(without).some(({ purpose }) => purpose === 'borate')).toBe(false)
})
