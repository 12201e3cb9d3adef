import { PARTS } from '../../basin/index.ts'
import type { SolidModel } from './model.ts'
import { isOverBasin } from './probe.ts'
import { fitTo, frameOf, HOME, type Vector, type View } from './turntable.ts'

const degrees = Math.PI / 180
/** Where it may be seen from at first: slantwise to the plan's axes, so that two walls show, and steep or less so. */
const AZIMUTHS = [-18, 18, -40, 40, -65, 65, -115, 115, -140, 140, -162, 162]
const TILTS = [46, 54]
/** What counts, against steps and shelf in full sight as 1: floor in sight, a large picture, the plan's own way up. */
const FLOOR_COUNTS = 0.35
const SIZE_COUNTS = 0.9
const WAY_UP_COUNTS = 0.3

interface Patch {
  readonly at: Vector
  readonly areaM2: number
}

function patchesOf(model: SolidModel, part: 'feature' | 'floor', most: number): Patch[] {
  const { positions, indices, parts } = model.mesh
  const wanted = PARTS.indexOf(part)
  const patches: Patch[] = []
  parts.forEach((each, t) => {
    if (each !== wanted) return
    const corners = [0, 1, 2].map((k) => indices[t * 3 + k]! * 3)
    const [x, y, z] = [0, 1, 2].map((k) => corners.reduce((sum, c) => sum + positions[c + k]! / 3, 0)) as [
      number,
      number,
      number,
    ]
    const [a, b, c] = corners as [number, number, number]
    const [ux, uy] = [positions[b]! - positions[a]!, positions[b + 1]! - positions[a + 1]!]
    const [vx, vy] = [positions[c]! - positions[a]!, positions[c + 1]! - positions[a + 1]!]
    patches.push({ at: [x, y, z], areaM2: Math.abs(ux * vy - uy * vx) / 2 })
  })
  return patches.toSorted((p, q) => q.areaM2 - p.areaM2).slice(0, most)
}

/** Share of some patches that shows through the opening, from far away. */
function shareInSight(patches: readonly Patch[], model: SolidModel, back: Vector): number {
  let [seen, all] = [0, 0]
  for (const { at, areaM2 } of patches) {
    const up = (model.rimM - at[2]) / back[2]
    if (isOverBasin(model.mesh.rings, at[0] + back[0] * up, at[1] + back[1] * up)) seen += areaM2
    all += areaM2
  }
  return all > 0 ? seen / all : 1
}

/** The view to begin with: steps and shelf in sight, the picture large, and the plan's way up if that costs little. */
export function homeFor(model: SolidModel, frame: readonly Vector[], aspect: number): View {
  const features = patchesOf(model, 'feature', 240)
  const floor = patchesOf(model, 'floor', 120)
  const views = TILTS.flatMap((tilt) =>
    AZIMUTHS.map((azimuth) => ({ azimuth: azimuth * degrees, tilt: tilt * degrees })),
  )
  const far = views.map((view) => fitTo(frame, view, aspect).distanceM)
  const nearest = Math.min(...far)
  let best = { score: -Infinity, view: HOME }
  views.forEach((view, i) => {
    const { back } = frameOf(view)
    const score =
      shareInSight(features, model, back) +
      FLOOR_COUNTS * shareInSight(floor, model, back) +
      SIZE_COUNTS * (nearest / far[i]!) +
      WAY_UP_COUNTS * Math.cos(view.azimuth) -
      0.05 * Math.abs(view.tilt - HOME.tilt)
    if (score > best.score + 1e-9) best = { score, view: { ...HOME, ...view } }
  })
  return best.view
}
