import { ok, type Result } from '../../base/index.ts'
import { bandsOf, contoursOf, depthAt, type Partition, type Point } from '../../basin/index.ts'
import { deriveBody, deriveMesh, drawnChordM } from '../../derive/index.ts'
import { type Body, depthToReference } from '../../document/index.ts'
import type { UnitSystem } from '../../units/index.ts'
import { bandDepths } from '../plan/depth-steps.ts'
import { heightsOf, type SolidModel } from './model.ts'

interface Cut {
  readonly system: UnitSystem
  readonly referenceM: number
  readonly model: Result<SolidModel>
}

// A new level or name leaves the partition as it is, and so the solid: nothing is then cut anew.
const latest = new WeakMap<Partition, Cut>()

/** The solid of a body, from the same partition as its numbers; without water nothing is wrong with the picture, but with the basin. */
export function solidModelOf(body: Body, system: UnitSystem): Result<SolidModel> {
  const { partition, measures } = deriveBody(body)
  if (!partition.ok) return partition
  const model = cutOnce(body, partition.value, system)
  // Left dry by its level alone, an empty basin is still one to look at.
  const isBasin = model.ok && model.value.maxDepthM > LEAST_M
  return measures.ok || isBasin ? model : measures
}

/** Shallower than this is no basin but rounding [m]. */
const LEAST_M = 1e-3

function cutOnce(body: Body, parts: Partition, system: UnitSystem): Result<SolidModel> {
  const referenceM = depthToReference(body, 0)
  const known = latest.get(parts)
  if (known && known.system === system && known.referenceM === referenceM) return known.model
  const model = cutModel(body, parts, system, referenceM)
  latest.set(parts, { system, referenceM, model })
  return model
}

function cutModel(body: Body, parts: Partition, system: UnitSystem, referenceM: number): Result<SolidModel> {
  const mesh = deriveMesh(body)
  if (!mesh.ok) return mesh
  const [lowM] = heightsOf(mesh.value)
  const maxDepthM = Math.max(-lowM, 0)
  // Round as they are shown, from what this body's depths are measured from.
  const depthsM = bandDepths(maxDepthM + referenceM, system)
    .map((shownM) => shownM - referenceM)
    .filter((depthM) => depthM > 0.01)
  const [originX, originY] = mesh.value.origin
  const fromOrigin = (points: readonly Point[]): Point[] => points.map(([x, y]) => [x - originX, y - originY])
  return ok({
    mesh: mesh.value,
    contours: contoursOf(parts, depthsM, drawnChordM(parts)).map((line) => ({
      ...line,
      points: fromOrigin(line.points),
    })),
    bands: () =>
      bandsOf(parts, [-body.freeboardM, ...depthsM, Infinity], drawnChordM(parts)).map((band) => ({
        ...band,
        rings: band.rings.map(fromOrigin),
      })),
    maxDepthM,
    referenceM,
    rimM: body.freeboardM,
    sampleAt: (x, y) => depthAt(parts, x + originX, y + originY),
  })
}
