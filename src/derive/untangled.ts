import { type Path, untangle } from '../basin/index.ts'
import type { Body, RingRef, Spec } from '../document/index.ts'
import { memoLast } from './memo.ts'
import { deriveProblems } from './volume.ts'

/** What to put in the place of a line that crosses itself. */
export interface Untangled {
  readonly bodyId: string
  readonly ring: RingRef
  readonly path: Path
  /** Path of the complaint that it would answer. */
  readonly answers: string
}

const TANGLED = ['crosses-itself', 'doubles-back']
const PLACE =
  /^bodies\[(\d+)\]\.(?:(outline)|islands\[(\d+)\]|floor\.rings\[(\d+)\]\.path|features\[(\d+)\]\.path)(?:\.|$)/

/** The proposals for all lines that cross themselves; none for a scribble that no rule can read. */
export const deriveUntangled = memoLast((spec: Spec): readonly Untangled[] =>
  deriveProblems(spec).flatMap(({ code, path: answers }) => {
    const match = TANGLED.includes(code) ? PLACE.exec(answers) : null
    const body = match ? spec.bodies[Number(match[1])] : undefined
    const ring = match && ringOf(match)
    const tangled = body && ring && pathOf(body, ring)
    const path = tangled && untangle(tangled)
    return body && ring && path && path !== tangled ? [{ bodyId: body.id, ring, path, answers }] : []
  }),
)

function ringOf([, , outline, island, contour, feature]: RegExpExecArray): RingRef | undefined {
  if (outline) return { of: 'outline' }
  if (island) return { of: 'island', index: Number(island) }
  if (contour) return { of: 'contour', index: Number(contour) }
  return feature ? { of: 'feature', index: Number(feature) } : undefined
}

function pathOf(body: Body, ring: RingRef): Path | undefined {
  switch (ring.of) {
    case 'outline':
      return body.outline
    case 'island':
      return body.islands[ring.index]
    case 'contour':
      return body.floor.kind === 'contours' ? body.floor.rings[ring.index]?.path : undefined
    case 'feature': {
      const feature = body.features[ring.index]
      return feature && 'path' in feature ? feature.path : undefined
    }
  }
}
