import { type BasinShape, flatten, type Path, type ProfileFloor } from '../../src/basin/index.ts'
import { BELOW_M, type Bin, boxAbove, type Fineness, type Solid, type Wasm } from './solid-kit.ts'

/** The ground under a basin: takes a solid of water and gives back what of it lies over the floor. */
export interface Ground {
  readonly over: (water: Solid) => Solid
  readonly deepestM: number
}

/** The ground of a floor, from half-spaces, wedges, hulls, a sphere or a cone. */
export function groundUnder(wasm: Wasm, bin: Bin, shape: BasinShape, fineness: Fineness): Ground {
  const { floor } = shape
  switch (floor.kind) {
    case 'flat':
      return { over: (water) => water.trimByPlane([0, 0, 1], -floor.depthM), deepestM: floor.depthM }
    case 'profile': {
      const wedge = profileWedge(wasm, bin, floor)
      return { over: (water) => water.subtract(wedge), deepestM: Math.max(...floor.stations.map(([, d]) => d)) }
    }
    case 'dish': {
      const { centre, radiusM, edgeDepthM, depthM } = floor
      const hollow = dishHollow(wasm, bin, floor, fineness)
      const placed = bin.keep(hollow.translate([centre[0], centre[1], 0]))
      if (!(radiusM > 0 && depthM > edgeDepthM)) throw new Error('the hollow must go down')
      return hollowed(wasm, bin, edgeDepthM, placed, depthM)
    }
    case 'contours': {
      // Rings that nest and grow deeper, each with the last a hull of two level rings: true for similar convex ones.
      const rings: [number, Path][] = [
        [floor.edgeDepthM, shape.outline],
        ...floor.rings.map((r): [number, Path] => [r.depthM, r.path]),
      ]
      const hulls = rings.slice(1).map(([depthM, path], i) => {
        const [aboveM, above] = rings[i]!
        return bin.keep(wasm.Manifold.hull([...level(above, aboveM, fineness), ...level(path, depthM, fineness)]))
      })
      const deepestM = Math.max(...rings.map(([depthM]) => depthM))
      return hollowed(wasm, bin, floor.edgeDepthM, bin.keep(wasm.Manifold.union(hulls)), deepestM)
    }
    case 'soundings': {
      // The lower hull of points on a paraboloid is their Delaunay triangulation, so the hull of all points is the water.
      if (floor.edgeDepthM === null) throw new Error('the depth along the shore is needed')
      const points = floor.points.map(([x, y, depthM]): [number, number, number] => [x, y, -depthM])
      const hull = bin.keep(wasm.Manifold.hull([...level(shape.outline, floor.edgeDepthM, fineness), ...points]))
      return hollowed(wasm, bin, floor.edgeDepthM, hull, Math.max(...floor.points.map(([, , d]) => d)))
    }
    default:
      throw new Error('unknown floor')
  }
}

/** Water over a level floor and in a hollow below it. */
function hollowed(wasm: Wasm, bin: Bin, edgeDepthM: number, hollow: Solid, deepestM: number): Ground {
  const room = bin.keep(boxAbove(wasm, bin, edgeDepthM).add(hollow))
  return { over: (water) => water.intersect(room), deepestM }
}

function level(path: Path, depthM: number, { chordM }: Fineness): [number, number, number][] {
  return flatten(path, chordM).map(([x, y]) => [x, y, -depthM])
}

function dishHollow(
  wasm: Wasm,
  bin: Bin,
  floor: Extract<BasinShape['floor'], { kind: 'dish' }>,
  { chordM }: Fineness,
): Solid {
  const { form, radiusM, edgeDepthM, depthM } = floor
  const sink = depthM - edgeDepthM
  if (form === 'cone') {
    const segments = 4 * Math.ceil(Math.PI / (4 * Math.acos(1 - chordM / radiusM)))
    return bin.keep(bin.keep(wasm.Manifold.cylinder(sink, 0, radiusM, segments)).translate([0, 0, -depthM]))
  }
  const sphere = (radiusM ** 2 + sink ** 2) / (2 * sink)
  const segments = Math.min(1024, 4 * Math.ceil(Math.PI / (4 * Math.acos(1 - chordM / sphere))))
  return bin.keep(
    bin
      .keep(bin.keep(wasm.Manifold.sphere(sphere, segments)).translate([0, 0, sphere - depthM]))
      .trimByPlane([0, 0, -1], edgeDepthM),
  )
}

/** The ground under a profile as one long wedge across the axis, from far below up to the depth. */
function profileWedge(wasm: Wasm, bin: Bin, { axis: { from, to }, stations }: ProfileFloor): Solid {
  const far = 500
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const down = [...stations].reverse()
  const profile: [number, number][] = [
    [-far, -2 * BELOW_M],
    [far, -2 * BELOW_M],
    [far, -down[0]![1]],
    ...down.map(([at, depth]): [number, number] => [at, -depth]),
    [-far, -stations[0]![1]],
  ]
  const ground = bin.keep(bin.keep(new wasm.CrossSection([profile])).extrude(2 * far))
  // Section plane (s, z) and extrusion across: s along the axis, z up.
  const ux = (to[0] - from[0]) / length
  const uy = (to[1] - from[1]) / length
  return bin.keep(
    ground.transform([ux, uy, 0, 0, 0, 0, 1, 0, uy, -ux, 0, 0, from[0] - far * uy, from[1] + far * ux, 0, 1]),
  )
}
