import Module from 'manifold-3d'
import { flatten, type Path } from '../../src/basin/index.ts'

// manifold-3d: an independent solid modeller; its polygons and slices approximate curves, so the finer solid must come nearer.
export type Wasm = Awaited<ReturnType<typeof Module>>
export type Solid = ReturnType<Wasm['Manifold']['cube']>
export type Section = ReturnType<Wasm['CrossSection']['square']>

/** How finely curves are cut into chords [m], and a leaning or rounded wall into level slices. */
export interface Fineness {
  readonly chordM: number
  readonly slices: number
}

/** Far below every floor, and far above every surface [m]. */
export const BELOW_M = 60
const ABOVE_M = 1

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

/** The modeller, started. */
export async function startModeller(): Promise<Wasm> {
  const wasm = await Module()
  wasm.setup()
  return wasm
}

export function sectionOf(wasm: Wasm, path: Path, chordM: number): Section {
  return new wasm.CrossSection([ccw(flatten(path, chordM).map(([x, y]) => [x, y] as [number, number]))])
}

/** Takes the modeller's objects along and gives their memory back at the end: it has no collector of its own. */
export class Bin {
  private readonly kept: { delete(): void }[] = []
  keep<T extends { delete(): void }>(item: T): T {
    this.kept.push(item)
    return item
  }
  empty(): void {
    for (const item of this.kept) item.delete()
    this.kept.length = 0
  }
}

/** A box over everything from a depth up [m]. */
export function boxAbove(wasm: Wasm, bin: Bin, depthM: number): Solid {
  const far = 500
  return bin.keep(bin.keep(wasm.Manifold.cube([2 * far, 2 * far, depthM + ABOVE_M])).translate([-far, -far, -depthM]))
}
