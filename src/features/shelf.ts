import { fail, ok, type Result } from '../base/index.ts'
import type { Patch, Point } from '../basin/index.ts'
import { finite, grip, movedPath, rectangle } from './shape-help.ts'
import type { FeatureKind, Shelf } from './types.ts'

export const SHELF: FeatureKind<Shelf> = {
  id: 'shelf',
  label: 'Shelf',
  help: 'A level footprint of any shape: a sun shelf, a ledge, a swim-out.',
  fields: [
    {
      id: 'depthM',
      label: 'Depth of the shelf',
      unit: 'm',
      isDepth: true,
      get: (shelf) => shelf.depthM,
      set: (shelf, depthM) => ({ ...shelf, depthM }),
    },
  ],
  defaults: ({ at, toward, sizeM }) => ({
    kind: 'shelf',
    path: rectangle(at, toward, sizeM, sizeM),
    depthM: 0.3,
  }),
  handles: (shelf) => [
    grip<Shelf>(
      'start',
      'Whole shelf',
      (f): Point => f.path.start,
      (f, to) => ({ ...f, path: movedPath(f.path, to[0] - f.path.start[0], to[1] - f.path.start[1]) }),
    ),
    ...shelf.path.segments.map((_, i) =>
      grip<Shelf>(
        `segments[${i}]`,
        `Point ${i + 2} of the shelf`,
        (f): Point => f.path.segments[i]?.to ?? f.path.start,
        (f, to) => ({
          ...f,
          path: { ...f.path, segments: f.path.segments.map((s, k) => (k === i ? { ...s, to } : s)) },
        }),
      ),
    ),
  ],
  patchesOf,
}

function patchesOf(shelf: Shelf, index: number): Result<Patch[]> {
  const wrong = finite(shelf.depthM, `features[${index}].depthM`)
  if (wrong) return fail(wrong)
  return ok([{ path: shelf.path, plane: { atOrigin: shelf.depthM, dx: 0, dy: 0 }, feature: index }])
}
