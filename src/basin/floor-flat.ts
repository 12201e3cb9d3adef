import { ok } from '../base/index.ts'
import type { FloorKind } from './floor-kind.ts'
import { problem } from './problems.ts'
import type { FlatFloor } from './types.ts'

export const FLAT: FloorKind<FlatFloor> = {
  id: 'flat',
  check: (floor) => (Number.isFinite(floor.depthM) ? undefined : problem('not-a-number', 'floor.depthM')),
  plan: (floor) =>
    ok({
      pieces: [
        {
          plane: { atOrigin: floor.depthM, dx: 0, dy: 0 },
          within: [],
          weights: [{ depthIndex: 0, plane: { atOrigin: 1, dx: 0, dy: 0 } }],
        },
      ],
      breaks: [],
      pieceAt: () => 0,
    }),
}
