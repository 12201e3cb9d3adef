import Module from 'manifold-3d'
import { type BasinShape, flatten, type Path } from '../../src/basin/index.ts'

// manifold-3d: an independent solid modeller; its polygons approximate curves, so the finer mesh must come nearer.
export type Wasm = Awaited<ReturnType<typeof Module>>
type Solid = ReturnType<Wasm['Manifold']['cube']>

/** Points of a ring counter-clockwise, as the modeller wants them. */
export function ccw(points: [number, number][]): [number, number][] {
  let sum = 0
  for (let i = 0; i < points.length; i++) {
    const [ax, ay] = points[i]!
    const [bx, by] = points[(i + 1) % points.length]!
    sum += ax * by - bx * ay
  }
  return sum > 0 ? points : points.reverse()
}

function prism(wasm: Wasm, path: Path, chordM: number, bottomZ: number, topZ: number): Solid {
  const points = ccw(flatten(path, chordM).map(([x, y]) => [x, y] as [number, number]))
  return new wasm.CrossSection([points]).extrude(topZ - bottomZ).translate([0, 0, bottomZ])
}

/** The modeller, started. */
export async function startModeller(): Promise<Wasm> {
  const wasm = await Module()
  wasm.setup()
  return wasm
}

/** Water of a shape with a profile floor: the outline's prism above the floor, less what stands in it. */
export function solidWaterM3(wasm: Wasm, s: BasinShape, chordM: number): number {
  const { floor } = s
  if (floor.kind !== 'profile') throw new Error('a profile is needed')
  const { from, to } = floor.axis
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  // The floor as one long wedge across the axis, from far below up to the depth.
  const far = 50
  const profile: [number, number][] = [
    [-far, -far],
    [far, -far],
  ]
  const stations = [...floor.stations].reverse()
  profile.push([far, -stations[0]![1]])
  for (const [at, depth] of stations) profile.push([at, -depth])
  profile.push([-far, -stations[stations.length - 1]![1]])
  const ground = new wasm.CrossSection([profile]).extrude(4 * far)
  // Section plane (s, z) and extrusion across: s along the axis, z up.
  const ux = (to[0] - from[0]) / length
  const uy = (to[1] - from[1]) / length
  const placed = ground.transform([
    ux,
    uy,
    0,
    0,
    0,
    0,
    1,
    0,
    uy,
    -ux,
    0,
    0,
    from[0] - 2 * far * uy,
    from[1] + 2 * far * ux,
    0,
    1,
  ])
  let solid = prism(wasm, s.outline, chordM, -20, 0).subtract(placed)
  for (const island of s.islands) solid = solid.subtract(prism(wasm, island, chordM, -20, 1))
  for (const patch of s.patches) {
    let block = prism(wasm, patch.path, chordM, -20, -patch.plane.atOrigin)
    if (patch.except) block = block.subtract(prism(wasm, patch.except, chordM, -21, 1))
    if (patch.band) {
      const { axis, fromM, toM } = patch.band
      const run = Math.hypot(axis.to[0] - axis.from[0], axis.to[1] - axis.from[1])
      const dx = (axis.to[0] - axis.from[0]) / run
      const dy = (axis.to[1] - axis.from[1]) / run
      if (Number.isFinite(fromM)) block = block.trimByPlane([dx, dy, 0], fromM + axis.from[0] * dx + axis.from[1] * dy)
      if (Number.isFinite(toM)) block = block.trimByPlane([-dx, -dy, 0], -(toM + axis.from[0] * dx + axis.from[1] * dy))
    }
    solid = solid.subtract(block)
  }
  return solid.volume()
}
