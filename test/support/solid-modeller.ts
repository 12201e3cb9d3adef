import type { BasinShape, Patch, Point } from '../../src/basin/index.ts'
import { groundUnder } from './solid-ground.ts'
import { BELOW_M, Bin, type Fineness, type Section, type Solid, sectionOf, type Wasm } from './solid-kit.ts'

/** Water of a shape at its datum [m³], built as a solid from nothing but prisms, offsets, hulls and cuts. */
export function solidWaterM3(wasm: Wasm, shape: BasinShape, fineness: Fineness): number {
  const bin = new Bin()
  try {
    let plan = bin.keep(sectionOf(wasm, shape.outline, fineness.chordM))
    for (const island of shape.islands)
      plan = bin.keep(plan.subtract(bin.keep(sectionOf(wasm, island, fineness.chordM))))
    const blocks = shape.patches.map((patch) => blockOf(wasm, bin, patch, fineness.chordM))
    const standing = blocks.length > 0 ? bin.keep(wasm.Manifold.union(blocks)) : undefined
    // Slice by slice: in one solid the faces in which slices touch make the modeller's cuts several times slower.
    let sum = 0
    for (const water of wallOf(wasm, bin, shape, plan, fineness)) {
      const slice = bin.keep(water)
      const free = standing ? bin.keep(slice.subtract(standing)) : slice
      sum += free.volume()
    }
    return sum
  } finally {
    bin.empty()
  }
}

/** What a feature's patch fills: its footprint from far below up to its plane. */
function blockOf(wasm: Wasm, bin: Bin, patch: Patch, chordM: number): Solid {
  const { plane, path, except, band } = patch
  let footprint = bin.keep(sectionOf(wasm, path, chordM))
  if (except) footprint = bin.keep(footprint.subtract(bin.keep(sectionOf(wasm, except, chordM))))
  const prism = bin.keep(bin.keep(footprint.extrude(BELOW_M)).translate([0, 0, -BELOW_M]))
  let block = prism
  if (band) {
    const { axis, fromM, toM } = band
    const run = Math.hypot(axis.to[0] - axis.from[0], axis.to[1] - axis.from[1])
    const dx = (axis.to[0] - axis.from[0]) / run
    const dy = (axis.to[1] - axis.from[1]) / run
    const at = axis.from[0] * dx + axis.from[1] * dy
    if (Number.isFinite(fromM)) block = bin.keep(block.trimByPlane([dx, dy, 0], fromM + at))
    if (Number.isFinite(toM)) block = bin.keep(block.trimByPlane([-dx, -dy, 0], -(toM + at)))
  }
  // The top is moved to the plane: a shear, exact for its corners.
  return bin.keep(
    block.warp((v) => {
      if (v[2] > -BELOW_M / 2) v[2] = -(plane.atOrigin + plane.dx * v[0] + plane.dy * v[1])
    }),
  )
}

/** The water between walls and floor, in slices that fill it. */
function* wallOf(wasm: Wasm, bin: Bin, shape: BasinShape, plan: Section, fineness: Fineness): Generator<Solid> {
  const { wall } = shape
  if (wall.kind === 'cove') {
    yield* covedSlices(wasm, bin, shape, plan, wall.radiusM, fineness)
    return
  }
  const ground = groundUnder(wasm, bin, shape, fineness)
  if (wall.kind === 'vertical' || wall.run === 0) {
    yield ground.over(bin.keep(bin.keep(plan.extrude(BELOW_M)).translate([0, 0, -BELOW_M])))
    return
  }
  const step = ground.deepestM / fineness.slices
  for (let k = 0; k < fineness.slices; k++) {
    const inset = insetBy(bin, plan, wall.run * (k + 0.5) * step, fineness.chordM)
    if (inset.isEmpty()) return
    yield ground.over(bin.keep(bin.keep(inset.extrude(step)).translate([0, 0, -(k + 1) * step])))
  }
}

/** The places of a plan farther than a distance from its border: round about corners that jut into it. */
function insetBy(bin: Bin, plan: Section, distanceM: number, chordM: number): Section {
  const turn = 2 * Math.acos(Math.max(0, 1 - chordM / Math.max(distanceM, chordM)))
  const segments = Math.min(2048, 4 * Math.ceil(Math.PI / (2 * turn)))
  return bin.keep(plan.offset(-distanceM, 'Round', 2, segments))
}

/**
 * A cove over a floor of planes: above a level floor it is a stack of insets, z′ = r − r cos φ up and n = r − r sin φ in;
 * under each plane of the floor that stack is sheared down onto it, and what stands above the datum is cut off.
 */
function* covedSlices(
  wasm: Wasm,
  bin: Bin,
  shape: BasinShape,
  plan: Section,
  radiusM: number,
  { chordM, slices }: Fineness,
): Generator<Solid> {
  const strips = stripsOf(wasm, bin, shape)
  const insets = Array.from({ length: slices }, (_, k) => {
    const height = (share: number): number => radiusM * (1 - Math.cos((share * Math.PI) / 2))
    const n = radiusM * (1 - Math.sin((((k + 0.5) / slices) * Math.PI) / 2))
    return { section: insetBy(bin, plan, n, chordM), fromM: height(k / slices), toM: height((k + 1) / slices) }
  })
  insets.push({ section: plan, fromM: radiusM, toM: BELOW_M })
  for (const { region, depthAt } of strips)
    for (const { section, fromM, toM } of insets) {
      const part = bin.keep(section.intersect(region))
      if (part.isEmpty()) continue
      const flat = bin.keep(bin.keep(part.extrude(toM - fromM)).translate([0, 0, fromM]))
      const sheared = bin.keep(
        flat.warp((v) => {
          v[2] -= depthAt(v[0], v[1])
        }),
      )
      yield sheared.trimByPlane([0, 0, -1], 0)
    }
}

interface Strip {
  readonly region: Section
  readonly depthAt: (x: number, y: number) => number
}

/** The strips of a floor on which its depth is one plane. */
function stripsOf(wasm: Wasm, bin: Bin, { floor }: BasinShape): Strip[] {
  const far = 500
  const whole: [number, number][] = [
    [-far, -far],
    [far, -far],
    [far, far],
    [-far, far],
  ]
  if (floor.kind === 'flat') return [{ region: bin.keep(new wasm.CrossSection([whole])), depthAt: () => floor.depthM }]
  if (floor.kind !== 'profile') throw new Error('a cove is built over a flat floor or a profile only')
  const { from, to } = floor.axis
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const place = (s: number, across: number): [number, number] => [
    from[0] + s * ux - across * uy,
    from[1] + s * uy + across * ux,
  ]
  const stops: Point[] = [
    [-far, floor.stations[0]![1]],
    ...floor.stations,
    [far, floor.stations[floor.stations.length - 1]![1]],
  ]
  return stops.slice(1).map(([s1, d1], i): Strip => {
    const [s0, d0] = stops[i]!
    const corners = [place(s0, -far), place(s1, -far), place(s1, far), place(s0, far)]
    return {
      region: bin.keep(new wasm.CrossSection([corners])),
      depthAt: (x, y) => d0 + ((d1 - d0) * ((x - from[0]) * ux + (y - from[1]) * uy - s0)) / (s1 - s0),
    }
  })
}
