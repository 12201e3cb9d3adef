import { expect, test } from 'vitest'
import { gridLines, gridStep, movedInSheet, onGrid, scaleBarLength } from '../../../src/ui/sheet/grid.ts'

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

test('cross hairs go from line to line of the grid, back onto it from between, and finely by as many steps as asked', () => {
  expect(onGrid([0.3, -1.2], 0.5)).toEqual([0.5, -1])
  expect(movedInSheet([0.5, -1], [1, 0], 1, 0.5, false)).toEqual([1, -1])
  expect(movedInSheet([0.6, -1], [1, 0], 1, 0.5, false)).toEqual([1, -1])
  expect(movedInSheet([0.6, -1], [-1, 0], 1, 0.5, false)).toEqual([0.5, -1])
  expect(movedInSheet([0.5, -1], [0, -1], 5, 0.5, false)).toEqual([0.5, -3.5])
  expect(movedInSheet([0.5, -1], [0, 1], 10, 0.01, true)[1]).toBeCloseTo(-0.9, 12)
})

test('twelve steps by eight of the grid, at any zoom a sheet starts with, are a pool and not a footbath', () => {
  for (const scale of [15, 30, 60]) {
    const step = gridStep(scale, 'us')
    const [w] = movedInSheet([0, 0], [1, 0], 12, step, false)
    const [, h] = movedInSheet([0, 0], [0, 1], 8, step, false)
    expect(w * h).toBeGreaterThan(8)
  }
})
