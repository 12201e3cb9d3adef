import { type Camera, type Mesh, Plane, Raycaster, Vector2, Vector3 } from 'three'
import { PARTS } from '../../../basin/index.ts'
import type { SolidModel } from '../model.ts'
import { isOverBasin, type Probe } from '../probe.ts'

const rays = new Raycaster()
const up = new Vector3(0, 0, 1)
const spot = new Vector3()

type Named = (feature: number | undefined) => string | undefined

/** Where a ray through the picture (−1 to 1 both ways) meets a level plane. */
export function pointOnLevel(camera: Camera, ndcX: number, ndcY: number, z: number): Vector3 | undefined {
  rays.setFromCamera(new Vector2(ndcX, ndcY), camera)
  return rays.ray.intersectPlane(new Plane(up, -z), spot) ? spot.clone() : undefined
}

/** Whether a point of the picture looks into the opening, and not onto the ground. */
export function isOpening(camera: Camera, model: SolidModel, ndcX: number, ndcY: number): boolean {
  const at = pointOnLevel(camera, ndcX, ndcY, model.rimM)
  return at !== undefined && isOverBasin(model.mesh.rings, at.x, at.y)
}

/** The place of the shell under a point of the picture; undefined over the ground, which hides what lies behind it. */
export function pick(
  camera: Camera,
  shell: Mesh,
  model: SolidModel,
  ndcX: number,
  ndcY: number,
  nameOf: Named,
): Probe | undefined {
  if (!isOpening(camera, model, ndcX, ndcY)) return undefined
  rays.setFromCamera(new Vector2(ndcX, ndcY), camera)
  const hit = rays.intersectObject(shell, false)[0]
  if (!hit) return undefined
  const part = PARTS[model.mesh.parts[hit.faceIndex ?? 0] ?? 0] ?? 'floor'
  const { x, y, z } = hit.point
  // Level faces take the exact depth of the place; on an upright one it is the height of the hit that counts.
  if (part !== 'floor' && part !== 'feature') return { x, y, z, part, featureName: undefined }
  const sample = model.sampleAt(x, y)
  if (!sample || Math.abs(sample.depthM + z) > 0.05) return { x, y, z, part, featureName: undefined }
  return { x, y, z: -sample.depthM, part: sample.part, featureName: nameOf(sample.feature) }
}

/** The shell straight below a point of the plan. */
export function probeBelow(model: SolidModel, x: number, y: number, nameOf: Named): Probe | undefined {
  const sample = model.sampleAt(x, y)
  return sample && { x, y, z: -sample.depthM, part: sample.part, featureName: nameOf(sample.feature) }
}

/** What lies at the same place of the plan in another model as a probe has in the one that it was made in. */
export function probeAnew({ x, y }: Probe, was: SolidModel, model: SolidModel, nameOf: Named): Probe | undefined {
  const [wasX, wasY] = was.mesh.origin
  const [isX, isY] = model.mesh.origin
  return probeBelow(model, x + wasX - isX, y + wasY - isY, nameOf)
}

/** Whether a place on the shell is in sight: no ground, wall or step stands before it. */
export function canBeSeen(camera: Camera, shell: Mesh, model: SolidModel, x: number, y: number, z: number): boolean {
  const ndc = new Vector3(x, y, z).project(camera)
  if (Math.abs(ndc.x) > 0.98 || Math.abs(ndc.y) > 0.96) return false
  if (!isOpening(camera, model, ndc.x, ndc.y)) return false
  rays.setFromCamera(new Vector2(ndc.x, ndc.y), camera)
  const hit = rays.intersectObject(shell, false)[0]
  return hit !== undefined && Math.hypot(hit.point.x - x, hit.point.y - y, hit.point.z - z) < 0.12
}
