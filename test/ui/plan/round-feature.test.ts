import { describe, expect, test } from 'vitest'
import { boundsOf, type Path } from '../../../src/basin/index.ts'
import { FEATURES } from '../../../src/features/index.ts'
import { roundFeature } from '../../../src/ui/plan/round-feature.ts'

const IN = 0.0254
const outline: Path = { start: [0, 0], segments: [{ to: [9, 0] }, { to: [9, 4.5] }, { to: [0, 4.5] }, { to: [0, 0] }] }
const isWhole = (value: number) => Math.abs(value - Math.round(value)) < 1e-6

describe('what a new feature measures', () => {
  test.each(FEATURES.rows.map((kind) => [kind.id, kind] as const))('%s: whole inches or centimetres', (_, kind) => {
    const usual = kind.defaults({ at: [0, 2], toward: [1, 0], sizeM: 1.35, outline })
    for (const [units, step] of [
      ['us', IN],
      ['metric', 0.01],
    ] as const)
      for (const referenceM of [0, 0.123]) {
        const feature = roundFeature(usual, units, referenceM)
        for (const field of kind.fields) {
          if (field.unit !== 'm' || field.belongsTo?.(feature) === false) continue
          const shown = field.get(feature) + (field.isDepth ? referenceM : 0)
          expect(isWhole(shown / step), `${field.id} ${shown}`).toBe(true)
          expect(Math.abs(field.get(feature) - field.get(usual))).toBeLessThan(0.03)
        }
      }
  })

  test('the footprint of a flight is as long as its treads together, and begins where it did', () => {
    const usual = FEATURES.get('steps')?.defaults({ at: [0, 2], toward: [1, 0], sizeM: 1.5, outline })
    if (usual?.kind !== 'steps') throw new Error('no steps')
    const steps = roundFeature(usual, 'us', 0)
    if (steps.kind !== 'steps') throw new Error('no steps')
    const { minX, maxX, minY, maxY } = boundsOf(steps.path)
    expect(minX).toBeCloseTo(0, 9)
    expect(maxX).toBeCloseTo(36 * IN, 9)
    expect(maxY - minY).toBeCloseTo(1.5, 9)
    expect(steps.axis.to[0]).toBeCloseTo(36 * IN, 9)
    expect(steps.treads.map(([s]) => s / (12 * IN)).every(isWhole)).toBe(true)
  })
})
