import { describe, expect, test } from 'vitest'
import { fitSheet, needsNewFit } from '../../../src/ui/sheet/fit.ts'
import { sectionToScreen, toScreen } from '../../../src/ui/sheet/view.ts'

const margins = { left: 70, right: 90, planTop: 60, planBottom: 14, sectionTop: 34, sectionBottom: 36 }
const pool = { bounds: { minX: 0, minY: 0, maxX: 11, maxY: 5.6 }, turn: 0 as const, depthM: 2.2, aboveM: 0.15, margins }

describe('fitting the sheet', () => {
  test('plan and section lie inside the paper with their margins', () => {
    const fit = fitSheet({ ...pool, width: 960, height: 530 })
    const [left, bottom] = toScreen(fit.view, fit.panes, [0, 0])
    const [right, top] = toScreen(fit.view, fit.panes, [11, 5.6])
    expect(left).toBeGreaterThanOrEqual(margins.left - 1)
    expect(right).toBeLessThanOrEqual(960 - margins.right + 1)
    expect(top).toBeGreaterThanOrEqual(margins.planTop - 1)
    expect(bottom).toBeLessThanOrEqual(fit.panes.planHeight)
    expect(sectionToScreen(fit.view, fit.panes, [0, 0], [0, 2.2])[1]).toBeLessThanOrEqual(
      530 - margins.sectionBottom + 1,
    )
  })

  test('the section is true to scale where that can be read, and says so where it can’t', () => {
    expect(fitSheet({ ...pool, width: 960, height: 530 }).view.stretch).toBe(1)
    const shallow = fitSheet({ ...pool, depthM: 0.5, width: 700, height: 420 })
    expect(shallow.view.stretch).toBeGreaterThan(1)
  })

  test('a turned sheet is fitted by its turned box', () => {
    const upright = { minX: 0, minY: 0, maxX: 5.6, maxY: 11 }
    const turned = fitSheet({ ...pool, bounds: upright, turn: 3, width: 960, height: 530 })
    const plain = fitSheet({ ...pool, width: 960, height: 530 })
    expect(turned.view.scale).toBeCloseTo(plain.view.scale, 9)
  })

  test('small changes keep the view, outgrowing it asks for a new one', () => {
    const { view } = fitSheet({ ...pool, width: 960, height: 530 })
    expect(needsNewFit(view, { ...view, scale: view.scale * 0.97 })).toBe(false)
    expect(needsNewFit(view, { ...view, scale: view.scale * 0.8 })).toBe(true)
    expect(needsNewFit(view, { ...view, turn: 1 })).toBe(true)
  })
})
