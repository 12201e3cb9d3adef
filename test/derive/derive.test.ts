import { describe, expect, test } from 'vitest'
import {
  deriveBody,
  deriveMesh,
  deriveOpening,
  deriveProblems,
  deriveUpkeep,
  deriveVolume,
  deriveWater,
} from '../../src/derive/index.ts'
import { applyCommand, blankSpec, type Command, demoSpec, type Spec } from '../../src/document/index.ts'

const NOW = Date.parse('2026-06-01T12:00:00Z')
const body = demoSpec.bodies[0]!
const systemId = body.system

function edited(spec: Spec, ...commands: Command[]): Spec {
  return commands.reduce((current, command) => {
    const result = applyCommand(current, command)
    if (!result.ok) throw new Error(`${result.problem.what} ${result.problem.hint}`)
    return result.value
  }, spec)
}

describe('what is derived', () => {
  test('is remembered as long as its part of the document stays the same', () => {
    const renamed = edited(demoSpec, { id: 'setName', args: { name: 'Other' } })
    expect(deriveBody(renamed.bodies[0]!)).toBe(deriveBody(body))
    const mesh = deriveMesh(body)
    expect(deriveMesh(renamed.bodies[0]!)).toBe(mesh)
  })

  test('keeps the partition when only the level moves, and the volume falls by the surface times the drop', () => {
    const drop = 0.05
    const lower = edited(demoSpec, { id: 'setLevel', args: { bodyId: body.id, levelM: body.levelM - drop } })
    const before = deriveBody(body)
    const now = deriveBody(lower.bodies[0]!)
    expect(now.partition).toBe(before.partition)
    if (!before.measures.ok || !now.measures.ok) throw new Error('the example measures')
    const lost = before.measures.value.volumeM3 - now.measures.value.volumeM3
    // The surface shrinks a little as the level falls past no part of this pool's floor: walls are vertical there.
    expect(lost).toBeCloseTo(before.measures.value.waterSurfaceM2 * drop, 6)
  })

  test('takes the drawing over a stated volume, adds the plumbing and says how far off the stated one was', () => {
    const stated = edited(demoSpec, {
      id: 'setVolumeEstimate',
      args: { systemId, estimate: { from: 'stated', m3: 60, sigmaM3: 6 } },
    })
    const volume = deriveVolume(stated, systemId)!
    const { measures } = deriveBody(body)
    if (!measures.ok) throw new Error('the example measures')
    expect(volume.from).toBe('drawing')
    expect(volume.m3).toBeCloseTo(measures.value.volumeM3 + demoSpec.systems[0]!.plumbingM3, 9)
    expect(volume.replaced[0]!.relativeError).toBeCloseTo(60 / volume.m3 - 1, 9)
  })

  test('works from a stated volume alone, and from nothing says what is needed', () => {
    const blank = blankSpec()
    const id = blank.systems[0]!.id
    expect(deriveVolume(blank, id)).toBeUndefined()
    const nothing = deriveOpening(blank, id, NOW)
    expect(nothing.ok ? 'a plan' : nothing.problem.code).toBe('no-volume')
    const stated = edited(blank, {
      id: 'setVolumeEstimate',
      args: { systemId: id, estimate: { from: 'stated', m3: 60, sigmaM3: 6 } },
    })
    expect(deriveVolume(stated, id)).toMatchObject({ from: 'estimate', m3: 60, sigmaM3: 6 })
    expect(deriveOpening(stated, id, NOW).ok).toBe(true)
  })

  test('widens the uncertainty of a sketch by its unknown scale', () => {
    const sketch = { ...body, sketch: { scaleSigma: 0.15 } }
    const { measures, sigmaM3 } = deriveBody(sketch)
    if (!measures.ok) throw new Error('the example measures')
    expect(sigmaM3 / measures.value.volumeM3).toBeGreaterThanOrEqual(0.3)
  })

  test('gives no volume, and so no dose, from a drawing that is broken', () => {
    const crossed = {
      ...demoSpec,
      bodies: [
        {
          ...body,
          islands: [],
          features: [],
          outline: {
            start: [0, 0] as const,
            segments: [
              { to: [8, 4] as const },
              { to: [8, 0] as const },
              { to: [1, 3] as const },
              { to: [0, 0] as const },
            ],
          },
        },
      ],
    }
    expect(deriveProblems(crossed)[0]).toMatchObject({ code: 'crosses-itself' })
    expect(deriveProblems(crossed)[0]!.path).toMatch(/^bodies\[0\]\.outline/)
    expect(deriveVolume(crossed, systemId)).toBeUndefined()
    expect(deriveOpening(crossed, systemId, NOW).ok).toBe(false)
  })

  test('gives a problem of the level, and neither volume nor rule nor dose, where the water lies below the floor', () => {
    const dry = edited(demoSpec, { id: 'setLevel', args: { bodyId: body.id, levelM: -50 } })
    const derived = deriveBody(dry.bodies[0]!)
    expect(derived.partition).toBe(deriveBody(body).partition)
    expect(derived.measures.ok).toBe(false)
    expect(derived.rule).toBeUndefined()
    expect(derived.sigmaM3).toBeNaN()
    expect(deriveProblems(dry).map(({ code, path }) => `${code} @ ${path}`)).toEqual(['no-water @ bodies[0].levelM'])
    expect(deriveVolume(dry, systemId)).toBeUndefined()
    expect(deriveOpening(dry, systemId, NOW).ok).toBe(false)
    // The basin itself is sound: it can still be drawn and filled.
    expect(deriveMesh(dry.bodies[0]!).ok).toBe(true)
  })

  test('knows the age of readings and never takes an absent one for zero in the plan', () => {
    const at = '2026-05-30T12:00:00Z'
    const spec = edited(demoSpec, {
      id: 'addReadings',
      args: { systemId, set: { at, method: 'drop-kit', values: { pH: 7.9, ta_mg_per_L_as_CaCO3: 60 } } },
    })
    const water = deriveWater(spec, systemId, Date.parse('2026-06-01T12:00:00Z'))
    expect(water.ageHours).toBeCloseTo(48, 9)
    expect(water.assumptions.join(' ')).toContain('unknown')
    const plan = deriveOpening(spec, systemId, NOW)
    if (!plan.ok) throw new Error(plan.problem.what)
    expect(plan.value.missing.map(({ key }) => key)).toContain('fc_mg_per_L_as_Cl2')
    expect(plan.value.lines.some((line) => line.kind === 'dose' && line.purpose === 'calcium')).toBe(false)
  })

  test('fill water clears nobody to bathe: as the only readings, copied onto the pool’s list, or as a supplier’s', () => {
    const at = '2026-06-01T09:00:00Z'
    const values = { pH: 7.5, ta_mg_per_L_as_CaCO3: 90, fc_mg_per_L_as_Cl2: 2.5, cya_mg_per_L: 30 }
    const fill = { at, method: 'drop-kit' as const, values }
    const bare = {
      ...demoSpec,
      systems: demoSpec.systems.map((each) => ({ ...each, log: [], water: { readings: [], targets: {} } })),
    }
    const bathing = (spec: Spec) => {
      const plan = deriveOpening(spec, systemId, NOW)
      if (!plan.ok) throw new Error(plan.problem.what)
      return plan.value.bathing
    }
    const filled = edited(bare, { id: 'setFill', args: { systemId, set: fill } })
    const copied = edited(filled, { id: 'addReadings', args: { systemId, set: fill } })
    const supplied = edited(bare, { id: 'addReadings', args: { systemId, set: { ...fill, method: 'supplier' } } })
    for (const spec of [filled, copied, supplied]) {
      expect(bathing(spec).cleared).toBe(false)
      expect(bathing(spec).reason).toContain('measure the pool itself')
    }
    const own = edited(filled, {
      id: 'addReadings',
      args: { systemId, set: { ...fill, values: { ...values, pH: 7.4 } } },
    })
    expect(bathing(own).cleared).toBe(true)
  })

  test('the constants are passed on: doses bound to pH move with them, and nothing is remembered across', () => {
    const at = '2026-06-01T09:00:00Z'
    const values = { pH: 8.1, ta_mg_per_L_as_CaCO3: 100, cya_mg_per_L: 60, fc_mg_per_L_as_Cl2: 3 }
    const spec = edited(demoSpec, { id: 'addReadings', args: { systemId, set: { at, method: 'drop-kit', values } } })
    const acid = (constants?: 'default' | 'oracle' | 'wahman') => {
      const plan = deriveOpening(spec, systemId, NOW, 'metric', constants)
      if (!plan.ok) throw new Error(plan.problem.what)
      const line = plan.value.lines.find((each) => each.kind === 'dose' && each.purpose === 'acid')
      return line?.kind === 'dose' ? line.amountG : 0
    }
    const week = (constants?: 'default' | 'oracle' | 'wahman') => {
      const result = deriveUpkeep(spec, systemId, NOW, constants)
      if (!result.ok) throw new Error(result.problem.what)
      return result.value.productGPerWeek
    }
    expect(acid()).toBeGreaterThan(0)
    expect(acid('wahman')).not.toBe(acid())
    expect(week('wahman')).not.toBe(week())
    expect(acid('default')).toBe(acid())
    expect(week('default')).toBe(week())
  })
})
