import { expect, test } from 'vitest'
import { BALANCED, HOUR, NOW, plan } from './opening-cases.ts'

const acidAt = (hoursBefore: number) => [{ product: 'muriatic-acid-31', amountG: 300, atMs: NOW - hoursBefore * HOUR }]
const keysOf = (hoursBefore: number) =>
  plan({ ...BALANCED, cya_mg_per_L: 0 }, { combinedMgPerL: 2, given: acidAt(hoursBefore) }).lines

test.each([0.5, 1.5])('chlorine that breaks combined chlorine down stays apart from acid given %d h ago', (hours) => {
  const lines = keysOf(hours)
  const at = lines.findIndex(({ key }) => key === 'combined')
  const apart = lines[at - 1]
  expect(apart?.title).toBe('Keep the two apart')
  expect(apart?.how).toContain('Muriatic acid')
  expect(lines[at]!.startHours).toBeGreaterThanOrEqual(apart!.startHours + apart!.waitHours)
  expect(lines.at(-1)!.startHours).toBe(lines[at]!.startHours + lines[at]!.waitHours)
})

test('acid that is a day old keeps nothing apart', () => {
  const lines = keysOf(24)
  expect(lines.some(({ title }) => title === 'Keep the two apart')).toBe(false)
  expect(lines.find(({ key }) => key === 'combined')?.startHours).toBe(0)
})
