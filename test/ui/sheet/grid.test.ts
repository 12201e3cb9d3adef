import { expect, test } from 'vitest'
import { gridLines, gridStep, scaleBarLength } from '../../../src/ui/sheet/grid.ts'

const FOOT = 0.3048

test('grid steps are round in the unit system and far enough apart to be seen', () => {
  for (const scale of [2, 9, 20, 47, 130, 600]) {
    const feet = gridStep(scale, 'us') / FOOT
    expect([0.25, 0.5, 1, 2, 5, 10, 20, 50, 100].some((step) => Math.abs(step - feet) < 1e-9)).toBe(true)
    expect(gridStep(scale, 'us') * scale).toBeGreaterThanOrEqual(46)
    expect([0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50]).toContain(Number(gridStep(scale, 'metric').toFixed(9)))
  }
})

test('the scale bar is never shorter than the grid', () => {
  expect(scaleBarLength(40, 'metric')).toBeGreaterThanOrEqual(gridStep(40, 'metric'))
})

test('grid lines are the multiples inside the range', () => {
  expect(gridLines(-1.2, 2.1, 1)).toEqual([-1, 0, 1, 2])
  expect(gridLines(0, 1e9, 1, 5)).toHaveLength(5)
})
