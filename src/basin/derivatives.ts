import { depthGradient, listDepths } from './depth-gradient.ts'
import type { VolumeDerivative } from './derivative-types.ts'
import { listDish } from './dish-gradient.ts'
import type { Partition } from './partition-types.ts'
import { profileGradients } from './profile-gradient.ts'
import { listPath, pathGradients } from './shore-gradient.ts'
import { exactGradient } from './volume-gradient.ts'
import { floorPlaceGradients } from './volume-gradient-floor.ts'
import { listFootprints } from './volume-gradient-footprints.ts'
import { drawnGradients } from './volume-gradient-paths.ts'

/**
 * First derivatives of the volume at a level by every number of a body that moves it: the level, the wall's own number, every
 * stated depth; where a profile's stations, soundings and treads lie, a hollow's and a round flight's centre and radii, the
 * axes of profiles, flights and ramps, widths of benches along the wall; every node, handle and bulge of outline, islands,
 * contours and footprints.
 * Method: volume-gradient*.ts. A node's leaves its handles where they are; add theirs where they go along.
 * Valid for: benches along the wall that go with it, other footprints held in place; where V has a corner, one side's (a table
 *   in MODEL.md says which); a run above 0 (none is listed by a run of 0).
 * Accuracy: rounding with upright walls, 1e-9 of the water beside them with others; by edges of footprints 1e-8, see
 *   volume-gradient-step.ts; by soundings and contours see volume-gradient-floor.ts.
 */
export function derivativesOf(p: Partition, levelM: number): readonly VolumeDerivative[] {
  const g = exactGradient(p, levelM)
  const { wall } = p.shape
  const list: VolumeDerivative[] = [{ path: 'levelM', kind: 'level', value: g.level }]
  if (wall.kind === 'cove') list.push({ path: 'wall.radiusM', kind: 'radius', value: g.wall })
  if (wall.kind === 'battered' && wall.run > 0) list.push({ path: 'wall.run', kind: 'run', value: g.wall })
  if (g.dish) list.push(...listDish(g.dish))
  list.push(...listDepths(p, depthGradient(p, g)), ...profileGradients(p, g), ...floorPlaceGradients(p, g))
  list.push(...listFootprints(g.footprints), ...drawnGradients(p, g, levelM))
  for (const path of pathGradients(p, g.slots)) list.push(...listPath(path))
  return list
}
