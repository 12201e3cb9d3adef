import { ok, type Problem, type Result, under } from '../base/index.ts'
import type { Body, Spec, System } from '../document/index.ts'
import { deriveBody, deriveBodyAt } from './body.ts'
import { memoLast } from './memo.ts'
import type { BodyWater, DerivedVolume } from './types.ts'

/** The system of an id, or undefined. */
export function systemById(spec: Spec, systemId: string): System | undefined {
  return spec.systems.find((system) => system.id === systemId)
}

/**
 * The volume that doses are for. A drawing that measures rules over a stated volume; a stated one serves until then.
 * Undefined where there is neither, or where the drawing is broken (then nothing may be dosed from it). Each body stands at its
 * own level, or all at one that is asked for, where a body may be dry.
 */
export const deriveVolume = memoLast((spec: Spec, systemId: string, levelM?: number): DerivedVolume | undefined => {
  const system = systemById(spec, systemId)
  if (!system) return undefined
  const bodies = spec.bodies.filter((body) => body.system === systemId)
  const stated = system.volumeEstimates
  if (bodies.length === 0) {
    const estimate = stated[stated.length - 1]
    if (!estimate) return undefined
    return {
      from: 'estimate',
      m3: estimate.m3,
      sigmaM3: estimate.sigmaM3,
      plumbingM3: 0,
      waterSurfaceM2: undefined,
      wettedM2: undefined,
      meanDepthM: undefined,
      replaced: [],
    }
  }
  let m3 = 0
  let variance = 0
  let surface = 0
  let wetted = 0
  for (const body of bodies) {
    const water = waterOf(body, levelM)
    if (!water.ok) return undefined
    const { measures, sigmaM3 } = water.value
    m3 += measures.volumeM3
    variance += sigmaM3 ** 2
    surface += measures.waterSurfaceM2
    wetted += measures.wetted.totalM2
  }
  const total = m3 + system.plumbingM3
  return {
    from: 'drawing',
    m3: total,
    sigmaM3: Math.sqrt(variance),
    plumbingM3: system.plumbingM3,
    waterSurfaceM2: surface,
    wettedM2: wetted,
    meanDepthM: surface > 0 ? m3 / surface : undefined,
    replaced: stated.map((estimate) => ({
      m3: estimate.m3,
      sigmaM3: estimate.sigmaM3,
      relativeError: estimate.m3 / total - 1,
    })),
  }
})

function waterOf(body: Body, levelM: number | undefined): Result<BodyWater> {
  if (levelM !== undefined) return deriveBodyAt(body, levelM)
  const { measures, sigmaM3 } = deriveBody(body)
  return measures.ok ? ok({ measures: measures.value, sigmaM3 }) : measures
}

/** All complaints about the bodies of a document, with their path in it. */
export const deriveProblems = memoLast((spec: Spec): readonly Problem[] =>
  spec.bodies.flatMap((body, i) => {
    const { measures } = deriveBody(body)
    return measures.ok ? [] : [under(`bodies[${i}]`, measures.problem)]
  }),
)
