import { ok, type Result } from '../../base/index.ts'
import { bandsOf, contoursOf, depthAt } from '../../basin/index.ts'
import { deriveBody, deriveMesh } from '../../derive/index.ts'
import type { Body } from '../../document/index.ts'
import type { UnitSystem } from '../../units/index.ts'
import { bandDepths } from '../plan/depth-steps.ts'
import { heightsOf, type SolidModel } from './model.ts'

/** The solid of a body, from the same partition as its numbers. */
export function solidModelOf(body: Body, system: UnitSystem): Result<SolidModel> {
  const { partition } = deriveBody(body)
  if (!partition.ok) return partition
  const mesh = deriveMesh(body)
  if (!mesh.ok) return mesh
  const parts = partition.value
  const [lowM] = heightsOf(mesh.value)
  const maxDepthM = Math.max(-lowM, 0)
  const depthsM = bandDepths(maxDepthM, system)
  return ok({
    mesh: mesh.value,
    contours: contoursOf(parts, depthsM),
    bands: () => bandsOf(parts, [-body.freeboardM, ...depthsM, Infinity]),
    maxDepthM,
    rimM: body.freeboardM,
    sampleAt: (x, y) => depthAt(parts, x, y),
  })
}
