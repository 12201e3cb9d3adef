import { fail, ok, type Result } from '../base/index.ts'
import { nearestOn, type Patch, type Path, type Plane, type Point, pointOn, stripsAlong } from '../basin/index.ts'
import { problem } from './problems.ts'
import { finite, grip, movedPath, rectangle } from './shape-help.ts'
import type { Along, Bench, FeatureField, FeatureHandle, FeatureKind, WallBench } from './types.ts'

/** What a new bench measures [m]: common practice, no source. */
const WIDTH_M = 0.45
const DEPTH_M = 0.45

export const BENCH: FeatureKind<Bench> = {
  id: 'bench',
  label: 'Bench',
  help: 'A seat along the wall, or a footprint of its own.',
  fields: [
    {
      id: 'depthM',
      label: 'Depth of the seat',
      unit: 'm',
      isDepth: true,
      get: (f) => f.depthM,
      set: (f, depthM) => ({ ...f, depthM }),
    },
    {
      id: 'widthM',
      label: 'Width of the seat',
      unit: 'm',
      belongsTo: isAlongWall,
      get: (f) => (isAlongWall(f) ? f.widthM : 0),
      set: (f, widthM) => (isAlongWall(f) ? { ...f, widthM } : f),
    },
    side('fromSegment', 'First side it runs along'),
    side('toSegment', 'Last side it runs along'),
  ],
  defaults: ({ at, toward, sizeM, outline }) => {
    if (!outline) return { kind: 'bench', path: rectangle(at, toward, WIDTH_M, sizeM), depthM: DEPTH_M }
    const { segmentIndex } = nearestOn(outline, at[0], at[1])
    return {
      kind: 'bench',
      along: { fromSegment: segmentIndex, toSegment: segmentIndex },
      widthM: WIDTH_M,
      depthM: DEPTH_M,
    }
  },
  handles: (bench, outline) => (isAlongWall(bench) ? wallHandles(outline) : freeHandles()),
  patchesOf: (bench, index, outline) => patchesOf(bench, index, outline),
}

function isAlongWall(bench: Bench): bench is WallBench {
  return 'along' in bench
}

/** Sides are counted from 1 for people. */
function side(id: keyof Along, label: string): FeatureField<Bench> {
  return {
    id,
    label,
    unit: 'count',
    belongsTo: isAlongWall,
    get: (f) => (isAlongWall(f) ? f.along[id] + 1 : 0),
    set: (f, value) => (isAlongWall(f) ? { ...f, along: { ...f.along, [id]: Math.max(0, Math.round(value) - 1) } } : f),
  }
}

function wallHandles(outline: Path): FeatureHandle<Bench>[] {
  const count = sidesOf(outline)
  const middleOf = (f: Bench, id: keyof Along): Point =>
    isAlongWall(f) ? pointOn(outline, f.along[id], 0.5) : f.path.start
  const nearest = (to: Point): number => nearestOn(outline, to[0], to[1]).segmentIndex
  const end = (id: keyof Along, label: string): FeatureHandle<Bench> =>
    grip<Bench>(
      `along.${id}`,
      label,
      (f) => middleOf(f, id),
      (f, to) => (isAlongWall(f) ? { ...f, along: { ...f.along, [id]: nearest(to) } } : f),
    )
  return [
    grip<Bench>(
      'along',
      'Whole bench',
      (f) => middleOf(f, 'fromSegment'),
      (f, to) => {
        if (!isAlongWall(f)) return f
        const fromSegment = nearest(to)
        const by = fromSegment - f.along.fromSegment
        return { ...f, along: { fromSegment, toSegment: (f.along.toSegment + by + count) % count } }
      },
    ),
    end('fromSegment', 'First side of the bench'),
    end('toSegment', 'Last side of the bench'),
  ]
}

function freeHandles(): FeatureHandle<Bench>[] {
  return [
    grip<Bench>(
      'start',
      'Whole bench',
      (f) => ('path' in f ? f.path.start : [0, 0]),
      (f, to) =>
        'path' in f ? { ...f, path: movedPath(f.path, to[0] - f.path.start[0], to[1] - f.path.start[1]) } : f,
    ),
  ]
}

/** Number of sides of an outline, with the line that closes it. */
function sidesOf({ start, segments }: Path): number {
  const last = segments[segments.length - 1]?.to ?? start
  return segments.length + (last[0] !== start[0] || last[1] !== start[1] ? 1 : 0)
}

/** The seat's footprint; along a wall several that share one depth, a piece for each side and each corner. */
function patchesOf(bench: Bench, index: number, outline: Path): Result<Patch[]> {
  const path = `features[${index}]`
  const wrong = finite(bench.depthM, `${path}.depthM`)
  if (wrong) return fail(wrong)
  const plane: Plane = { atOrigin: bench.depthM, dx: 0, dy: 0 }
  if (!isAlongWall(bench)) return ok([{ path: bench.path, plane, feature: index }])
  const { along, widthM } = bench
  const noWidth = finite(widthM, `${path}.widthM`)
  if (noWidth) return fail(noWidth)
  if (!(widthM > 0)) return fail(problem('width-not-positive', `${path}.widthM`))
  const count = sidesOf(outline)
  for (const id of ['fromSegment', 'toSegment'] as const)
    if (!Number.isInteger(along[id]) || along[id] < 0 || along[id] >= count)
      return fail(problem('no-such-side', `${path}.along.${id}`))
  const length = ((along.toSegment - along.fromSegment + count) % count) + 1
  const sides = Array.from({ length }, (_, k) => (along.fromSegment + k) % count)
  const strips = stripsAlong(outline, sides, widthM)
  if (strips.length === 0) return fail(problem('side-without-length', `${path}.along`))
  return ok(strips.map((strip): Patch => ({ ...strip, plane, feature: index })))
}
